package api

import (
	"context"
	"flag"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
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

// withFoot is the design that the service shows first with a choice, of words and of a count.
func withFoot(t *testing.T) *enclosure.Kind {
	t.Helper()
	text := strings.Replace(ask.ExampleDesign(), `"pieces":`, `"choices":[{"name":"foot","of":["open","closed"],"help":"What is below."}],"pieces":`, 1)
	text = strings.Replace(text, `{"panel":"lap"`, `{"panel":"foot","on":"back","edge":"bottom","narrower":"1/8 in","reach":{"like":"right side"},"when":{"foot":"closed"}},{"panel":"lap"`, 1)
	k, err := own.Read([]byte(text))
	require.NoError(t, err)
	return k
}

// The order round a usual thing is found once for each way to choose, whatever the sizes
// are, and not kept from a caller who has left before it was found.
func TestOrdersAreRememberedByWhatIsChosen(t *testing.T) {
	k := withFoot(t)
	asked := func(foot string, width int64) *solve.Request {
		chosen := map[string]enclosure.Value{"foot": {Choice: foot}, "lap": {Length: measure.Millimetres(width / 8)}}
		q := sampleRequest(k, chosen)
		q.Width = measure.Millimetres(width)
		return q
	}
	reach := newReach()
	left, leave := context.WithCancel(t.Context())
	leave()
	assert.Nil(t, reach.sampled(left, asked("open", 100)))
	open := reach.sampled(t.Context(), asked("open", 100))
	require.NotNil(t, open, "nothing was kept from the caller who had left")
	assert.Same(t, open, reach.sampled(t.Context(), asked("open", 170)))
	closed := reach.sampled(t.Context(), asked("closed", 100))
	require.NotNil(t, closed)
	assert.NotSame(t, open, closed)
	assert.Same(t, closed, reach.sampled(t.Context(), asked("closed", 90)))
	assert.Same(t, open, reach.sampled(t.Context(), asked("open", 80)))
}

// A caller's own design is held to some order, one that is kept here is not, nor is a kind.
func TestWhatIsTriedBeforehandIsNotTriedAgain(t *testing.T) {
	for name, k := range map[string]*enclosure.Kind{"kept": nil, "a caller's": withFoot(t)} {
		if k == nil {
			var err error
			k, err = own.Read([]byte(ask.ExampleDesign()))
			require.NoError(t, err)
		}
		reach := newReach()
		s, err := solve.Solve(t.Context(), sampleRequest(k, map[string]enclosure.Value{}))
		require.NoError(t, err)
		require.NoError(t, reach.of(t.Context(), s))
		assert.Len(t, reach.orders.young, map[string]int{"kept": 0, "a caller's": 1}[name], name)
		assert.NotNil(t, reach.sampled(t.Context(), s.Request), "what nobody chose is left to the design")
	}
}
