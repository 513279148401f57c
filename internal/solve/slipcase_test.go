package solve_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

func TestRandomSlipcasesFoldUp(t *testing.T) {
	checkRandom(t, "slipcase", measure.Millimetres(60))
}

// A worksheet of the University of Brighton makes a slipcase for a book of 113
// x 157 x 12 mm from boards of 2 mm: sides of 115 x 163 mm, a back and ends 14
// mm wide. Its play is 2 mm in height and thickness and none in width.
func TestSlipcaseAgainstTheWorksheet(t *testing.T) {
	k, _ := repertoire.Lookup("slipcase")
	two, half := measure.Millimetres(2), measure.Micrometres(500)
	s, err := solve.Solve(context.Background(), &solve.Request{
		Kind: k, Unit: measure.Millimetre, Ruler: measure.Marks(measure.Millimetre)[3], Caliper: two,
		Width: measure.Millimetres(113), Height: measure.Millimetres(157), Thickness: measure.Millimetres(12),
		Fit: enclosure.Range{Min: two.Sub(half), Max: two.Add(half)},
	})
	require.NoError(t, err)
	across, up := s.Ideal.Pieces[0].Strips[0].Cells, s.Ideal.Pieces[0].Strips[1].Cells
	assert.Equal(t, measure.Millimetres(163), up[2].Size.Add(two), "the side's height, outside")
	assert.Equal(t, measure.Millimetres(14), up[1].Size.Sub(two), "the ends, inside")
	margin := across[0].Size.Add(two.Over(2)).Sub(measure.Millimetres(115))
	assert.True(t, margin.Sign() >= 0 && !measure.Millimetres(3).Less(margin), "the side's width, outside: %v more", margin)
}

func BenchmarkSolveSlipcase(b *testing.B) { benchmarkKind(b, "slipcase") }

func BenchmarkSolveSlipcaseWithNotches(b *testing.B) {
	r := request(b, "slipcase", "5 in", "0.5 in", "0.012 in", 1)
	r.Height = measure.MustParse("7 in")
	r.Options["notch"] = enclosure.Value{Length: measure.MustParse("3/4 in")}
	benchmarkSolve(b, r)
}
