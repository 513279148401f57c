package solve

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// By hand: a sleeve round 195 x 160 x 24 mm, made at 33 % and used at 66 %. Its
// folds run along the height and so does the grain; its back, 197.5 mm wide, lies
// across it and grows by 0.2 to 0.4 %, 0.3 in the middle.
func TestSleeveInAnotherSeason(t *testing.T) {
	ask := func(made, used float64) *Solution {
		q := seen(t, "sleeve", 1, 195, 160, 24)
		q.Step = measure.Finest(measure.Millimetre)
		q.Season = Season{made, used}
		s, err := Solve(context.Background(), q)
		require.NoError(t, err)
		require.Equal(t, sheet.AlongHeight, FoldSide(&s.Pattern.Pieces[0]))
		return s
	}
	now, damp, dry := ask(0, 0), ask(33, 66), ask(66, 33)
	back := func(s *Solution) float64 { return s.Pattern.Pieces[0].Strips[0].Cells[2].Size.Millimetres() }
	room := func(s *Solution) float64 { return back(s) - 195 - 0.3 }
	assert.InDelta(t, room(now), now.Fits[0].Nominal.Millimetres(), 1e-6)
	assert.InDelta(t, room(damp)+0.003*197.55, damp.Fits[0].Nominal.Millimetres(), 0.01)
	assert.InDelta(t, room(dry)-0.003*197.55, dry.Fits[0].Nominal.Millimetres(), 0.01)
	assert.Less(t, back(damp), back(dry), "what shrinks is made wider")
	// The range about the middle, 0.1 % of the back, is one more error of the clearance.
	width := func(s *Solution) float64 { return s.Fits[0].WorstCase.Max.Sub(s.Fits[0].WorstCase.Min).Millimetres() }
	assert.InDelta(t, width(now)+2*0.001*back(damp), width(damp), 1e-3)
}

// A lid and its tray are of the same paper and grow alike: between them all stays
// as it is but for what they differ by.
func TestLidGrowsWithItsTray(t *testing.T) {
	q := seen(t, "lidded-box", 1, 200, 150, 40)
	now, err := Solve(context.Background(), q)
	require.NoError(t, err)
	damp := *q
	damp.Season = Season{20, 80}
	later, err := Solve(context.Background(), &damp)
	require.NoError(t, err)
	for i, f := range later.Fits {
		if f.Between != "" {
			assert.InDelta(t, now.Fits[i].Chance, f.Chance, 0.002)
		}
	}
}
