package fold

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// A fold of 180 degrees round 2 mm in stock of 1 mm has a spine of 3 mm: what hangs on
// its two sides turns about lines 1.5 mm before and beyond the crease.
func TestSpinesTurnBesideTheirCrease(t *testing.T) {
	p := &pattern.Pattern{Caliper: mm(1), Pieces: []pattern.Piece{strip(0, 30, []string{"near", "far"}, []float64{20, 40}, round(2))}, Cavity: cavity(0, 1, 1, 1)}
	hung := map[string]float64{}
	for _, pl := range Fold(p, 1).Plates {
		hung[pl.Name] = pl.Hung[0]
	}
	assert.Equal(t, map[string]float64{"near": 0, "fold at near score": 18.5, "far": 21.5}, hung)
}

// Panels hang on one another, whatever their numbers are: what hangs on the first of
// them, which is no root, turns with it. Each two plates have one place for how they give
// way, of n plates n (n - 1) / 2.
func TestRigsTurnWhatHangsOnTheFirstPanel(t *testing.T) {
	piece := strip(1, 30, []string{"first", "root", "last"}, []float64{20, 20, 20}, square, square)
	piece.Panels = append(piece.Panels, pattern.Panel{Name: "tip", Outline: rect(0, 30, 20, 40)})
	piece.Creases = append(piece.Creases, pattern.Crease{Name: "tip", A: pt(0, 30), B: pt(20, 30), From: 0, To: 3, Fold: pattern.Valley, Angle: 90})
	r, ok := NewRig(&pattern.Pattern{Caliper: mm(0.3), Pieces: []pattern.Piece{piece}, Cavity: cavity(1, 10, 10, 5)})
	require.True(t, ok)
	for _, h := range r.Hinges {
		want := map[int][]int{0: {0, 3}, 1: {2}, 2: {3}}[h.Crease]
		assert.Equal(t, want, h.Far, "crease %d", h.Crease)
	}
	n := len(r.Plates)
	assert.Len(t, r.pairs, n*(n-1)/2)
	r.pair(n-1, n-2)
}

// A slot that narrows from 20 mm at its mouth to 10 mm over a depth of 20 mm is 15 mm
// wide halfway.
func TestSlotsAreMeasuredHalfway(t *testing.T) {
	pl := plate{move: still(), flat: []spot{{0, 0}, {100, 0}, {100, 40}, {60, 40}, {55, 20}, {45, 20}, {40, 40}, {0, 40}}}
	assert.InDelta(t, 15, pl.slot(Vec{50, 0, 0}, Vec{0, 1, 0}, span{20, 40}), 1e-9)
	assert.InDelta(t, 12.5, pl.slot(Vec{50, 0, 0}, Vec{0, 1, 0}, span{20, 30}), 1e-9)
}

// A panel whose corners lie on one line has no area; one of half a square millimetre has.
func TestPanelsHaveAnArea(t *testing.T) {
	for height, want := range map[float64]string{0: `panel "only" has no area, or its outline runs clockwise` + "\n", 0.5: ""} {
		p := &pattern.Pattern{Pieces: []pattern.Piece{{Panels: []pattern.Panel{{Name: "only", Outline: rect(0, 0, 1, height)}}}}}
		assert.Equal(t, want, join(findings(Prove(p, measure.Length{}))), "%v high", height)
	}
}

// What the edges of two plates give way goes to the one that is whole; each has its own
// where both are, neither where none is. It is asked for in either order.
func TestPlatesInPartsDoNotGiveWay(t *testing.T) {
	for _, c := range []struct {
		wholeA, wholeB bool
		a, b           float64
	}{{true, true, 0.2, 0.3}, {true, false, 0.5, 0}, {false, true, 0, 0.5}, {false, false, 0, 0}} {
		a, b := shared(0.2, 0.3, c.wholeA, c.wholeB)
		assert.Equal(t, [2]float64{c.a, c.b}, [2]float64{a, b})
	}
	p := Pose{rig: &Rig{pairs: []pairing{{0.2, 0.3, true}}}, at: []placed{{parts: make([]part, 1)}, {parts: make([]part, 1)}}}
	a, b := p.give(1, 0, 0.01)
	assert.InDeltaSlice(t, []float64{0.21, 0.31}, []float64{a, b}, 1e-12)
	a, b = p.give(0, 1, 0.01)
	assert.InDeltaSlice(t, []float64{0.31, 0.21}, []float64{a, b}, 1e-12)
}

// A plate that passes through a bent one of another piece is found; those of one bent
// piece are not asked.
func TestBentPiecesAreCrossedByOthers(t *testing.T) {
	m := &model{half: 0.2, body: []int{0, 1}, facets: [][]int{nil, {0, 0}}, pattern: &pattern.Pattern{Pieces: []pattern.Piece{
		{Panels: []pattern.Panel{{Name: "strip"}}}, {Panels: []pattern.Panel{{Name: "left"}, {Name: "right"}}}}}}
	flat := []spot{{-50, -50}, {50, -50}, {50, 50}, {-50, 50}}
	level, upright := still(), Frame{X: Vec{1, 0, 0}, Y: Vec{0, 0, 1}, Z: Vec{0, -1, 0}}
	for _, pl := range []plate{{flat: flat, move: upright}, {flat: flat, move: level, piece: 1}, {flat: flat, move: upright, piece: 1, panel: 1}} {
		pl.parent, pl.crease = -1, -1
		pl.move.Origin = Vec{0, float64(pl.panel) * 7, 0}
		pl.space = pl.lift(nil, pl.flat)
		pl.bound(m.half)
		pl.shape()
		m.plates = append(m.plates, pl)
	}
	assert.True(t, m.crossing(0))
	assert.Equal(t, `panel "strip" passes through left`+"\n", join(findings(Proof{Faults: m.findings})))
}
