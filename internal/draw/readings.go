package draw

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// readings puts every length that is set on a ruler on a side of the blank.
func (f *figure) readings() {
	f.sides = f.around()
	for i := range f.piece.Strips {
		f.strip(&f.piece.Strips[i])
	}
	for i := range f.piece.Cuts {
		if !told(f.piece.Cuts[:i], &f.piece.Cuts[i]) {
			f.cut(&f.piece.Cuts[i])
		}
	}
	f.corners()
}

// told reports whether one of the cuts before is the same notch on another
// score, whose sizes do for all.
func told(before []pattern.Cut, c *pattern.Cut) bool {
	return c.Kind == pattern.Notch && c.On != "" && slices.ContainsFunc(before, func(b pattern.Cut) bool {
		return b.Kind == c.Kind && b.On != "" && b.From == c.From && b.Depth == c.Depth && b.Width == c.Width
	})
}

// strip adds the positions of a strip's boundaries and what is folded there.
func (f *figure) strip(s *pattern.Strip) {
	for i, at := range s.Positions() {
		if i > 0 {
			f.boundary(s, i, at)
		}
	}
}

// boundary adds the position of one boundary and what is folded there.
func (f *figure) boundary(s *pattern.Strip, i int, at measure.Length) {
	ruler, folds, whole := &f.sides[below], &f.sides[above], f.piece.Width
	if s.Across == pattern.Height {
		ruler, folds, whole = &f.sides[leftOf], &f.sides[rightOf], f.piece.Height
	}
	write := f.reading
	if i <= len(s.Scores) && !s.Scores[i-1].Beside.IsZero() {
		at, write = at.Add(s.Scores[i-1].Beside), f.beside
	}
	mm := at.Millimetres()
	reading := tag{at: mm, thing: f.nearest(ruler, mm), from: fromLow, lines: []string{write(at)}}
	if i <= len(s.Scores) && s.Scores[i-1].Fold != pattern.Flat {
		score := &s.Scores[i-1]
		if f.far[score.Name] {
			reading.from, reading.lines[0] = fromHigh, write(whole.Sub(at))
		}
		lines := []string{f.say(score.Name), f.say(toward(score.Fold)) + " " + f.degrees(score.Angle)}
		if f.brief {
			lines = []string{number(lines[0])}
		}
		if s.Across == pattern.Diagonal { // the score reaches no other side at this distance
			reading.lines = append(lines, reading.lines...)
		} else {
			folds.add(tag{at: mm, thing: f.nearest(folds, mm), lines: lines, quiet: true})
		}
	}
	ruler.add(reading)
}

// number returns the number at the end of a name, or the name if it has none.
func number(name string) string {
	digits := strings.TrimLeftFunc(name, func(r rune) bool { return r < '0' || r > '9' })
	if digits == "" {
		return name
	}
	return digits
}

// reading writes a length as the ruler reads it; in brief without its unit.
func (f *figure) reading(at measure.Length) string {
	text := f.length(at)
	if f.brief {
		text = text[:strings.LastIndexByte(text, ' ')]
	}
	return text
}

// beside writes where a score is made that lies papers off its mark, as a hand sets it.
func (f *figure) beside(at measure.Length) string {
	set, ok := pattern.SetOf(at, cmp.Or(f.piece.Caliper, f.caliper), f.step, f.finest())
	n, sign, word := set.Papers, " + ", "paper"
	if !ok || n == 0 {
		return f.reading(at)
	}
	if n < 0 {
		n, sign = -n, " − "
	}
	if n > 1 {
		word = "papers"
	}
	return f.reading(set.Mark) + sign + strconv.Itoa(n) + " " + f.say(word)
}

// degrees writes an angle, to a hundredth of a degree.
func (l *layout) degrees(angle float64) string {
	return l.decimal(strconv.FormatFloat(math.Round(angle*100)/100, 'f', -1, 64)) + "°"
}

// nearest returns the place of the mesh nearest to a side, of those that are
// at a distance along it: where a line out to the side begins.
func (f *figure) nearest(s *side, along float64) float64 {
	best, found := s.start, false
	for v := range f.mesh.Vertices {
		p := f.mesh.At(v)
		at, across := p.X, p.Y
		if s.upright() {
			at, across = across, at
		}
		if math.Abs(at-along) > hair {
			continue
		}
		if !found || math.Abs(across-s.start) < math.Abs(best-s.start) {
			best, found = across, true
		}
	}
	return best
}

// cut adds how deep a cut goes in from its edge and, if it lies on no score,
// where it lies along that edge.
func (f *figure) cut(c *pattern.Cut) {
	if c.Kind == pattern.Relief {
		return // its corners are dimensioned as the outline's
	}
	if c.From == "" {
		f.ends(c)
		return
	}
	from := fromLow
	if c.From == "top" || c.From == "right" {
		from = fromHigh
	}
	deep, along := &f.sides[leftOf], &f.sides[below]
	upright, mid := c.From == "top" || c.From == "bottom", f.w/2
	if !upright {
		deep, along, mid = &f.sides[below], &f.sides[leftOf], f.h/2
	}
	if c.At.Millimetres() > mid {
		deep = &f.sides[deep.edge+1]
	}
	if from == fromHigh {
		along = &f.sides[along.edge+1]
	}
	depth := c.Depth.Millimetres()
	if from == fromHigh {
		depth = deep.size - depth
	}
	deep.add(tag{at: depth, thing: c.At.Millimetres(), from: from, lines: f.cutText(c)})
	if c.On == "" {
		lines := []string{f.reading(c.At)}
		along.add(tag{at: c.At.Millimetres(), thing: depth, from: fromLow, lines: lines})
	}
}

// ends adds where a cut that goes in from no edge of the blank begins and ends.
func (f *figure) ends(c *pattern.Cut) {
	for _, v := range c.Path {
		f.corner(&f.sides[below], v.X, f.finest())
		f.corner(&f.sides[leftOf], v.Y, f.finest())
	}
}

// cutText says how deep a cut is, and how wide unless it is a slit.
func (f *figure) cutText(c *pattern.Cut) (lines []string) {
	if !f.brief {
		lines = Wrap(f.say(c.Name), f.lettering, 16*f.lettering)
	}
	lines = append(lines, f.reading(c.Depth))
	if !c.Width.IsZero() {
		lines = append(lines, f.reading(c.Width)+" "+f.say("wide"))
	}
	return lines
}

// mostCorners is how many readings a side takes for them to be told apart.
const mostCorners = 18

// corners adds the corners of the outline that lie on a mark of the ruler and
// are no strip's position, on each side that has room for all of them.
func (f *figure) corners() {
	finest := f.finest()
	for _, edge := range [...]edge{below, leftOf} {
		s := &f.sides[edge]
		before := len(s.tags)
		for v, p := range f.mesh.Vertices {
			if !f.turns(v) || f.onCut(p) {
				continue
			}
			if edge == below {
				f.corner(s, p.X, finest)
			} else {
				f.corner(s, p.Y, finest)
			}
		}
		if len(s.tags) > max(before, mostCorners) {
			s.tags = s.tags[:before]
		}
	}
}

// finest returns the finest mark of any ruler in the unit.
func (l *layout) finest() measure.Step {
	marks := measure.Marks(l.step.Unit())
	return marks[len(marks)-1]
}

// corner adds one coordinate of a corner to a side.
func (f *figure) corner(s *side, at measure.Length, finest measure.Step) {
	if at.IsZero() || !at.IsMultipleOf(finest) {
		return
	}
	mm := at.Millimetres()
	if f.brief && math.Abs(mm-s.size) < hair {
		return // the blank has been cut
	}
	if !slices.ContainsFunc(s.tags, func(t tag) bool { return t.from == fromLow && math.Abs(t.at-mm) < hair }) {
		s.add(tag{at: mm, thing: f.nearest(s, mm), from: fromLow, lines: []string{f.reading(at)}})
	}
}

// turns reports whether the outline has a corner at a vertex.
func (f *figure) turns(v int) bool {
	at := f.mesh.At(v)
	return slices.ContainsFunc(f.contours, func(c []Vertex) bool {
		return slices.ContainsFunc(c, func(w Vertex) bool { return w.Point == at })
	})
}

// onCut reports whether a cut with readings of its own has a corner there.
func (f *figure) onCut(p pattern.Point) bool {
	return slices.ContainsFunc(f.piece.Cuts, func(c pattern.Cut) bool {
		return c.Kind != pattern.Relief && slices.ContainsFunc(c.Path, func(v pattern.Vertex) bool { return v.Point == p })
	})
}
