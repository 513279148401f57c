package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Parameters of boxes in two pieces.
var (
	boxJoin = Param{Name: wrapJoin.Name, Type: ChoiceParam, Advanced: true, Choices: wrapJoin.Choices,
		Help: "One piece, or two halves that lap across the base for what is larger than the sheet."}
	baseLap = lengthParam("lap", 5, 300, "How far the halves of a box in two pieces lap.").usually(64, 25).seldom()
)

// boxHalves are what a box in two pieces has besides. The left half reaches
// beyond the middle by the lap and lies, base and walls, inside the right one,
// whose base is so much higher that its walls go round those of the left half:
//
//	left base + right base = the width of the base in one piece
//	outer base height      = base height + 2t, within two calipers
type boxHalves struct {
	outer, lap int // readings
	further    int // the piece of the right half
}

// halve makes a box one of two pieces, whose right half is the further piece,
// if they are asked for.
func (b *box) halve(in *Input, further int) {
	if in.inTwo() {
		b.halves = &boxHalves{further: further}
	}
}

// baseWidths adds the readings that make up the width of a base.
func (d *draft) baseWidths(b *box, prefix string, width measure.Length) []int {
	if b.halves == nil {
		return []int{d.reading(prefix+"base width", width)}
	}
	half := width.Over(2)
	left, right := d.reading(prefix+"left base", half), d.reading(prefix+"right base", width.Sub(half))
	d.even(left, right)
	return []int{left, right}
}

// addHalves adds the readings of the right half of a box, and of the lap, and
// says how they follow one another.
func (d *draft) addHalves(b *box, piece int, prefix string) {
	t, inner := d.in.Caliper, b.height()
	b.halves.outer = d.reading(prefix+"outer base height", d.plan.Problem.Readings[inner].Ideal.Add(t.Times(2)))
	d.within(prefix+"outer base height", Range{Max: t.Times(4)}, d.form(measure.Length{}, times(1, b.halves.outer), times(-1, inner)))
	b.halves.lap = d.fixed(prefix+"lap", baseLap.Name)
	d.strips(piece, []int{b.across[0], b.across[1], b.halves.lap}, b.up)
	d.strips(b.halves.further, []int{b.across[2], b.across[3]}, []int{b.up[0], b.halves.outer, b.up[2]})
}

// outerHeight returns the reading of the base height of what lies outermost.
func (b *box) outerHeight() int {
	if b.halves == nil {
		return b.height()
	}
	return b.halves.outer
}

// checkHalves refuses a lap that leaves no room for glue or reaches into the
// far corners of a base of the given least width, and one without two pieces.
func (b *box) checkHalves(in *Input, width measure.Length) error {
	if b.halves == nil {
		if !in.given(baseLap.Name) {
			return nil
		}
		return fault.Fault{Code: fault.Conflict, Field: baseLap.Name, Detail: "a box in one piece has no lap", Hint: "give join=two-pieces too, or leave lap out"}
	}
	return in.bounded(baseLap.Name, Range{Min: leastGlue, Max: width.Over(2).Sub(in.Caliper.Times(8))},
		"the lap leaves no room for glue, or reaches into the far corners", "make it fit half of the base")
}

// part makes two pieces of a box that is laid out, the right half the last.
func (b *box) part(d *draft, p *pattern.Pattern, piece int, sizes []measure.Length) {
	if b.halves == nil {
		return
	}
	t, lap := d.in.Caliper, sizes[b.halves.lap]
	whole, outer := &p.Pieces[piece], b.whole(d, sizes, sizes[b.halves.outer])
	at := sizes[b.across[0]].Add(sizes[b.across[1]])
	left, right := clip{high: at.Add(lap)}, clip{low: at, high: outer.Width}
	within := sizes[b.halves.outer].Sub(sizes[b.height()]).Over(2) // from outer to inner walls
	inner, further := left.piece(whole), right.piece(&outer)
	inner.Name, further.Name = "left half of the "+whole.Name, "right half of the "+whole.Name
	inner.Strips = b.strips(d, &whole.Strips[1], []string{"left wall", "left base", "lap"}, []int{b.across[0], b.across[1], b.halves.lap}, 0, sizes)
	further.Strips = b.strips(d, &outer.Strips[1], []string{"right base", "right wall"}, []int{b.across[2], b.across[3]}, 1, sizes)
	bond := pattern.Bond{Name: whole.Name, A: piece, B: len(p.Pieces)}
	for panel, name := range [...]string{boxBase: "base lap", boxBottom: "bottom wall's lap", boxTop: "top wall's lap"} {
		o := inner.Panels[panel].Outline
		low, high := o[0].Y.Add(t.Times(2)), o[2].Y.Sub(t.Times(2))
		bond.Glues = append(bond.Glues, pattern.Glue{Name: name, Panel: panel, Face: pattern.Outside, To: panel, ToFace: pattern.Inside,
			Area: pattern.Rectangle(at, low, left.high, high)})
	}
	p.Places = append(p.Places, pattern.Place{Piece: bond.B, On: piece, X: at, Y: within.Neg(), Above: t.Neg()})
	p.Bonds = append(p.Bonds, bond)
	p.Pieces = append(p.Pieces, further)
	p.Pieces[piece] = inner
}

// strips lists the sizes of a half across and up. The scores across are those
// of the whole from the given one on; between others nothing is scored.
func (b *box) strips(d *draft, up *pattern.Strip, names []string, readings []int, first int, sizes []measure.Length) []pattern.Strip {
	e := edge{names: names, scores: make([]pattern.Score, len(names)-1)}
	e.scores[0] = b.shape.across.scores[first]
	for i := range e.scores[1:] {
		e.scores[i+1].Name = "edge of the lap"
	}
	return []pattern.Strip{e.strip(&d.laid, pattern.Width, d.sizesOf(readings, sizes)), *up}
}

// clip keeps what of a piece lies between two lines up its blank, of which no
// edge but level ones passes, and moves it to the left edge.
type clip struct{ low, high measure.Length }

func (c *clip) piece(p *pattern.Piece) pattern.Piece {
	kept := pattern.Piece{Quantity: p.Quantity, Width: c.high.Sub(c.low), Height: p.Height,
		Creases: make([]pattern.Crease, 0, len(p.Creases)), Glues: make([]pattern.Glue, 0, len(p.Glues)), Seams: make([]pattern.Seam, 0, len(p.Seams)),
		Cuts: make([]pattern.Cut, 0, len(p.Cuts))}
	panels, index := c.panels(p.Panels)
	kept.Panels = panels
	both := func(a, b *int) bool {
		*a, *b = index[*a], index[*b]
		return *a >= 0 && *b >= 0
	}
	for _, crease := range p.Creases {
		if both(&crease.From, &crease.To) {
			crease.A, crease.B = c.point(crease.A), c.point(crease.B)
			kept.Creases = append(kept.Creases, crease)
		}
	}
	for _, g := range p.Glues {
		if both(&g.Panel, &g.To) {
			g.Area = c.outline(g.Area)
			kept.Glues = append(kept.Glues, g)
		}
	}
	for _, s := range p.Seams {
		if both(&s.PanelA, &s.PanelB) {
			s.A1, s.A2, s.B1, s.B2 = c.point(s.A1), c.point(s.A2), c.point(s.B1), c.point(s.B2)
			kept.Seams = append(kept.Seams, s)
		}
	}
	for _, cut := range p.Cuts {
		if first := cut.Path[0].X; !first.Less(c.low) && !c.high.Less(first) {
			cut.Path = c.outline(cut.Path)
			kept.Cuts = append(kept.Cuts, cut)
		}
	}
	return kept
}

// panels keeps what of the panels lies between the lines; index is where each has
// come to, -1 for nowhere.
func (c *clip) panels(all []pattern.Panel) (kept []pattern.Panel, index []int) {
	index, kept = make([]int, len(all)), make([]pattern.Panel, 0, len(all))
	for i := range all {
		o := all[i].Outline
		index[i] = len(kept)
		if !o[0].X.Less(c.high) || !c.low.Less(o[1].X) {
			index[i] = -1
			continue
		}
		kept = append(kept, pattern.Panel{Name: all[i].Name, Outline: c.outline(o)})
	}
	return kept, index
}

func (c *clip) point(p pattern.Point) pattern.Point {
	p.X = measure.Max(c.low, measure.Min(p.X, c.high)).Sub(c.low)
	return p
}

func (c *clip) outline(o []pattern.Vertex) []pattern.Vertex {
	own := make([]pattern.Vertex, len(o))
	for i, v := range o {
		own[i] = pattern.Vertex{Point: c.point(v.Point), Bulge: v.Bulge}
	}
	return own
}
