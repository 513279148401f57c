package search

import (
	"fmt"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/sheet"
)

// gcut reads one of the sets gcut1 to gcut13 (J. E. Beasley, J. Opl. Res.
// Soc. 36 (1985) 297-306): the board and the value of each kind.
func gcut(t testing.TB, name string, turning bool) (*board, []int64) {
	n := numbers(t, published(t, "gcut/"+name+".txt"))
	var sizes [][2]int
	var values []int64
	for at := 3; at+2 < len(n); at += 3 {
		sizes = append(sizes, [2]int{n[at], n[at+1]})
		values = append(values, int64(n[at+2]))
	}
	require.Len(t, sizes, n[0])
	return plainBoard(n[1], n[2], sizes, turning), values
}

// The optima of Beasley (1985) and Cintra et al., EJOR 191 (2008) 61-85.
func TestPublishedUnconstrainedOptima(t *testing.T) {
	t.Parallel()
	table := rows(t, published(t, "known_gcut_unconstrained.csv"))
	require.Len(t, table, 26)
	for _, row := range table {
		if row[0] == "gcut13" && testing.Short() {
			continue
		}
		t.Run(row[0]+"/"+row[1], func(t *testing.T) {
			want, err := strconv.ParseInt(row[2], 10, 64)
			require.NoError(t, err)
			b, values := gcut(t, row[0], row[1] == "1")
			tab := newTable(b)
			got, ok := tab.solve(endless(), values)
			require.True(t, ok)
			assert.Equal(t, want, got)
			sum := int64(0)
			w, h := replay(t, b, tab.trace(), func(k int32) { sum += values[k] })
			assert.Equal(t, want, sum)
			assert.True(t, w <= b.w && h <= b.h)
		})
	}
}

// replay returns the least rectangle of a layout and reports its pieces.
func replay(t require.TestingT, b *board, l *layout, piece func(kind int32)) (w, h int32) {
	if l.low == nil {
		piece(l.kind)
		for _, f := range b.faces {
			if f.kind == l.kind && f.turned == l.turned {
				return f.w, f.h
			}
		}
		require.Fail(t, "a piece lies in a way that it may not")
	}
	lw, lh := replay(t, b, l.low, piece)
	hw, hh := replay(t, b, l.high, piece)
	if l.axis == sheet.Width {
		return lw + hw, max(lh, hh)
	}
	return max(lw, hw), lh + hh
}

func BenchmarkGcut(b *testing.B) {
	for i := 1; i <= 13; i++ {
		for _, turning := range []bool{false, true} {
			b.Run(fmt.Sprintf("%d/turning=%t", i, turning), func(b *testing.B) {
				board, values := gcut(b, fmt.Sprintf("gcut%d", i), turning)
				for b.Loop() {
					_, ok := newTable(board).solve(endless(), values)
					require.True(b, ok)
				}
			})
		}
	}
}
