package fold_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// A channel of three panels: its outside is centre + t across and, with one
// free edge, the wall's height + t/2 up (the inside, centre and outside
// relations of a square fold).
func TestExtentOfAChannel(t *testing.T) {
	mm := measure.Millimetres
	panel := func(name string, from, to int64) pattern.Panel {
		return pattern.Panel{Name: name, Outline: pattern.Rectangle(mm(from), mm(0), mm(to), mm(50))}
	}
	crease := func(at int64, to int) pattern.Crease {
		return pattern.Crease{Name: "score", A: pattern.At(mm(at), mm(0)), B: pattern.At(mm(at), mm(50)), From: 1, To: to, Fold: pattern.Valley, Angle: 90}
	}
	p := &pattern.Pattern{
		Caliper: measure.Micrometres(300),
		Pieces: []pattern.Piece{{
			Name: "channel", Quantity: 1, Width: mm(100), Height: mm(50), Root: 1,
			Panels:  []pattern.Panel{panel("left", 0, 20), panel("base", 20, 80), panel("right", 80, 100)},
			Creases: []pattern.Crease{crease(20, 0), crease(80, 2)},
		}},
		Cavity: pattern.Cavity{Panel: 1, Width: mm(59), Height: mm(40), Thickness: mm(10), Bounded: []pattern.Axis{pattern.Width}},
	}
	proof := fold.Prove(p, measure.Length{})
	assert.Empty(t, proof.Faults)
	assert.Equal(t, [3]measure.Length{measure.Micrometres(60_300), mm(50), measure.Micrometres(20_150)}, proof.Extent)
}
