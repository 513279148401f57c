package search

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/verify"
)

// An order of two or three stages needs no fewer sheets than trying everything
// says, and at most one more; a bound is none above it.
func TestStagesAgainstBruteForce(t *testing.T) {
	exact, orders := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		o, s := tinyOrder(t)
		w, h := s.inStages(t, &o)
		if o.Stages == 0 || o.Check() != nil {
			return
		}
		want := s.fewest(w, h)
		o.Effort = 100 * time.Millisecond
		a, err := Plan(context.Background(), o)
		if want == 99 {
			require.Error(t, err)
			return
		}
		require.NoError(t, err)
		require.NoError(t, verify.Plan(o, a))
		assert.LessOrEqual(t, a.Work.Stages, o.Stages)
		assert.LessOrEqual(t, a.LowerBound, int64(want))
		assert.GreaterOrEqual(t, a.Sheets, want)
		assert.LessOrEqual(t, a.Sheets, want+1)
		orders++
		if a.Sheets == want {
			exact++
		}
	})
	assert.GreaterOrEqual(t, 100*exact, 98*orders, "%d of %d orders have a plan with the fewest sheets", exact, orders)
}

// Fewer stages are never fewer sheets.
func TestStagesOfACraftOrder(t *testing.T) {
	o := stallOrder(t)
	before := 0
	for _, stages := range []int{0, 3, 2} {
		o.Stages = stages
		a, _ := plannedWith(t, o, 40_000_000)
		t.Logf("%d stages: %d sheets, bound %d, %d settings, %d stages", stages, a.Sheets, a.LowerBound, a.Work.Settings, a.Work.Stages)
		assert.GreaterOrEqual(t, a.Sheets, before)
		before = a.Sheets
		assert.True(t, stages == 0 || a.Work.Stages <= stages)
	}
}

// A sheet of 7 mm is one of 6 in units of the labels, which a trimmer of 6 mm cuts
// across only once it is trimmed: by another stage.
func TestStagesCountWhatUnitsHide(t *testing.T) {
	mm := func(n int) measure.Length { return measure.Millimetres(int64(n)) }
	ruler, err := measure.ParseStep("1 mm")
	require.NoError(t, err)
	o := sheet.Order{Ruler: ruler, Trimmer: mm(6), Stages: 2, Sheets: []sheet.Stock{{Width: mm(7), Height: mm(4), Grain: sheet.AlongWidth}},
		Items: []sheet.Item{{Name: "tag", Width: mm(2), Height: mm(2)}}}
	a, err := Plan(context.Background(), o)
	require.NoError(t, err)
	require.NoError(t, verify.Plan(o, a))
	assert.Equal(t, 6, a.PerSheet)
	assert.Equal(t, 2, a.Work.Stages)
}
