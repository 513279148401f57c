package search

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// Every set of pieces is laid out with just those pieces, also where none is
// wanted of a kind in between: such a kind takes no bits of a set's code.
func TestSetsAreLaidOutInFull(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(4, 12).Draw(t, "w"), rapid.IntRange(4, 12).Draw(t, "h")
		var sizes [][2]int
		var need []int
		for range rapid.IntRange(2, 5).Draw(t, "kinds") {
			sizes = append(sizes, [2]int{rapid.IntRange(1, w).Draw(t, "pw"), rapid.IntRange(1, h).Draw(t, "ph")})
			need = append(need, rapid.IntRange(0, 2).Draw(t, "need"))
		}
		b := plainBoard(w, h, sizes, rapid.Bool().Draw(t, "turning"))
		kinds := make([]kind, len(sizes))
		for k, s := range sizes {
			kinds[k].area = int64(s[0]) * int64(s[1])
		}
		s := listed(t, b, kinds, need)
		for _, code := range s.codes {
			counts := make([]int32, len(sizes))
			tally(s.layout(code, corner{b.w, b.h}), counts)
			for k := range counts {
				assert.Equal(t, s.count(code, k), int(counts[k]), "kind %d of set %b", k, code)
			}
		}
	})
}

// listed are all sets of so many pieces of each kind that a board gives.
func listed(t require.TestingT, b *board, kinds []kind, need []int) *sets {
	s := newSets(b, kinds, need, 1_000_000_000)
	for k := range kinds {
		whole, err := s.enumerate(endless(), k)
		require.NoError(t, err)
		require.True(t, whole)
	}
	return s
}

// Blanks that lie on one size of sheet only are none of another's: the plan
// for this order once left such blanks out and was called proven.
func TestBlanksOfOneSizeOfSheetAreMade(t *testing.T) {
	um := measure.Micrometres
	eighth, err := measure.ParseStep("1/8 in")
	require.NoError(t, err)
	o := sheet.Order{Ruler: eighth, Effort: sheet.DefaultEffort, Margin: in(t, "3/8"), Minimize: sheet.LeastCost,
		Sheets: []sheet.Stock{
			{Width: in(t, "7 3/8"), Height: in(t, "7 3/8"), Grain: sheet.AlongHeight, Price: 6},
			{Width: in(t, "6 5/8"), Height: in(t, "12"), Grain: sheet.AlongWidth, Price: 15},
		},
		Items: []sheet.Item{
			{Width: um(60_325), Height: um(139_700), Count: 6, Grain: sheet.AlongHeight},
			{Width: um(146_100), Height: um(47_625), Count: 2},
			{Width: um(34_925), Height: um(31_750), Count: 2},
			{Width: um(85_725), Height: um(123_825), Count: 4},
			{Width: um(92_075), Height: um(9_525), Count: 2, Grain: sheet.AlongHeight},
			{Width: um(9_525), Height: um(171_450), Count: 1},
		},
	}
	a := planned(t, o)
	assert.Equal(t, []int{6, 2, 2, 4, 2, 1}, a.Made)
	assert.Equal(t, int64(39), a.Cost)
	assert.True(t, a.Proven)
}
