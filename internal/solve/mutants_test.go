package solve_test

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// checkMutants drops and doubles a caliper in every size that a kind works out,
// in what each doubled fold goes round, in where its pieces stand and in how
// far its seams are apart. Each mutant must fail its proof or leave another
// clearance than the right pattern, which leaves the middle of the fit. The
// free readings are those whose sizes do not follow from the caliper, or with a
// plus those that may be larger.
func checkMutants(t *testing.T, r *solve.Request, free ...string) {
	plan, err := r.Kind.Plan(&enclosure.Input{Unit: r.Unit, Width: r.Width, Height: r.Height, Thickness: r.Thickness,
		Caliper: r.Caliper, Fit: r.Fit, Given: r.Options, Params: r.Kind.Params})
	require.NoError(t, err)
	base := plan.Build(plan.Ideals())
	right := fold.Prove(&base, measure.Length{})
	require.Empty(t, right.Faults)
	for _, off := range []measure.Length{r.Caliper, r.Caliper.Neg()} {
		for i, reading := range plan.Problem.Readings {
			if reading.Fixed || slices.Contains(free, reading.Name) || off.Sign() > 0 && slices.Contains(free, reading.Name+"+") {
				continue
			}
			sizes := plan.Ideals()
			sizes[i] = sizes[i].Add(off)
			mutant := plan.Build(sizes)
			assertMutant(t, right, &mutant, fmt.Sprint(reading.Name, " ", off.Sign()))
		}
		for i, change := range calipersOf(&base) {
			mutant := plan.Build(plan.Ideals())
			if at := calipersOf(&mutant)[i]; at.size.Add(off).Sign() >= 0 {
				*at.size = at.size.Add(off)
				assertMutant(t, right, &mutant, fmt.Sprint(change.name, " ", off.Sign()))
			}
		}
	}
}

// mutable is a length of a pattern that a caliper goes into.
type mutable struct {
	name string
	size *measure.Length
}

// calipersOf lists what folds go round, where pieces stand and what lies
// between the edges of seams.
func calipersOf(p *pattern.Pattern) []mutable {
	var all []mutable
	for i := range p.Pieces {
		piece := &p.Pieces[i]
		for j := range piece.Creases {
			if c := &piece.Creases[j]; c.Angle > 179 {
				all = append(all, mutable{"round " + c.Name, &c.Round})
			}
		}
		for j := range piece.Seams {
			all = append(all, mutable{"seam " + piece.Seams[j].Name, &piece.Seams[j].Apart})
		}
	}
	return all
}

// assertMutant checks that a mutant is found out.
func assertMutant(t *testing.T, right fold.Proof, mutant *pattern.Pattern, name string) {
	t.Helper()
	got := fold.Prove(mutant, measure.Length{})
	differs := len(got.Faults) > 0
	for i, c := range got.Clearances {
		differs = differs || measure.Micrometres(1).Less(c.Clearance.Sub(right.Clearances[i].Clearance).Abs())
	}
	assert.True(t, differs, "%s makes no difference", name)
}

// thick is a request for a tin of the stall, or what lies in it.
func thick(t testing.TB, kind string) *solve.Request {
	r := request(t, kind, "3 in", "1 1/2 in", "0.012 in", 1)
	r.Height = measure.MustParse("5 in")
	return r
}

// benchmarkThick solves one request of a kind for thick contents, with its proof.
func benchmarkThick(b *testing.B, kind string) {
	r := thick(b, kind)
	benchmarkSolve(b, r)
}

// benchmarkSolve solves a request over and over and gives the solutions back, as the
// service does once they are written.
func benchmarkSolve(b *testing.B, r *solve.Request) {
	b.ReportAllocs()
	for b.Loop() {
		s, err := solve.Solve(context.Background(), r)
		if err != nil {
			b.Fatal(err)
		}
		s.GiveBack()
	}
}
