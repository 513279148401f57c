package enclosure

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// foldedFlap gives a rectangular flap its outline and its crease: from x0 to x1 along
// the score at y0, up or down to y1.
func foldedFlap(p *pattern.Piece, panel int, x0, y0, x1, y1 measure.Length) {
	pattern.FillRectangle(p.Panels[panel].Outline, x0, measure.Min(y0, y1), x1, measure.Max(y0, y1))
	c := &p.Creases[panel-1]
	c.A, c.B = pattern.At(x0, y0), pattern.At(x1, y0)
}

// Parameters that the kinds with glued side flaps share.
var (
	sideFlap = Param{Name: "side_flap", Help: "How wide each glued side flap is.", DefaultInch: measure.Sixtyfourths(64), DefaultMillimetre: measure.Millimetres(25),
		Least: measure.Millimetres(5), Greatest: measure.Millimetres(500)}
	cornerRelief = Param{Name: "relief", Advanced: true, Help: "How far in the angled relief cuts come at the free edge of a flap.", DefaultInch: measure.Sixtyfourths(32), DefaultMillimetre: measure.Millimetres(10),
		Least: measure.Micrometres(500), Greatest: measure.Millimetres(300)}
)
