package search

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// limited is a constrained instance: sizes, copies and values.
type limited struct {
	w, h   int
	sizes  [][2]int
	copies []int
	values []int64
}

// solve returns the greatest value of all sets of pieces there are, and checks the
// layout of the set that has it.
func (l limited) solve(t *testing.T, turning bool) int64 {
	b := plainBoard(l.w, l.h, l.sizes, turning)
	kinds := make([]kind, len(l.sizes))
	for k, s := range l.sizes {
		kinds[k].area = int64(s[0]) * int64(s[1])
	}
	all := listed(t, b, kinds, l.copies)
	worth, best, most := worthOf(all, l.values), uint64(0), int64(0)
	for _, code := range all.codes {
		if v := worth(code); v > most {
			best, most = code, v
		}
	}
	sum, counts := int64(0), make([]int, len(l.sizes))
	w, h := replay(t, b, all.layout(best, corner{b.w, b.h}), func(k int32) { counts[k]++; sum += l.values[k] })
	assert.True(t, w <= b.w && h <= b.h)
	assert.Equal(t, most, sum)
	for k := range counts {
		assert.LessOrEqual(t, counts[k], l.copies[k])
	}
	return most
}

// add appends one kind.
func (l *limited) add(w, h, copies, value int) {
	l.sizes = append(l.sizes, [2]int{w, h})
	l.copies = append(l.copies, copies)
	l.values = append(l.values, int64(value))
}

// The optima of N. Christofides, C. Whitlock, Operations Research 25 (1977)
// 30-44.
func TestPublishedConstrainedOptima(t *testing.T) {
	for i, want := range []int64{244, 2892, 1860} {
		n := numbers(t, published(t, fmt.Sprintf("cgcut/cgcut%d.txt", i+1)))
		l := limited{w: n[1], h: n[2]}
		for at := 3; at+3 < len(n); at += 4 {
			l.add(n[at], n[at+1], n[at+2], n[at+3])
		}
		require.Len(t, l.sizes, n[0])
		assert.Equal(t, want, l.solve(t, false), "cgcut%d", i+1)
	}
}

// The sets of J. E. Beasley, Operations Research 33 (1985) 49-64, are made for
// cuts that need not go from edge to edge; these are their optima with
// edge-to-edge cuts, computed by two other programs. The file goes on with sets whose optima are not known.
func TestSmallConstrainedOptima(t *testing.T) {
	fixed := []int64{164, 230, 247, 268, 358, 289, 430, 834, 924, 1452, 1688, 1865}
	turned := []int64{193, 250, 259, 268, 370, 298, 430, 886, 924, 1452, 1786, 1932}
	n := numbers(t, published(t, "ngcut/ngcutap.txt"))
	require.Equal(t, 21, n[0])
	at := 1
	for i := range fixed {
		kinds := n[at]
		l := limited{w: n[at+1], h: n[at+2]}
		for at += 3; len(l.sizes) < kinds; at += 5 {
			l.add(n[at], n[at+1], n[at+3], n[at+4])
		}
		assert.Equal(t, fixed[i], l.solve(t, false), "ngcut%d fixed", i+1)
		assert.Equal(t, turned[i], l.solve(t, true), "ngcut%d turned", i+1)
	}
}
