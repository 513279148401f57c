package solve_test

import (
	"context"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// Folded up, or rather laid on one another, every layer must lie one caliper
// above the last and the same reveal in from it on all four sides.
func TestMatStacksStepDownEvenly(t *testing.T) {
	k, _ := repertoire.Lookup("mat-stack")
	r := random{rand.New(rand.NewPCG(3, 1959)), measure.Millimetres(1)}
	for solved := 0; solved < 2000; {
		q := r.request(k)
		q.Options["layers"] = enclosure.Value{Count: 2 + r.Int64N(5)}
		s, err := solve.Solve(context.Background(), q)
		if err != nil {
			checkRefusal(t, q, err)
			continue
		}
		solved++
		checkFolded(t, s)
		plates := fold.Fold(&s.Pattern, 1).Plates
		require.Len(t, plates, int(q.Options["layers"].Count))
		reveal := plates[1].Outline[0][0] - plates[0].Outline[0][0]
		require.Greater(t, reveal, 0.9)
		for i := 1; i < len(plates); i++ {
			low, high := plates[i].Outline[0], plates[i].Outline[2]
			under, over := plates[i-1].Outline[0], plates[i-1].Outline[2]
			require.InDelta(t, q.Caliper.Millimetres(), low[2]-under[2], 1e-6)
			for axis := range 2 {
				require.InDelta(t, reveal, low[axis]-under[axis], 1e-6)
				require.InDelta(t, reveal, over[axis]-high[axis], 1e-6)
			}
		}
	}
}

func TestMatStackRefusals(t *testing.T) {
	for _, c := range []struct {
		width  string
		layers int64
		reveal string
		field  string
		bound  string
	}{
		{"3 in", 6, "1 in", "reveal", "from 1/16 in to 3/16 in"},
		{"1 3/16 in", 6, "", "layers", "at most 5"},
		{"1/2 in", 2, "", "layers", "a front of at least 47/64 in"},
	} {
		r := request(t, "mat-stack", c.width, "0 in", "0.012 in", 0)
		r.Height = measure.MustParse("5 in")
		r.Options["layers"] = enclosure.Value{Count: c.layers}
		if c.reveal != "" {
			r.Options["reveal"] = enclosure.Value{Length: measure.MustParse(c.reveal)}
		}
		_, err := solve.Solve(context.Background(), r)
		refusal := firstFault(t, err)
		assert.Equal(t, c.field, refusal.Field)
		assert.Equal(t, c.bound, refusal.Expected)
	}
}

func BenchmarkSolveMatStackOfSix(b *testing.B) {
	r := request(b, "mat-stack", "7 in", "0 in", "0.012 in", 0)
	r.Height, r.Options["layers"] = measure.MustParse("5 in"), enclosure.Value{Count: 6}
	benchmarkSolve(b, r)
}
