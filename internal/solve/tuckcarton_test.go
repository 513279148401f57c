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

func TestRandomTuckCartonsFoldUp(t *testing.T) {
	checkRandom(t, "tuck-carton", measure.Millimetres(80))
}

func TestEveryCaliperOfATuckCartonCounts(t *testing.T) {
	for _, style := range []string{"straight", "reverse"} {
		t.Run(style, func(t *testing.T) {
			r := thick(t, "tuck-carton")
			r.Options["style"] = enclosure.Value{Choice: style}
			checkMutants(t, r)
		})
	}
}

// Between two folds to the same side inside = centre to centre of the scores - t
// and outside = centre to centre + t: a content of 100 mm with a play of 1 mm in
// 0.30 mm stock is 101.00, 101.30 and 101.60 mm.
func TestTuckCartonInsideCentreAndOutside(t *testing.T) {
	r := thick(t, "tuck-carton")
	r.Unit, r.Ruler = measure.Millimetre, measure.Marks(measure.Millimetre)[3]
	r.Width, r.Caliper = measure.Millimetres(100), measure.Micrometres(300)
	r.Fit = enclosure.Range{Min: measure.Micrometres(500), Max: measure.Micrometres(1500)}
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	cells := s.Ideal.Pieces[0].Strips[0].Cells
	proof := fold.Prove(&s.Ideal, measure.Length{})
	inside := r.Width.Add(proof.Clearances[0].Clearance)
	assert.Equal(t, measure.MustParse("101.00 mm"), inside)
	assert.Equal(t, measure.MustParse("101.30 mm"), cells[2].Size, "front")
	assert.Equal(t, measure.MustParse("101.60 mm"), proof.Extent[0], "outside")
	for i, extent := range []measure.Length{s.Ideal.Pieces[0].Strips[1].Cells[2].Size, cells[1].Size} {
		assert.Equal(t, extent.Add(r.Caliper), proof.Extent[i+1], "outside = centre to centre + t")
	}
	assert.Equal(t, r.Caliper, cells[1].Size.Sub(cells[3].Size), "the outer side goes round the lap")
}

// By hand, for contents of 3 x 5 x 1 1/2 in in 0.012 in stock with 1/16 to 1/8
// in of clearance; the allowance is 0.137 in at most. Half of the width 1 17/32,
// of the height 2 17/32; bounds are rounded inwards to 1/64 in.
func TestTuckCartonRefusals(t *testing.T) {
	for _, c := range []struct{ option, value, field, expected string }{
		{"tuck", "3 in", "tuck", "from 1/4 in to 1 7/8 in"},
		{"lap", "2 in", "lap", "from 1/8 in to 1 1/2 in"},
		{"dust_flap", "2 in", "dust_flap", "from 1/8 in to 1 1/2 in"},
		{"taper", "2 in", "taper", "at most 1 1/8 in"},
		{"friction_slit", "2 in", "friction_slit", "from 1/16 in to 1 1/8 in"},
	} {
		t.Run(c.option, func(t *testing.T) {
			r := thick(t, "tuck-carton")
			r.Options[c.option] = enclosure.Value{Length: measure.MustParse(c.value)}
			_, err := solve.Solve(context.Background(), r)
			var faults fault.Faults
			require.True(t, errors.As(err, &faults), "%v", err)
			assert.Equal(t, fault.Impossible, faults[0].Code)
			assert.Equal(t, c.field+": "+c.expected, faults[0].Field+": "+faults[0].Expected)
		})
	}
	r := thick(t, "tuck-carton")
	r.Thickness = measure.Millimetres(1)
	_, err := solve.Solve(context.Background(), r)
	assert.ErrorContains(t, err, "thickness")
}

func BenchmarkSolveTuckCarton(b *testing.B) { benchmarkThick(b, "tuck-carton") }
