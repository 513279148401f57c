package api

import (
	"context"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure/own"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// Where the order of a design's own sample leads to another solution of it, a search finds
// one there too; and it mostly does.
func TestSampledOrdersLeadWhereOneIsFound(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 16))
	led, solved := 0, 0
	for _, e := range append(own.Examples(), own.Kinds()...) {
		k, err := own.Read(e.Text)
		require.NoError(t, err)
		for range 4 {
			q := sampleRequest(k, nil)
			q.Width, q.Height = measure.Millimetres(40+r.Int64N(200)), measure.Millimetres(60+r.Int64N(200))
			q.Thickness, q.Caliper = measure.Micrometres(1000+r.Int64N(40_000)), measure.Micrometres(100+r.Int64N(500))
			s, err := solve.Solve(context.Background(), q)
			if err != nil {
				continue
			}
			solved++
			if o := sampled(q); o != nil && o.Leads(&s.Pattern, s.Proof.Tolerance) {
				led++
				_, err := oneSolved{s}.order()
				assert.NoError(t, err, "%s %+v", e.Name, q)
			}
		}
	}
	t.Logf("%d of %d solutions are led to by the sample", led, solved)
	assert.Greater(t, led, solved*3/4)
}
