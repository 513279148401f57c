package draw_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/assembly"
	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
)

// A pack that is pressed flat shows its outside, since the front was folded over the
// back; and its lap, glued inside, is seen neither then nor when it is closed.
func TestWhatIsFoldedOverLiesOnTop(t *testing.T) {
	for _, s := range drawtest.Every() {
		if !strings.HasPrefix(s.Name, "pillow-pack") {
			continue
		}
		o := s.Order()
		last := slices.IndexFunc(o.Steps, func(s assembly.Step) bool { return s.Do == assembly.PutIn })
		flat := draw.NewPicture(&s.Solution.Pattern, o, []int{last - 1}, s.Options()).Figures[0]
		x, y := (flat.Box.Low.X+flat.Box.High.X)/2, (flat.Box.Low.Y+flat.Box.High.Y)/2
		var top draw.Layer
		for _, l := range flat.Lines {
			if l.Fill && l.Layer < draw.MotionPath && fills(l.Path, x, y) {
				top = l.Layer
			}
		}
		assert.Equal(t, draw.OutsideFace, top, s.Name)
		closed := draw.NewFinished(&s.Solution.Pattern, s.Options()).Figures[0]
		for _, f := range []draw.Figure{flat, closed} {
			for _, l := range f.Lines { // the lap's long edge runs up the pack, beside its side
				if d := l.Path[len(l.Path)-1].Y - l.Path[0].Y; l.Layer == draw.SolidEdge && math.Abs(d) > f.Size.Y/4 {
					mid := (l.Path[0].X + l.Path[1].X) / 2
					assert.False(t, painted(f.Lines, mid+2, (l.Path[0].Y+l.Path[1].Y)/2) && painted(f.Lines, mid-2, (l.Path[0].Y+l.Path[1].Y)/2), s.Name)
				}
			}
		}
	}
}

// painted reports whether a face of paper is painted at a place.
func painted(lines []draw.Line, x, y float64) bool {
	return slices.ContainsFunc(lines, func(l draw.Line) bool { return l.Fill && l.Layer < draw.MotionPath && fills(l.Path, x, y) })
}

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
