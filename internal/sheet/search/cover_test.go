package search

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// coverCase is a small choice of patterns on two boards, one of them in stock.
type coverCase struct {
	boards   []board
	patterns []pattern
	need     []int32
}

// drawnCover draws one, with a pattern of each kind alone on the first board.
func drawnCover(t *rapid.T) *coverCase {
	c := &coverCase{boards: []board{{stock: 0, cost: 2}, {stock: 1, cost: rapid.Int64Range(1, 3).Draw(t, "cost"), available: rapid.IntRange(1, 2).Draw(t, "stock")}}}
	for range rapid.IntRange(1, 3).Draw(t, "kinds") {
		c.need = append(c.need, rapid.Int32Range(0, 3).Draw(t, "need"))
	}
	for k := range c.need {
		counts := make([]int32, len(c.need))
		counts[k] = 1
		c.patterns = append(c.patterns, pattern{board: &c.boards[0], counts: counts})
	}
	for range rapid.IntRange(0, 4).Draw(t, "patterns") {
		counts := make([]int32, len(c.need))
		for k := range counts {
			counts[k] = rapid.Int32Range(0, 2).Draw(t, "count")
		}
		c.patterns = append(c.patterns, pattern{board: &c.boards[rapid.IntRange(0, 1).Draw(t, "board")], counts: counts})
	}
	return c
}

// least is the least cost by trying every pattern next.
func (c *coverCase) least(left []int32, stocked int) int64 {
	if !some(left) {
		return 0
	}
	best := int64(math.MaxInt32)
	for i := range c.patterns {
		pt := &c.patterns[i]
		used := stocked
		if pt.board.available > 0 {
			used++
		}
		if pt.gain([]int64{1, 1, 1}[:len(left)], left) == 0 || used > c.boards[1].available {
			continue
		}
		rest := make([]int32, len(left))
		for k := range rest {
			rest[k] = max(0, left[k]-pt.counts[k])
		}
		best = min(best, pt.board.cost+c.least(rest, used))
	}
	return best
}

// A cover is found at every cost that suffices and at none that does not, and what is
// chosen takes just what is wanted.
func TestCoversEqualBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawnCover(t)
		value := make([]int64, len(c.need))
		top := int64(1)
		for k := range value {
			value[k] = rapid.Int64Range(1, 5).Draw(t, "value")
		}
		for i := range c.patterns { // what a unit of cost is worth at most
			top = max(top, ceilDiv(c.patterns[i].worth(value), c.patterns[i].board.cost))
		}
		want := c.least(c.need, 0)
		for cost := max(0, want-2); cost <= want+1; cost++ {
			s := newCover(endless(), c.patterns, []weights{{value: value, top: top}}, c.need, math.MaxInt)
			found, sure := s.search(cost)
			require.True(t, sure)
			require.Equal(t, cost >= want, found, "cost %d, least %d", cost, want)
			if !found {
				continue
			}
			spent, stocked, taken := int64(0), 0, make([]int32, len(c.need))
			for _, ch := range s.chosen {
				spent += ch.pattern.board.cost
				stocked += min(ch.pattern.board.available, 1)
				for k, n := range ch.take {
					taken[k] += n
					require.LessOrEqual(t, n, ch.pattern.counts[k])
				}
			}
			assert.LessOrEqual(t, spent, cost)
			assert.LessOrEqual(t, stocked, c.boards[1].available)
			assert.Equal(t, c.need, taken)
		}
	})
}

// A search that may visit too few nodes is not sure of its no.
func TestCoversThatAreCutShortAreNotSure(t *testing.T) {
	b := &board{cost: 1}
	patterns := []pattern{{board: b, counts: []int32{1, 0}}, {board: b, counts: []int32{0, 1}}}
	w := []weights{{value: []int64{1, 1}, top: 9}}
	found, sure := newCover(endless(), patterns, w, []int32{3, 3}, 3).search(5)
	assert.Equal(t, []bool{false, false}, []bool{found, sure})
	found, sure = newCover(endless(), patterns, w, []int32{3, 3}, 1000).search(5)
	assert.Equal(t, []bool{false, true}, []bool{found, sure})
	found, sure = newCover(endless(), patterns, w, []int32{3, 3}, 1000).search(6)
	assert.Equal(t, []bool{true, true}, []bool{found, sure})
}
