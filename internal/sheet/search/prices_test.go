package search

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The example that opens V. Chvatal, Linear Programming (1983), from memory: the most of
// 5a + 4b + 3c with 2a + 3b + c <= 5, 4a + b + 2c <= 11 and 3a + 4b + 2c <= 8 is 13, at
// a = 2, b = 0, c = 1.
func TestPricesOfATextbook(t *testing.T) {
	d := newDuals([]float64{5, 4, 3})
	d.add([]float64{2, 3, 1}, 5)
	d.add([]float64{4, 1, 2}, 11)
	d.add([]float64{3, 4, 2}, 8)
	require.True(t, d.optimize(endless(), 100))
	assert.InDeltaSlice(t, []float64{2, 0, 1}, d.prices(), 1e-9)
	assert.InDeltaSlice(t, []float64{1, 0, 1}, d.uses(), 1e-9)
}

// Prices and uses prove one another best: no pattern is priced above its cost, the uses
// cover every need, and both are worth the same (J. von Neumann's duality). It holds
// again after every further pattern.
func TestPricesAndUsesProveOneAnother(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kinds := rapid.IntRange(1, 6).Draw(t, "kinds")
		needs := make([]float64, kinds)
		for k := range needs {
			needs[k] = float64(rapid.IntRange(0, 9).Draw(t, "need"))
		}
		d := newDuals(needs)
		var rows [][]float64
		var costs []float64
		add := func(row []float64, cost float64) {
			rows, costs = append(rows, row), append(costs, cost)
			d.add(row, cost)
		}
		for k := range needs { // a sheet of each kind alone, so that every need can be covered
			row := make([]float64, kinds)
			row[k] = 1
			add(row, float64(rapid.IntRange(1, 9).Draw(t, "cost")))
		}
		for range rapid.IntRange(0, 8).Draw(t, "patterns") {
			row := make([]float64, kinds)
			for k := range row {
				row[k] = float64(rapid.IntRange(0, 3).Draw(t, "count"))
			}
			add(row, float64(rapid.IntRange(1, 9).Draw(t, "cost")))
			require.True(t, d.optimize(endless(), 1000))
			provenBest(t, rows, costs, needs, d)
		}
	})
}

// provenBest checks that prices and uses are feasible and of the same worth.
func provenBest(t *rapid.T, rows [][]float64, costs, needs []float64, d *duals) {
	prices, uses := d.prices(), d.uses()
	require.Len(t, uses, len(rows))
	worth, cost, covered := 0.0, 0.0, make([]float64, len(needs))
	for r, row := range rows {
		sum := 0.0
		for k, n := range row {
			sum += n * prices[k]
			covered[k] += n * uses[r]
		}
		require.LessOrEqual(t, sum, costs[r]+1e-6)
		require.GreaterOrEqual(t, uses[r], 0.0)
		cost += uses[r] * costs[r]
	}
	for k, need := range needs {
		require.GreaterOrEqual(t, covered[k], need-1e-6)
		require.GreaterOrEqual(t, prices[k], 0.0)
		worth += need * prices[k]
	}
	require.InDelta(t, cost, worth, 1e-6)
}

// Rounded prices are never above the true ones and lose less than a part of the scale.
func TestScaledPricesRoundDown(t *testing.T) {
	value, one := scaled([]float64{0.5, 0.25, 0, 1.0 / 3})
	assert.Equal(t, []int64{priceScale, priceScale / 2, 0, 715827882}, value)
	assert.Equal(t, 2.0*priceScale, one)
}

// Of patterns worth 3, 4 and 5 at costs of 2, 2 and 4 the second exceeds its cost most;
// none does where all are worth their cost at most.
func TestOverpricedPatterns(t *testing.T) {
	two, four := &board{cost: 2}, &board{cost: 4}
	list := []pattern{{board: two, counts: []int32{1, 1}}, {board: two, counts: []int32{0, 2}}, {board: four, counts: []int32{3, 1}}}
	assert.Equal(t, 1, overpriced(list, []float64{1, 2}))
	assert.Equal(t, -1, overpriced(list, []float64{1, 1}))
}
