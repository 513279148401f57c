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

// fold adds a crease on a score between two panels.
func fold(w *pattern.Piece, s pattern.Score, a, b pattern.Point, from, to int) {
	w.Creases = append(w.Creases, pattern.Crease{Name: s.Name, A: a, B: b, From: from, To: to, Fold: s.Fold, Angle: s.Angle})
}

// Parameters that the kinds with glued side flaps share.
var (
	sideFlap     = lengthParam("side_flap", 5, 500, "How wide each glued side flap is.").usually(64, 25)
	cornerRelief = Param{Name: "relief", Advanced: true,
		Help:        "How far in the angled relief cuts come at the free edge of a flap.",
		DefaultInch: measure.Sixtyfourths(32), DefaultMillimetre: measure.Millimetres(10), Least: measure.Micrometres(500), Greatest: measure.Millimetres(300)}
)
