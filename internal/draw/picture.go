package draw

import (
	"math"
	"strconv"
	"strings"

	"creasefit/internal/assembly"
	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// NewPicture draws one step of an order of work, from 0. Cutting, scoring and
// slitting show that step's lines alone on the blank, with their readings. All
// else is drawn in space, before the step and after it, with arrows in the
// habits of folding diagrams: a filled head where paper comes towards its
// inside, a half head where it goes the other way, a hollow one for what is put
// in. What the picture shows is said in words in its description.
func NewPicture(p *pattern.Pattern, order *assembly.Order, step int, o Options) *Drawing {
	l := o.layout()
	s := &order.Steps[step]
	if l.lettering <= 0 {
		l.lettering = suitable(p)
	}
	d := &Drawing{
		View: Picture, Title: l.say(o.Title), Description: o.Description, Language: o.Language, Pattern: p, Step: o.Step, Lettering: l.lettering, words: l,
	}
	switch s.Do {
	case assembly.Cut, assembly.Score, assembly.Slit:
		for _, i := range s.Pieces {
			d.Figures = append(d.Figures, l.bench(&p.Pieces[i], s.Do))
		}
		l.stack(d)
	default:
		l.moment(d, p, order, step)
	}
	if d.Description == "" {
		d.Description = l.tell(p, s)
	}
	d.again = func(lettering float64) *Drawing {
		o.Lettering = lettering
		return NewPicture(p, order, step, o)
	}
	return d
}

// bench draws what is done to the blank of a piece in one step.
func (l *layout) bench(piece *pattern.Piece, do assembly.Do) Figure {
	f := l.figure(piece, nil)
	whole := rectangle2(f.w, f.h)
	f.sides = f.around()
	switch do {
	case assembly.Cut:
		f.paper(whole)
		f.sides[below].add(tag{at: f.w, from: fromLow, lines: []string{f.length(piece.Width)}})
		f.sides[leftOf].add(tag{at: f.h, from: fromLow, lines: []string{f.length(piece.Height)}})
	case assembly.Score:
		f.paper(whole)
		f.fig.Lines = append(f.fig.Lines, f.folds(Valley, ValleyFold)...)
		f.fig.Lines = append(f.fig.Lines, f.folds(Mountain, MountainFold)...)
		for i := range piece.Strips {
			f.scores(&piece.Strips[i])
		}
	default:
		f.geometry()
		f.drop(ValleyFold, MountainFold)
		for i := range piece.Cuts {
			if !told(piece.Cuts[:i], &piece.Cuts[i]) {
				f.cut(&piece.Cuts[i])
			}
		}
		f.corners()
	}
	f.surround()
	f.head()
	f.ordered()
	return f.fig
}

// around returns the four sides of the blank, without tags.
func (f *figure) around() [4]side {
	return [4]side{
		{edge: below, size: f.w}, {edge: above, size: f.w, line: f.h, start: f.h},
		{edge: leftOf, size: f.h}, {edge: rightOf, size: f.h, line: f.w, start: f.w},
	}
}

func rectangle2(w, h float64) []Vertex {
	return []Vertex{{}, {Point: Point{w, 0}}, {Point: Point{w, h}}, {Point: Point{0, h}}}
}

// paper draws the blank before it has its outline.
func (f *figure) paper(ring []Vertex) {
	f.fig.Lines = append(f.fig.Lines, Line{Layer: Paper, Path: ring, Closed: true, Fill: true},
		Line{Layer: Outline, Name: f.say("outline"), Path: ring, Closed: true})
}

// drop takes the lines of some layers out of the figure.
func (f *figure) drop(layers ...Layer) {
	kept := f.fig.Lines[:0]
	for _, l := range f.fig.Lines {
		if l.Layer != layers[0] && l.Layer != layers[len(layers)-1] {
			kept = append(kept, l)
		}
	}
	f.fig.Lines = kept
}

// scores adds the readings of a strip's scores, and which way they are folded.
func (f *figure) scores(s *pattern.Strip) {
	for i, at := range s.Positions() {
		if i > 0 && i <= len(s.Scores) && s.Scores[i-1].Fold != pattern.Flat {
			f.boundary(s, i, at)
		}
	}
}

// tell says in words what a step's picture shows.
func (l *layout) tell(p *pattern.Pattern, s *assembly.Step) string {
	var parts []string
	add := func(text string) {
		for _, known := range parts {
			if known == text {
				return
			}
		}
		parts = append(parts, text)
	}
	for _, i := range s.Pieces {
		piece := &p.Pieces[i]
		add(l.say(piece.Name) + ": " + l.size(piece.Width, piece.Height))
	}
	for _, t := range s.Turns {
		c := &p.Pieces[t.Piece].Creases[t.Crease]
		add(l.say(c.Name) + ": " + l.say(toward(c.Fold)) + " " + l.degrees(c.Angle*math.Abs(t.To-t.From)))
	}
	for _, a := range s.Glues {
		g, _, _ := a.Of(p)
		add(l.say("glue") + ": " + l.say(g.Name))
	}
	for _, n := range s.Nests {
		add(l.say(p.Nests[n].Name))
	}
	for _, n := range s.Locks {
		add(l.say(p.Locks[n].Name))
	}
	for _, j := range s.Joints {
		add(l.say(p.Pieces[j.Piece].Joints[j.Joint].Name))
	}
	for _, t := range s.Travels {
		if t.Piece < 0 {
			add(l.say("contents"))
		}
	}
	return l.say(s.Do.String()) + ": " + strings.Join(parts, "; ") + "."
}

// toward says which way a fold goes, for someone who sees the inside.
func toward(f pattern.Fold) string {
	switch f {
	case pattern.Valley:
		return "towards you"
	case pattern.Mountain:
		return "away from you"
	default:
		return "flat"
	}
}

// moment draws a step in space, before and after, side by side.
func (l *layout) moment(d *Drawing, p *pattern.Pattern, order *assembly.Order, step int) {
	s := &order.Steps[step]
	at := func(t float64) *still {
		frame := order.Frame(step, t)
		if t < 1 {
			frame.Contents = ready(order, step, frame.Contents)
		}
		return l.newStill(p, frame, visible(order, p, step, &frame))
	}
	before, after := at(0), at(1)
	before.draw(s.Glues)
	after.draw(nil)
	before.arrows(order, step)
	gap := 0.06 * max(before.box.Width()+after.box.Width(), 20)
	l.lettering = max(l.lettering, (before.box.Width()+after.box.Width()+gap)/80)
	d.Lettering = l.lettering
	margin := l.lettering
	x := margin
	for i, st := range [...]*still{before, after} {
		f := Figure{Name: l.say([...]string{"before", "after"}[i]), Lines: st.lines, Box: st.box, Size: st.box.High}
		text := Label{Lines: []string{strconv.Itoa(i+1) + "  " + f.Name}, Size: l.lettering, Quiet: true}
		w, h := Block(text.Lines, l.lettering)
		text.Box = boxAt(st.box.Low.X, st.box.Low.Y-0.6*l.lettering, w, h)
		f.Labels = []Label{text}
		f.Box = f.Box.join(text.Box)
		f.At = Point{x - f.Box.Low.X, margin - f.Box.Low.Y}
		x += f.Box.Width() + gap
		d.Height = max(d.Height, f.Box.Height()+2*margin)
		d.Figures = append(d.Figures, f)
	}
	for i := range d.Figures { // both stand in the middle of the height
		f := &d.Figures[i]
		f.At.Y += (d.Height - 2*margin - f.Box.Height()) / 2
	}
	d.Width = x - gap + margin
}

// ready returns the contents as they wait to be put in by a step.
func ready(order *assembly.Order, step int, now *assembly.Block) *assembly.Block {
	for _, t := range order.Steps[step].Travels {
		if t.Piece >= 0 || now != nil {
			continue
		}
		in := order.Frame(step, 1).Contents
		if in == nil {
			return nil
		}
		out := &assembly.Block{Base: make([]fold.Vec, len(in.Base)), Up: in.Up}
		for i, v := range in.Base {
			for k := range v {
				out.Base[i][k] = v[k] - t.Way[k]*t.By
			}
		}
		return out
	}
	return now
}

// frames is how many poses an arrow follows.
const frames = 8

// arrows shows how everything moves that moves as a whole: the far edge of each
// panel that is turned, and the middle of each piece that travels.
func (s *still) arrows(order *assembly.Order, step int) {
	of := &order.Steps[step]
	poses := make([]assembly.Frame, frames+1)
	for k := range poses {
		poses[k] = order.Frame(step, float64(k)/frames)
	}
	shown := map[int]bool{}
	for _, t := range of.Turns {
		c := &s.pattern.Pieces[t.Piece].Creases[t.Crease]
		plate := s.mover(t.Piece, t.Copy, c, poses)
		if plate < 0 || shown[plate] {
			continue
		}
		shown[plate] = true
		far := farPlace(&s.pattern.Pieces[t.Piece], s.frame.Model.Plates[plate].Panel, c)
		path := make([]Point, len(poses))
		for k := range poses {
			path[k] = s.at(onPlate(&poses[k].Model.Plates[plate], far))
		}
		s.arrow(path, headOf(c.Fold, t.To < t.From))
	}
	poses[0].Contents = ready(order, step, poses[0].Contents)
	for _, t := range of.Travels {
		a, b := s.middle(&poses[0], t), s.middle(&poses[frames], t)
		if a != nil && b != nil {
			s.arrow([]Point{s.at(*a), s.at(between(*a, *b, 0.5)), s.at(*b)}, hollowHead)
		}
	}
}

// The heads of arrows.
type head uint8

const (
	fullHead   head = iota // folded towards the inside
	halfHead               // folded the other way
	hollowHead             // put in, or set on
)

func headOf(f pattern.Fold, back bool) head {
	if (f == pattern.Mountain) != back {
		return halfHead
	}
	return fullHead
}

// mover returns the plate next to a crease that moves the farthest, -1 if none
// that is shown moves.
func (s *still) mover(piece, copy int, c *pattern.Crease, poses []assembly.Frame) int {
	best, most := -1, 0.5
	for i := range s.frame.Model.Plates {
		pl := &s.frame.Model.Plates[i]
		if pl.Piece != piece || pl.Copy != copy || pl.Panel != c.From && pl.Panel != c.To || !s.shown[i] || len(pl.Outline) < 3 {
			continue
		}
		far := farPlace(&s.pattern.Pieces[piece], pl.Panel, c)
		way := s.at(onPlate(&poses[frames].Model.Plates[i], far)).sub(s.at(onPlate(pl, far))).length()
		if way > most {
			best, most = i, way
		}
	}
	return best
}

// farPlace returns the middle of what of a panel is farthest from a crease, on
// the blank.
func farPlace(piece *pattern.Piece, panel int, c *pattern.Crease) Point {
	a, b := place(c.A), place(c.B)
	along := b.sub(a)
	along = along.by(1 / max(along.length(), 1e-9))
	most, sum, n := 0.0, Point{}, 0.0
	for pass := range 2 {
		for _, v := range piece.Panels[panel].Outline {
			p := place(v.Point)
			d := math.Abs(along.cross(p.sub(a)))
			if pass == 0 {
				most = max(most, d)
			} else if d > 0.97*most {
				sum, n = sum.add(p), n+1
			}
		}
	}
	return sum.by(1 / max(n, 1))
}

// middle returns the middle of what travels, nil if it is not there.
func (s *still) middle(f *assembly.Frame, t assembly.Travel) *fold.Vec {
	var sum fold.Vec
	n := 0.0
	add := func(ring []fold.Vec) {
		for _, v := range ring {
			for k := range sum {
				sum[k] += v[k]
			}
			n++
		}
	}
	if t.Piece < 0 {
		if f.Contents == nil {
			return nil
		}
		add(f.Contents.Base)
	}
	for i := range f.Model.Plates {
		if pl := &f.Model.Plates[i]; pl.Piece == t.Piece && pl.Copy == t.Copy {
			add(pl.Outline)
		}
	}
	if n == 0 {
		return nil
	}
	for k := range sum {
		sum[k] /= n
	}
	return &sum
}

// arrow draws a path with a head at its end, on top of everything.
func (s *still) arrow(path []Point, h head) {
	n := len(path)
	long := 0.0
	for i := 1; i < n; i++ {
		long += path[i].sub(path[i-1]).length()
	}
	if long < 1 {
		return
	}
	size := min(max(0.12*long, 2), max(6, 0.05*long))
	end := path[n-1]
	back := end
	for i := n - 2; i >= 0 && end.sub(back).length() < size; i-- {
		back = path[i]
	}
	way := end.sub(back)
	way = way.by(1 / way.length())
	side := Point{-way.Y, way.X}.by(0.4 * size)
	foot := end.sub(way.by(size))
	line := make([]Vertex, 0, n)
	for _, p := range path[:n-1] {
		if end.sub(p).length() > size {
			line = append(line, Vertex{Point: p})
		}
	}
	line = append(line, Vertex{Point: foot})
	s.lines = append(s.lines, Line{Layer: MotionPath, Path: line})
	tip := []Vertex{{Point: end}, {Point: foot.add(side)}, {Point: foot.sub(side)}}
	switch h {
	case halfHead:
		tip[2] = Vertex{Point: foot}
		s.lines = append(s.lines, Line{Layer: MotionPath, Path: tip, Closed: true})
	case hollowHead:
		s.lines = append(s.lines, Line{Layer: MotionPath, Path: tip, Closed: true})
	default:
		s.lines = append(s.lines, Line{Layer: MotionPath, Path: tip, Closed: true, Fill: true})
	}
	for _, p := range append(path, tip[1].Point, tip[2].Point) {
		s.widen(p)
	}
}
