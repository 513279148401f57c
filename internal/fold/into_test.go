package fold

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// A card of two panels of 100 x 140 mm is 100 mm wide when folded, with its
// fold at mid-caliper half a caliper in; a letter fold is half a caliper less
// than its middle panel, whose outer fold goes round the inner panel.
func TestPatternThatGoesIntoSomething(t *testing.T) {
	card := strip(1, 140, []string{"front", "back"}, []float64{100, 100}, round(0))
	l := rightLetter()
	for name, c := range map[string]struct {
		pattern *pattern.Pattern
		turned  float64
		want    [3]float64 // width, height and thickness left of 110 x 215 x 1 mm
	}{
		"card":        {&pattern.Pattern{Caliper: mm(0.3), Pieces: []pattern.Piece{card}}, 0, [3]float64{10, 75, 0.4}},
		"card turned": {&pattern.Pattern{Caliper: mm(0.3), Pieces: []pattern.Piece{card}}, 90, [3]float64{-30, 115, 0.4}},
		"letter":      {l.pattern(), 0, [3]float64{11 - 0.05, 5, 0.7}},
	} {
		t.Run(name, func(t *testing.T) {
			c.pattern.Cavity = cavity(1, 110, 215, 1, pattern.Width, pattern.Height, pattern.Thickness)
			c.pattern.Cavity.Into, c.pattern.Cavity.Turned = true, c.turned
			proof := Prove(c.pattern, measure.Length{})
			for i, want := range c.want {
				assert.InDelta(t, want, proof.Clearances[i].Clearance.Millimetres(), 1e-6, proof.Clearances[i].Axis.String())
			}
			assert.Equal(t, name != "card turned", proof.Holds, "%v", proof.Faults)
		})
	}
}
