package draw

import (
	"cmp"
	"math"
	"slices"
)

// edge is a side of the blank that tags stand along.
type edge uint8

const (
	below edge = iota
	above
	leftOf
	rightOf
)

// origin says where a tag's length is measured from.
type origin uint8

const (
	unmeasured origin = iota // the tag is only a name
	fromLow                  // the left or the bottom edge
	fromHigh                 // the right or the top edge
)

// tag is a text that belongs to a place along a side of the blank. A line
// leads from the thing it is about to the text.
type tag struct {
	at    float64 // along the side
	thing float64 // where the line begins, across the side
	from  origin
	lines []string
	quiet bool
	w, h  float64 // of the text
	row   int
}

// side is everything that stands along one side of the blank: measured tags
// hang on a common dimension line that starts with a dot at the edge that they
// are measured from, after the manner of running dimensions (ISO 129-1).
type side struct {
	edge  edge
	line  float64 // where it begins, across
	size  float64 // of the blank, along
	start float64 // of the blank, across: the edge that the side lies at
	tags  []tag
}

// upright reports whether the side runs from bottom to top.
func (s *side) upright() bool { return s.edge >= leftOf }

// point returns the place at a distance along the blank's side and a depth
// outwards.
func (s *side) point(along, depth float64) Point {
	switch s.edge {
	case below:
		return Point{along, s.line - depth}
	case above:
		return Point{along, s.line + depth}
	case leftOf:
		return Point{s.line - depth, along}
	default:
		return Point{s.line + depth, along}
	}
}

// base returns the place on the thing that a tag is about.
func (s *side) base(along, across float64) Point {
	if s.upright() {
		return Point{across, along}
	}
	return Point{along, across}
}

// add adds a tag unless the same is already there.
func (s *side) add(t tag) {
	same := func(u tag) bool {
		return math.Abs(u.at-t.at) < 1e-6 && u.from == t.from && slices.Equal(u.lines, t.lines)
	}
	if !slices.ContainsFunc(s.tags, same) {
		s.tags = append(s.tags, t)
	}
}

// stagger gives every tag its row: texts stand before the line that leads to
// them, and a text that such a line of an earlier tag would cross goes one row
// further out than that tag.
func (s *side) stagger(size, pad float64) (depths []float64) {
	for i := range s.tags {
		t := &s.tags[i]
		t.w, t.h = Block(t.lines, size)
	}
	slices.SortStableFunc(s.tags, func(a, b tag) int { return cmp.Compare(a.at, b.at) })
	for j := range s.tags {
		t := &s.tags[j]
		long, deep := t.w, t.h
		if s.upright() {
			long, deep = deep, long
		}
		for i := range s.tags[:j] {
			if s.tags[i].at > t.at-long-2*pad {
				t.row = max(t.row, s.tags[i].row+1)
			}
		}
		for len(depths) <= t.row {
			depths = append(depths, 0)
		}
		depths[t.row] = max(depths[t.row], deep)
	}
	return depths
}

// lay draws the side into the figure.
func (f *figure) lay(s *side) {
	if len(s.tags) == 0 {
		return
	}
	pad, depth := 0.3*f.lettering, 0.7*f.lettering
	rows := s.stagger(f.lettering, pad)
	low, depth := f.dimension(s, fromLow, depth)
	high, depth := f.dimension(s, fromHigh, depth)
	starts := make([]float64, len(rows))
	for i, deep := range rows {
		starts[i] = depth + pad
		depth = starts[i] + deep + pad
	}
	for i := range s.tags {
		t := &s.tags[i]
		switch t.from {
		case fromLow:
			f.arrow(s, t.at, low, 1)
		case fromHigh:
			f.arrow(s, t.at, high, -1)
		}
		f.hang(s, t, starts[t.row], pad)
	}
}

// hang draws a tag's text and the line that leads to it.
func (f *figure) hang(s *side, t *tag, depth, pad float64) {
	deep := t.h
	if s.upright() {
		deep = t.w
	}
	corner, label := s.point(t.at, depth), Label{Lines: t.lines, Size: f.lettering, Quiet: t.quiet}
	switch s.edge {
	case below:
		label.Align, label.Box = Right, boxAt(corner.X-pad-t.w, corner.Y, t.w, t.h)
	case above:
		label.Align, label.Box = Right, boxAt(corner.X-pad-t.w, corner.Y+t.h, t.w, t.h)
	case leftOf:
		label.Align, label.Box = Right, boxAt(corner.X-t.w, corner.Y-pad/2, t.w, t.h)
	default:
		label.Box = boxAt(corner.X, corner.Y-pad/2, t.w, t.h)
	}
	f.label(label)
	from, to := s.base(t.at, t.thing), s.point(t.at, depth+deep)
	for _, part := range f.outside(from, to) {
		gap := part[1].sub(part[0])
		f.stroke(part[0].add(gap.by(min(0.5, 0.25*f.lettering/gap.length()))), part[1])
	}
}

// outside returns the parts of a line that do not lie on the paper: a thin line
// on it would be read as a score.
func (f *figure) outside(a, b Point) (parts [][2]Point) {
	long := b.sub(a).length()
	along := b.sub(a).by(1 / max(long, 1e-9))
	marks := []float64{0, long}
	for _, ring := range f.rings {
		for _, at := range crossings(ring, a, along) {
			if at > 0 && at < long {
				marks = append(marks, at)
			}
		}
	}
	slices.Sort(marks)
	for i := 1; i < len(marks); i++ {
		mid := a.add(along.by((marks[i-1] + marks[i]) / 2))
		if marks[i]-marks[i-1] > 0.4*f.lettering && !f.onPaper(mid) {
			parts = append(parts, [2]Point{a.add(along.by(marks[i-1])), a.add(along.by(marks[i]))})
		}
	}
	return parts
}

// onPaper reports whether a place lies on the paper or its edge.
func (f *figure) onPaper(p Point) bool {
	for _, beside := range [...]Point{{hair, hair}, {-hair, -hair}} {
		in := false
		for _, ring := range f.rings {
			in = in != within(p.add(beside), ring)
		}
		if in {
			return true
		}
	}
	return false
}

// dimension draws the line that the measured tags of one origin hang on. It
// returns the line's depth, and where the next thing may begin.
func (f *figure) dimension(s *side, from origin, depth float64) (at, next float64) {
	start, end := 0.0, 0.0
	if from == fromHigh {
		start, end = s.size, s.size
	}
	found := false
	for i := range s.tags {
		if t := &s.tags[i]; t.from == from {
			found = true
			if from == fromLow {
				end = max(end, t.at)
			} else {
				end = min(end, t.at)
			}
		}
	}
	if !found {
		return depth, depth
	}
	zero := s.point(start, depth)
	f.stroke(zero, s.point(end, depth))
	f.stroke(s.base(start, s.start), s.point(start, depth+0.4*f.lettering))
	f.fig.Lines = append(f.fig.Lines, dot(Measures, zero, 0.22*f.lettering))
	return depth, depth + 0.8*f.lettering
}

// arrow draws the head that ends at a place on a dimension line.
func (f *figure) arrow(s *side, at, depth, way float64) {
	long, half := 0.75*f.lettering*way, 0.17*f.lettering
	f.fig.Lines = append(f.fig.Lines, Line{
		Layer: Measures, Closed: true, Fill: true,
		Path: []Vertex{{Point: s.point(at, depth)}, {Point: s.point(at-long, depth-half)}, {Point: s.point(at-long, depth+half)}},
	})
}

// stroke draws a thin line.
func (f *figure) stroke(a, b Point) {
	f.fig.Lines = append(f.fig.Lines, Line{Layer: Measures, Path: []Vertex{{Point: a}, {Point: b}}})
}

// label adds a text.
func (f *figure) label(l Label) { f.fig.label(l) }

func (f *Figure) label(l Label) {
	f.Labels = append(f.Labels, l)
	f.Box = f.Box.join(l.Box)
}
