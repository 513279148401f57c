package own

import (
	"slices"
	"strconv"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// layout is one piece while it is laid out flat.
type layout struct {
	*planner
	piece  *pattern.Piece
	values []measure.Length // of all that forms are made of
	corner pattern.Point    // of the blank, from that of the root
}

// build lays out the flat pattern for given sizes of the readings.
func (p *planner) build(sizes []measure.Length) pattern.Pattern {
	whole, layouts := p.folding(sizes)
	for _, l := range layouts {
		l.reliefs()
	}
	return whole
}

// folding is the pattern but for what is cut away between the panels, which folding it
// up does not ask for.
func (p *planner) folding(sizes []measure.Length) (pattern.Pattern, []*layout) {
	in, values := p.in, slices.Clone(p.lengths)
	for i := range p.unknowns {
		if u := &p.unknowns[i]; !u.end {
			values[p.first+i] = sizes[u.reading]
		}
	}
	for i, papers := range p.stated.ends {
		if p.unknowns[i].end {
			values[p.first+i] = papers.exact(values)
		}
	}
	whole := pattern.Pattern{Caliper: in.Caliper, BoardFrom: in.BoardFrom, Pieces: make([]pattern.Piece, len(p.Pieces))}
	layouts := make([]*layout, len(p.Pieces))
	for i := range p.Pieces {
		layouts[i] = p.layPiece(i, &whole.Pieces[i], values)
	}
	for i := range p.Joins {
		p.stick(&p.Joins[i], layouts)
	}
	for i := range p.slots {
		s := &p.slots[i]
		s.draw(layouts[p.panels[s.a].piece], sizes)
	}
	p.bonds(&whole, layouts)
	p.rest(&whole, layouts)
	holder := layouts[p.panels[p.floor].piece]
	height := in.Height
	if height.IsZero() {
		height = holder.piece.Height
	}
	c := &whole.Cavity
	*c = pattern.Cavity{Piece: p.panels[p.floor].piece, Panel: p.at[p.floor], Width: in.Width, Height: height, Thickness: in.Thickness, Bounded: p.bounded(), Into: p.goesInto()}
	if c.Into && !p.Into[pattern.Thickness] {
		c.Thickness = measure.Length{}
	}
	return whole, layouts
}

// bounded are the axes along which something fits the contents.
func (p *planner) bounded() (axes []pattern.Axis) {
	for i := range p.plan.Fits {
		if f := &p.plan.Fits[i]; f.Between == "" {
			axes = append(axes, f.Axis)
		}
	}
	return axes
}

// layPiece lays one piece out: its panels, its strips and its folds.
func (p *planner) layPiece(index int, to *pattern.Piece, values []measure.Length) *layout {
	l := &layout{planner: p, piece: to, values: values}
	to.Name, to.Quantity = p.Pieces[index].Name, 1
	to.Panels = make([]pattern.Panel, len(p.Pieces[index].Panels))
	high := pattern.At(measure.Largest().Neg(), measure.Largest().Neg())
	l.corner = pattern.At(measure.Largest(), measure.Largest())
	mine := p.panels[p.rootOf(index)-p.at[p.rootOf(index)]:][:len(to.Panels)]
	to.Root = p.at[p.rootOf(index)]
	for n := range mine {
		a, b := l.corners(&mine[n])
		l.corner = pattern.At(measure.Min(l.corner.X, a.X), measure.Min(l.corner.Y, a.Y))
		high = pattern.At(measure.Max(high.X, b.X), measure.Max(high.Y, b.Y))
		to.Panels[n] = pattern.Panel{Name: mine[n].Name, Outline: pattern.Rectangle(a.X, a.Y, b.X, b.Y)}
	}
	to.Width, to.Height = high.X.Sub(l.corner.X), high.Y.Sub(l.corner.Y)
	for n := range mine {
		for k := range to.Panels[n].Outline {
			v := &to.Panels[n].Outline[k]
			v.X, v.Y = v.X.Sub(l.corner.X), v.Y.Sub(l.corner.Y)
		}
	}
	for n := range mine {
		l.shape(&mine[n], &to.Panels[n])
	}
	for _, i := range p.creases[index] {
		to.Creases = append(to.Creases, l.creaseOf(i))
	}
	l.strips(index)
	return l
}

// corners are the lower left and the upper right corner of a panel, from that of
// the root.
func (l *layout) corners(q *plate) (a, b pattern.Point) {
	return pattern.At(q.spans[0][0].exact(l.values), q.spans[1][0].exact(l.values)),
		pattern.At(q.spans[0][1].exact(l.values), q.spans[1][1].exact(l.values))
}

// length is how long an amount is.
func (l *layout) length(a Amount) measure.Length { return l.amount(a).exact(l.values) }

// shape cuts the sides of a panel back towards its free edge, and its window out.
func (l *layout) shape(q *plate, to *pattern.Panel) {
	o, in := to.Outline, l.length(q.Taper)
	switch {
	case q.parent < 0 || in.IsZero():
	case q.Edge == Left:
		o[0].Y, o[3].Y = o[0].Y.Add(in), o[3].Y.Sub(in)
	case q.Edge == Right:
		o[1].Y, o[2].Y = o[1].Y.Add(in), o[2].Y.Sub(in)
	case q.Edge == Bottom:
		o[0].X, o[1].X = o[0].X.Add(in), o[1].X.Sub(in)
	default:
		o[3].X, o[2].X = o[3].X.Add(in), o[2].X.Sub(in)
	}
	w := q.Window
	if w == nil {
		return
	}
	a := pattern.At(o[0].X.Add(l.length(w.Left)), o[0].Y.Add(l.length(w.Bottom)))
	b := pattern.At(o[2].X.Sub(l.length(w.Right)), o[2].Y.Sub(l.length(w.Top)))
	hole := pattern.Rectangle(a.X, a.Y, b.X, b.Y)
	to.Hole = []pattern.Vertex{hole[0], hole[3], hole[2], hole[1]}
	l.piece.Cuts = append(l.piece.Cuts, pattern.Cut{Name: "window of " + q.Name, Kind: pattern.Window, From: "bottom", At: a.X.Add(b.X).Over(2), Depth: b.Y, Width: b.X.Sub(a.X), Path: hole})
}

// creaseOf is the fold that a panel hangs by.
func (l *layout) creaseOf(i int) pattern.Crease {
	q := &l.panels[i]
	o := l.piece.Panels[l.at[i]].Outline
	c := pattern.Crease{Name: "score " + strconv.Itoa(len(l.piece.Creases)+1), From: l.at[q.parent], To: l.at[i], Fold: q.Fold, Angle: float64(q.Angle)}
	switch q.Edge {
	case Left:
		c.A, c.B = o[1].Point, o[2].Point
	case Right:
		c.A, c.B = o[0].Point, o[3].Point
	case Bottom:
		c.A, c.B = o[3].Point, o[2].Point
	default:
		c.A, c.B = o[0].Point, o[1].Point
	}
	if q.spine != nil {
		c.Round = measure.Max(measure.Length{}, q.spine.exact(l.values).Sub(l.in.Caliper))
	}
	return c
}

// strips lists how the sizes follow one another along both edges.
func (l *layout) strips(index int) {
	root := l.rootOf(index)
	for axis, across := range [...]pattern.Axis{pattern.Width, pattern.Height} {
		s := pattern.Strip{Across: across}
		for _, u := range l.chain(root, axis) {
			s.Cells = append(s.Cells, pattern.Cell{Name: l.of(u).name, Size: l.values[u]})
		}
		for _, c := range l.piece.Creases {
			if upright := c.A.X == c.B.X; upright == (axis == 0) && len(s.Scores) < len(s.Cells)-1 {
				s.Scores = append(s.Scores, pattern.Score{Name: c.Name, Fold: c.Fold, Angle: c.Angle})
			}
		}
		l.piece.Strips = append(l.piece.Strips, s)
	}
}

// box is where a plate lies in space, exactly.
func (l *layout) box(b *block) (low, high [3]measure.Length) {
	for k, s := range b.at {
		low[k], high[k] = s.low.exact(l.values), s.high.exact(l.values)
	}
	return low, high
}
