package enclosure

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// box is an open box of a plan: a base with four walls, each scored along it.
// The bottom and the top wall end in tabs that are glued to the side walls,
// inside or outside them. The score of a tab lies one caliper inside the
// corner of the base, or outside it (common practice: a scrap of the stock is
// the spacer), and so does not come off the ruler.
//
// Rolled walls fold over their rim once more and come down to the base inside,
// shorter by an allowance; those at the sides cover tabs that are inside.
type box struct {
	shape           *grid
	rolled, outside bool           // rolled walls; tabs outside
	across, up      []int          // the readings, from the left and from the bottom
	tab             int            // the reading of the tabs' length, -1 for tabs as long as the walls are high
	allowance       int            // the reading of what rolled walls are shorter by, -1 without
	play            measure.Length // from a side wall to what goes in, at most
	halves          *boxHalves     // nil for a box in one piece
}

// Parameters that the boxes share.
var (
	cornerTabs = Param{Name: "corners", Type: ChoiceParam, Choices: []string{"inside", "outside"}, Help: "Whether the corner tabs are glued inside or outside the side walls."}
	cornerTab  = Param{Name: "tab", Advanced: true, Help: "How long the corner tabs are; as long as the walls are high, if there is room, if not given.",
		Least: measure.Millimetres(5), Greatest: measure.Millimetres(500)}
)

// The panels of a box; the tabs and the rolled walls are four each, for the
// lower left, lower right, upper left and upper right corner, and for the
// bottom, top, left and right wall.
const (
	boxBase = iota
	boxBottom
	boxTop
	boxLeft
	boxRight
	boxTabs
	boxInner = boxTabs + 4
)

// boxGrid is the shape of a box with single walls.
func boxGrid(piece string) grid {
	return grid{
		piece:  piece,
		across: edge{[]string{"left wall", "base width", "right wall"}, []pattern.Score{valley("1", 90), valley("2", 90)}},
		up:     edge{[]string{"bottom wall", "base height", "top wall"}, []pattern.Score{valley("3", 90), valley("4", 90)}},
		cells:  boxCells(0),
	}
}

// rolledBoxGrid is the shape of a box with rolled walls.
func rolledBoxGrid(piece string) grid {
	return grid{
		piece: piece,
		across: edge{[]string{"left inner wall", "left wall", "base width", "right wall", "right inner wall"},
			[]pattern.Score{valley("1", 180), valley("2", 90), valley("3", 90), valley("4", 180)}},
		up: edge{[]string{"bottom inner wall", "bottom wall", "base height", "top wall", "top inner wall"},
			[]pattern.Score{valley("5", 180), valley("6", 90), valley("7", 90), valley("8", 180)}},
		cells: append(boxCells(1), cell{"bottom inner wall", 2, 0, boxBottom}, cell{"top inner wall", 2, 4, boxTop},
			cell{"left inner wall", 0, 2, boxLeft}, cell{"right inner wall", 4, 2, boxRight}),
	}
}

// boxCells are the panels of a box whose walls lie in columns and rows k and k + 2.
func boxCells(k int) []cell {
	return []cell{
		boxBase: {"base", k + 1, k + 1, -1}, boxBottom: {"bottom wall", k + 1, k, boxBase}, boxTop: {"top wall", k + 1, k + 2, boxBase},
		boxLeft: {"left wall", k, k + 1, boxBase}, boxRight: {"right wall", k + 2, k + 1, boxBase},
		boxTabs: {"lower left tab", k, k, boxBottom}, boxTabs + 1: {"lower right tab", k + 2, k, boxBottom},
		boxTabs + 2: {"upper left tab", k, k + 2, boxTop}, boxTabs + 3: {"upper right tab", k + 2, k + 2, boxTop},
	}
}

// insides returns how many half calipers the base is wider and higher than the
// room inside: walls centred on its scores, tabs and rolled walls inside them.
func (b *box) insides() (width, height int64) {
	width, height = 2, 2
	if !b.outside {
		width += 4
	}
	if b.rolled {
		width, height = width+4, height+4
	}
	return width, height
}

// outsides returns how many half calipers the box is wider and higher outside
// than its base.
func (b *box) outsides() (width, height int64) {
	if b.outside {
		return 6, 2
	}
	return 2, 2
}

// needs returns what the base must have for the contents.
func (b *box) needs() (width, height Need) {
	w, h := b.insides()
	return Need{Width: 1, HalfCalipers: w}, Need{Height: 1, HalfCalipers: h}
}

// newBox begins a box of single walls; play is how far what goes in may stand
// from a side wall.
func (in *Input) newBox(shape *grid, play measure.Length) *box {
	return &box{shape: shape, outside: in.choice("corners") == "outside", tab: -1, allowance: -1, play: play}
}

// walls states that walls are as high as the first of them, unless they are
// fixed by one parameter.
func (d *draft) walls(name string, walls ...int) {
	for _, wall := range walls[1:] {
		if !d.plan.Problem.Readings[wall].Fixed {
			d.equal(name, measure.Length{}, times(1, walls[0]), times(-1, wall))
		}
	}
}

// addBox adds the readings of a box: its base and its walls, which wall adds;
// prefix tells the names of several boxes apart.
func (d *draft) addBox(b *box, piece int, prefix string, width, height measure.Length, wall func(name string) int) {
	left, right := wall(prefix+"left wall"), wall(prefix+"right wall")
	bottom, top := wall(prefix+"bottom wall"), wall(prefix+"top wall")
	d.walls(prefix+"walls", left, right, bottom, top)
	b.across = append(append([]int{left}, d.baseWidths(b, prefix, width)...), right)
	b.up = []int{bottom, d.reading(prefix+"base height", height), top}
	if b.rolled {
		d.roll(b)
	}
	if b.halves != nil {
		d.addHalves(b, piece, prefix)
		return
	}
	d.strip(piece, pattern.Width, b.across...)
	d.strip(piece, pattern.Height, b.up...)
}

// trayBase adds the readings of a tray for the contents, piece 0 of several,
// with their fits, and says how long its side walls may be.
func (d *draft) trayBase(b *box, wall func(name string) int) (long Range) {
	wide, high := b.needs()
	d.addBox(b, 0, "", wide.Of(d.in).Add(d.in.middle()), high.Of(d.in).Add(d.in.middle()), wall)
	d.fit(pattern.Width, wide, all(1, b.widths())...)
	d.fit(pattern.Height, high, times(1, b.height()))
	return high.span(d.in)
}

// roll adds the inner walls of a box with rolled walls.
func (d *draft) roll(b *box) {
	room := d.in.Allowance()
	b.allowance = d.between("allowance", d.in.Caliper, room.Min, room.Max)
	d.within("allowance", Range{d.in.Caliper.Times(2).Sub(room.Max), room.Max}, d.form(measure.Length{}, times(1, b.allowance)))
	inner := func(wall int) int {
		outer := &d.plan.Problem.Readings[wall]
		name := b.shape.innerName(outer.Name)
		i := d.reading(name, outer.Ideal.Sub(d.in.Caliper))
		d.equal(name, measure.Length{}, times(1, i), times(1, b.allowance), times(-1, wall))
		return i
	}
	b.across = append([]int{inner(b.across[0])}, append(b.across, inner(b.across[2]))...)
	b.up = append([]int{inner(b.up[0])}, append(b.up, inner(b.up[2]))...)
}

// innerName names the inner wall of an outer one.
func (g *grid) innerName(outer string) string { return outer[:len(outer)-len("wall")] + "inner wall" }

// beyond returns how many readings of an edge lie outside the walls.
func (b *box) beyond() int {
	if b.rolled {
		return 1
	}
	return 0
}

// widths returns the readings that make up the width of the base.
func (b *box) widths() []int { return b.across[b.beyond()+1 : len(b.across)-b.beyond()-1] }

// height returns the reading of the base's height.
func (b *box) height() int { return b.up[len(b.up)/2] }

// wall returns the reading of the left wall, as high as all.
func (b *box) wall() int { return b.across[b.beyond()] }

// tabMargin is what is cut off a tab on both sides so that it clears the base
// and the rim.
func (b *box) tabMargin(caliper measure.Length) measure.Length {
	if b.rolled {
		return caliper.Times(2)
	}
	return caliper
}

// inset is how far inside the corners of the base the tabs' scores lie.
func (b *box) inset(caliper measure.Length) measure.Length {
	if b.outside {
		return caliper.Neg()
	}
	return caliper
}

// addTab settles how long the tabs of a box are, whose walls are as high and
// whose side walls are as long as the ranges say.
func (d *draft) addTab(b *box, name string, high, long Range) error {
	in := d.in
	room := Range{leastGlue.Add(b.play), measure.Min(long.Min.Over(2), high.Min.Add(b.inset(in.Caliper)))}
	switch {
	case in.given("tab"):
		b.tab = d.fixed(name, "tab")
		return in.bounded("tab", room, "the corner tabs leave no room for glue, reach out of the corner or lie on one another", "choose another length, or leave it out")
	case !long.Min.Less(high.Max.Add(in.Caliper).Times(2)):
		b.tab = -1
	default:
		b.tab = d.between(name, room.Min.Add(room.Max).Over(2), room.Min, room.Max)
		d.within(name, room, d.form(measure.Length{}, times(1, b.tab)))
	}
	return in.least("height", long.Min, room.Min.Times(2), "the corner tabs would lie on one another")
}

// lowest is how high walls must be at the least, so that there is room for glue
// and what goes in meets the tabs.
func (b *box) lowest(in *Input) measure.Length {
	least := measure.Sum(leastGlue, b.play, in.Caliper.Times(5))
	if b.rolled {
		least = least.Add(in.Allowance().Max)
	}
	return least
}

// thinnest is how thick contents must be at the least, so that the tabs and
// the rolled walls come down to them.
func (b *box) thinnest(in *Input) measure.Length {
	if b.rolled {
		return in.Allowance().Max.Add(in.Caliper.Times(2))
	}
	return in.Caliper.Times(2)
}

// lay lays the box out in one piece.
func (b *box) lay(in *Input, sizes []measure.Length) pattern.Piece {
	return b.whole(in, sizes, sizes[b.height()])
}

// whole lays the box out in one piece with a base of a height.
func (b *box) whole(in *Input, sizes []measure.Length, height measure.Length) pattern.Piece {
	t, none := in.Caliper, measure.Length{}
	across, up := extents{sizes: sizesOf(b.across, sizes)}, extents{sizes: sizesOf(b.up, sizes)}
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
	p := b.shape.lay(across, up)
	long := sizes[b.wall()].Add(b.inset(t))
	if b.tab >= 0 {
		long = sizes[b.tab]
	}
	b.layWalls(&p, t)
	for i := range 4 {
		b.layTab(&p, i, long, t)
		p.Seams = append(p.Seams, b.cornerSeam(&p, i, t))
		p.Glues = append(p.Glues, b.tabGlue(&p, i, t))
	}
	if b.rolled {
		b.layInner(&p, sizes[b.allowance], t)
	}
	for i := range 4 {
		p.Cuts = append(p.Cuts, b.corner(&p, i))
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
	o, margin := p.Panels[boxBottom+end].Outline, b.tabMargin(t)
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
func (b *box) tabGlue(p *pattern.Piece, i int, t measure.Length) pattern.Glue {
	o := p.Panels[boxTabs+i].Outline
	g := pattern.Glue{Name: p.Panels[boxTabs+i].Name, Panel: boxTabs + i, Face: pattern.Outside, To: boxLeft + i%2,
		Area: pattern.Rectangle(o[0].X, o[0].Y, o[2].X, o[2].Y)}
	if b.outside {
		g.Face, g.ToFace = pattern.Inside, pattern.Outside
		from, to := o[0].Point, o[2].Point // as far as the side wall's end
		if i%2 == 0 {
			to.X = to.X.Sub(t)
		} else {
			from.X = from.X.Add(t)
		}
		g.Area = pattern.Rectangle(from.X, from.Y, to.X, to.Y)
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
	return pattern.Seam{Name: "corner of the " + p.Panels[boxTabs+i].Name, Apart: t,
		PanelA: boxBottom + end, A1: cornerOf(wall, side, end), A2: cornerOf(wall, side, 1-end),
		PanelB: boxLeft + side, B1: b1, B2: b2}
}

// corner is what is cut away round a tab, from the side of the blank to its
// bottom or top.
func (b *box) corner(p *pattern.Piece, i int) pattern.Cut {
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
	return relief("corner at the "+p.Panels[tab].Name, from, path...)
}

// layInner draws the rolled walls in at their ends, so that they clear one
// another and the tabs, glues them, and brings their free edges to the base.
func (b *box) layInner(p *pattern.Piece, allowance, t measure.Length) {
	under, clear := t, t.Times(2)
	if !b.outside {
		under, clear = under.Add(t), clear.Add(t)
	}
	for i := range 4 {
		if upright := i < 2; upright {
			b.shape.taper(p, boxInner+i, clear, clear)
			b.innerSeam(p, i, t, allowance)
		} else {
			b.shape.taper(p, boxInner+i, t, t)
			b.innerSeam(p, i, under, allowance)
		}
		b.innerGlue(p, i, allowance, t)
	}
}

// innerSeam says where the free edge of a rolled wall comes to lie: the
// allowance above the base, so far in from the wall's score.
func (b *box) innerSeam(p *pattern.Piece, i int, in, allowance measure.Length) {
	o, base := p.Panels[boxInner+i].Outline, p.Panels[boxBase].Outline
	low, high := i%2, 0 // the free edge's ends
	s := pattern.Seam{Name: p.Panels[boxInner+i].Name, PanelA: boxInner + i, PanelB: boxBase, Apart: allowance}
	if i < 2 {
		s.A1, s.A2 = cornerOf(o, 0, low), cornerOf(o, 1, low)
		y := inward(cornerOf(base, high, low).Y, low == 1, in)
		s.B1, s.B2 = pattern.At(s.A1.X, y), pattern.At(s.A2.X, y)
	} else {
		s.A1, s.A2 = cornerOf(o, low, 0), cornerOf(o, low, 1)
		x := inward(cornerOf(base, low, high).X, low == 1, in)
		s.B1, s.B2 = pattern.At(x, s.A1.Y), pattern.At(x, s.A2.Y)
	}
	p.Seams = append(p.Seams, s)
}

// innerGlue glues a rolled wall to what it covers: its outer wall, or the tabs
// inside a side wall.
func (b *box) innerGlue(p *pattern.Piece, i int, allowance, t measure.Length) {
	panel := boxInner + i
	o, name := p.Panels[panel].Outline, p.Panels[panel].Name
	low, high := o[0].Point, o[2].Point
	rim, foot := t, measure.Length{} // what stays free of glue at the rim and at the free edge
	onTabs := i >= 2 && !b.outside
	if onTabs {
		rim, foot = t.Times(2), measure.Max(foot, t.Times(2).Sub(allowance))
	}
	switch i {
	case 0:
		high.Y, low.Y = high.Y.Sub(rim), low.Y.Add(foot)
	case 1:
		high.Y, low.Y = high.Y.Sub(foot), low.Y.Add(rim)
	case 2:
		high.X, low.X = high.X.Sub(rim), low.X.Add(foot)
	default:
		high.X, low.X = high.X.Sub(foot), low.X.Add(rim)
	}
	glue := func(name string, to int, y0, y1 measure.Length) {
		p.Glues = append(p.Glues, pattern.Glue{Name: name, Panel: panel, To: to, Area: pattern.Rectangle(low.X, y0, high.X, y1)})
	}
	if !onTabs {
		glue(name, boxBottom+i, low.Y, high.Y)
		return
	}
	for end := range 2 {
		tab := boxTabs + 2*end + i - 2
		long := p.Panels[tab].Outline[2].X.Sub(p.Panels[tab].Outline[0].X)
		base := p.Panels[boxBase].Outline
		y0, y1 := low.Y, base[0].Y.Add(long)
		if end == 1 {
			y0, y1 = base[2].Y.Sub(long), high.Y
		}
		glue(name+" on the "+p.Panels[tab].Name, tab, y0, y1)
	}
}
