package rounding_test

import (
	"context"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// alikeRow is a row of alike readings that together should come to a length, as nearly as the step lets them.
func alikeRow(n int, whole, room measure.Length, rising bool) *rounding.Problem {
	p, rest := &rounding.Problem{}, whole
	var f rounding.Form
	for i := range n {
		share := rest.Over(int64(n - i))
		rest = rest.Sub(share)
		p.Readings = append(p.Readings, rounding.Reading{Ideal: share, Min: measure.Millimetres(5), Max: measure.Largest()})
		f.Terms = append(f.Terms, rounding.Term{Reading: i, Coefficient: 1})
		if i > 0 {
			p.Even = append(p.Even, rounding.Pair{A: i - 1, B: i, Rising: rising})
		}
	}
	f.Constant = whole.Neg()
	p.Windows = []rounding.Window{{Form: f, Min: room.Neg(), Max: room, Weight: 1}}
	return p
}

// Alike readings share a whole as division with remainder does: each has the quotient, and the
// last ones, as many as are left over, a step more. Whether they are told to rise makes no
// difference to that, and some to the work.
func TestAlikeReadingsShareEvenly(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 8))
	step := measure.Marks(measure.Millimetre)[2]
	nodes, most := [2]int{}, 0
	for range 400 {
		n := 2 + random.IntN(7)
		whole := measure.Micrometres(60_000 + random.Int64N(600_000))
		for k, rising := range []bool{false, true} {
			search := rounding.NewSearch(alikeRow(n, whole, measure.Millimetres(1), rising))
			sizes, ok, err := search.At(context.Background(), step)
			require.NoError(t, err)
			require.True(t, ok)
			nodes[k] += search.Nodes()
			if rising {
				most = max(most, search.Nodes())
			}
			near := step.Nearest(whole).Nanometres() / step.Size().Nanometres()
			for i, size := range sizes {
				want := near / int64(n)
				if int64(i) >= int64(n)-near%int64(n) {
					want++
				}
				require.Equal(t, step.Size().Times(want), size, "%d of %d in %v", i, n, whole)
			}
		}
	}
	t.Logf("%d nodes where they rise, at most %d; %d where they may not", nodes[1], most, nodes[0])
	assert.Less(t, most, 16)
	assert.Less(t, 3*nodes[1], 2*nodes[0])
}
