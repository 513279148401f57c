package fold

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// TestWidestIsTheOptimum compares the room that all sides of a prism have with
// moving it about: no place has more, and the one found has as much.
func TestWidestIsTheOptimum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		slack := rapid.SliceOfN(rapid.Float64Range(-3, 5), 3, 12).Draw(t, "slack")
		room := widest(slack)
		left := func(x, y float64) float64 {
			least := math.Inf(1)
			for k, s := range slack {
				least = min(least, s-around(k, len(slack), 0).Dot(Vec{x, y}))
			}
			return least
		}
		by := aside(sides(len(slack)), slack, room)
		assert.InDelta(t, room, left(by[0], by[1]), 1e-3, "where it is put")
		for range 100 {
			x, y := by[0]+rapid.Float64Range(-1, 1).Draw(t, "x"), by[1]+rapid.Float64Range(-1, 1).Draw(t, "y")
			assert.LessOrEqual(t, left(x, y), room+1e-9)
		}
	})
}

// A side that meets nothing is not held, even where the others are.
func TestWidestOfOpenSides(t *testing.T) {
	open := math.Inf(1)
	assert.Equal(t, open, widest([]float64{1, open, 2, open}))
	assert.InDelta(t, 1.5, widest([]float64{1, 9, 2, 9}), 1e-12)
	assert.InDelta(t, 2, widest([]float64{1, 9, 2, 9, 3, 9}), 1e-12)
}

// squareTray holds contents of 40 x 40 x 10 mm with plays of 1 and 2 mm.
func squareTray() *pattern.Pattern {
	y := rightTray()
	y.w, y.h = 40+3*y.t+1, 40+y.t+2
	p := y.pattern()
	p.Cavity = cavity(0, 40, 40, 10, pattern.Width)
	return p
}

// TestPrismOfFourSides stands a prism of four sides where a box stands: it has
// the less of the two clearances.
func TestPrismOfFourSides(t *testing.T) {
	for _, width := range []float64{30, 40, 41} {
		p := squareTray()
		p.Cavity.Width, p.Cavity.Height = mm(width), mm(width)
		box := Prove(p, measure.Length{})
		require.True(t, box.Holds, "%v", box.Faults)
		p.Cavity.Sides = 4
		prism := Prove(p, measure.Length{})
		assert.Empty(t, prism.Faults)
		assert.True(t, prism.Holds)
		assert.Equal(t, []Clearance{{Axis: pattern.Width, Clearance: mm(41 - width)}}, prism.Clearances)
		assert.Equal(t, box.Clearances, prism.Clearances)
	}
}

func TestPrismThatDoesNotFit(t *testing.T) {
	p := squareTray()
	p.Cavity.Sides, p.Cavity.Width = 4, mm(41.2)
	assert.Contains(t, findings(Prove(p, measure.Length{})), `contents "width" is too big for the cavity by 0.200000 mm`)
	p.Cavity.Sides = 6
	assert.Contains(t, findings(Prove(p, measure.Length{})), `contents "width" is not held on both sides`, "a square has no walls for six sides")
	p = squareTray()
	p.Cavity.Sides, p.Pieces[0].Creases[0].Angle = 4, 89
	assert.False(t, Prove(p, mm(1)).Holds, "a wall that leans holds nothing")
	p = squareTray()
	p.Cavity.Sides = 4
	p.Pieces = append(p.Pieces, strip(0, 5, []string{"card", "flap"}, []float64{5, 25}, score{pattern.Mountain, 45, 0}))
	p.Places = []pattern.Place{{Piece: 1, X: mm(-10), Y: mm(20), Above: mm(14)}}
	assert.Contains(t, findings(Prove(p, measure.Length{})), `contents "flap" is in their way`)
}

// A cover over the contents bounds their height: it lies 12 mm above the base,
// from mid-caliper to mid-caliper.
func TestPrismUnderACover(t *testing.T) {
	p := squareTray()
	p.Cavity.Sides, p.Cavity.Bounded = 4, []pattern.Axis{pattern.Thickness}
	p.Pieces = append(p.Pieces, pattern.Piece{Name: "cover", Width: mm(60), Height: mm(10), Panels: []pattern.Panel{{Name: "cover", Outline: rect(0, 0, 60, 10)}}})
	p.Places = []pattern.Place{{Piece: 1, X: mm(-10), Y: mm(60), Above: mm(12)}}
	assert.Contains(t, findings(Prove(p, measure.Length{})), `contents "thickness" is not held on both sides`, "a cover beside the tray")
	p.Places[0].Y, p.Places[0].Above = mm(10), mm(15.2)
	proof := Prove(p, measure.Length{})
	assert.Empty(t, proof.Faults)
	assert.Equal(t, mm(15.2-0.4-10), proof.Clearances[0].Clearance)
}

// A prism nests with the room that is left from side to side.
func TestNestingOfFourSides(t *testing.T) {
	p := lidOverTray(0.3, 0.7)
	p.Cavity = cavity(0, 40, 40, 10, pattern.Width)
	p.Cavity.Sides = 4
	p.Nests[0].Axes = []pattern.Axis{pattern.Width}
	proof := Prove(p, measure.Length{})
	require.Len(t, proof.Clearances, 2)
	assert.Equal(t, Clearance{"lid over tray", pattern.Width, mm(0.3)}, proof.Clearances[1], "the less of both")
	p.Nests[0].Axes = []pattern.Axis{pattern.Height}
	assert.Contains(t, findings(Prove(p, measure.Length{})), `nesting "lid over tray" is held along an axis that prisms are not measured along`)
}

// A pattern says how many sides, and along which axes.
func TestUnsoundPrisms(t *testing.T) {
	for want, change := range map[string]func(*pattern.Pattern){
		`cavity "" has too few or too many sides`:                func(p *pattern.Pattern) { p.Cavity.Sides = 2 },
		`cavity "" is bounded along an axis that prisms are not`: func(p *pattern.Pattern) { p.Cavity.Sides, p.Cavity.Bounded = 3, []pattern.Axis{pattern.Height} },
	} {
		assert.Contains(t, findings(Prove(changed(squareTray(), change), measure.Length{})), want)
	}
	for sides, sound := range map[int]bool{0: true, 1: false, 2: false, 3: true, 64: true, 65: false} {
		p := changed(squareTray(), func(p *pattern.Pattern) { p.Cavity.Sides = sides })
		assert.Equal(t, sound, !slices.Contains(findings(Prove(p, measure.Length{})), `cavity "" has too few or too many sides`), "%d sides", sides)
	}
}
