package draw_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// cornered is a card of 120 x 80 mm with each corner cut off, by 3.17 along the bottom
// or the top and by 4.23 along the side: no reading of a ruler tells of that.
func cornered() *pattern.Pattern {
	at := func(x, y int64) pattern.Point { return pattern.At(measure.Micrometres(x), measure.Micrometres(y)) }
	outline := pattern.Polygon(at(3170, 0), at(116830, 0), at(120000, 4230), at(120000, 75770), at(116830, 80000), at(3170, 80000), at(0, 75770), at(0, 4230))
	card := pattern.Piece{Name: "card", Quantity: 2, Width: measure.Millimetres(120), Height: measure.Millimetres(80), Panels: []pattern.Panel{{Name: "card", Outline: outline}}}
	for axis, size := range []measure.Length{card.Width, card.Height} {
		card.Strips = append(card.Strips, pattern.Strip{Across: pattern.Axis(axis), Cells: []pattern.Cell{{Name: "card", Size: size}}})
	}
	return &pattern.Pattern{Caliper: measure.Micrometres(300), Pieces: []pattern.Piece{card}}
}

// Corners that are the same, however they are turned over, are drawn once: their letter
// stands at each, and the detail has both lengths and how often it comes.
func TestSmallCornersHaveADetail(t *testing.T) {
	d := draw.New(cornered(), draw.Options{Step: measure.Finest(measure.Millimetre)})
	checkLayout(t, "card", d)
	letters := 0
	for _, l := range d.Figures[0].Labels {
		if l.Lines[0] == "A" {
			letters++
		}
		assert.NotEqual(t, "B", l.Lines[0])
	}
	assert.Equal(t, 4, letters)
	var words []string
	for _, l := range d.Legend.Labels {
		words = append(words, l.Lines...)
	}
	for _, want := range []string{"detail A", "8 ×, 5 : 1", "3.17 mm", "4.23 mm"} {
		assert.Contains(t, words, want)
	}
	var slants []draw.Line
	for _, l := range d.Legend.Lines {
		for i := range len(l.Path) - 1 {
			if a, b := l.Path[i], l.Path[i+1]; l.Layer == draw.Outline && a.X != b.X && a.Y != b.Y {
				slants = append(slants, l)
				assert.InDelta(t, 5*3.17, max(a.X-b.X, b.X-a.X), 1e-6, "true to its scale")
				assert.InDelta(t, 5*4.23, max(a.Y-b.Y, b.Y-a.Y), 1e-6)
			}
		}
	}
	require.Len(t, slants, 1)
}

// No line of a circle runs through a text.
func TestCirclesKeepOffTexts(t *testing.T) {
	circles := 0
	for _, s := range drawtest.Every() {
		for _, f := range s.Draw().Figures {
			for _, l := range f.Lines {
				if l.Layer != draw.Measures || l.Closed || !l.Path[0].IsArc() {
					continue
				}
				circles++
				points := draw.Flatten(nil, l.Path, false, 0.02)
				for i := 1; i < len(points); i++ {
					for _, text := range f.Labels {
						assert.False(t, text.Box.Crosses(points[i-1], points[i]), "%s: %s", s.Name, text.Lines[0])
					}
				}
			}
		}
	}
	assert.Greater(t, circles, 20)
}

// What readings tell of has no detail, and details are in no drawing but the measured one.
func TestDetailsOnlyWhereNeeded(t *testing.T) {
	p := cornered()
	for i := range p.Pieces[0].Panels[0].Outline {
		v := &p.Pieces[0].Panels[0].Outline[i]
		v.Point = pattern.At(measure.Finest(measure.Millimetre).Nearest(v.X), measure.Finest(measure.Millimetre).Nearest(v.Y))
	}
	for _, d := range []*draw.Drawing{draw.New(p, draw.Options{Step: measure.Finest(measure.Millimetre)}), draw.NewTemplate(cornered(), draw.Options{Step: measure.Finest(measure.Millimetre)})} {
		for _, l := range d.Legend.Labels {
			assert.False(t, strings.HasPrefix(l.Lines[0], "detail"))
		}
	}
}
