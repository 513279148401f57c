package pattern_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// at is a corner in millimetres.
func at(x, y int64) pattern.Point {
	return pattern.At(measure.Millimetres(x), measure.Millimetres(y))
}

// panel is a rectangle in millimetres.
func panel(x0, y0, x1, y1 int64) pattern.Panel {
	mm := measure.Millimetres
	return pattern.Panel{Outline: pattern.Rectangle(mm(x0), mm(y0), mm(x1), mm(y1))}
}

// By hand: what edges are left of panels that lie side by side, from the lowest corner on.
func TestContours(t *testing.T) {
	windowed := panel(0, 0, 40, 30)
	windowed.Hole = pattern.Polygon(at(10, 10), at(10, 20), at(20, 20), at(20, 10))
	rounded := pattern.Panel{Outline: []pattern.Vertex{{Point: at(0, 10), Bulge: 1}, {Point: at(20, 10), Bulge: 1}}}
	for name, c := range map[string]struct {
		panels []pattern.Panel
		want   [][]pattern.Vertex
		whole  bool
	}{
		"one":                               {[]pattern.Panel{panel(0, 0, 40, 30)}, [][]pattern.Vertex{pattern.Polygon(at(0, 0), at(40, 0), at(40, 30), at(0, 30))}, true},
		"side by side":                      {[]pattern.Panel{panel(0, 0, 15, 30), panel(15, 0, 40, 30)}, [][]pattern.Vertex{pattern.Polygon(at(0, 0), at(40, 0), at(40, 30), at(0, 30))}, true},
		"smaller than the blank":            {[]pattern.Panel{panel(0, 0, 39, 30)}, [][]pattern.Vertex{pattern.Polygon(at(0, 0), at(39, 0), at(39, 30), at(0, 30))}, false},
		"one lower than the other":          {[]pattern.Panel{panel(20, 0, 40, 10), panel(0, 0, 20, 30)}, [][]pattern.Vertex{pattern.Polygon(at(0, 0), at(40, 0), at(40, 10), at(20, 10), at(20, 30), at(0, 30))}, false},
		"two flaps with a gap":              {[]pattern.Panel{panel(0, 0, 20, 30), panel(20, 0, 40, 10), panel(20, 15, 40, 30)}, [][]pattern.Vertex{pattern.Polygon(at(0, 0), at(40, 0), at(40, 10), at(20, 10), at(20, 15), at(40, 15), at(40, 30), at(0, 30))}, false},
		"corner to corner":                  {[]pattern.Panel{panel(20, 15, 40, 30), panel(0, 0, 20, 15)}, [][]pattern.Vertex{pattern.Polygon(at(0, 0), at(20, 0), at(20, 15), at(0, 15)), pattern.Polygon(at(20, 15), at(40, 15), at(40, 30), at(20, 30))}, false},
		"corner to corner, the lower first": {[]pattern.Panel{panel(0, 0, 20, 15), panel(20, 15, 40, 30)}, [][]pattern.Vertex{pattern.Polygon(at(0, 0), at(20, 0), at(20, 15), at(0, 15)), pattern.Polygon(at(20, 15), at(40, 15), at(40, 30), at(20, 30))}, false},
		"a narrow one above":                {[]pattern.Panel{panel(0, 0, 40, 10), panel(0, 10, 20, 30)}, [][]pattern.Vertex{pattern.Polygon(at(0, 0), at(40, 0), at(40, 10), at(20, 10), at(20, 30), at(0, 30))}, false},
		"a narrow one below":                {[]pattern.Panel{panel(0, 10, 40, 30), panel(0, 0, 20, 10)}, [][]pattern.Vertex{pattern.Polygon(at(0, 0), at(20, 0), at(20, 10), at(40, 10), at(40, 30), at(0, 30))}, false},
		"a window":                          {[]pattern.Panel{windowed}, [][]pattern.Vertex{pattern.Polygon(at(0, 0), at(40, 0), at(40, 30), at(0, 30)), pattern.Polygon(at(10, 10), at(10, 20), at(20, 20), at(20, 10))}, false},
		"a disc":                            {[]pattern.Panel{rounded}, [][]pattern.Vertex{{{Point: at(0, 10), Bulge: 1}, {Point: at(20, 10), Bulge: 1}}}, false},
		"a point with a second one":         {[]pattern.Panel{{Outline: pattern.Polygon(at(0, 0), at(40, 0), at(40, 0), at(40, 30), at(0, 30))}}, [][]pattern.Vertex{pattern.Polygon(at(0, 0), at(40, 0), at(40, 30), at(0, 30))}, true},
	} {
		p := pattern.Piece{Width: measure.Millimetres(40), Height: measure.Millimetres(30), Panels: c.panels}
		assert.Equal(t, c.want, p.Contours(), name)
		assert.Equal(t, c.whole, p.WholeBlank(), name)
	}
}

// Some cells of a grid, each a panel, in any order: the contours are as long as the edges
// that only one cell has, they go round as much as the cells have, and nowhere straight on.
func TestContoursOfCells(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const side = 5
		taken := rapid.SliceOfN(rapid.Bool(), side*side, side*side).Draw(t, "cells")
		has := func(x, y int) bool { return x >= 0 && y >= 0 && x < side && y < side && taken[y*side+x] }
		step := func(n int) int64 { return int64(n * (n + 3)) } // no two as wide
		var p pattern.Piece
		area, length := int64(0), int64(0)
		for x := range side {
			for y := range side {
				if !has(x, y) {
					continue
				}
				p.Panels = append(p.Panels, panel(step(x), step(y), step(x+1), step(y+1)))
				w, h := step(x+1)-step(x), step(y+1)-step(y)
				area += w * h
				for _, beside := range [...]struct {
					x, y int
					long int64
				}{{x - 1, y, h}, {x + 1, y, h}, {x, y - 1, w}, {x, y + 1, w}} {
					if !has(beside.x, beside.y) {
						length += beside.long
					}
				}
			}
		}
		p.Panels = rapid.Permutation(p.Panels).Draw(t, "order")
		round, twice := int64(0), int64(0)
		for _, ring := range p.Contours() {
			for i, v := range ring {
				next, after := ring[(i+1)%len(ring)], ring[(i+2)%len(ring)]
				mm := func(l measure.Length) int64 { return l.Nanometres() / 1_000_000 }
				round += mm(next.X.Sub(v.X).Abs()) + mm(next.Y.Sub(v.Y).Abs())
				twice += mm(v.X)*mm(next.Y) - mm(next.X)*mm(v.Y)
				require.NotEqual(t, v.X == next.X, next.X == after.X, "it turns at every corner")
				require.True(t, v.Y == ring[0].Y && !v.X.Less(ring[0].X) || ring[0].Y.Less(v.Y), "the lowest one is the first")
			}
		}
		require.Equal(t, []int64{length, 2 * area}, []int64{round, twice})
	})
}
