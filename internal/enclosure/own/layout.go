package own

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// layout is one piece while it is laid out flat.
type layout struct {
	*planner
	piece   *pattern.Piece
	values  []measure.Length // of all that forms are made of
	corner  pattern.Point    // of the blank, from that of the root
	corners []pattern.Vertex // of all panels
}

// build lays out the flat pattern for given sizes of the readings.
func (p *planner) build(sizes []measure.Length) pattern.Pattern {
	whole, layouts := p.folding(sizes)
	for i := range layouts {
		if !p.blanks[i].whole {
			layouts[i].reliefs(i)
		}
	}
	return whole
}

// folding is the pattern but for what is cut away between the panels, which folding it
// up does not ask for.
func (p *planner) folding(sizes []measure.Length) (pattern.Pattern, []layout) {
	in := p.in
	whole := pattern.Pattern{Caliper: in.Caliper, BoardFrom: in.BoardFrom, Pieces: p.laid.Pieces.Take(len(p.Pieces))}
	p.layouts = room(p.layouts, len(p.Pieces))
	layouts, values := p.layouts, p.sized(sizes)
	for i := range p.Pieces {
		l := &layouts[i]
		*l = layout{planner: p, piece: &whole.Pieces[i], values: values}
		l.lay(i)
	}
	for i := range p.stated.sewn {
		if j := &p.stated.sewn[i]; j.Type == Glue {
			layouts[p.panels[j.a].piece].glueArea(j)
		} else {
			layouts[p.panels[j.a].piece].seam(j, sizes)
		}
	}
	for i := range p.stated.slots {
		s := &p.stated.slots[i]
		s.draw(&layouts[p.panels[s.a].piece], sizes)
	}
	p.places(&whole, layouts)
	height := in.Height
	if height.IsZero() {
		height = whole.Pieces[p.panels[p.floor].piece].Height
	}
	lies := p.floor
	if p.goesInto() {
		lies = p.rootOf(0)
	}
	c := &whole.Cavity
	*c = pattern.Cavity{Piece: p.panels[p.floor].piece, Panel: p.at(lies), Width: in.Width, Height: height, Thickness: in.Thickness, Bounded: p.stated.bounded, Into: p.goesInto()}
	if c.Into && !p.Into[pattern.Thickness] {
		c.Thickness = measure.Length{}
	}
	if p.Turned {
		c.Turned = 90
	}
	return whole, layouts
}

// sized are all lengths for given sizes of the readings; ends come out as papers.
func (p *planner) sized(sizes []measure.Length) []measure.Length {
	values := p.laid.Lengths.Take(len(p.lengths))
	copy(values, p.lengths)
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
	return values
}

// lay lays the piece out: its panels, its strips and its folds.
func (l *layout) lay(index int) {
	p, to, b, values := l.planner, l.piece, &l.blanks[index], l.values
	m, sewn := &p.laid, len(p.stated.sewn)
	mine := p.panels[b.first:][:b.count]
	*to = pattern.Piece{Name: p.Pieces[index].Name, Quantity: 1, Root: b.root - b.first,
		Panels: m.Panels.Take(b.count), Creases: m.Creases.Take(len(b.folds)), Cuts: m.Cuts.Take(4)[:0], Glues: m.Glues.Take(sewn)[:0], Seams: m.Seams.Take(sewn)[:0], Joints: m.Joints.Take(len(p.stated.slots))[:0]}
	corners := m.Corners.Take(4 * b.count)
	l.corners = corners
	high := pattern.At(measure.Largest().Neg(), measure.Largest().Neg())
	l.corner = pattern.At(measure.Largest(), measure.Largest())
	for n := range mine {
		q, o := &mine[n], corners[4*n:4*n+4:4*n+4]
		pattern.FillRectangle(o, q.spans[0][0].exact(values), q.spans[1][0].exact(values), q.spans[0][1].exact(values), q.spans[1][1].exact(values))
		l.corner = pattern.At(measure.Min(l.corner.X, o[0].X), measure.Min(l.corner.Y, o[0].Y))
		high = pattern.At(measure.Max(high.X, o[2].X), measure.Max(high.Y, o[2].Y))
		to.Panels[n] = pattern.Panel{Name: q.Name, Outline: o}
	}
	to.Width, to.Height = high.X.Sub(l.corner.X), high.Y.Sub(l.corner.Y)
	for i := range corners {
		v := &corners[i]
		v.X, v.Y = v.X.Sub(l.corner.X), v.Y.Sub(l.corner.Y)
	}
	for n := range mine {
		l.shape(&mine[n], &to.Panels[n])
	}
	for n, i := range b.folds {
		to.Creases[n] = l.creaseOf(i, b.names[n])
	}
	to.Strips = l.strips(b)
}

// length is how long an amount is.
func (l *layout) length(a Amount) measure.Length { return l.amount(a).exact(l.values) }

// shape cuts the sides of a panel back towards its free edge, and its window out.
func (l *layout) shape(q *plate, to *pattern.Panel) {
	o := to.Outline
	if q.Taper.given {
		for k, corner := range cornersAt[q.Edge] {
			o[corner].Point = Edge(2*(1-q.Edge.axis())+1-k).move(o[corner].Point, l.length(q.Taper))
		}
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
func (l *layout) creaseOf(i int, name string) pattern.Crease {
	q := &l.panels[i]
	o := l.piece.Panels[l.at(i)].Outline
	c := pattern.Crease{Name: name, From: l.at(q.parent), To: l.at(i), Fold: q.Fold, Angle: float64(q.Angle)}
	ends := q.Edge.opposite().ends(o)
	c.A, c.B = ends[0], ends[1]
	if q.spine != nil {
		c.Round = measure.Max(measure.Length{}, q.spine.exact(l.values).Sub(l.in.Caliper))
	}
	return c
}

// strips lists how the sizes follow one another along both edges.
func (l *layout) strips(b *blank) []pattern.Strip {
	strips := l.laid.Strips.Take(len(b.chains))
	for axis, chain := range b.chains {
		cells := l.laid.Cells.Take(len(chain))
		for i, u := range chain {
			cells[i] = pattern.Cell{Name: l.of(u).name, Size: l.values[u]}
		}
		strips[axis] = pattern.Strip{Across: pattern.Axis(axis), Cells: cells, Scores: b.scores[axis]}
	}
	return strips
}

// box is where a plate lies in space, exactly.
func (l *layout) box(b *block) (low, high [3]measure.Length) {
	for k, s := range b.at {
		low[k], high[k] = s.low.exact(l.values), s.high.exact(l.values)
	}
	return low, high
}
