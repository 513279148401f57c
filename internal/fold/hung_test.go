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
