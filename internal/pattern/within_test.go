package pattern_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// A slit lies within a blank if it meets no edge, and runs along the edge that it is
// measured from or not.
func TestSlitsWithinABlank(t *testing.T) {
	mm := measure.Millimetres
	p := pattern.Piece{Width: mm(100), Height: mm(80)}
	rows := []struct {
		name           string
		from           string
		x0, y0, x1, y1 int64
		inner, along   bool
		long           int64
	}{
		{"along the top", "top", 40, 64, 52, 64, true, true, 12},
		{"backwards", "top", 52, 64, 40, 64, true, true, 12},
		{"up beside the left", "left", 16, 30, 16, 42, true, true, 12},
		{"away from the edge", "bottom", 16, 30, 16, 42, true, false, 0},
		{"slanted", "top", 40, 60, 52, 64, true, false, 0},
		{"measured from no edge", "", 40, 64, 52, 64, true, false, 0},
		{"cut in from the edge", "top", 40, 80, 40, 64, false, false, 0},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			c := pattern.Cut{Kind: pattern.Slit, From: row.from, Path: pattern.Polygon(pattern.At(mm(row.x0), mm(row.y0)), pattern.At(mm(row.x1), mm(row.y1)))}
			assert.Equal(t, row.inner, p.Inner(&c))
			long, along := p.Within(&c)
			assert.Equal(t, row.along, along)
			if along {
				assert.Equal(t, mm(row.long), long)
			}
		})
	}
}

// What is cut in from one edge lies so far along it from the left or the bottom, the
// corner that lengths are read from (common practice).
func TestPlacesOfCutsAreFromTheLowerLeft(t *testing.T) {
	for edge, want := range map[string]string{"left": "bottom", "right": "bottom", "top": "left", "bottom": "left"} {
		assert.Equal(t, want, pattern.Beside(edge), edge)
	}
}
