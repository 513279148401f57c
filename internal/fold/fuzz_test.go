package fold

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// FuzzProve spoils one number of a hand-made pattern: the proof must not
// panic, and is good only without faults.
func FuzzProve(f *testing.F) {
	f.Add(uint8(0), uint8(0), int64(0))
	f.Add(uint8(1), uint8(7), int64(-1))
	f.Add(uint8(5), uint8(12), int64(1)<<62)
	f.Fuzz(func(t *testing.T, which, field uint8, value int64) {
		all := []*pattern.Pattern{rightWrap().pattern(), rightBand().pattern(), rightTray().pattern(),
			rightEnvelope().pattern(), rightDiagonal().pattern(), rightLetter().pattern(), notched(rightWrap()).pattern}
		p := all[int(which)%len(all)]
		spoil(p, int(field), value)
		proof := Prove(p, measure.Length{})
		assert.Equal(t, len(proof.Faults) == 0, proof.Closes && proof.Holds)
		Fold(p, 0.5)
	})
}

// spoil sets one number of a pattern to a value.
func spoil(p *pattern.Pattern, field int, value int64) {
	piece, length, index := &p.Pieces[0], measure.Nanometres(value), int(value)
	panel := &piece.Panels[field%len(piece.Panels)]
	crease := &piece.Creases[field%len(piece.Creases)]
	switch field % 16 {
	case 0:
		p.Caliper = length
	case 1:
		panel.Outline[0].X = length
	case 2:
		panel.Outline[1].Bulge = float64(value) / 1000
	case 3:
		panel.Hole = append(panel.Hole, panel.Outline[field%len(panel.Outline)], pattern.Vertex{Point: pattern.At(length, length)})
	case 4:
		crease.A.X = length
	case 5:
		crease.Angle = float64(value)
	case 6:
		crease.Round = length
	case 7:
		crease.From = index
	case 8:
		crease.To = index
	case 9:
		piece.Root = index
	case 10:
		p.Cavity.Turned = float64(value)
	case 11:
		p.Cavity.Thickness = length
	case 12:
		p.Cavity.Width = length
	case 13:
		p.Cavity.Bounded = append(p.Cavity.Bounded, pattern.Axis(value))
	case 14:
		crease.Fold = pattern.Fold(value)
	default:
		piece.Glues = append(piece.Glues, pattern.Glue{Panel: index, Area: panel.Outline, To: index})
	}
}
