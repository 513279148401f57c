package draw_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
)

// brute finds the fewest areas for rectangles of whole sizes by trying every
// area and every whole place for each in turn: rectangles of whole sizes that
// fit can be pushed onto whole places.
type brute struct {
	sizes [][2]int
	w, h  int
	areas [][]bool
}

func (b *brute) fits(k int) bool {
	if k == len(b.sizes) {
		return true
	}
	for a := range b.areas {
		for turn := range 2 {
			w, h := b.sizes[k][turn], b.sizes[k][1-turn]
			for y := 0; y+h <= b.h; y++ {
				for x := 0; x+w <= b.w; x++ {
					if b.fill(a, x, y, w, h, true) {
						if b.fits(k + 1) {
							return true
						}
						b.fill(a, x, y, w, h, false)
					}
				}
			}
		}
	}
	return false
}

// fill takes or frees a rectangle's cells; it reports false, and changes
// nothing, if one of them is taken already.
func (b *brute) fill(area, x, y, w, h int, with bool) bool {
	for pass := range 2 {
		for j := y; j < y+h; j++ {
			for i := x; i < x+w; i++ {
				cell := &b.areas[area][j*b.w+i]
				if pass == 0 && with && *cell {
					return false
				}
				if pass == 1 {
					*cell = with
				}
			}
		}
	}
	return true
}

func (b *brute) least() int {
	for n := 1; ; n++ {
		b.areas = make([][]bool, n)
		for a := range b.areas {
			b.areas[a] = make([]bool, b.w*b.h)
		}
		if b.fits(0) {
			return n
		}
	}
}

// Never more areas than trying everything finds, on 60 cases; nothing overlaps
// and nothing sticks out.
func TestNestTakesTheFewestAreas(t *testing.T) {
	for seed := range uint64(60) {
		random := rand.New(rand.NewPCG(seed, 7))
		b := brute{w: 5 + random.IntN(3), h: 6 + random.IntN(3)}
		var sizes []draw.Point
		for range 2 + random.IntN(4) {
			w, h := 1+random.IntN(b.w), 1+random.IntN(5)
			b.sizes = append(b.sizes, [2]int{w, h})
			sizes = append(sizes, draw.Point{X: float64(w), Y: float64(h)})
		}
		spots, _, ok := draw.Nest(sizes, draw.Point{X: float64(b.w), Y: float64(b.h)}, draw.Point{})
		require.True(t, ok)
		areas := 0
		boxes := make([]draw.Box, len(spots))
		for i, s := range spots {
			size := sizes[i]
			if s.Turned {
				size = draw.Point{X: size.Y, Y: size.X}
			}
			boxes[i] = draw.Box{Low: s.At, High: draw.Point{X: s.At.X + size.X, Y: s.At.Y + size.Y}}
			assert.LessOrEqual(t, boxes[i].High.X, float64(b.w)+1e-6)
			assert.LessOrEqual(t, boxes[i].High.Y, float64(b.h)+1e-6)
			for k := range i {
				assert.False(t, spots[k].Area == s.Area && boxes[i].Meets(boxes[k]), "seed %d: %d over %d", seed, i, k)
			}
			areas = max(areas, s.Area+1)
		}
		assert.Equal(t, b.least(), areas, "seed %d: %v on %d x %d", seed, b.sizes, b.w, b.h)
	}
}

func TestNestSaysWhatIsTooLarge(t *testing.T) {
	_, _, ok := draw.Nest([]draw.Point{{X: 3, Y: 3}, {X: 8, Y: 2}}, draw.Point{X: 7, Y: 7}, draw.Point{})
	assert.False(t, ok)
	spots, _, ok := draw.Nest([]draw.Point{{X: 2, Y: 8}}, draw.Point{X: 8, Y: 2}, draw.Point{})
	assert.True(t, ok)
	assert.True(t, spots[0].Turned)
}
