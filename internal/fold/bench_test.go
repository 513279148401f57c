package fold

import (
	"testing"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// BenchmarkProve measures whole proofs beside a floor: reading every corner
// of the band once and turning it once.
func BenchmarkProve(b *testing.B) {
	b.Run("floor", func(b *testing.B) {
		p := rightBand().pattern()
		turn := hinge(spot{1, 0}, spot{1, 0}, 90)
		b.ReportAllocs()
		for b.Loop() {
			for i := range p.Pieces[0].Panels {
				for _, v := range p.Pieces[0].Panels[i].Outline {
					turn.Origin = turn.at(place(v.Point))
				}
			}
		}
	})
	for _, c := range []struct {
		name string
		p    *pattern.Pattern
	}{
		{"band", rightBand().pattern()},
		{"wrap", rightWrap().pattern()},
		{"tray", rightTray().pattern()},
		{"envelope", rightEnvelope().pattern()},
		{"diagonal", rightDiagonal().pattern()},
		{"notched wrap", notched(rightWrap()).pattern},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Prove(c.p, measure.Length{})
			}
		})
	}
}
