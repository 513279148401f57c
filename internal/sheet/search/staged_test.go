package search

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/sheet"
	"creasefit/internal/sheet/verify"
)

// inStages returns every set of pieces that a rectangle can give in so many
// stages, the first of cuts along an axis, every cut at every position.
func (s *slow) inStages(w, h int, a sheet.Axis, stages int) map[string]bool {
	out := map[string]bool{s.text(make([]int, len(s.items))): true}
	for i := range s.items {
		if s.is(i, w, h) {
			counts := make([]int, len(s.items))
			counts[i] = 1
			out[s.text(counts)] = true
		}
	}
	if stages == 0 {
		return out
	}
	for key := range s.inStages(w, h, a.Other(), stages-1) {
		out[key] = true
	}
	if a == sheet.Width && h <= s.trimmer {
		for at := 1; at < w; at++ {
			s.merge(out, s.inStages(at, h, a.Other(), stages-1), s.inStages(max(0, w-at-s.kerf), h, a, stages))
		}
	}
	if a == sheet.Height && w <= s.trimmer {
		for at := 1; at < h; at++ {
			s.merge(out, s.inStages(w, at, a.Other(), stages-1), s.inStages(w, max(0, h-at-s.kerf), a, stages))
		}
	}
	return out
}

// ofBoth puts the sets of both first axes in place of those of any cuts.
func (s *slow) ofBoth(w, h, stages int) {
	both := s.inStages(w, h, sheet.Width, stages)
	for key := range s.inStages(w, h, sheet.Height, stages) {
		both[key] = true
	}
	s.memo[sizeKey(w, h)] = both
}

// An order of two or three stages needs no fewer sheets than trying everything
// says, and at most one more; a bound is none above it.
func TestStagesAgainstBruteForce(t *testing.T) {
	exact, orders := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		o, s := tinyOrder(t)
		o.Stages = rapid.IntRange(2, 3).Draw(t, "stages")
		w, h := int(o.Sheets[0].Width.Millimetres()), int(o.Sheets[0].Height.Millimetres())
		if w*h > 42 || o.Check() != nil {
			return
		}
		s.ofBoth(w, h, o.Stages)
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

// Without counts a sheet gives exactly as many as trying everything says.
func TestYieldInStagesEqualsBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o, s := tinyOrder(t)
		o.Items, o.Stages = o.Items[:1], rapid.IntRange(2, 3).Draw(t, "stages")
		o.Items[0].Count = 0
		w, h := int(o.Sheets[0].Width.Millimetres()), int(o.Sheets[0].Height.Millimetres())
		if w*h > 42 || o.Check() != nil {
			return
		}
		s.items = []sheet.Item{o.Items[0]}
		s.items[0].Count = 200
		most := 0
		s.ofBoth(w, h, o.Stages)
		for key := range s.cuts(w, h) {
			most = max(most, int(key[0]))
		}
		a, err := Plan(context.Background(), o)
		if most == 0 {
			require.Error(t, err)
			return
		}
		require.NoError(t, err)
		require.NoError(t, verify.Plan(o, a))
		assert.Equal(t, most, a.PerSheet)
	})
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
