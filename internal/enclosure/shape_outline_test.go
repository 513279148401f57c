package enclosure_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
)

// area is that of a polygon by the surveyor's formula.
func area(ring []pattern.Vertex) (sum float64) {
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		sum += (a.X.Millimetres()*b.Y.Millimetres() - b.X.Millimetres()*a.Y.Millimetres()) / 2
	}
	return sum
}

// holdsPoint is the even-odd rule.
func holdsPoint(ring []pattern.Vertex, x, y float64) (in bool) {
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		ax, ay, bx, by := a.X.Millimetres(), a.Y.Millimetres(), b.X.Millimetres(), b.Y.Millimetres()
		if (ay > y) != (by > y) && x < ax+(y-ay)*(bx-ax)/(by-ay) {
			in = !in
		}
	}
	return in
}

// Each shape is two halves that are mirror images, fills its rectangle, and keeps the
// glue inside of itself and off the line where the slits are. The circle has the area of
// Archimedes, the star that of a pentagram (about 1.12257 R^2, from 10 triangles with
// the golden ratio).
func TestOrnamentShapes(t *testing.T) {
	golden := (1 + math.Sqrt(5)) / 2
	star := 5 * math.Sin(math.Pi/5) / (golden * golden) // of a circumradius of 1
	wide, high := 2*math.Cos(math.Pi/10), 1+math.Cos(math.Pi/5)
	want := map[string]float64{"rectangle": 1, "circle": math.Pi / 4, "star": star / (wide * high), "heart": 0, "fir": 0, "tag": 0}
	for shape, part := range want {
		o := shaped(t, shape, "2 in", "1 3/4 in")
		p := o.Piece()
		left, right := area(p.Panels[0].Outline), area(p.Panels[1].Outline)
		whole := p.Width.Millimetres() * p.Height.Millimetres()
		assert.InDelta(t, left, right, 1e-6, "%s: the halves are mirror images and run counterclockwise", shape)
		if part > 0 {
			assert.InDelta(t, part, (left+right)/whole, 2e-3, shape)
		}
		far, top := 0.0, 0.0
		for _, v := range p.Panels[1].Outline {
			far, top = max(far, v.X.Millimetres()), max(top, v.Y.Millimetres())
			assert.GreaterOrEqual(t, v.X.Millimetres(), p.Width.Millimetres()/2, shape)
		}
		assert.InDelta(t, p.Width.Millimetres(), far, 0.2, shape)
		assert.InDelta(t, p.Height.Millimetres(), top, 0.2, shape)
		for i, g := range p.Glues {
			assert.Equal(t, pattern.Outside, g.Face)
			for _, v := range g.Area {
				x, y := v.X.Millimetres(), v.Y.Millimetres()
				assert.GreaterOrEqual(t, math.Abs(x-p.Width.Millimetres()/2), o.GlueFrom.Millimetres()-1e-9, "%s: glue stays off the slits", shape)
				inwards := 1e-3 * (p.Width.Millimetres()/2 - x) / math.Abs(p.Width.Millimetres()/2-x)
				assert.True(t, holdsPoint(p.Panels[i].Outline, x+inwards, y+1e-3*math.Copysign(1, p.Height.Millimetres()/2-y)), "%s: glue at %v, %v is on the shape", shape, x, y)
			}
		}
	}
}

func shaped(t *testing.T, shape, width, height string) *enclosure.Ornament {
	kind, ok := repertoire.Lookup("slotted-band")
	require.True(t, ok)
	given := map[string]enclosure.Value{"ornament_shape": {Choice: shape}}
	for name, text := range map[string]string{"ornament_width": width, "ornament_height": height} {
		if text == "" {
			continue
		}
		given[name] = enclosure.Value{Length: measure.MustParse(text)}
	}
	plan, err := kind.Plan(&enclosure.Input{
		Unit: measure.Inch, Width: measure.Inches(4), Thickness: measure.Thousandths(50), Caliper: measure.Thousandths(12),
		Fit: enclosure.NamedFits()[0].Range(measure.Inch), Params: kind.Params, Given: given,
	})
	require.NoError(t, err, shape)
	return plan.Ornament
}
