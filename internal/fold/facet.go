package fold

import (
	"math"
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// piece returns the piece of facets.
func (b *bender) piece() pattern.Piece {
	to := *b.p
	b.to = &to
	n := 0 // facets
	for i := range b.slopes {
		n += len(b.slopes[i])
	}
	to.Panels, to.Creases, to.Glues = make([]pattern.Panel, 0, n), make([]pattern.Crease, 0, n), nil
	to.Seams = append(make([]pattern.Seam, 0, n), b.p.Seams...)
	b.panels = make([]int, 0, n)
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
	for range len(lines) - 1 {
		b.panels = append(b.panels, i)
	}
	if len(lines) == 2 {
		b.to.Panels = append(b.to.Panels, *panel)
		return
	}
	outlines := make([]pattern.Vertex, 0, 4*(len(lines)-1))
	for k := 1; k < len(lines); k++ {
		left, right := b.ends[i][k-1], b.ends[i][k]
		corners := slices.Compact([]pattern.Point{left[0], right[0], right[1], left[1]})
		if corners[0] == corners[len(corners)-1] {
			corners = corners[1:]
		}
		first := len(outlines)
		for _, p := range corners {
			outlines = append(outlines, pattern.Vertex{Point: p})
		}
		b.to.Panels = append(b.to.Panels, pattern.Panel{Name: panel.Name, Outline: outlines[first:len(outlines):len(outlines)]})
	}
}

// ring returns an outline with the chords of its arcs, back to its first corner.
func ring(outline []pattern.Vertex) []pattern.Point {
	points := make([]pattern.Point, 0, 2*len(pattern.ChordEnds{})+len(outline))
	for i, v := range outline {
		points = append(points, v.Point)
		if v.Bulge < 0 || v.Bulge > 0 {
			chords := pattern.Chords(v.Point, outline[(i+1)%len(outline)].Point, v.Bulge)
			points = append(points, chords[1:len(chords)-1]...)
		}
	}
	return append(points, outline[0].Point)
}

// reaches returns how far down and up an outline reaches at places along the
// width, from the left: its edges that run to the right lie below, those to the left above.
func reaches(ring []pattern.Point, places []measure.Length) [][2]pattern.Point {
	ends := make([][2]pattern.Point, len(places))
	for i, x := range places {
		ends[i] = [2]pattern.Point{{X: x}, {X: x}}
	}
	from := 0 // the first place that is not left of an edge
	for k, c := range ring[1:] {
		a, side := ring[k], 0
		if c.X.Less(a.X) {
			a, c, side = c, a, 1
		}
		for from > 0 && !places[from-1].Less(a.X) {
			from--
		}
		for from < len(places) && places[from].Less(a.X) {
			from++
		}
		for i := from; i < len(places) && a.X != c.X && !c.X.Less(places[i]); i++ {
			ends[i][side].Y = between(ring[k], ring[k+1], places[i])
		}
	}
	return ends
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
		if c.Rolls() {
			own.Fold, own.Angle = pattern.Valley, c.Angle/rollFacets
		}
		b.to.Creases = append(b.to.Creases, own)
		return
	}
	chords := across(c)
	for k := 1; k < len(chords); k++ {
		own := *c
		own.A, own.B, own.Bulge = chords[k-1], chords[k], 0
		slope := pattern.Slope(own.A, own.B)
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
		b.ruling(panel, k-1, k, b.ends[panel][k])
	}
	for k := from - 1; k >= 0; k-- {
		b.ruling(panel, k+1, k, b.ends[panel][k+1])
	}
}

// ruling bends one facet against the one beside it.
func (b *bender) ruling(panel, near, far int, line [2]pattern.Point) {
	turn := math.Abs(b.slopes[panel][near]-b.slopes[panel][far]) * 180 / math.Pi
	b.to.Creases = append(b.to.Creases, pattern.Crease{Name: "bend", A: line[0], B: line[1],
		From: b.first[panel] + near, To: b.first[panel] + far, Fold: pattern.Valley, Angle: turn})
}

// flaps states that the facets of a panel beyond a curved crease, which hang on
// its chords one by one, still meet along the lines between them.
func (b *bender) flaps() {
	for i := range b.p.Panels {
		if !b.flap[i] {
			continue
		}
		name := "bend of the " + b.p.Panels[i].Name
		for k := 1; k < len(b.slopes[i]); k++ {
			a, c, facet := b.ends[i][k][0], b.ends[i][k][1], b.first[i]+k
			b.to.Seams = append(b.to.Seams, pattern.Seam{Name: name,
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
		if g.To != b.p.Root && !b.onRight(g.To) {
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
