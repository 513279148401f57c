package fold

import (
	"math"
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Facets returns the pattern with every piece that has curved creases cut into
// facets: plane strips between straight lines that run up the blank, one for
// each chord of the curved creases. The chords' ends lie on the arcs, within
// 1/800 of their width of them everywhere, and in the middle exactly. The
// facets bend against one another so that a curve across them rises as much as
// their crease does on the blank; both sides of the crease keep their lengths
// and their creases close exactly, however many facets there are.
//
// A panel that is glued to a bent one bends with it. Beside the pattern it
// returns the panel that each facet is part of, by piece; nil for a piece that
// stays flat. A pattern without curved creases is returned as it is. Fold folds what comes of it.
func Facets(p *pattern.Pattern) (*pattern.Pattern, [][]int) {
	facets := make([][]int, len(p.Pieces))
	if !anyCurved(p) {
		return p, facets
	}
	q := *p
	q.Pieces = make([]pattern.Piece, len(p.Pieces))
	for i := range p.Pieces {
		q.Pieces[i] = p.Pieces[i]
		if !curved(&p.Pieces[i]) {
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

// anyCurved reports whether a pattern has a piece whose panels bend.
func anyCurved(p *pattern.Pattern) bool {
	for i := range p.Pieces {
		if curved(&p.Pieces[i]) {
			return true
		}
	}
	return false
}

// curved reports whether a piece has a crease whose panels bend.
func curved(p *pattern.Piece) bool {
	return slices.ContainsFunc(p.Creases, func(c pattern.Crease) bool { return c.Bends() })
}

// bender cuts one piece into facets.
type bender struct {
	p, to  *pattern.Piece
	lines  [][]measure.Length   // by panel: where its facets begin and end
	first  []int                // by panel: its first facet
	panels []int                // by facet: the panel that it is part of
	slopes [][]float64          // by panel: how its facets are inclined
	ends   [][][2]pattern.Point // by panel: how far it reaches down and up where its facets begin and end
	flap   []bool               // by panel: it hangs on a curved crease
}

func newBender(p *pattern.Piece) *bender {
	n := len(p.Panels)
	b := &bender{p: p, lines: make([][]measure.Length, n), first: make([]int, n), slopes: make([][]float64, n),
		ends: make([][][2]pattern.Point, n), flap: make([]bool, n)}
	for i := range p.Creases {
		switch c := &p.Creases[i]; {
		case c.Rolls():
			b.rolled(c)
		case c.Bends():
			b.bent(c)
		}
	}
	for i := range p.Glues {
		b.glued(p.Glues[i].Panel, p.Glues[i].To)
	}
	for i := range p.Panels {
		outline := p.Panels[i].Outline
		if b.lines[i] == nil {
			low, high := rectangle(outline)
			b.lines[i], b.slopes[i] = []measure.Length{low.X, high.X}, []float64{0}
		}
		if len(b.slopes[i]) > 1 {
			b.ends[i] = reaches(ring(outline), b.lines[i])
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
			slopes[k-1] = math.Asin(pattern.Slope(chords[k-1], at))
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
func across(c *pattern.Crease) pattern.ChordEnds {
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
