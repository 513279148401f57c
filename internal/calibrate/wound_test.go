package calibrate

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

func mm(text string) measure.Length { return measure.MustParse(text + " mm") }

// winding is a strip scored so that it goes round a block of the given size, each
// turn on the one inside it: it begins at a corner of the block and ends where its
// outermost turn does.
func winding(width, thickness, caliper measure.Length, turns int) (p pattern.Piece, sizes []measure.Length) {
	p = pattern.Piece{Name: "strip", Quantity: 1, Height: mm("12")}
	for k := range 4 * turns {
		size := width
		if k%2 == 1 {
			size = thickness
		}
		if k == 0 {
			size = size.Add(caliper.Over(2))
		}
		sizes = append(sizes, size.Add(caliper.Times(int64(k+1)/2)))
	}
	sizes[len(sizes)-1] = sizes[len(sizes)-1].Sub(caliper.Over(2))
	at := measure.Length{}
	for k, size := range sizes {
		p.Panels = append(p.Panels, pattern.Panel{Name: "side", Outline: pattern.Rectangle(at, measure.Length{}, at.Add(size), p.Height)})
		if k > 0 {
			p.Creases = append(p.Creases, pattern.Crease{Name: "fold", A: pattern.At(at, measure.Length{}), B: pattern.At(at, p.Height), From: k - 1, To: k, Fold: pattern.Valley, Angle: 90})
		}
		at = at.Add(size)
	}
	p.Width = at
	return p, sizes
}

// The fold engine winds strips round blocks: they lie close on the block and on
// themselves, they are as large outside as the block and a caliper a turn on both
// sides, and what they take of the strip is what the
// caliper is found by. A strip for thinner paper does not go round.
func TestLoopAgainstWinding(t *testing.T) {
	for _, block := range [][2]string{{"40", "40"}, {"85.6", "54"}, {"60", "5"}} {
		for _, caliper := range []string{"0.1", "0.3", "0.76"} {
			for _, turns := range []int{1, 2, 5, 10} {
				w, h, c := mm(block[0]), mm(block[1]), mm(caliper)
				piece, sizes := winding(w, h, c, turns)
				p := pattern.Pattern{Caliper: c, Pieces: []pattern.Piece{piece},
					Cavity: pattern.Cavity{Width: w, Height: piece.Height, Thickness: h, Bounded: []pattern.Axis{pattern.Width, pattern.Thickness}}}
				proof := fold.Prove(&p, measure.Length{})
				require.True(t, proof.Closes, "%v x %s, %d turns: %v", block, caliper, turns, proof.Faults)
				for _, extent := range [][2]measure.Length{{proof.Extent[0], w}, {proof.Extent[2], h}} {
					assert.Equal(t, extent[1].Add(c.Times(2*int64(turns))), extent[0])
				}
				m := Measured{Ruler: measure.MustParseStep("0.5 mm"), Unit: measure.Millimetre, Block: Block{Width: w, Thickness: h}, Turns: turns, Wound: measure.Sum(sizes...)}
				found, err := m.wound()
				require.NoError(t, err)
				assert.InDelta(t, nanometres(c), found.caliper, 1)

				p.Caliper = c.Add(mm("0.01"))
				assert.NotEmpty(t, fold.Prove(&p, measure.Length{}).Faults, "thicker paper")
			}
		}
	}
}
