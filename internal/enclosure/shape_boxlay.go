package enclosure

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// The names of the tabs, of where the walls meet beside them, and of what is cut away
// round them.
var (
	tabNames    = [4]string{"lower left tab", "lower right tab", "upper left tab", "upper right tab"}
	seamNames   = eachTab("corner of the ")
	reliefNames = eachTab("corner at the ")
)

func eachTab(what string) (names [4]string) {
	for i, tab := range tabNames {
		names[i] = what + tab
	}
	return names
}

// lay lays the box out in one piece.
func (b *box) lay(d *draft, sizes []measure.Length) pattern.Piece {
	return b.whole(d, sizes, sizes[b.height()])
}

// whole lays the box out in one piece with a base of a height.
func (b *box) whole(d *draft, sizes []measure.Length, height measure.Length) pattern.Piece {
	t, none := d.in.Caliper, measure.Length{}
	across, up := extents{sizes: d.sizesOf(b.across, sizes)}, extents{sizes: d.sizesOf(b.up, sizes)}
	up.sizes[len(up.sizes)/2] = height
	if b.halves != nil {
		across.sizes = []measure.Length{across.sizes[0], across.sizes[1].Add(across.sizes[2]), across.sizes[3]}
	}
	if b.rolled {
		under := none // the rims at the sides go round the tabs
		if !b.outside {
			under = t
		}
		across.rounds, up.rounds = []measure.Length{under, none, none, under}, make([]measure.Length, 4)
	}
	p := d.grid(b.shape, across, up)
	long := sizes[b.wall()].Add(b.inset(t))
	if b.tab >= 0 {
		long = sizes[b.tab]
	}
	b.layWalls(&p, t)
	p.Seams, p.Glues, p.Cuts = d.laid.Seams.Take(4)[:0], d.laid.Glues.Take(4)[:0], d.laid.Cuts.Take(4)[:0]
	for i := range 4 {
		b.layTab(&p, i, long, t)
		p.Seams = append(p.Seams, b.cornerSeam(&p, i, t))
		p.Glues = append(p.Glues, b.tabGlue(d, &p, i, t))
	}
	if b.rolled {
		b.layInner(&p, sizes[b.allowance], t)
	}
	for i := range 4 {
		p.Cuts = append(p.Cuts, b.corner(d, &p, i))
	}
	return p
}

// layWalls lets the bottom and the top wall end where the tabs' scores lie.
func (b *box) layWalls(p *pattern.Piece, t measure.Length) {
	in := b.inset(t)
	for _, wall := range [...]int{boxBottom, boxTop} {
		o := p.Panels[wall].Outline
		pattern.FillRectangle(o, o[0].X.Add(in), o[0].Y, o[2].X.Sub(in), o[2].Y)
		if !b.outside {
			c := &p.Creases[wall-1]
			c.A.X, c.B.X = o[0].X, o[2].X
		}
	}
	if b.outside { // the side walls stand between the ends of the others
		b.shape.taper(p, boxLeft, t, t)
		b.shape.taper(p, boxRight, t, t)
	}
}

// The corners of a box, and of each of its panels, are numbered as the tabs are:
// side 1 is the right one, end 1 the upper one.
func cornerOf(o []pattern.Vertex, side, end int) pattern.Point {
	return o[[2][2]int{{0, 3}, {1, 2}}[side][end]].Point
}

// layTab hangs a tab on the end of its wall.
func (b *box) layTab(p *pattern.Piece, i int, long, t measure.Length) {
	side, end := i%2, i/2
	o, margin := p.Panels[boxBottom+end].Outline, t.Times(int64(1+b.beyond())) // clear of the base and the rim
	x0 := cornerOf(o, side, 0).X
	x1, low, high := x0.Sub(long), o[0].Y.Add(margin), o[2].Y.Sub(margin)
	if side == 1 {
		x1 = x0.Add(long)
	}
	pattern.FillRectangle(p.Panels[boxTabs+i].Outline, measure.Min(x0, x1), low, measure.Max(x0, x1), high)
	c := &p.Creases[boxTabs+i-1]
	c.A, c.B = pattern.At(x0, low), pattern.At(x0, high)
}

// tabGlue glues a tab to its side wall.
func (b *box) tabGlue(d *draft, p *pattern.Piece, i int, t measure.Length) pattern.Glue {
	o := p.Panels[boxTabs+i].Outline
	g := pattern.Glue{Name: p.Panels[boxTabs+i].Name, Panel: boxTabs + i, Face: pattern.Outside, To: boxLeft + i%2,
		Area: d.laid.Rectangle(o[0].X, o[0].Y, o[2].X, o[2].Y)}
	if b.outside {
		g.Face, g.ToFace = pattern.Inside, pattern.Outside
		from, to := o[0].Point, o[2].Point // as far as the side wall's end
		if i%2 == 0 {
			to.X = to.X.Sub(t)
		} else {
			from.X = from.X.Add(t)
		}
		g.Area = d.laid.Rectangle(from.X, from.Y, to.X, to.Y)
	}
	return g
}

// cornerSeam brings the end of the bottom or the top wall to the end of a side
// wall, one caliper beside it.
func (b *box) cornerSeam(p *pattern.Piece, i int, t measure.Length) pattern.Seam {
	side, end := i%2, i/2
	wall, other := p.Panels[boxBottom+end].Outline, p.Panels[boxLeft+side].Outline
	b1, b2 := cornerOf(other, side, end), cornerOf(other, 1-side, end)
	b1.Y = cornerOf(p.Panels[boxBase].Outline, side, end).Y // the side wall may end before it
	b2.Y = b1.Y
	return pattern.Seam{Name: seamNames[i], Apart: t,
		PanelA: boxBottom + end, A1: cornerOf(wall, side, end), A2: cornerOf(wall, side, 1-end),
		PanelB: boxLeft + side, B1: b1, B2: b2}
}

// corner is what is cut away round a tab, from the side of the blank to its
// bottom or top.
func (b *box) corner(d *draft, p *pattern.Piece, i int) pattern.Cut {
	side, end := i%2, i/2
	at := func(panel, side, end int) pattern.Point { return cornerOf(p.Panels[panel].Outline, side, end) }
	path := make([]pattern.Point, 0, 11)
	if b.rolled {
		path = append(path, at(boxInner+2+side, side, end), at(boxInner+2+side, 1-side, end))
	}
	tab, wall := boxTabs+i, boxBottom+end
	path = append(path, at(boxLeft+side, side, end), at(boxLeft+side, 1-side, end), at(boxBase, side, end), at(wall, side, 1-end),
		at(tab, 1-side, 1-end), at(tab, side, 1-end), at(tab, side, end), at(tab, 1-side, end), at(wall, side, end))
	if b.rolled {
		path = append(path, at(boxInner+end, side, 1-end), at(boxInner+end, side, end))
	}
	from := edgeNames[leftEdge]
	if side == 1 {
		from = edgeNames[rightEdge]
	}
	return d.relief(reliefNames[i], from, path...)
}
