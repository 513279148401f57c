package pattern_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Elementary geometry: rectangles, a half-round bite, a disc.
func TestAreaOfPiece(t *testing.T) {
	mm := measure.Millimetres
	bitten := pattern.Rectangle(mm(0), mm(0), mm(40), mm(30))
	bite := []pattern.Vertex{{Point: pattern.At(mm(25), mm(30)), Bulge: -1}, {Point: pattern.At(mm(15), mm(30))}}
	bitten = append(bitten[:3:3], bite[0], bite[1], bitten[3])
	disc := []pattern.Vertex{{Point: pattern.At(mm(0), mm(0)), Bulge: 1}, {Point: pattern.At(mm(10), mm(0)), Bulge: 1}}
	quarter := math.Tan(math.Pi / 8)
	round := []pattern.Vertex{{Point: pattern.At(mm(5), mm(0)), Bulge: quarter}, {Point: pattern.At(mm(10), mm(5)), Bulge: quarter},
		{Point: pattern.At(mm(5), mm(10)), Bulge: quarter}, {Point: pattern.At(mm(0), mm(5)), Bulge: quarter}}
	holed := pattern.Panel{Outline: pattern.Rectangle(mm(0), mm(0), mm(10), mm(10)),
		Hole: pattern.Polygon(pattern.At(mm(2), mm(2)), pattern.At(mm(2), mm(4)), pattern.At(mm(4), mm(4)), pattern.At(mm(4), mm(2)))}
	rows := []struct {
		name   string
		panels []pattern.Panel
		want   float64
	}{
		{"two rectangles", []pattern.Panel{{Outline: pattern.Rectangle(mm(0), mm(0), mm(40), mm(30))}, {Outline: pattern.Rectangle(mm(40), mm(0), mm(50), mm(30))}}, 1500},
		{"a half-round bite", []pattern.Panel{{Outline: bitten}}, 1200 - math.Pi*25/2},
		{"a disc", []pattern.Panel{{Outline: disc}}, math.Pi * 25},
		{"the same of four quarters, bulge tan 22.5 degrees (DXF reference)", []pattern.Panel{{Outline: round}}, math.Pi * 25},
		{"a window", []pattern.Panel{holed}, 96},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			piece := pattern.Piece{Panels: row.panels}
			assert.InDelta(t, row.want, piece.Area(), 1e-9)
		})
	}
}
