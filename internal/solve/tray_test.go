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

func TestRandomTraysFoldUp(t *testing.T) { checkRandom(t, "tray", measure.Millimetres(60)) }

// choices makes options of names and choices in turn.
func choices(words ...string) map[string]enclosure.Value {
	o := map[string]enclosure.Value{}
	for i := 1; i < len(words); i += 2 {
		o[words[i-1]] = enclosure.Value{Choice: words[i]}
	}
	return o
}

func TestEveryCaliperOfATrayCounts(t *testing.T) {
	for _, corners := range []string{"inside", "outside"} {
		for _, walls := range []string{"single", "double"} {
			t.Run(corners+", "+walls, func(t *testing.T) {
				r := thick(t, "tray")
				r.Options = choices("corners", corners, "walls", walls)
				checkMutants(t, r)
				checkLayout(t, r)
			})
		}
	}
}

// checkLayout drops and doubles the calipers that a kind lays its pattern out
// with, off the ruler, while the stock stays as it is. The proof must notice.
func checkLayout(t *testing.T, r *solve.Request) {
	t.Helper()
	plan := func(caliper measure.Length) *enclosure.Plan {
		p, err := r.Kind.Plan(&enclosure.Input{Unit: r.Unit, Width: r.Width, Height: r.Height, Thickness: r.Thickness,
			Caliper: caliper, Fit: r.Fit, Given: r.Options, Params: r.Kind.Params})
		require.NoError(t, err)
		return p
	}
	var sizes []measure.Length
	base := plan(r.Caliper)
	for _, reading := range base.Problem.Readings {
		sizes = append(sizes, reading.Ideal)
	}
	pattern := base.Build(sizes)
	right := fold.Prove(&pattern, measure.Length{})
	require.Empty(t, right.Faults)
	for _, caliper := range []measure.Length{measure.Micrometres(1), r.Caliper.Times(2)} {
		mutant := plan(caliper).Build(sizes)
		mutant.Caliper = r.Caliper
		assertMutant(t, right, &mutant, "a layout for another caliper")
	}
}

// metric makes a request of the boxes in whole millimetres and a caliper of
// 0.30 mm, for a play of 1 mm.
func metric(t *testing.T, kind string, width, height, thickness int64) *solve.Request {
	r := thick(t, kind)
	r.Unit, r.Ruler = measure.Millimetre, measure.Marks(measure.Millimetre)[3]
	r.Width, r.Height, r.Thickness = measure.Millimetres(width), measure.Millimetres(height), measure.Millimetres(thickness)
	r.Caliper = measure.Micrometres(300)
	r.Fit = enclosure.Range{Min: measure.Micrometres(500), Max: measure.Micrometres(1500)}
	return r
}

// Between two walls of 0.30 mm stock contents of 100 mm with a play of 1 mm have
// 101.00 mm, from centre to centre of the scores 101.30 mm, outside 101.60 mm:
// inside = centre - t, outside = centre + t.
func TestTrayInsideCentreAndOutside(t *testing.T) {
	s, err := solve.Solve(context.Background(), metric(t, "tray", 150, 100, 30))
	require.NoError(t, err)
	proof := fold.Prove(&s.Ideal, measure.Length{})
	assert.Equal(t, measure.MustParse("101.00 mm"), s.Request.Height.Add(proof.Clearances[1].Clearance))
	assert.Equal(t, measure.MustParse("101.30 mm"), s.Ideal.Pieces[0].Strips[1].Cells[1].Size)
	assert.Equal(t, measure.MustParse("101.60 mm"), proof.Extent[1])
}

// A box blank is (L + 2H) x (W + 2H), and one with double walls for contents of
// 8 x 8 x 3 cm and half a centimetre of play is C + C + A + C + C = 20.5 cm
// square (craft lessons): what ours has more is a few calipers.
func TestTrayAgainstCraftLessons(t *testing.T) {
	r := metric(t, "tray", 80, 80, 28)
	r.Caliper = measure.Micrometres(10)
	r.Fit = enclosure.Range{Min: measure.Micrometres(4500), Max: measure.Micrometres(5500)}
	for walls, blank := range map[string]float64{"single": 85 + 2*30, "double": 205} {
		r.Options = choices("walls", walls)
		r.Options["depth"] = enclosure.Value{Length: measure.Millimetres(30)}
		s, err := solve.Solve(context.Background(), r)
		require.NoError(t, err)
		assert.InDelta(t, blank, s.Ideal.Pieces[0].Width.Millimetres(), 0.1)
		assert.InDelta(t, blank, s.Ideal.Pieces[0].Height.Millimetres(), 0.1)
	}
}

// By hand for contents of 3 x 5 x 1 1/2 in in 0.012 in stock with 1/16 to 1/8 in
// of clearance: tabs need 1/8 in and half of 1/8 in, and have half of 5 + 0.012
// + 1/16 = 5.0745 in or the wall's 1.506 in and a caliper; walls need five
// calipers more than tabs, rolled ones 0.137 in besides. Bounds are rounded
// inwards to 1/64 in.
func TestTrayRefusals(t *testing.T) {
	for _, c := range []struct{ option, value, walls, field, expected string }{
		{"tab", "3 in", "single", "tab", "from 1/4 in to 1 1/2 in"},
		{"depth", "1/4 in", "double", "depth", "from 7/16 in to 3 in"},
		{"depth", "0.2 in", "single", "depth", "from 1/4 in to 19 5/8 in"},
	} {
		t.Run(c.option, func(t *testing.T) {
			r := thick(t, "tray")
			r.Options = choices("walls", c.walls)
			r.Options[c.option] = enclosure.Value{Length: measure.MustParse(c.value)}
			checkImpossible(t, r, c.field, c.expected)
		})
	}
	r := thick(t, "tray")
	r.Thickness = measure.MustParse("1/8 in")
	checkImpossible(t, r, "thickness", "at least 1/4 in")
}

// checkImpossible checks that a request is refused for a field and its bound.
func checkImpossible(t *testing.T, r *solve.Request, field, expected string) {
	t.Helper()
	_, err := solve.Solve(context.Background(), r)
	var faults fault.Faults
	require.True(t, errors.As(err, &faults), "%v", err)
	var found []string
	for _, f := range faults {
		assert.Equal(t, fault.Impossible, f.Code, "%v", f)
		found = append(found, f.Field+": "+f.Expected)
	}
	assert.Contains(t, found, field+": "+expected)
}

func BenchmarkSolveTray(b *testing.B) { benchmarkThick(b, "tray") }
