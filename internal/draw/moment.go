package draw

import (
	"math"
	"strconv"

	"creasefit/internal/assembly"
	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// moments draws how everything stands before each of some steps, with arrows that
// show how it moves, and after the last; nothing without any steps.
func (l *layout) moments(p *pattern.Pattern, order *assembly.Order, steps []int) (stills []*still) {
	l.suit(suitable(p))
	at := func(step int, t float64) *still {
		frame := order.Frame(step, t)
		if t < 1 {
			frame.Contents = ready(order, step, frame.Contents)
		}
		done := step
		if t == 1 {
			done++
		}
		tuck(p, &frame, glued(order.Steps[:done]))
		return l.newStill(p, frame, visible(order, p, step, &frame))
	}
	for _, step := range steps {
		before := at(step, 0)
		before.draw(order.Steps[step].Glues)
		before.arrows(order, step)
		stills = append(stills, before)
	}
	if len(steps) > 0 {
		after := at(steps[len(steps)-1], 1)
		after.draw(nil)
		stills = append(stills, after)
	}
	return stills
}

// visible returns which plates are shown in a step.
func visible(o *assembly.Order, p *pattern.Pattern, step int, frame *assembly.Frame) []bool {
	pieces := together(o, p, step)
	shown := make([]bool, len(frame.Model.Plates))
	for i := range shown {
		shown[i] = frame.Present[i] && pieces[frame.Model.Plates[i].Piece]
	}
	return shown
}

// mostBeside is how many stills stand beside one another.
const mostBeside = 3

// numbers are what stands below the stills of a step: two have a word beside it.
func (l *layout) numbers(stills int) []string {
	texts := make([]string, stills)
	for i := range texts {
		texts[i] = strconv.Itoa(i + 1)
		if stills == 2 {
			texts[i] += "  " + l.say([...]string{"before", "after"}[i])
		}
	}
	return texts
}

// strip lays stills out in rows that are as even as they can be, with a text below each.
func (l *layout) strip(stills []*still, texts []string) (rows [][]Figure) {
	if len(stills) == 0 {
		return nil
	}
	n := (len(stills) + mostBeside - 1) / mostBeside
	columns := (len(stills) + n - 1) / n
	for first := 0; first < len(stills); first += columns {
		row := stills[first:min(first+columns, len(stills))]
		wide := 0.0
		for i, st := range row {
			text, _ := Block(texts[first+i:first+i+1], l.lettering)
			wide += max(1.04*st.box.Width(), text)
		}
		l.lettering = max(l.lettering, wide/80)
		rows = append(rows, nil)
	}
	for i, st := range stills {
		rows[i/columns] = append(rows[i/columns], l.numbered(st, texts[i]))
	}
	return rows
}

// numbered is a still with a text below it.
func (l *layout) numbered(st *still, text string) Figure {
	f := Figure{Name: text, Lines: st.lines, Box: st.box, Size: st.box.High}
	f.label(textAt(st.box.Low.X, st.box.Low.Y-0.3*l.lettering, l.lettering, true, text))
	return f
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
		by := max(t.By, seenApart*in.Base[0].Minus(in.Base[2]).Length())
		out := &assembly.Block{Base: make([]fold.Vec, len(in.Base)), Up: in.Up}
		for i, v := range in.Base {
			out.Base[i] = v.Minus(t.Way.Times(by))
		}
		return out
	}
	return now
}

// seenApart is how far the contents wait from their place at least, in parts of how
// long they are: thin ones are clear of everything after a millimetre.
const seenApart = 0.3

// frames is how many poses an arrow follows.
const frames = 8

// arrows shows how everything moves that moves as a whole: the far edge of each
// panel that is turned, and the middle of each piece that travels.
func (s *still) arrows(order *assembly.Order, step int) {
	of := &order.Steps[step]
	poses := make([]assembly.Frame, frames+1)
	for k := range poses {
		if k%frames == 0 || len(of.Turns) > 0 { // what travels goes straight
			poses[k] = order.Frame(step, float64(k)/frames)
		}
	}
	shown := map[int]bool{}
	for _, t := range of.Turns {
		c := &s.pattern.Pieces[t.Piece].Creases[t.Crease]
		plate := s.mover(t.Piece, t.Copy, c, poses)
		if plate < 0 || shown[plate] {
			continue
		}
		shown[plate] = true
		far := farPlace(&s.frame.Model.Plates[plate], c)
		path := make([]Point, len(poses))
		for k := range poses {
			path[k] = s.at(onPlate(&poses[k].Model.Plates[plate], far))
		}
		h := fullHead
		if (c.Fold == pattern.Mountain) != (t.To < t.From) {
			h = halfHead
		}
		s.arrow(path, h)
	}
	poses[0].Contents = ready(order, step, poses[0].Contents)
	for _, t := range of.Travels {
		a, b := s.middle(&poses[0], t), s.middle(&poses[frames], t)
		if a != nil && b != nil {
			s.arrow([]Point{s.at(*a), s.at(between(*a, *b, 0.5)), s.at(*b)}, hollowHead)
		}
	}
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
		far := farPlace(pl, c)
		way := s.at(onPlate(&poses[frames].Model.Plates[i], far)).sub(s.at(onPlate(pl, far))).length()
		if way > most {
			best, most = i, way
		}
	}
	return best
}

// farPlace returns the middle of what of a plate is farthest from a crease, on the
// blank.
func farPlace(pl *fold.Plate, c *pattern.Crease) Point {
	a, b := place(c.A), place(c.B)
	along := b.sub(a)
	along = along.by(1 / max(along.length(), 1e-9))
	most, sum, n := 0.0, Point{}, 0.0
	for pass := range 2 {
		for _, v := range pl.Outline {
			off := v.Minus(pl.Frame.Origin)
			p := Point{off.Dot(pl.Frame.X), off.Dot(pl.Frame.Y)}
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
			sum, n = sum.Plus(v), n+1
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
	sum = sum.Times(1 / n)
	return &sum
}
