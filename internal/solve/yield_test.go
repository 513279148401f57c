package solve_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/solve"
)

// countedBand is the strip of common practice, 8 1/4 x 1 3/4 in, with its
// yield of a sheet.
func countedBand(t testing.TB, width, height string, grain sheet.Side) *solve.Solution {
	r := request(t, "slotted-band", "3.5 in", "0.09 in", "0.012 in", 0)
	r.Options["band_height"] = enclosure.Value{Length: measure.MustParse("1 3/4 in")}
	r.SheetWidth, r.SheetHeight, r.Grain = measure.MustParse(width), measure.MustParse(height), grain
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	require.NoError(t, s.CountYields(context.Background()))
	return s
}

// By hand: six bands lie one above the other in 12 in, which leaves 3 3/4 in
// beside them for two that are turned. The scores run along the height of the
// band: if they must keep the grain, those two fall away, whichever way the
// grain runs on a square sheet.
func TestYieldOfABand(t *testing.T) {
	const used = 8.25 * 1.75 / 144
	for name, c := range map[string]struct {
		width, height string
		grain         sheet.Side
		want          solve.Yield
	}{
		"grain unknown":       {"12 in", "12 in", sheet.AnySide, solve.Yield{Counted: true, PerSheet: 8, Turned: 2, Used: 8 * used}},
		"along the height":    {"12 in", "12 in", sheet.AlongHeight, solve.Yield{Counted: true, PerSheet: 6, Used: 6 * used, Grain: solve.GrainAlong}},
		"along the width":     {"12 in", "12 in", sheet.AlongWidth, solve.Yield{Counted: true, PerSheet: 6, Turned: 6, Used: 6 * used, Grain: solve.GrainAlong}},
		"across alone":        {"9 in", "2 in", sheet.AlongWidth, solve.Yield{Counted: true, PerSheet: 1, Used: 144 * used / 18, Grain: solve.GrainAcross}},
		"larger than a sheet": {"8 in", "8 in", sheet.AlongWidth, solve.Yield{Counted: true}},
		"hundreds":            {"60 in", "60 in", sheet.AnySide, solve.Yield{}},
	} {
		t.Run(name, func(t *testing.T) {
			s := countedBand(t, c.width, c.height, c.grain)
			require.Len(t, s.Yields, 1)
			got := s.Yields[0]
			assert.InDelta(t, c.want.Used, got.Used, 1e-9)
			c.want.Used = got.Used
			if c.want.Turned == 2 {
				assert.Contains(t, []int{2, 6}, got.Turned, "the other way round is as good")
				c.want.Turned = got.Turned
			}
			assert.Equal(t, c.want, got)
		})
	}
}

// Without a sheet nothing is counted, and a context that has ended is heeded.
func TestYieldIsCountedOnlyOfASheet(t *testing.T) {
	r := request(t, "slotted-band", "3.5 in", "0.09 in", "0.012 in", 0)
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	require.NoError(t, s.CountYields(context.Background()))
	assert.Empty(t, s.Yields)
	r.SheetWidth, r.SheetHeight = measure.Inches(12), measure.Inches(12)
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	require.ErrorIs(t, s.CountYields(ended), context.Canceled)
}

func BenchmarkCountYields(b *testing.B) {
	s := countedBand(b, "12 in", "12 in", sheet.AnySide)
	for b.Loop() {
		s.Yields = nil
		if err := s.CountYields(context.Background()); err != nil {
			b.Fatal(err)
		}
	}
}
