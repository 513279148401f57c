package solve_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// request makes a request on an inch ruler with marks of 1/16 in.
func request(t testing.TB, kind, width, thickness, caliper string, fit int) *solve.Request {
	t.Helper()
	k, ok := repertoire.Lookup(kind)
	require.True(t, ok)
	named := enclosure.NamedFits()[fit]
	return &solve.Request{
		Kind: k, Unit: measure.Inch, Width: measure.MustParse(width), Thickness: measure.MustParse(thickness),
		Caliper: measure.MustParse(caliper), WallGive: enclosure.WallGive(measure.MustParse(caliper), measure.Length{}), Ruler: measure.Marks(measure.Inch)[4],
		CutError: measure.Sixtyfourths(2), ScoreError: measure.Sixtyfourths(2),
		FitName: named.Name, Fit: named.Range(measure.Inch),
		Options: map[string]enclosure.Value{},
	}
}

// The strip of common practice: 3 1/2 in wide and 0.09 in thick in paper of
// 0.012 in, tabs of 1/2 in, 1 3/4 in high, snug.
func TestSlottedBandOfCommonPractice(t *testing.T) {
	r := request(t, "slotted-band", "3.5 in", "0.09 in", "0.012 in", 0)
	r.Options["band_height"] = enclosure.Value{Length: measure.MustParse("1 3/4 in")}
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	assert.Equal(t, "1/8 in", s.Step.String())
	piece := s.Pattern.Pieces[0]
	assert.Equal(t, "8 1/4 in", s.Step.Format(piece.Width))
	var scores []string
	for _, at := range piece.Strips[0].Positions()[1:5] {
		scores = append(scores, s.Step.Format(at))
	}
	assert.Equal(t, []string{"1/2 in", "2 1/4 in", "5 7/8 in", "7 3/4 in"}, scores)
	assert.True(t, s.Proof.Closes && s.Proof.Holds)
	assert.Equal(t, "snug", s.Fits[0].Verdict)
}

func BenchmarkSolveSlottedBand(b *testing.B) {
	r := request(b, "slotted-band", "3.5 in", "0.09 in", "0.012 in", 0)
	benchmarkSolve(b, r)
}

// A play that is deeper than the band leaves room for is cut down to that: the
// ideal slits stay within the band.
func TestSlitsStayWithinTheBand(t *testing.T) {
	r := thick(t, "slotted-band")
	r.Options["band_height"], r.Options["slit_play"] = enclosure.Value{Length: measure.MustParse("7/8 in")}, enclosure.Value{Length: measure.MustParse("3/4 in")}
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	checkFolded(t, s)
	for _, cut := range s.Pattern.Pieces[0].Cuts {
		assert.False(t, measure.MustParse("5/8 in").Less(cut.Depth), "1/4 in is left")
	}
}

// A gap closes within what the asked fit leaves open, not within the step: board
// of 1/16 in leaves its whole caliper between two equal sides at 1/8 in, and next
// to nothing at 1/16 in.
func TestClosesWithinTheFit(t *testing.T) {
	r := thick(t, "sleeve")
	r.Caliper, r.Ruler = measure.MustParse("0.06 in"), measure.Marks(measure.Inch)[4]
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	assert.Equal(t, "1/16 in", s.Step.String())
	assert.Less(t, s.Proof.Gap.Millimetres(), 0.07)
	assert.Equal(t, r.Fit.Max.Sub(r.Fit.Min).Over(2), s.Proof.Tolerance)

	r.Step = measure.Marks(measure.Inch)[3]
	_, err = solve.Solve(context.Background(), r)
	require.ErrorContains(t, err, "no readings at 1/8 in close within 0.031 in: the nearest leave 0.06 in")
	var faults fault.Faults
	require.NoError(t, faults.Add(err))
	assert.Contains(t, faults[0].Hint, "readings at 1/16 in")
}
