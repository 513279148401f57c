package solve_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// A solve with its proof takes no more pieces of memory than it did when they were
// last counted, a tenth more at the most; a band of one fit is tried with a looser
// one as well, since it is not sure enough.
func TestAllocations(t *testing.T) {
	flat := func(kind string) *solve.Request {
		r := request(t, kind, "7 in", "0.03 in", "0.008 in", 1)
		r.Height = measure.MustParse("5 in")
		return r
	}
	for _, c := range []struct {
		name    string
		request *solve.Request
		most    float64
	}{
		{"slotted band", request(t, "slotted-band", "3.5 in", "0.09 in", "0.012 in", 0), 40}, // a design
		{"sleeve", flat("sleeve"), 34},
		{"envelope", flat("envelope"), 55},
		{"pocket", flat("pocket"), 47},
		{"tray", thick(t, "tray"), 58},
		{"tuck carton", thick(t, "tuck-carton"), 68},
		{"dividers", thick(t, "dividers"), 156},
		{"lidded box", thick(t, "lidded-box"), 157},
		{"pillow pack", soap(t), 174},
		{"prism of twelve", jar(t, 12), 152},
	} {
		got := testing.AllocsPerRun(50, func() {
			_, err := solve.Solve(context.Background(), c.request)
			require.NoError(t, err)
		})
		t.Log(c.name, got)
		assert.LessOrEqual(t, got, c.most, c.name)
	}
}
