package solve_test

import (
	"context"
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

func TestRandomGussetBagsFoldUp(t *testing.T) {
	checkRandom(t, "gusset-bag", measure.Millimetres(80))
}

func TestEveryCaliperOfAGussetBagCounts(t *testing.T) {
	checkMutants(t, thick(t, "gusset-bag"), "back height", "trim")
}

// The blank of a gusseted tube is 2(W + G) + lap wide; ours has 5 calipers and
// the clearances more.
func TestGussetBagTube(t *testing.T) {
	r := thick(t, "gusset-bag")
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	clearances := s.Fits[0].Window.Min.Add(s.Fits[0].Window.Max).Add(s.Fits[1].Window.Min).Add(s.Fits[1].Window.Max)
	tube := r.Width.Add(r.Thickness).Times(2).Add(measure.MustParse("1/2 in"))
	assert.Equal(t, measure.Sum(tube, clearances, r.Caliper.Times(5)), s.Ideal.Pieces[0].Width)
}

// The folded turn-over leaves two calipers less than the walls along the width
// and, its trimmed corners apart, never touches another part of itself.
func TestGussetBagMouth(t *testing.T) {
	r := thick(t, "gusset-bag")
	r.Fit = enclosure.Range{Max: measure.Sixtyfourths(8)}
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	assert.Equal(t, r.Caliper.Times(2), s.Fits[0].Window.Min, "the contents pass the turn-over")
	x := map[string]float64{}
	for _, plate := range fold.Fold(&s.Ideal, 1).Plates {
		x[plate.Name] = plate.Outline[0][0]
	}
	mouth := x["turn-over of the right front half"] - x["turn-over of the left front half"] - r.Caliper.Millimetres()
	walls := r.Width.Add(s.Fits[0].Window.Min.Add(s.Fits[0].Window.Max).Over(2))
	assert.InDelta(t, walls.Sub(r.Caliper.Times(2)).Millimetres(), mouth, 1e-6)
}

// By hand, for contents of 3 x 5 x 1 1/2 in in 0.012 in stock with 1/16 to 1/8
// in of clearance: the flaps of the base reach from 1/16 + 0.012 in to 3/4 - 1/8
// in, the lap to 3 - 1/2 in, the turn-over to half of 2 in less 0.036 in.
func TestGussetBagRefusals(t *testing.T) {
	for _, c := range []struct{ option, value, field, expected string }{
		{"base_flap", "2 in", "base_flap", "from 1/8 in to 5/8 in"},
		{"lap", "3 in", "lap", "from 1/8 in to 2 3/4 in"},
		{"turn_over", "1 in", "turn_over", "from 1/8 in to 15/16 in"},
	} {
		t.Run(c.option, func(t *testing.T) {
			r := thick(t, "gusset-bag")
			r.Options[c.option] = enclosure.Value{Length: measure.MustParse(c.value)}
			_, err := solve.Solve(context.Background(), r)
			var faults fault.Faults
			require.True(t, errors.As(err, &faults), "%v", err)
			assert.Equal(t, fault.Impossible, faults[0].Code)
			assert.Equal(t, c.field+": "+c.expected, faults[0].Field+": "+faults[0].Expected)
		})
	}
	r := thick(t, "gusset-bag")
	r.Thickness = measure.Millimetres(7)
	_, err := solve.Solve(context.Background(), r)
	assert.ErrorContains(t, err, "thickness")
	r = thick(t, "gusset-bag")
	r.Fit.Max = measure.Thousandths(20)
	r.Fit.Min = measure.Length{}
	_, err = solve.Solve(context.Background(), r)
	assert.ErrorContains(t, err, "turned-over edge")
}

func BenchmarkSolveGussetBag(b *testing.B) { benchmarkThick(b, "gusset-bag") }
