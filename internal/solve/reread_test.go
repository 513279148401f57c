package solve_test

import (
	"context"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// What an answer says to set is judged, and works, when it is read back: also where the
// bench chose a closer fit between two pieces than the request leaves open.
func TestSolutionsWorkWhenTheyAreReadBack(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		if k.FitParam() == nil {
			continue
		}
		r := wide{rand.New(rand.NewPCG(88, uint64(len(k.Name))))}
		for solved := 0; solved < 150; {
			q := r.request(k)
			clear(q.Options) // all is left open
			s, err := solve.Solve(context.Background(), q)
			if err != nil {
				continue
			}
			solved++
			c, err := solve.CheckOwn(context.Background(), q, s.ReadOff())
			require.NoError(t, err, "%s: %+v", k.Name, q)
			assert.True(t, c.Works, "%s: %+v: %v", k.Name, q, c.Findings)
		}
	}
}
