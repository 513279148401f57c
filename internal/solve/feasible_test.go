package solve

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
)

// What a hint says was tried has readings: a play of up to 1.5 mm has none on a ruler of coarse marks,
// whatever is tried, and has some on one of fine marks.
func TestFeasibleRequestsHaveReadings(t *testing.T) {
	for _, c := range []struct {
		ruler measure.Step
		holds bool
	}{
		{measure.Marks(measure.Inch)[0], false},
		{measure.Finest(measure.Inch), true},
	} {
		r := seen(t, "sleeve", 0, 58, 78, 10)
		r.Ruler = c.ruler
		_, err := Solve(context.Background(), r)
		assert.Equal(t, c.holds, err == nil)
		holds, err := r.feasible(context.Background())
		require.NoError(t, err)
		assert.Equal(t, c.holds, holds, c.ruler.Format(c.ruler.Size()))
	}
}
