package search

import (
	"fmt"
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

// inOrder are so many kinds as they are numbered.
func inOrder(kinds int) []int32 {
	order := make([]int32, kinds)
	for k := range order {
		order[k] = int32(k)
	}
	return order
}

// listed are all sets of so many pieces of each kind that a board gives.
func listed(t require.TestingT, b *board, kinds []kind, need []int) *sets {
	s := newSets(b, inOrder(len(kinds)), need, 1_000_000_000)
	for k := range kinds {
		require.True(t, s.enumerate(endless(), k))
	}
	return s
}

// No set is left out because of the room that it is said to take, in whatever order kinds
// are listed.
func TestMeasuresLeaveOutNoSet(t *testing.T) {
	leftOut := 0
	rapid.Check(t, func(t *rapid.T) {
		o, _ := tinyOrder(t)
		if o.Check() != nil {
			return
		}
		pl := newProblem(o).newPlanner(endless())
		plain := listed(t, &pl.boards[0], pl.kinds, pl.caps(&pl.boards[0]))
		pl.boundByArea()
		pl.boundByExtents()
		n := pl.newEnumeration()
		require.True(t, n.list())
		assert.Len(t, n.sets[0].codes, len(plain.codes))
		known := map[string]bool{}
		for _, code := range n.sets[0].codes {
			known[fmt.Sprint(n.sets[0].counts(code))] = true
		}
		for _, code := range plain.codes {
			require.True(t, known[fmt.Sprint(plain.counts(code))])
		}
		if n.sets[0].budget > plain.budget-1_000_000_000+mostSplits {
			leftOut++
		}
	})
	assert.Positive(t, leftOut, "orders of which fewer sets are parted")
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

// The parts of a set that come no later than what they leave are all ways to part it in
// two, each once: as many as counting says.
func TestPartsOfASet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		need := rapid.SliceOfN(rapid.IntRange(0, 3), 1, 5).Draw(t, "need")
		s := newSets(&board{w: 1, h: 1}, inOrder(len(need)), need, 0)
		code, ways := uint64(0), 1
		for k, n := range need {
			n = rapid.IntRange(0, n).Draw(t, "count")
			code += uint64(n) << s.shift[k]
			ways *= n + 1
			require.Equal(t, n, s.count(code, k))
		}
		seen := map[uint64]bool{}
		for part := range s.parts(code) {
			for k := range need {
				require.Equal(t, s.count(code, k), s.count(part, k)+s.count(code-part, k))
			}
			require.False(t, seen[part] || seen[code-part])
			seen[part], seen[code-part] = true, true
		}
		assert.Len(t, seen, max(0, ways-2))
	})
}

// A sheet met again is kept once, whatever the order and the place of its pieces; another
// number of pieces or another size of sheet is another, and so is one that wastes less.
func TestHoardsKeepEverySheetOnce(t *testing.T) {
	b := plainBoard(10, 10, [][2]int{{5, 5}, {5, 10}}, false)
	other := *b
	other.stock = 1
	made := func(b *board, faces ...int16) draft {
		d := newDraft(b)
		for _, f := range faces {
			d.insert(d.places(f)[0])
		}
		return d
	}
	h := &hoard{allow: []int64{25, 25}, seen: map[string]bool{}}
	drafts := []draft{made(b, 0, 1, 0), made(b, 1, 0, 0), made(b, 0, 1), made(&other, 0, 1), made(b, 1), newDraft(b), made(b, 1, 1)}
	h.keep(drafts, []bool{true, true, true, true, true, true, false}, 2)
	var counts [][]int32
	for _, pt := range h.patterns {
		counts = append(counts, append(pt.counts, int32(pt.board.stock)))
	}
	assert.Equal(t, [][]int32{{2, 1, 0}, {1, 1, 0}, {1, 1, 1}}, counts)
}
