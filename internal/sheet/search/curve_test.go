package search

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/sheet"
)

// corners draws some rectangles.
func corners(t *rapid.T, name string) (list []corner) {
	for range rapid.IntRange(1, 6).Draw(t, name) {
		list = append(list, corner{rapid.Int32Range(1, 12).Draw(t, "w"), rapid.Int32Range(1, 12).Draw(t, "h")})
	}
	return list
}

// shaped is the shape curve of some rectangles.
func shaped(list []corner) (c curve) {
	for _, p := range list {
		c = c.add(p)
	}
	return c
}

// least are the rectangles that hold no other, narrowest first: the definition.
func least(list []corner) curve {
	out := curve{}
	for _, p := range list {
		if !slices.ContainsFunc(list, func(q corner) bool { return q != p && q.w <= p.w && q.h <= p.h }) && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	slices.SortFunc(out, func(p, q corner) int { return int(p.w - q.w) })
	return out
}

// A curve has the rectangles that hold no other, whatever the order they come in.
func TestCurvesKeepTheLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := corners(t, "list")
		want := least(list)
		assert.Equal(t, want, shaped(list))
		assert.Equal(t, want, shaped(rapid.Permutation(list).Draw(t, "again")))
	})
}

// Joining two curves gives what joining every rectangle of one with every one of the
// other does, as far as the board holds it, the trimmer divides it and it is no larger
// than it may be.
func TestJoinsEqualAllPairs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := &board{w: rapid.Int32Range(4, 20).Draw(t, "board"), h: rapid.Int32Range(4, 20).Draw(t, "board"), limit: rapid.Int32Range(3, 20).Draw(t, "limit")}
		low, high, most := shaped(corners(t, "low")), shaped(corners(t, "high")), rapid.Int64Range(10, 300).Draw(t, "most")
		var all []corner
		for _, p := range low {
			for _, q := range high {
				if r := (corner{p.w + q.w, max(p.h, q.h)}); r.w <= b.w && r.h <= b.h && r.h <= b.limit && r.area() <= most {
					all = append(all, r)
				}
				if r := (corner{max(p.w, q.w), p.h + q.h}); r.w <= b.w && r.h <= b.h && r.w <= b.limit && r.area() <= most {
					all = append(all, r)
				}
			}
		}
		assert.ElementsMatch(t, least(all), curve(nil).joins(b, low, high, most))
	})
}

// What is split off two curves fits the rectangle, one corner of each, and is found
// wherever there is one.
func TestSplitsFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := &board{w: 20, h: 20, limit: rapid.Int32Range(3, 20).Draw(t, "limit")}
		low, high := shaped(corners(t, "low")), shaped(corners(t, "high"))
		within := corner{rapid.Int32Range(2, 20).Draw(t, "w"), rapid.Int32Range(2, 20).Draw(t, "h")}
		a, p, q, ok := b.split(low, high, within)
		joined := curve(nil).joins(b, low, high, math.MaxInt64)
		require.Equal(t, slices.ContainsFunc(joined, func(r corner) bool { return r.w <= within.w && r.h <= within.h }), ok)
		if !ok {
			return
		}
		assert.Contains(t, low, p)
		assert.Contains(t, high, q)
		across := max(p.along(a.Other()), q.along(a.Other()))
		assert.LessOrEqual(t, p.along(a)+q.along(a), within.along(a))
		assert.LessOrEqual(t, across, min(within.along(a.Other()), b.limit))
	})
}

// Sides are taken by an axis and given by one.
func TestCornersByAxes(t *testing.T) {
	c := corner{3, 5}
	assert.Equal(t, []int32{3, 5}, []int32{c.along(sheet.Width), c.along(sheet.Height)})
	assert.Equal(t, c, sides(sheet.Width, 3, 5))
	assert.Equal(t, c, sides(sheet.Height, 5, 3))
	assert.EqualValues(t, 15, c.area())
}
