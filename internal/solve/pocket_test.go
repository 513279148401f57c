package solve_test

import (
	"context"
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

func TestRandomPocketsFoldUp(t *testing.T) {
	t.Run("thin", func(t *testing.T) { checkRandom(t, "pocket", measure.Sixtyfourths(8)) })
	t.Run("thick", func(t *testing.T) { checkRandom(t, "pocket", measure.Millimetres(40)) })
}

// A pocket for a pamphlet is W + 2T + 5 cm wide in the flat, 16 cm for one of
// 10 cm and 0.5 cm (Indiana University Libraries, Book Repair Manual): two
// gussets and two flaps of 2.5 cm. What our blank has more is paper and
// clearance.
func TestPocketAgainstARepairManual(t *testing.T) {
	k, _ := repertoire.Lookup("pocket")
	in := &enclosure.Input{
		Unit: measure.Millimetre, Width: measure.Millimetres(100), Height: measure.Millimetres(200), Thickness: measure.Millimetres(5),
		Caliper: measure.Micrometres(10), Params: k.Params, Given: map[string]enclosure.Value{"gusset": {Choice: "yes"}},
	}
	plan, err := k.Plan(in)
	require.NoError(t, err)
	var width measure.Length
	for _, reading := range plan.Strips[0].Readings {
		width = width.Add(plan.Problem.Readings[reading].Ideal)
	}
	assert.Equal(t, measure.Millimetres(160), width.Sub(in.Caliper.Times(3)))
}

func TestPocketRefusals(t *testing.T) {
	for _, c := range []struct {
		option, value, field, expected string
	}{
		{"pocket_height", "8 in", "pocket_height", "from 1 1/8 in to 6 in"},
		{"side_flap", "2 1/4 in", "side_flap", "from 1/4 in to 2 in"},
		{"relief", "1 1/2 in", "relief", "from 1/16 in to 1 7/16 in"},
	} {
		t.Run(c.option, func(t *testing.T) {
			r := request(t, "pocket", "4 in", "0.01 in", "0.012 in", 0)
			r.Height = measure.MustParse("5 in")
			r.Options["page_height"] = enclosure.Value{Length: measure.MustParse("6 in")}
			r.Options[c.option] = enclosure.Value{Length: measure.MustParse(c.value)}
			_, err := solve.Solve(context.Background(), r)
			var faults fault.Faults
			require.True(t, errors.As(err, &faults), "%v", err)
			var found []string
			for _, f := range faults {
				assert.Equal(t, fault.Impossible, f.Code)
				found = append(found, f.Field+": "+f.Expected)
			}
			assert.Contains(t, found, c.field+": "+c.expected)
		})
	}
}

func BenchmarkSolvePocket(b *testing.B) { benchmarkKind(b, "pocket") }

func BenchmarkSolvePocketWithGusset(b *testing.B) {
	r := request(b, "pocket", "7 in", "0.5 in", "0.008 in", 1)
	r.Height = measure.MustParse("5 in")
	benchmarkSolve(b, r)
}
