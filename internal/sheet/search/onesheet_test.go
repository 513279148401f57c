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

// TestFittingEqualsEnumeration fits random pieces to small boards and asks the
// enumeration of all sets whether they come out of one.
func TestFittingEqualsEnumeration(t *testing.T) {
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(4, 12).Draw(t, "w"), rapid.IntRange(4, 12).Draw(t, "h")
		var sizes [][2]int
		var kinds []kind
		var pieces []int32
		area := 0
		for len(kinds) < 7 {
			pw, ph := rapid.IntRange(1, min(w, 6)).Draw(t, "pw"), rapid.IntRange(1, min(h, 6)).Draw(t, "ph")
			if area += pw * ph; area > w*h {
				break
			}
			pieces = append(pieces, int32(len(kinds)))
			sizes, kinds = append(sizes, [2]int{pw, ph}), append(kinds, kind{need: 1, area: int64(pw * ph)})
		}
		if len(pieces) == 0 {
			return
		}
		b := plainBoard(w, h, sizes, rapid.Bool().Draw(t, "turning"))
		ones := make([]int, len(kinds))
		for i := range ones {
			ones[i] = 1
		}
		all := listed(t, b, kinds, ones)
		_, fits := all.index[1<<len(kinds)-1]
		var f fitting
		l, sure := f.fit(endless(), b, facesOf(b, len(kinds)), kinds, pieces)
		require.True(t, sure)
		require.Equal(t, fits, l != nil)
		if l != nil {
			found++
			lw, lh := replay(t, b, l, func(int32) {})
			require.True(t, lw <= b.w && lh <= b.h)
		}
	})
	assert.Positive(t, found)
}

// TestOneFullSheet cuts a sheet into sixteen different blanks without waste and
// finds them back; one blank that is longer by one mark does not go in.
func TestOneFullSheet(t *testing.T) {
	o := sheet.Order{Sheets: []sheet.Stock{{Width: measure.Millimetres(160), Height: measure.Millimetres(160)}}, Ruler: measure.Marks(measure.Millimetre)[2]}
	rows := [][]int64{{37, 41, 31, 51}, {23, 59, 47, 31}, {67, 29, 43, 21}, {19, 53, 61, 27}}
	for i, height := range []int64{33, 47, 29, 51} {
		for j, width := range rows[i] {
			o.Items = append(o.Items, sheet.Item{Name: fmt.Sprint(i, " ", j), Width: measure.Millimetres(width), Height: measure.Millimetres(height), Count: 1})
		}
	}
	a := proven(t, o, 400_000_000)
	assert.Equal(t, 1, a.Sheets)
	assert.True(t, a.Proven)
	o.Items[0].Width, o.Items[1].Width = measure.Millimetres(36), measure.Millimetres(40)
	o.Items[15].Height = measure.Millimetres(53)
	a = proven(t, o, 400_000_000)
	assert.Equal(t, 2, a.Sheets)
	assert.True(t, a.Proven)
}
