package api

import (
	"flag"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// tried is how many random solutions of each design are looked at.
var tried = flag.Int("tried", 4, "random solutions a design")

// Some order of work leads to every solution of the designs that are kept here, which is
// why nobody is kept waiting for it. Where the order of a design's own sample leads to one, a
// search finds one there too; and it mostly does.
func TestOrdersLeadToTheDesignsThatAreKept(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 16))
	led, solved := 0, 0
	for _, e := range slices.Concat(own.Examples(), own.Kinds()) {
		assert.True(t, own.Kept(string(e.Text)))
		k, err := own.Read(e.Text)
		require.NoError(t, err)
		reach := newReach()
		for range *tried {
			q := sampleRequest(k, chosenAtRandom(r, k))
			q.Width, q.Height = measure.Millimetres(40+r.Int64N(200)), measure.Millimetres(60+r.Int64N(200))
			q.Thickness, q.Caliper = measure.Micrometres(1000+r.Int64N(40_000)), measure.Micrometres(100+r.Int64N(500))
			s, err := solve.Solve(t.Context(), q)
			if err != nil {
				continue
			}
			solved++
			_, err = oneSolved{s}.order()
			assert.NoError(t, err, "%s %+v", e.Name, q)
			if o := reach.sampled(t.Context(), q); o != nil && o.Leads(&s.Pattern, s.Proof.Tolerance) {
				led++
			}
		}
	}
	t.Logf("%d of %d solutions are led to by the sample", led, solved)
	assert.Greater(t, led, solved*3/4)
}

// chosenAtRandom makes the choices of a design.
func chosenAtRandom(r *rand.Rand, k *enclosure.Kind) map[string]enclosure.Value {
	chosen := map[string]enclosure.Value{}
	for _, p := range k.Params {
		if p.Type == enclosure.ChoiceParam {
			chosen[p.Name] = enclosure.Value{Choice: p.Choices[r.IntN(len(p.Choices))]}
		}
	}
	return chosen
}
