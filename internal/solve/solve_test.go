package solve_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// request makes a request on an inch ruler with marks of 1/16 in.
func request(t testing.TB, kind, width, thickness, caliper string, fit int) *solve.Request {
	t.Helper()
	k, ok := enclosure.Lookup(kind)
	require.True(t, ok)
	named := enclosure.NamedFits()[fit]
	return &solve.Request{
		Kind: k, Unit: measure.Inch, Width: measure.MustParse(width), Thickness: measure.MustParse(thickness),
		Caliper: measure.MustParse(caliper), Ruler: measure.Marks(measure.Inch)[4],
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
	b.ReportAllocs()
	for b.Loop() {
		if _, err := solve.Solve(context.Background(), r); err != nil {
			b.Fatal(err)
		}
	}
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

// Board as thick as the ruler's mark is coarse: the lap lies off by exactly what
// is allowed, and arithmetic must not make that more.
func TestLapOffByExactlyOneMark(t *testing.T) {
	r := thick(t, "band")
	r.Width, r.Thickness, r.Caliper = measure.Micrometres(37_591), measure.MustParse("1 1/2 in"), measure.MustParse("1/16 in")
	r.Ruler, r.Fit = measure.Marks(measure.Inch)[5], enclosure.NamedFits()[0].Range(measure.Inch)
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	assert.Equal(t, s.Proof.Tolerance, s.Proof.Gap)
}
