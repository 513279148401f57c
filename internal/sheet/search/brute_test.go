package search

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/verify"
)

// slow is a slow and obvious planner for tiny sheets: whole millimetres, every
// cut at every position.
type slow struct {
	items   []sheet.Item
	kerf    int
	trimmer int
	grain   sheet.Side
	stages  int // of every cutting, or anyStages
	memo    map[slowKey]map[string]bool
}

// slowKey is a rectangle that may still be cut in so many stages, the first of cuts
// along an axis.
type slowKey struct {
	w, h   int
	axis   sheet.Axis
	stages int
}

// anyStages is any number of stages.
const anyStages = -1

// cuts returns every set of pieces (as counts) that a sheet can give.
func (s *slow) cuts(w, h int) map[string]bool {
	out := map[string]bool{}
	for _, a := range []sheet.Axis{sheet.Width, sheet.Height} {
		maps.Copy(out, s.from(slowKey{w, h, a, s.stages}))
	}
	return out
}

// from returns those that a rectangle can give.
func (s *slow) from(r slowKey) map[string]bool {
	axes := []sheet.Axis{r.axis}
	if r.stages == anyStages {
		r.axis, axes = sheet.Width, []sheet.Axis{sheet.Width, sheet.Height}
	}
	if m, ok := s.memo[r]; ok {
		return m
	}
	out := map[string]bool{s.text(make([]int, len(s.items))): true}
	for i := range s.items {
		if s.is(i, r.w, r.h) {
			counts := make([]int, len(s.items))
			counts[i] = 1
			out[s.text(counts)] = true
		}
	}
	if r.stages > 0 {
		maps.Copy(out, s.from(r.next(r.axis)))
	}
	for _, a := range axes {
		s.divide(out, r, a)
	}
	s.memo[r] = out
	return out
}

// next is the rectangle in the stage after cuts along an axis.
func (r slowKey) next(a sheet.Axis) slowKey {
	r.axis = a.Other()
	if r.stages > 0 {
		r.stages--
	}
	return r
}

// divide adds what cuts along an axis give.
func (s *slow) divide(out map[string]bool, r slowKey, a sheet.Axis) {
	low, high, whole, across := r.next(a), r, r.w, r.h
	size, rest := &low.w, &high.w
	if a == sheet.Height {
		size, rest, whole, across = &low.h, &high.h, r.h, r.w
	}
	for at := 1; at < whole && across <= s.trimmer && r.stages != 0; at++ {
		*size, *rest = at, max(0, whole-at-s.kerf)
		s.merge(out, s.from(low), s.from(high))
	}
}

// is reports whether a rectangle is an item.
func (s *slow) is(i, w, h int) bool {
	it := s.items[i]
	iw, ih := int(it.Width.Millimetres()), int(it.Height.Millimetres())
	straight := w == iw && h == ih && (it.Grain == sheet.AnySide || it.Grain == s.grain)
	turned := w == ih && h == iw && (it.Grain == sheet.AnySide || it.Grain != s.grain)
	return straight || turned
}

// merge adds every sum of two sets that is wanted.
func (s *slow) merge(out, low, high map[string]bool) {
	for a := range low {
		for b := range high {
			sum := make([]int, len(s.items))
			ok := true
			for i := range sum {
				sum[i] = int(a[i]) + int(b[i])
				ok = ok && sum[i] <= s.items[i].Count
			}
			if ok {
				out[s.text(sum)] = true
			}
		}
	}
}

// text makes counts a key.
func (s *slow) text(counts []int) string {
	b := make([]byte, len(counts))
	for i, n := range counts {
		b[i] = byte(n)
	}
	return string(b)
}

// fewest is the least number of sheets, or 99.
func (s *slow) fewest(w, h int) int {
	sets := s.cuts(w, h)
	reach := map[string]bool{s.text(make([]int, len(s.items))): true}
	want := make([]int, len(s.items))
	for i := range want {
		want[i] = s.items[i].Count
	}
	for n := 1; n <= 12; n++ {
		next := map[string]bool{}
		s.merge(next, reach, sets)
		if next[s.text(want)] {
			return n
		}
		reach = next
	}
	return 99
}

// tinyOrder draws an order that the slow planner can do.
func tinyOrder(t *rapid.T) (sheet.Order, *slow) {
	mm := func(n int) measure.Length { return measure.Millimetres(int64(n)) }
	ruler, err := measure.ParseStep("1 mm")
	require.NoError(t, err)
	w, h := rapid.IntRange(3, 9).Draw(t, "w"), rapid.IntRange(3, 9).Draw(t, "h")
	s := &slow{grain: sheet.AlongHeight, memo: map[slowKey]map[string]bool{}, trimmer: 99, stages: anyStages}
	s.kerf = rapid.SampledFrom([]int{0, 0, 0, 1}).Draw(t, "kerf")
	o := sheet.Order{Sheets: []sheet.Stock{{Width: mm(w), Height: mm(h), Grain: sheet.AlongHeight, Price: 3}}, Ruler: ruler, Kerf: mm(s.kerf)}
	if rapid.IntRange(0, 3).Draw(t, "bounded") == 0 {
		s.trimmer = rapid.IntRange(2, 9).Draw(t, "trimmer")
		o.Trimmer = mm(s.trimmer)
	}
	for i := range rapid.IntRange(1, 4).Draw(t, "items") {
		it := sheet.Item{Name: fmt.Sprint("item ", i), Width: mm(rapid.IntRange(1, w).Draw(t, "iw")), Height: mm(rapid.IntRange(1, h).Draw(t, "ih"))}
		it.Count = rapid.IntRange(1, 3).Draw(t, "count")
		it.Grain = rapid.SampledFrom([]sheet.Side{sheet.AnySide, sheet.AnySide, sheet.AlongWidth, sheet.AlongHeight}).Draw(t, "grain")
		o.Items = append(o.Items, it)
	}
	s.items = o.Items
	return o, s
}

func TestMixedOrdersEqualBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o, s := tinyOrder(t)
		want := s.fewest(int(o.Sheets[0].Width.Millimetres()), int(o.Sheets[0].Height.Millimetres()))
		a, err := counted(o, littleWork)
		if want == 99 {
			require.Error(t, err)
			return
		}
		require.NoError(t, err)
		require.NoError(t, verify.Plan(o, a))
		assert.Equal(t, want, a.Sheets)
		assert.True(t, a.Proven)
	})
}

// On a coarse grid no bound is above what trying everything needs of the sizes as given,
// a hair less than whole millimetres, and no plan below it; the reader is told.
func TestCoarseOrdersAgainstBruteForce(t *testing.T) {
	exact, orders := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		o, s := tinyOrder(t)
		o.Trimmer, s.trimmer = measure.Length{}, 99 // what is a hair less must be trimmed
		if o.Check() != nil {
			return
		}
		want := s.fewest(int(o.Sheets[0].Width.Millimetres()), int(o.Sheets[0].Height.Millimetres()))
		o.Items = slices.Clone(o.Items)
		for i := range o.Items {
			o.Items[i].Width = o.Items[i].Width.Sub(measure.Nanometres(int64(1 + i)))
		}
		e := endless()
		e.left = 1_000_000
		a, err := newProblem(o).planWith(e, nil)
		require.NoError(t, err)
		require.NoError(t, verify.Plan(o, a))
		assert.LessOrEqual(t, a.LowerBound, int64(want))
		assert.GreaterOrEqual(t, a.Sheets, want)
		assert.Len(t, a.Warnings, 1)
		orders++
		if a.LowerBound == int64(want) {
			exact++
		}
	})
	assert.GreaterOrEqual(t, 2*exact, orders, "%d of %d bounds are all that is needed", exact, orders)
}

// Without counts a sheet gives exactly as many as trying everything says, in two or
// three stages or any number.
func TestYieldsEqualBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o, s := tinyOrder(t)
		w, h := s.inStages(t, &o)
		o.Items = o.Items[:1]
		o.Items[0].Count = 0
		s.items = []sheet.Item{o.Items[0]}
		s.items[0].Count = 200
		most := 0
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

// inStages draws the stages that an order may have, on sheets that are not too large
// for trying them all.
func (s *slow) inStages(t *rapid.T, o *sheet.Order) (w, h int) {
	w, h = int(o.Sheets[0].Width.Millimetres()), int(o.Sheets[0].Height.Millimetres())
	if n := rapid.SampledFrom([]int{0, 2, 3}).Draw(t, "stages"); n > 0 && w*h <= 42 {
		o.Stages, s.stages = n, n
	}
	return w, h
}
