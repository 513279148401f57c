package solve_test

import (
	"context"
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
	"creasefit/internal/tolerance"
)

func TestRandomDiagonalEnvelopesFoldUp(t *testing.T) {
	checkRandom(t, "diagonal-envelope", measure.Sixtyfourths(9))
}

// Plain geometry: the corners of a square folded in meet edge to edge round a
// rectangle of w x h when its side is (w + h) / sqrt 2, and overlap by a margin
// when it is larger by that. The thinnest paper without clearance leaves only
// seven calipers between the plain figure and the blank.
func TestDiagonalEnvelopeAgainstPlainGeometry(t *testing.T) {
	for _, c := range []struct {
		name          string
		unit          measure.Unit
		width, height string
		side          float64 // in units, with no margin
	}{
		{"5 x 7 in", measure.Inch, "7 in", "5 in", 8.485281},
		{"4 1/4 x 5 1/2 in", measure.Inch, "5.5 in", "4.25 in", 6.894291},
		{"5 1/4 x 7 1/4 in", measure.Inch, "7.25 in", "5.25 in", 8.838835},
		{"14 x 24 cm", measure.Millimetre, "240 mm", "140 mm", 268.70058},
	} {
		for _, margin := range []int64{0, 10} {
			r := diagonalRequest(c.unit, c.width, c.height, measure.Millimetres(margin))
			plan, err := r.Kind.Plan(&enclosure.Input{
				Unit: c.unit, Width: r.Width, Height: r.Height, Caliper: r.Caliper, Given: r.Options, Params: r.Kind.Params,
			})
			require.NoError(t, err)
			blank := plan.Build(plan.Ideals()).Pieces[0].Width.Sub(measure.Millimetres(margin))
			unit := 1.0
			if c.unit == measure.Inch {
				unit = 25.4
			}
			calipers := 7 * r.Caliper.Millimetres() / math.Sqrt2
			assert.InDelta(t, c.side*unit+calipers, blank.Millimetres(), 0.5e-5*25.4, "%s, margin %d mm", c.name, margin)
		}
	}
}

func diagonalRequest(unit measure.Unit, width, height string, overlap measure.Length) *solve.Request {
	k, _ := repertoire.Lookup("diagonal-envelope")
	marks := measure.Marks(unit)
	return &solve.Request{
		Kind: k, Unit: unit, Width: measure.MustParse(width), Height: measure.MustParse(height), Caliper: measure.MustParse("0.01 mm"),
		Ruler: marks[len(marks)-1], Options: map[string]enclosure.Value{"overlap": {Length: overlap}},
	}
}

// A craft lesson's 29.5 cm square for a card of 24 x 14 cm has an overlap of
// 2.63 cm by plain geometry: the fold proof agrees that what the solver makes
// of that overlap closes, and that the square is as large.
func TestDiagonalEnvelopeOfACraftLesson(t *testing.T) {
	r := diagonalRequest(measure.Millimetre, "240 mm", "140 mm", measure.Millimetres(26))
	r.Fit = enclosure.Range{Max: measure.Millimetres(1)}
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	assert.InDelta(t, 295, s.Pattern.Pieces[0].Width.Millimetres(), 1)
	checkFolded(t, s)
}

// The chance that the contents go in must be what the marks along the side
// give once they are carried across the folds: sqrt 2 of each error.
func TestDiagonalToleranceStack(t *testing.T) {
	r := diagonalRequest(measure.Millimetre, "148 mm", "105 mm", measure.Millimetres(15))
	r.Fit, r.CutError, r.ScoreError = enclosure.NamedFits()[2].MillimetreRange, measure.Micrometres(400), measure.Micrometres(300)
	r.SizeTolerance = tolerance.Within(measure.Micrometres(200))
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	width := s.Fits[0]
	require.Equal(t, pattern.Width, width.Axis)
	assert.Equal(t, r.Fit, width.Window)
	assert.InDelta(t, math.Sqrt2*(0.4+0.3)+0.2, width.Nominal.Sub(width.WorstCase.Min).Millimetres(), 1e-5)
	assert.InDelta(t, math.Sqrt(2*(0.16+0.09)+0.04), width.Nominal.Sub(width.RSS.Min).Millimetres(), 1e-5)
	height := s.Fits[1]
	assert.InDelta(t, math.Sqrt2*0.3+0.2, height.Nominal.Sub(height.WorstCase.Min).Millimetres(), 1e-5)
}

// By hand: 2 x 100 - sqrt 2 x 5 x 0.01 - 1.5 = 198.4 mm is the longest that
// goes with 100 mm, to the next mark down.
func TestDiagonalEnvelopeRefusesFlapsPastTheFolds(t *testing.T) {
	refusal := func(r *solve.Request) fault.Fault {
		r.Fit = enclosure.Range{Max: measure.Micrometres(1500)}
		_, err := solve.Solve(context.Background(), r)
		var faults fault.Faults
		require.True(t, errors.As(err, &faults), "%v", err)
		require.Len(t, faults, 1)
		assert.Equal(t, fault.Impossible, faults[0].Code)
		return faults[0]
	}
	long := refusal(diagonalRequest(measure.Millimetre, "230 mm", "100 mm", measure.Length{}))
	assert.Equal(t, []string{"width", "at most 198 mm"}, []string{long.Field, long.Expected})
	tall := refusal(diagonalRequest(measure.Millimetre, "100 mm", "230 mm", measure.Length{}))
	assert.Equal(t, []string{"height", "at most 198 mm"}, []string{tall.Field, tall.Expected})
	wide := refusal(diagonalRequest(measure.Millimetre, "148 mm", "105 mm", measure.Millimetres(60)))
	assert.Equal(t, "overlap", wide.Field)
	assert.Equal(t, "at most 42.5 mm", wide.Expected)
}

// A request that no reading meets names the clearance across the folds, not
// along the side.
func TestDiagonalNoFitSpeaksOfTheClearance(t *testing.T) {
	r := diagonalRequest(measure.Millimetre, "148 mm", "105 mm", measure.Millimetres(15))
	r.Fit = enclosure.Range{Min: measure.Millimetres(1), Max: measure.Millimetres(1)}
	_, err := solve.Solve(context.Background(), r)
	assert.ErrorContains(t, err, "clearance along the width between 1 mm and 1 mm")
}

func BenchmarkSolveDiagonalEnvelope(b *testing.B) { benchmarkKind(b, "diagonal-envelope") }
