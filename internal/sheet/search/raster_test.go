package search

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Of pieces of 4 and 7 in a length of 15 the sums are 0, 4, 7, 8, 11, 12, 14 and 15; a
// raster point is the greatest sum left of what another leaves over: of 15 itself 15, of
// 11 (which 4 leaves) 11, of 8 and 7 these, of 4, 3, 1 and 0 the sums 4 and 0.
func TestRasterPointsByHand(t *testing.T) {
	assert.Equal(t, []int32{0, 4, 7, 8, 11, 12, 14, 15}, sumPoints(15, []int32{7, 4, 7}))
	assert.Equal(t, []int32{0, 4, 7, 8, 11, 15}, rasterPoints(15, []int32{4, 7}))
	assert.Equal(t, []int32{0, 0, 0, 0, 1, 1, 1, 2, 3, 3, 3, 4, 4, 4, 4, 5}, floors([]int32{0, 4, 7, 8, 11, 15}, 15))
}

// fullGrid is the greatest value of every rectangle of a board by trying every cut: the
// recursion itself, without raster points or lists of useful parts.
func fullGrid(b *board, value []int64) int64 {
	best := make([][]int64, b.w+1)
	for w := range best {
		best[w] = make([]int64, b.h+1)
		for h := range best[w] {
			for _, f := range b.faces {
				if int(f.w) <= w && int(f.h) <= h {
					best[w][h] = max(best[w][h], value[f.kind])
				}
			}
			for at := 1; at < w && b.crossable(int32(h)); at++ {
				best[w][h] = max(best[w][h], best[at][h]+best[w-at][h])
			}
			for at := 1; at < h && b.crossable(int32(w)); at++ {
				best[w][h] = max(best[w][h], best[w][at]+best[w][h-at])
			}
		}
	}
	return best[b.w][b.h]
}

// drawnBoard draws a board with some kinds and their values.
func drawnBoard(t *rapid.T, most int) (*board, []int64) {
	w, h := rapid.IntRange(3, most).Draw(t, "w"), rapid.IntRange(3, most).Draw(t, "h")
	var sizes [][2]int
	for range rapid.IntRange(1, 6).Draw(t, "kinds") {
		sizes = append(sizes, [2]int{rapid.IntRange(1, w).Draw(t, "pw"), rapid.IntRange(1, h).Draw(t, "ph")})
	}
	b := plainBoard(w, h, sizes, rapid.Bool().Draw(t, "turning"))
	return b, rapid.SliceOfN(rapid.Int64Range(0, 60), len(sizes), len(sizes)).Draw(t, "values")
}

// The table over raster points finds what trying every cut at every position does, and
// its layout has that value; asked for other values, it forgets the old ones.
func TestTablesEqualTheFullGrid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, values := drawnBoard(t, 25)
		b.limit = rapid.Int32Range(min(b.w, b.h), max(b.w, b.h)).Draw(t, "limit") // else no first cut goes
		b.faces = slices.DeleteFunc(b.faces, func(f face) bool { return max(f.w, f.h) > b.limit })
		tab := newTable(b)
		for range 2 {
			got, ok := tab.solve(endless(), values)
			require.True(t, ok)
			require.Equal(t, fullGrid(b, values), got)
			if got > 0 {
				sum := int64(0)
				w, h := replay(t, b, tab.trace(), func(k int32) { sum += values[k] })
				assert.Equal(t, got, sum)
				assert.True(t, w <= b.w && h <= b.h)
			} else {
				assert.Nil(t, tab.trace())
			}
			values = rapid.SliceOfN(rapid.Int64Range(0, 9), len(values), len(values)).Draw(t, "again")
		}
	})
}

// A table that is cut short goes on where it was, and comes to the same.
func TestTablesGoOn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, values := drawnBoard(t, 25)
		want, _ := newTable(b).solve(endless(), values)
		tab, turns := newTable(b), 0
		for {
			e := endless()
			e.left = rapid.Int64Range(1, 40).Draw(t, "steps")
			got, ok := tab.solve(e, values)
			if turns++; ok {
				assert.Equal(t, want, got)
				return
			}
			require.Less(t, turns, 1000)
		}
	})
}

// Rows in stages never find more than all cuts do, three stages no less than two, and
// where pieces are all as high as the board two stages find all there is.
func TestRowsAreWithinTheTable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, values := drawnBoard(t, 25)
		solved := func(list ...pricer) (most int64) {
			for _, p := range list {
				v, ok := p.solve(endless(), values)
				require.True(t, ok)
				sum := int64(0)
				if v > 0 {
					w, h := replay(t, b, p.trace(), func(k int32) { sum += values[k] })
					require.True(t, w <= b.w && h <= b.h)
				}
				require.Equal(t, v, sum)
				most = max(most, v)
			}
			return most
		}
		all, three, two := solved(newTable(b)), solved(rowsOn(b, true, false)...), solved(rowsOn(b, false, false)...)
		assert.LessOrEqual(t, two, three)
		assert.LessOrEqual(t, three, all)
		assert.LessOrEqual(t, two, solved(rowsOn(b, false, true)...), "trimmed in a further stage")
		for i := range b.faces {
			b.faces[i].h = b.h
		}
		assert.Equal(t, solved(newTable(b)), solved(rowsOn(b, false, false)...))
	})
}
