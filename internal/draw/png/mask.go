package png

import (
	"image"
	"math"

	"golang.org/x/image/vector"
)

// point is a place of the picture in pixels, y downwards.
type point struct{ x, y float64 }

// mask is shapes of one colour: rings of points, one after the other. Rings of
// the same direction add up, those of the other direction are holes.
type mask struct {
	points []point
	rings  []int // where each ring ends
}

func (m *mask) close() { m.rings = append(m.rings, len(m.points)) }

// area adds a closed area; turned makes it run the common way round.
func (m *mask) area(ring []point, turned bool) {
	backwards := turned && signed(ring) > 0
	for i := range ring {
		if backwards {
			m.points = append(m.points, ring[len(ring)-1-i])
		} else {
			m.points = append(m.points, ring[i])
		}
	}
	m.close()
}

// signed is twice the area of a ring, positive if it runs clockwise as seen.
func signed(ring []point) float64 {
	sum := 0.0
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		sum += a.x*b.y - b.x*a.y
	}
	return sum
}

// stroke adds a line of a width, in dashes if there are any.
func (m *mask) stroke(path []point, width float64, dash []float64) {
	part, left := 0, math.Inf(1)
	if len(dash) > 0 {
		left = dash[0]
	}
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		for long := math.Hypot(b.x-a.x, b.y-a.y); long > 0; {
			step := min(long, left)
			c := point{a.x + (b.x-a.x)*step/long, a.y + (b.y-a.y)*step/long}
			if part%2 == 0 {
				m.bar(a, c, width, len(dash) == 0)
			}
			a, long, left = c, long-step, left-step
			if left <= 0 {
				part++
				left = dash[part%len(dash)]
			}
		}
	}
}

// bar adds a straight line as a rectangle; joined ends reach on by half of the
// width, so that corners are whole.
func (m *mask) bar(a, b point, width float64, joined bool) {
	long := math.Hypot(b.x-a.x, b.y-a.y)
	if long == 0 {
		return
	}
	x, y := (b.x-a.x)/long*width/2, (b.y-a.y)/long*width/2
	if joined {
		a, b = point{a.x - x, a.y - y}, point{b.x + x, b.y + y}
	}
	m.points = append(m.points, point{a.x + y, a.y - x}, point{a.x - y, a.y + x}, point{b.x - y, b.y + x}, point{b.x + y, b.y - x})
	m.close()
}

// bounds returns the whole pixels that the shapes lie in.
func (m *mask) bounds() image.Rectangle {
	if len(m.points) == 0 {
		return image.Rectangle{}
	}
	low, high := m.points[0], m.points[0]
	for _, p := range m.points {
		low = point{min(low.x, p.x), min(low.y, p.y)}
		high = point{max(high.x, p.x), max(high.y, p.y)}
	}
	return image.Rect(int(math.Floor(low.x)), int(math.Floor(low.y)), int(math.Ceil(high.x)), int(math.Ceil(high.y)))
}

// fill hands the rings to the rasterizer, whose picture begins at a place.
func (m *mask) fill(r *vector.Rasterizer, origin image.Point) {
	from, x, y := 0, float64(origin.X), float64(origin.Y)
	for _, to := range m.rings {
		ring := m.points[from:to]
		from = to
		if len(ring) < 3 {
			continue
		}
		r.MoveTo(float32(ring[0].x-x), float32(ring[0].y-y))
		for _, p := range ring[1:] {
			r.LineTo(float32(p.x-x), float32(p.y-y))
		}
		r.ClosePath()
	}
}
