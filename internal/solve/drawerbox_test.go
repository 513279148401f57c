package solve_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

func TestRandomDrawerBoxesFoldUp(t *testing.T) {
	checkRandom(t, "drawer-box", measure.Millimetres(60))
}

func TestEveryCaliperOfADrawerBoxCounts(t *testing.T) {
	for _, corners := range []string{"inside", "outside"} {
		t.Run(corners, func(t *testing.T) {
			r := thick(t, "drawer-box")
			r.Options = choices("corners", corners)
			checkMutants(t, r)
			checkLayout(t, r)
			checkPlaces(t, r)
		})
	}
}

// A sleeve of the same stock over a tray is inside what the tray is outside and
// the play more; measured from plate to plate, with the tray's own extent from
// the proof of the tray alone.
func TestSleeveOverADrawer(t *testing.T) {
	r := metric(t, "drawer-box", 100, 150, 30)
	r.Options = choices("corners", "outside", "slide", "snug")
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	play := measure.MustParse("0.75 mm") // the middle of snug
	alone := metric(t, "tray", 100, 150, 30)
	alone.Options = choices("corners", "outside")
	tray, err := solve.Solve(context.Background(), alone)
	require.NoError(t, err)
	outside := fold.Prove(&tray.Ideal, measure.Length{}).Extent
	sleeve := s.Ideal.Pieces[1].Strips[0].Cells
	assert.Equal(t, outside[0].Add(play), sleeve[2].Size.Sub(r.Caliper), "back, from plate to plate")
	assert.Equal(t, outside[2].Add(play), sleeve[3].Size.Sub(r.Caliper), "right side, from back to lap")
}

// The slit for a ribbon lies in the middle of the top wall, and its ends lie on
// marks of the ruler.
func TestRibbonSlit(t *testing.T) {
	r := thick(t, "drawer-box")
	r.Options["ribbon_slit"] = enclosure.Value{Length: measure.MustParse("1/2 in")}
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	tray := &s.Pattern.Pieces[0]
	slit := tray.Cuts[len(tray.Cuts)-1]
	assert.Equal(t, "ribbon slit", slit.Name)
	assert.Equal(t, measure.MustParse("1/2 in"), slit.Path[1].X.Sub(slit.Path[0].X))
	for _, v := range slit.Path {
		assert.Equal(t, v.X, s.Step.Nearest(v.X))
	}
	middle := tray.Width.Over(2)
	assert.False(t, s.Step.Size().Less(slit.At.Sub(middle).Abs()), "%v of %v", slit.At, tray.Width)
	wall := tray.Strips[1].Cells[2].Size
	assert.False(t, s.Step.Size().Less(slit.Depth.Times(2).Sub(wall).Abs()), "%v of %v", slit.Depth, wall)
}

// By hand for contents of 3 x 5 x 1 1/2 in in 0.012 in stock and a snug slide:
// the lap needs 1/8 in for glue, 1/16 in and two calipers, and has 3 in; the
// ribbon keeps 1/4 in from both ends of 3 in.
func TestDrawerBoxRefusals(t *testing.T) {
	for _, c := range []struct{ option, value, expected string }{
		{"lap", "4 in", "from 1/4 in to 3 in"},
		{"ribbon_slit", "3 in", "from 1/8 in to 2 1/2 in"},
		{"notch", "2 in", "from 1/8 in to 1 1/16 in"},
	} {
		r := thick(t, "drawer-box")
		r.Options[c.option] = enclosure.Value{Length: measure.MustParse(c.value)}
		checkImpossible(t, r, c.option, c.expected)
	}
}

func BenchmarkSolveDrawerBox(b *testing.B) { benchmarkThick(b, "drawer-box") }
