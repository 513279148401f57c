package solve_test

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// A solve with its proof whose memory is given back takes no more pieces of memory than it did when they were
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
		{"slotted band", request(t, "slotted-band", "3.5 in", "0.09 in", "0.012 in", 0), 15}, // a design
		{"sleeve", flat("sleeve"), 19},
		{"envelope", flat("envelope"), 31},
		{"pocket", flat("pocket"), 23},
		{"tray", thick(t, "tray"), 19},
		{"tuck carton", thick(t, "tuck-carton"), 14},
		{"dividers", thick(t, "dividers"), 38},
		{"lidded box", thick(t, "lidded-box"), 81},
		{"pillow pack", soap(t), 137},
		{"prism of twelve", jar(t, 12), 58},
	} {
		got := testing.AllocsPerRun(50, func() {
			s, err := solve.Solve(context.Background(), c.request)
			require.NoError(t, err)
			s.GiveBack()
		})
		t.Log(c.name, got)
		assert.LessOrEqual(t, got, c.most, c.name)
	}
}

// What is solved in memory that was given back is what is solved in new memory,
// whatever lay there before.
func TestMemoryIsUsedAgain(t *testing.T) {
	requests := []*solve.Request{request(t, "slotted-band", "3.5 in", "0.09 in", "0.012 in", 0), thick(t, "tray"), thick(t, "tuck-carton"), thick(t, "dividers"),
		thick(t, "lidded-box"), soap(t), jar(t, 12)}
	solved := func(r *solve.Request) (*solve.Solution, string) {
		s, err := solve.Solve(t.Context(), r)
		require.NoError(t, err)
		return s, fmt.Sprintf("%+v", []any{s.Pattern, s.Ideal, s.Fits, s.Alternatives, s.Settings(), s.Warnings})
	}
	want := make([]string, len(requests))
	for i, r := range requests {
		_, want[i] = solved(r)
	}
	for range 3 {
		for i, r := range requests {
			s, got := solved(r)
			require.Equal(t, want[i], got, r.Kind.Name)
			s.GiveBack()
		}
	}
}
