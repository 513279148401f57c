package search

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// limited is a constrained instance: sizes, copies and values.
type limited struct {
	w, h   int
	sizes  [][2]int
	copies []int
	values []int64
}

// solve returns the greatest value and checks the layout that gives it.
func (l limited) solve(t *testing.T, turning bool) int64 {
	b := plainBoard(l.w, l.h, l.sizes, turning)
	tab := newTable(b)
	_, ok := tab.solve(endless(), l.values)
	require.True(t, ok)
	pack, ok := newPacking(l.copies)
	require.True(t, ok)
	search := newBounded(endless(), tab, pack, l.copies, 5_000_000)
	value, sure := search.run()
	require.True(t, sure)
	sum, counts := int64(0), make([]int, len(l.sizes))
	w, h := replay(t, b, search.best.layout, func(k int32) { counts[k]++; sum += l.values[k] })
	assert.True(t, w <= b.w && h <= b.h)
	assert.Equal(t, value, sum)
	for k := range counts {
		assert.LessOrEqual(t, counts[k], l.copies[k])
	}
	return value
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

// Without limits that bind, the search must reach the table's value: on small
// boards of random kinds, and with limits that of every set there is.
func TestBoundedEqualsEnumeration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := limited{w: rapid.IntRange(4, 14).Draw(t, "w"), h: rapid.IntRange(4, 14).Draw(t, "h")}
		for range rapid.IntRange(1, 4).Draw(t, "kinds") {
			l.add(rapid.IntRange(1, l.w).Draw(t, "pw"), rapid.IntRange(1, l.h).Draw(t, "ph"), rapid.IntRange(1, 3).Draw(t, "copies"), rapid.IntRange(1, 40).Draw(t, "value"))
		}
		b := plainBoard(l.w, l.h, l.sizes, rapid.Bool().Draw(t, "turning"))
		tab := newTable(b)
		_, ok := tab.solve(endless(), l.values)
		require.True(t, ok)
		pack, ok := newPacking(l.copies)
		require.True(t, ok)
		got, sure := newBounded(endless(), tab, pack, l.copies, 1_000_000).run()
		require.True(t, sure)
		kinds := make([]kind, len(l.sizes))
		all := listed(t, b, kinds, l.copies)
		want := int64(0)
		for _, code := range all.codes {
			sum := int64(0)
			for k, v := range l.values {
				sum += int64(all.count(code, k)) * v
			}
			want = max(want, sum)
		}
		assert.Equal(t, want, got)
	})
}
