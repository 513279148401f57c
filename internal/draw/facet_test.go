package draw_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
)

// fills reports whether a place lies inside of a filled area.
func fills(ring []draw.Vertex, x, y float64) (in bool) {
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > y) != (b.Y > y) && x < a.X+(y-a.Y)*(b.X-a.X)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// Where two facets of a bent panel meet, both are painted, so that the ground does not
// shine through between them.
func TestFacetsOverlap(t *testing.T) {
	for _, s := range drawtest.Every() {
		if !strings.HasPrefix(s.Name, "pillow-pack") {
			continue
		}
		d := draw.NewFinished(&s.Solution.Pattern, s.Options())
		var areas [][]draw.Vertex
		for _, l := range d.Figures[0].Lines {
			if l.Fill {
				areas = append(areas, l.Path)
			}
		}
		shared := 0
		for i, a := range areas {
			for k := range a {
				p, q := a[k].Point, a[(k+1)%len(a)].Point
				x, y := (p.X+q.X)/2, (p.Y+q.Y)/2
				long := math.Hypot(q.X-p.X, q.Y-p.Y)
				if long < 1 {
					continue
				}
				dx, dy := (p.Y-q.Y)/long*1e-3, (q.X-p.X)/long*1e-3 // to the left
				if !fills(a, x+dx, y+dy) {
					dx, dy = -dx, -dy
				}
				for j, b := range areas {
					if i != j && fills(b, x+dx, y+dy) { // inside of both
						shared++
						break
					}
				}
			}
		}
		assert.Greater(t, shared, len(areas), s.Name)
	}
}
