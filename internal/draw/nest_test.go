package draw_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/draw"
)

// Never more areas than trying everything finds, on 60 cases, in half of them with one
// more thing on each area; nothing overlaps and nothing sticks out.
func TestNestTakesTheFewestAreas(t *testing.T) {
	laid := 0
	for seed := range uint64(60) {
		random := rand.New(rand.NewPCG(seed, 7))
		wide, high := 5+random.IntN(3), 6+random.IntN(3)
		var sizes []draw.Point
		var whole [][2]int
		for range 2 + random.IntN(4) {
			w, h := 1+random.IntN(wide), 1+random.IntN(5)
			whole = append(whole, [2]int{w, h})
			sizes = append(sizes, draw.Point{X: float64(w), Y: float64(h)})
		}
		var each [2]int
		if seed%2 == 1 {
			each = [2]int{1 + random.IntN(wide-1), 1}
		}
		spots, more, ok := draw.Nest(sizes, draw.Point{X: float64(wide), Y: float64(high)}, draw.Point{X: float64(each[0]), Y: float64(each[1])})
		least := fewest(whole, each, wide, high)
		if assert.Equal(t, least > 0, ok, "seed %d: %v and %v on %d x %d", seed, whole, each, wide, high); !ok {
			continue
		}
		laid++
		for range more {
			sizes = append(sizes, draw.Point{X: float64(each[0]), Y: float64(each[1])})
		}
		spots = append(spots, more...)
		areas := 0
		boxes := make([]draw.Box, len(spots))
		for i, s := range spots {
			size := sizes[i]
			if s.Turned {
				size = draw.Point{X: size.Y, Y: size.X}
			}
			boxes[i] = draw.Box{Low: s.At, High: draw.Point{X: s.At.X + size.X, Y: s.At.Y + size.Y}}
			assert.LessOrEqual(t, boxes[i].High.X, float64(wide)+1e-6)
			assert.LessOrEqual(t, boxes[i].High.Y, float64(high)+1e-6)
			for k := range i {
				assert.False(t, spots[k].Area == s.Area && boxes[i].Meets(boxes[k]), "seed %d: %d over %d", seed, i, k)
			}
			areas = max(areas, s.Area+1)
		}
		assert.Equal(t, least, areas, "seed %d: %v and %v on %d x %d", seed, whole, each, wide, high)
	}
	assert.Greater(t, laid, 50)
}

func TestNestSaysWhatIsTooLarge(t *testing.T) {
	_, _, ok := draw.Nest([]draw.Point{{X: 3, Y: 3}, {X: 8, Y: 2}}, draw.Point{X: 7, Y: 7}, draw.Point{})
	assert.False(t, ok)
	spots, _, ok := draw.Nest([]draw.Point{{X: 2, Y: 8}}, draw.Point{X: 8, Y: 2}, draw.Point{})
	assert.True(t, ok)
	assert.True(t, spots[0].Turned)
}

// Five rectangles and one more fill 5 x 7 to the last cell.
func TestNestFillsAnArea(t *testing.T) {
	sizes := []draw.Point{{X: 1, Y: 2}, {X: 4, Y: 3}, {X: 3, Y: 5}, {X: 2, Y: 1}, {X: 1, Y: 2}}
	_, more, ok := draw.Nest(sizes, draw.Point{X: 5, Y: 7}, draw.Point{X: 2, Y: 1})
	assert.True(t, ok)
	assert.Len(t, more, 1)
}
