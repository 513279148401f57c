package fold

import (
	"math"
	"slices"
	"sync"

	"creasefit/internal/pattern"
)

const (
	touch = 1e-3 // mm; plates that overlap by less are in contact
	hair  = 1e-5 // mm; above all rounding of coordinates, below all that matters
	dust  = 1e-9 // mm; the rounding of coordinates
)

// plate is one rigid plate: a panel without what its doubled folds take from
// it, or the spine of such a fold.
type plate struct {
	box              // round it, with its thickness
	piece, panel int // panel is -1 for a spine
	copy         int // of the piece, from 0
	crease       int // by which it hangs on its parent; -1 for a root
	parent       int // the plate that it hangs on; -1 for a root
	placed       bool
	filled       bool    // it fills the box round it
	convex       bool    // it is convex and without a hole
	spine        float64 // width of the spine of its crease, 0 for none
	move         Frame
	flat, hole   []spot
	space        []Vec    // the outline at mid-caliper, folded
	cut          [][]spot // what the first copy of one that is not convex is cut into; nil until asked for
	parts        []piece  // what a plate that is not convex is cut into, folded; nil until asked for
	whole        [1]piece // the parts of one that is convex
}

// turning is how a crease is folded: about the line through a, square to n,
// which points from the root's side to the turned panel.
type turning struct {
	a, n    spot
	degrees float64
	spine   float64
}

// model is a folded pattern while it is measured.
type model struct {
	pattern    *pattern.Pattern
	facets     [][]int // by piece: the panel that each facet is part of, nil for a piece that does not bend
	body       []int   // by piece: the first of the pieces that it is glued together with
	half       float64 // half of the caliper
	first      []int   // the plate of each piece's first panel
	plates     []plate
	spots      []spot
	corners    []Vec // of all plates and pieces, folded
	pieces     []piece
	findings   []Finding
	clearances []Clearance
	tried      part        // scratch for without
	uncovered  [2][][]spot // scratch for open
	room       room
}

// models are those whose memory the next ones can have: a portfolio folds its
// layers up a hundred times.
var models = sync.Pool{New: func() any { return new(model) }}

// mostSpots is how many spots a model may have to be kept for others.
const mostSpots = 1 << 14

// done gives a model back, which must not be used any more; it keeps nothing of
// its pattern alive.
func (m *model) done() {
	if cap(m.spots) <= mostSpots {
		clear(m.plates)
		clear(m.facets)
		*m = model{facets: m.facets[:0], body: m.body[:0], first: m.first[:0], plates: m.plates[:0], spots: m.spots[:0], corners: m.corners[:0],
			pieces: m.pieces[:0], uncovered: m.uncovered}
		models.Put(m)
	}
}

// build folds the pattern; closed is 0 for flat and 1 for folded up. The
// pattern's indices must be sound.
func build(p *pattern.Pattern, closed float64) *model {
	m := models.Get().(*model)
	m.pattern, m.facets, m.body, m.half = p, slices.Grow(m.facets, len(p.Pieces))[:len(p.Pieces)], bodies(m.body, p), p.Caliper.Millimetres()/2
	if anyCurved(p) {
		m.pattern, m.facets = Facets(p)
		p = m.pattern
	}
	m.first = slices.Grow(m.first, len(p.Pieces))[:len(p.Pieces)]
	plates, spots := 0, 0
	for i := range p.Pieces {
		piece := &p.Pieces[i]
		plates += len(piece.Panels)
		for j := range piece.Panels {
			spots += len(piece.Panels[j].Outline)
		}
		for j := range piece.Creases {
			if flatFold(&piece.Creases[j]) {
				plates++
				spots += 16 // the spine, and what is left of two panels
			}
		}
		for j := range piece.Glues {
			spots += 2 * len(piece.Glues[j].Area)
		}
	}
	m.plates, m.spots = slices.Grow(m.plates, plates), slices.Grow(m.spots, spots)
	for i := range p.Pieces {
		m.addPiece(i, closed)
	}
	m.addCopies()
	return m
}

// addPiece lays out the panels of a piece and folds them from its root.
func (m *model) addPiece(index int, closed float64) {
	piece := &m.pattern.Pieces[index]
	m.first[index] = len(m.plates)
	for j := range piece.Panels {
		panel := &piece.Panels[j]
		m.plates = append(m.plates, plate{piece: index, panel: j, crease: -1, parent: -1})
		pl := m.panel(index, j)
		pl.flat = m.pressOpen(index, m.ring(panel.Outline))
		pl.hole = m.ring(panel.Hole)
		if area(pl.flat) <= 0 {
			m.find("panel", panel.Name, "has no area, or its outline runs clockwise", 0)
		}
	}
	root := m.panel(index, piece.Root)
	root.placed, root.move = true, m.ground(index)
	for again := true; again; {
		again = m.foldReachable(index, closed)
	}
	m.spines(index)
	for j := range piece.Panels {
		if pl := m.panel(index, j); !pl.placed {
			pl.move = root.move
			m.find("panel", piece.Panels[j].Name, "hangs on no crease that leads to the root", 0)
		}
	}
}

// foldReachable folds every crease whose near panel has its place and whose
// far panel has not; it reports whether there was one.
func (m *model) foldReachable(index int, closed float64) bool {
	creases, any := m.pattern.Pieces[index].Creases, false
	for i := range creases {
		c := &creases[i]
		if m.panel(index, c.From).placed && !m.panel(index, c.To).placed {
			m.fold(index, i, closed)
			any = true
		}
	}
	return any
}

// fold turns the far panel of a crease. Two plates cannot lie in one place,
// so a fold of 180 degrees gets a spine as wide as what it goes round and one
// caliper, half of it taken from the sheet on each side of the score.
func (m *model) fold(index, i int, closed float64) {
	c := &m.pattern.Pieces[index].Creases[i]
	fromAt, toAt := m.first[index]+c.From, m.first[index]+c.To
	from, to := &m.plates[fromAt], &m.plates[toAt]
	t := m.turning(c, to.flat)
	to.crease, to.parent, to.spine, to.placed = i, fromAt, t.spine, true
	if t.spine <= 0 {
		turn := hinge(t.a, t.n, t.degrees*closed)
		to.move = from.move.after(&turn)
		return
	}
	m.checkSide(c, from, t.a, t.n)
	m.checkSide(c, to, t.a, t.n.Times(-1))
	near, far := t.a.Minus(t.n.Times(t.spine/2)), t.a.Plus(t.n.Times(t.spine/2))
	from.flat, from.hole = m.cut(from.flat, near, t.n), m.cut(from.hole, near, t.n)
	to.flat, to.hole = m.cut(to.flat, far, t.n.Times(-1)), m.cut(to.hole, far, t.n.Times(-1))
	m.checkLeft(c, from, t.spine)
	m.checkLeft(c, to, t.spine)
	spine := plate{piece: index, panel: -1, crease: i, parent: fromAt, spine: t.spine, placed: true}
	turn := hinge(near, t.n, t.degrees*closed/2)
	spine.move = from.move.after(&turn)
	turn = hinge(far, t.n, t.degrees*closed/2)
	to.move, to.parent = spine.move.after(&turn), len(m.plates)
	m.plates = append(m.plates, spine)
}

// turning works out how a crease is folded; to is the outline of its far
// panel.
func (m *model) turning(c *pattern.Crease, to []spot) turning {
	t := turning{a: place(c.A)}
	along := place(c.B).Minus(t.a)
	along = along.Times(1 / along.Length())
	t.n = spot{-along.y, along.x}
	farthest := 0.0
	for _, p := range to {
		if d := p.Minus(t.a).Dot(t.n); math.Abs(d) > math.Abs(farthest) {
			farthest = d
		}
	}
	if farthest < 0 {
		t.n = t.n.Times(-1)
	}
	switch c.Fold {
	case pattern.Valley:
		t.degrees = c.Angle
	case pattern.Mountain:
		t.degrees = -c.Angle
	}
	if flatFold(c) {
		t.spine = c.Round.Millimetres() + 2*m.half
	}
	return t
}

// turningOf works out how a plate turns that hangs on another one: beside a spine
// on the line where the spine ends.
func (m *model) turningOf(pl *plate) turning {
	c := &m.pattern.Pieces[pl.piece].Creases[pl.crease]
	t := m.turning(c, m.panel(pl.piece, c.To).flat)
	switch {
	case pl.panel < 0:
		t.a = t.a.Minus(t.n.Times(t.spine / 2))
	case m.plates[pl.parent].panel < 0:
		t.a = t.a.Plus(t.n.Times(t.spine / 2))
	}
	return t
}

// flatFold reports whether a crease turns its panel all the way round.
func flatFold(c *pattern.Crease) bool { return c.Fold != pattern.Flat && c.Angle > 180-1e-6 }

// checkSide finds a panel that reaches across a crease of 180 degrees.
func (m *model) checkSide(c *pattern.Crease, pl *plate, a, n spot) {
	worst := 0.0
	for _, p := range pl.flat {
		worst = max(worst, p.Minus(a).Dot(n))
	}
	if worst > touch {
		m.find("panel", m.name(pl), "reaches across the line of "+c.Name, worst)
	}
}

// checkLeft finds a panel of which a crease of 180 degrees leaves nothing.
func (m *model) checkLeft(c *pattern.Crease, pl *plate, spine float64) {
	if area(pl.flat) < touch*spine {
		m.find("panel", m.name(pl), "is taken up by the fold at "+c.Name, 0)
	}
}

// ring keeps an outline as spots.
func (m *model) ring(outline []pattern.Vertex) []spot {
	at := len(m.spots)
	m.spots = trace(m.spots, outline)
	return m.spots[at:len(m.spots):len(m.spots)]
}

// cut keeps the part of a ring that clip leaves.
func (m *model) cut(ring []spot, a, n spot) []spot {
	at := len(m.spots)
	m.spots = clip(m.spots, ring, a, n)
	return m.spots[at:len(m.spots):len(m.spots)]
}

// panel returns the plate of a panel.
func (m *model) panel(piece, panel int) *plate { return &m.plates[m.first[piece]+panel] }

// name returns what a plate is called: its panel, or the crease of a spine.
func (m *model) name(pl *plate) string {
	piece := &m.pattern.Pieces[pl.piece]
	if pl.panel < 0 {
		return "fold at " + piece.Creases[pl.crease].Name
	}
	return piece.Panels[pl.panel].Name
}
