package fold

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// TestKnownClearances folds hand-made patterns whose clearances follow from
// adding up sizes and calipers by hand.
func TestKnownClearances(t *testing.T) {
	for name, c := range map[string]struct {
		p    *pattern.Pattern
		want []float64
	}{
		"wrap":     {rightWrap().pattern(), []float64{1, 0.5}},
		"band":     {rightBand().pattern(), []float64{0.8, 0}},
		"tray":     {rightTray().pattern(), []float64{1, 2}},
		"envelope": {rightEnvelope().pattern(), []float64{1, 2, 0}},
		// the two flaps of an axis go round 0 and 1, or 2 and 3 calipers
		"diagonal": {rightDiagonal().pattern(), []float64{0.5, 1.5 - 2*0.1}},
		"letter":   {rightLetter().pattern(), nil},
	} {
		t.Run(name, func(t *testing.T) {
			proof := Prove(c.p, measure.Length{})
			assert.Empty(t, proof.Faults)
			assert.True(t, proof.Closes)
			assert.True(t, proof.Holds)
			assert.LessOrEqual(t, proof.Gap.Nanometres(), int64(1))
			assert.Equal(t, proof.Gap, Gap(c.p, measure.Length{}))
			for i, want := range c.want {
				assert.InDelta(t, want, proof.Clearances[i].Clearance.Millimetres(), 3e-6, c.p.Cavity.Bounded[i].String())
			}
		})
	}
}
