package pattern_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Chords end on the arc, are the same from either end, and stay as near to the
// arc as they say.
func TestChords(t *testing.T) {
	a, b := pattern.At(measure.Millimetres(20), measure.Millimetres(7)), pattern.At(measure.Millimetres(120), measure.Millimetres(7))
	for _, bulge := range []float64{0.05, 0.2, math.Tan(math.Pi / 8), -0.2} {
		points := pattern.Chords(a, b, bulge)
		assert.Equal(t, a, points[0])
		assert.Equal(t, b, points[len(points)-1])
		back := pattern.Chords(b, a, -bulge)
		slices.Reverse(back[:])
		assert.Equal(t, points, back)
		rise := 50 * math.Abs(bulge)
		radius := (2500 + rise*rise) / (2 * rise)
		sign := math.Copysign(1, -bulge)
		for i, p := range points {
			x, y := p.X.Millimetres()-70, sign*(p.Y.Millimetres()-7)
			assert.InDelta(t, radius, math.Hypot(x, y+radius-rise), 2e-5)
			if i == 0 {
				continue
			}
			q := points[i-1]
			mx, my := (q.X.Millimetres()-70+x)/2, (sign*(q.Y.Millimetres()-7)+y)/2
			assert.InDelta(t, radius, math.Hypot(mx, my+radius-rise), 100.0/800)
		}
		mid := points[len(points)/2]
		assert.InDelta(t, rise, sign*(mid.Y.Millimetres()-7), 1e-6)
	}
}

// A half circle over 100 mm to the right comes down 50 mm.
func TestMiddle(t *testing.T) {
	a, b := pattern.At(measure.Millimetres(20), measure.Millimetres(7)), pattern.At(measure.Millimetres(120), measure.Millimetres(7))
	assert.Equal(t, pattern.At(measure.Millimetres(70), measure.Millimetres(-43)), pattern.Middle(a, b, 1))
	assert.Equal(t, pattern.At(measure.Millimetres(70), measure.Millimetres(57)), pattern.Middle(b, a, 1))
	up := pattern.At(measure.Millimetres(20), measure.Millimetres(107))
	assert.Equal(t, pattern.At(measure.Millimetres(70), measure.Millimetres(57)), pattern.Middle(a, up, 1))
}

func TestSlope(t *testing.T) {
	a := pattern.At(measure.Millimetres(0), measure.Millimetres(0))
	assert.InDelta(t, math.Sin(math.Pi/6), pattern.Slope(a, pattern.At(measure.Millimetres(10), measure.Millimetres(5))), 1e-12)
	assert.InDelta(t, 1, pattern.Slope(a, pattern.At(measure.Millimetres(1), measure.Millimetres(5))), 1e-12)
}
