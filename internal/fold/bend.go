package fold

import (
	"math"
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Facets returns the pattern with the panels that bend cut into flat ones, as Fold
// folds it, and the panel that each of those is part of, by piece; nil for a piece
// that stays flat.
func Facets(p *pattern.Pattern) (*pattern.Pattern, [][]int) { return bend(p) }

// bend returns the pattern with every piece that has curved creases cut into
// facets: plane strips between straight lines that run up the blank, one for
// each chord of the curved creases. The chords' ends lie on the arcs, within
// 1/800 of their width of them everywhere, and in the middle exactly. The
// facets bend against one another so that a curve across them rises as much as
// their crease does on the blank; both sides of the crease keep their lengths
// and their creases close exactly, however many facets there are.
//
// A panel that is glued to a bent one bends with it. Beside the pattern it
// returns the panel that each facet is part of, by piece; nil for a piece that
// stays flat. A pattern without curved creases is returned as it is.
func bend(p *pattern.Pattern) (*pattern.Pattern, [][]int) {
	facets := make([][]int, len(p.Pieces))
	if !slices.ContainsFunc(p.Pieces, curved) {
		return p, facets
	}
	q := *p
	q.Pieces = make([]pattern.Piece, len(p.Pieces))
	for i := range p.Pieces {
		q.Pieces[i] = p.Pieces[i]
		if !curved(p.Pieces[i]) {
			continue
		}
		b := newBender(&p.Pieces[i])
		q.Pieces[i] = b.piece()
		facets[i] = b.panels
		if q.Cavity.Piece == i {
			q.Cavity.Panel = b.middle(q.Cavity.Panel)
		}
	}
	return &q, facets
}

// curved reports whether a piece has a curved crease.
func curved(p pattern.Piece) bool {
	return slices.ContainsFunc(p.Creases, func(c pattern.Crease) bool { return c.Bulge < 0 || c.Bulge > 0 })
}

// bender cuts one piece into facets.
type bender struct {
	p, to  *pattern.Piece
	lines  [][]measure.Length // by panel: where its facets begin and end
	first  []int              // by panel: its first facet
	panels []int              // by facet: the panel that it is part of
	slopes [][]float64        // by panel: how its facets are inclined
	rings  [][]pattern.Point  // by panel: its outline in chords
	flap   []bool             // by panel: it hangs on a curved crease
}

func newBender(p *pattern.Piece) *bender {
	n := len(p.Panels)
	b := &bender{p: p, lines: make([][]measure.Length, n), first: make([]int, n), slopes: make([][]float64, n), flap: make([]bool, n), rings: make([][]pattern.Point, n)}
	for i := range p.Creases {
		if c := &p.Creases[i]; c.Bulge < 0 || c.Bulge > 0 {
			b.bent(c)
		}
	}
	for i := range p.Glues {
		b.glued(p.Glues[i].Panel, p.Glues[i].To)
	}
	for i := range p.Panels {
		b.rings[i] = ring(p.Panels[i].Outline)
		if b.lines[i] == nil {
			low, high := rectangle(p.Panels[i].Outline)
			b.lines[i], b.slopes[i] = []measure.Length{low.X, high.X}, []float64{0}
		}
	}
	return b
}

// bent cuts both panels of a curved crease at the ends of its chords.
func (b *bender) bent(c *pattern.Crease) {
	chords := across(c)
	lines, slopes := make([]measure.Length, len(chords)), make([]float64, len(chords)-1)
	for k, at := range chords {
		lines[k] = at.X
		if k > 0 {
			slopes[k-1] = pattern.Slope(chords[k-1], at)
		}
	}
	for _, panel := range [...]int{c.From, c.To} {
		if b.lines[panel] == nil {
			b.lines[panel], b.slopes[panel] = lines, slopes
		}
	}
	b.flap[c.To] = true
}

// across returns the ends of a curved crease's chords, from the left.
func across(c *pattern.Crease) []pattern.Point {
	if c.B.X.Less(c.A.X) {
		return pattern.Chords(c.B, c.A, -c.Bulge)
	}
	return pattern.Chords(c.A, c.B, c.Bulge)
}

// glued cuts a panel that is glued to a bent one as that is cut, from the
// crease that it hangs by.
func (b *bender) glued(panel, to int) {
	if b.lines[panel] != nil || b.lines[to] == nil {
		return
	}
	low, high := rectangle(b.p.Panels[panel].Outline)
	width := high.X.Sub(low.X)
	var lines []measure.Length
	for _, at := range b.lines[to] {
		if off := at.Sub(b.lines[to][0]); off.Less(width) {
			lines = append(lines, low.X.Add(off))
		}
	}
	slopes := slices.Clone(b.slopes[to][:len(lines)])
	lines = append(lines, high.X)
	if b.onRight(panel) { // of what it hangs by: its first facet lies at its right
		for k := range lines {
			lines[k] = low.X.Add(high.X).Sub(lines[k])
		}
		slices.Reverse(lines)
		slices.Reverse(slopes)
	}
	b.lines[panel], b.slopes[panel] = lines, slopes
}

// hinge returns the straight crease that a panel hangs by, if there is one.
func (b *bender) hinge(panel int) (*pattern.Crease, bool) {
	for i := range b.p.Creases {
		if c := &b.p.Creases[i]; c.To == panel && c.A.X == c.B.X {
			return c, true
		}
	}
	return nil, false
}

// onRight reports whether a panel hangs by its right side.
func (b *bender) onRight(panel int) bool {
	c, ok := b.hinge(panel)
	_, high := rectangle(b.p.Panels[panel].Outline)
	return ok && c.A.X == high.X
}

// middle returns the facet in the middle of a panel.
func (b *bender) middle(panel int) int { return b.first[panel] + len(b.slopes[panel])/2 }

// at returns the facet of a panel that lies at a place, or the nearest one.
func (b *bender) at(panel int, x measure.Length) int {
	lines := b.lines[panel]
	for k := 1; k < len(lines)-1; k++ {
		if x.Less(lines[k]) {
			return b.first[panel] + k - 1
		}
	}
	return b.first[panel] + len(lines) - 2
}

// piece returns the piece of facets.
func (b *bender) piece() pattern.Piece {
	to := *b.p
	b.to = &to
	to.Panels, to.Creases, to.Seams, to.Glues = nil, nil, slices.Clone(b.p.Seams), nil
	for i := range b.p.Panels {
		b.panel(i)
	}
	for i := range b.p.Creases {
		b.crease(&b.p.Creases[i])
	}
	for i := range b.p.Panels {
		if !b.flap[i] {
			b.rulings(i)
		}
	}
	for i := range to.Seams {
		s := &to.Seams[i]
		s.PanelA, s.PanelB = b.at(s.PanelA, s.A1.X), b.at(s.PanelB, s.B1.X)
	}
	for i := range b.p.Glues {
		b.glue(&b.p.Glues[i])
	}
	b.flaps()
	to.Root = b.middle(b.p.Root)
	return to
}

// panel cuts a panel into facets.
func (b *bender) panel(i int) {
	panel, lines := &b.p.Panels[i], b.lines[i]
	b.first[i] = len(b.to.Panels)
	b.panels = append(b.panels, slices.Repeat([]int{i}, len(lines)-1)...)
	if len(lines) == 2 {
		b.to.Panels = append(b.to.Panels, *panel)
		return
	}
	for k := 1; k < len(lines); k++ {
		low0, high0 := ends(b.rings[i], lines[k-1])
		low1, high1 := ends(b.rings[i], lines[k])
		corners := slices.Compact([]pattern.Point{
			pattern.At(lines[k-1], low0), pattern.At(lines[k], low1), pattern.At(lines[k], high1), pattern.At(lines[k-1], high0),
		})
		if corners[0] == corners[len(corners)-1] {
			corners = corners[1:]
		}
		b.to.Panels = append(b.to.Panels, pattern.Panel{Name: panel.Name, Outline: pattern.Polygon(corners...)})
	}
}

// ring returns an outline with the chords of its arcs.
func ring(outline []pattern.Vertex) []pattern.Point {
	var points []pattern.Point
	for i, v := range outline {
		points = append(points, v.Point)
		if v.Bulge < 0 || v.Bulge > 0 {
			chords := pattern.Chords(v.Point, outline[(i+1)%len(outline)].Point, v.Bulge)
			points = append(points, chords[1:len(chords)-1]...)
		}
	}
	return points
}

// ends returns how far an outline reaches down and up at a place along the
// width: its edges that run to the right lie below, those to the left above.
func ends(ring []pattern.Point, x measure.Length) (low, high measure.Length) {
	for k, a := range ring {
		c := ring[(k+1)%len(ring)]
		switch {
		case a.X.Less(c.X) && !x.Less(a.X) && !c.X.Less(x):
			low = between(a, c, x)
		case c.X.Less(a.X) && !x.Less(c.X) && !a.X.Less(x):
			high = between(a, c, x)
		}
	}
	return low, high
}

// between returns the height of a straight line at a place along the width.
func between(a, c pattern.Point, x measure.Length) measure.Length {
	switch x {
	case a.X:
		return a.Y
	case c.X:
		return c.Y
	}
	part := x.Sub(a.X).Millimetres() / c.X.Sub(a.X).Millimetres()
	return a.Y.Add(length(part * c.Y.Sub(a.Y).Millimetres()))
}

// crease makes the creases of the facets: one for each chord of a curved one.
// Its panels' straight lines, which run at right angles to the width on the
// blank, stand square to one another when it is folded.
func (b *bender) crease(c *pattern.Crease) {
	if c.Bulge == 0 {
		own := *c
		own.From, own.To = b.at(c.From, c.A.X), b.at(c.To, c.A.X)
		b.to.Creases = append(b.to.Creases, own)
		return
	}
	chords := across(c)
	for k := 1; k < len(chords); k++ {
		own := *c
		own.A, own.B, own.Bulge = chords[k-1], chords[k], 0
		slope := math.Sin(pattern.Slope(own.A, own.B))
		own.From, own.To, own.Angle = b.first[c.From]+k-1, b.first[c.To]+k-1, math.Acos(-slope*slope)*180/math.Pi
		b.to.Creases = append(b.to.Creases, own)
	}
}

// rulings bends the facets of a panel against one another, from the middle of
// the root or from the crease that the panel hangs by.
func (b *bender) rulings(panel int) {
	from, n := 0, len(b.slopes[panel])
	if panel == b.p.Root {
		from = n / 2
	} else if b.onRight(panel) {
		from = n - 1
	}
	for k := from + 1; k < n; k++ {
		b.ruling(panel, k-1, k, b.lines[panel][k])
	}
	for k := from - 1; k >= 0; k-- {
		b.ruling(panel, k+1, k, b.lines[panel][k+1])
	}
}

// ruling bends one facet against the one beside it.
func (b *bender) ruling(panel, near, far int, x measure.Length) {
	low, high := ends(b.rings[panel], x)
	turn := math.Abs(b.slopes[panel][near]-b.slopes[panel][far]) * 180 / math.Pi
	b.to.Creases = append(b.to.Creases, pattern.Crease{Name: "bend", A: pattern.At(x, low), B: pattern.At(x, high),
		From: b.first[panel] + near, To: b.first[panel] + far, Fold: pattern.Valley, Angle: turn})
}

// flaps states that the facets of a panel beyond a curved crease, which hang on
// its chords one by one, still meet along the lines between them.
func (b *bender) flaps() {
	for i := range b.p.Panels {
		for k := 1; b.flap[i] && k < len(b.slopes[i]); k++ {
			x, facet := b.lines[i][k], b.first[i]+k
			low, high := ends(b.rings[i], x)
			a, c := pattern.At(x, low), pattern.At(x, high)
			b.to.Seams = append(b.to.Seams, pattern.Seam{Name: "bend of the " + b.p.Panels[i].Name,
				PanelA: facet - 1, A1: a, A2: c, PanelB: facet, B1: a, B2: c})
		}
	}
}

// glue splits a glue area where its panel bends. What it is stuck to bends
// there too, from its free side on.
func (b *bender) glue(g *pattern.Glue) {
	low, high := rectangle(g.Area)
	lines, n := b.lines[g.Panel], len(b.slopes[g.Panel])
	for k := range n {
		x0, x1 := measure.Max(low.X, lines[k]), measure.Min(high.X, lines[k+1])
		if !x0.Less(x1) {
			continue
		}
		own, order := *g, k
		if b.onRight(g.Panel) {
			order = n - 1 - k
		}
		if !b.onRight(g.To) {
			order = len(b.slopes[g.To]) - 1 - order
		}
		own.Panel, own.To = b.first[g.Panel]+k, b.first[g.To]+max(0, order)
		own.Area = pattern.Rectangle(x0, low.Y, x1, high.Y)
		b.to.Glues = append(b.to.Glues, own)
	}
}

// rectangle returns the corners of the rectangle round an outline's corners.
func rectangle(outline []pattern.Vertex) (low, high pattern.Point) {
	low, high = outline[0].Point, outline[0].Point
	for _, v := range outline[1:] {
		low = pattern.At(measure.Min(low.X, v.X), measure.Min(low.Y, v.Y))
		high = pattern.At(measure.Max(high.X, v.X), measure.Max(high.Y, v.Y))
	}
	return low, high
}
