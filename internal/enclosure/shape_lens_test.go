package enclosure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
)

// arcs are curved scores of 100 mm: half of their angle, their radius and rise,
// the folded width, and the volume of a pack 150 mm long in mm3 (computed from
// the definition in arXiv 2509.02049).
var arcs = []struct{ half, radius, rise, folded, volume float64 }{
	{20, 146.1902, 8.8163, 97.8581, 158604.9},
	{30, 100.0000, 13.3975, 94.8025, 225438.2},
	{45, 70.7107, 20.7107, 84.7213, 304251.9},
}

// integrate integrates a function over the arc's width by the midpoint rule,
// which stays clear of its ends.
func integrate(width float64, f func(s float64) float64) float64 {
	const n = 200_000
	sum := 0.0
	for k := range n {
		sum += f(width * (float64(k) + 0.5) / n)
	}
	return sum * width / n
}

// The bent section agrees with the table, and so does an integration of it that
// shares nothing with the catalogue; the chords come near to both.
func TestLensAgainstTable(t *testing.T) {
	const width, long = 100, 150
	for _, c := range arcs {
		half := c.half * math.Pi / 180
		assert.InDelta(t, c.radius, width/2/math.Sin(half), 1e-4)
		assert.InDelta(t, c.rise, c.radius*(1-math.Cos(half)), 1e-4)
		score := func(s float64) float64 {
			return math.Sqrt(c.radius*c.radius-(s-width/2)*(s-width/2)) - c.radius + c.rise
		}
		grows := func(s float64) float64 {
			slope := (s - width/2) / math.Sqrt(c.radius*c.radius-(s-width/2)*(s-width/2))
			return math.Sqrt(max(0, 1-slope*slope))
		}
		assert.InDelta(t, c.folded, integrate(width, grows), 2e-4)
		volume := 4 * integrate(width, func(s float64) float64 { return score(s) * (long/2 - score(s)) * grows(s) })
		assert.InDelta(t, c.volume, volume, 2, "the table has the rise to 1e-4 mm")

		middle := measure.Nanometres(int64(math.Round(2 * c.rise * 1e6)))
		l := newLens(measure.Millimetres(width), middle)
		assert.InEpsilon(t, c.folded, l.folded(), 0.005)
		assert.InDelta(t, c.rise, l.rise[len(l.rise)/2], 1e-6, "the middle is where it is asked for")
		assert.InEpsilon(t, c.volume, l.volume(long), 0.01)
		assert.InDelta(t, math.Tan(half/2), curveBulge(measure.Millimetres(width), middle), 1e-6)
	}
	assert.InDelta(t, math.Tan(45*math.Pi/180/2), steepest, 1e-12)
}

// volume is that of a pack whose section is the lens: of each facet four
// corners, whose ends are cut off as far in as it is high (Simpson's rule, which
// is exact for it).
func (l lens) volume(long float64) float64 {
	sum := 0.0
	part := func(z float64) float64 { return z * (long/2 - z) }
	for i := 1; i < len(l.along); i++ {
		a, b := l.rise[i-1], l.rise[i]
		sum += (part(a) + 4*part((a+b)/2) + part(b)) / 6 * (l.along[i] - l.along[i-1])
	}
	return 4 * sum
}

// At half of its height, without a caliper, the section is as wide as between
// the places where it is that high.
func TestLensInside(t *testing.T) {
	l := newLens(measure.Millimetres(100), measure.Millimetres(30))
	z := l.rise[4]
	assert.InDelta(t, l.folded()-2*l.along[4], l.inside(z, 0), 1e-9)
	assert.Less(t, l.inside(z, 0.5), l.inside(z, 0))
}
