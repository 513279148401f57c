package solve

import (
	"context"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
)

// TestFoldsTakeUpTheirAllowance solves random requests of all kinds for paper
// whose folds take up something, or bulge. Made so, and with as much taken off
// every panel as its folds take up, it closes, holds what it must and has the
// clearances that were claimed; its ideal closes to a twentieth of a millimetre,
// where slanted edges meet.
func TestFoldsTakeUpTheirAllowance(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 4))
	want, longer := 400, 0
	if testing.Short() {
		want = 80
	}
	for kinds, done := repertoire.Kinds(), 0; done < want; {
		q := randomHand(r)
		q.Kind = kinds[done%len(kinds)]
		q.FoldAllowance = measure.Micrometres(r.Int64N(700) - 200)
		s := solved(q)
		if s == nil {
			continue
		}
		done++
		folded := q.folded(s.plan, s.sizes, s.plan.Lay)
		proof := fold.Prove(&folded, s.Proof.Tolerance)
		require.True(t, proof.Closes && proof.Holds, "%s: %v", q.Kind.Name, proof.Faults)
		require.Len(t, proof.Clearances, len(s.Fits), q.Kind.Name)
		for i, f := range s.Fits {
			flex := int64(1000)
			if folded.Cavity.Sides > 0 { // laps are scored at whole papers and give up to three tenths of one
				flex += folded.Caliper.Nanometres() * 6 / 10
			}
			if s.plan.Fits[i].Curve != nil { // of the faces that bend together, one has a fold more than the other
				flex += q.FoldAllowance.Abs().Nanometres() * 3 / 2
			}
			off := f.Nominal.Sub(proof.Clearances[i].Clearance).Abs().Nanometres()
			assert.LessOrEqual(t, off, flex, "%s, %s: claimed %v, folded %v", q.Kind.Name, f.Axis, f.Nominal, proof.Clearances[i].Clearance)
		}
		ideal := q.folded(s.plan, s.plan.Ideals(), s.plan.Build)
		exact := fold.Prove(&ideal, measure.Micrometres(50))
		require.True(t, exact.Closes && exact.Holds, "%s: %v", q.Kind.Name, exact.Faults)
		plain := *s.Request
		plain.FoldAllowance = measure.Length{}
		plan, err := plain.planned()
		require.NoError(t, err)
		without := plan.Build(plan.Ideals())
		if s.Ideal.Pieces[0].Width != without.Pieces[0].Width {
			longer++
		}
	}
	assert.Greater(t, longer, want/2)
}

// By hand: a sleeve round 95 x 60 x 24 mm in card of 0.3 mm whose folds take up
// 0.4 mm each. Its back lies between two folds: of 98 mm, 95 + 0.3 + 0.4 are taken
// and 2.3 mm left.
func TestSleeveWithThickFolds(t *testing.T) {
	q := seen(t, "sleeve", 1, 95, 60, 24)
	q.FoldAllowance = measure.Micrometres(400)
	q.Step = measure.MustParseStep("1 mm")
	s, err := Solve(context.Background(), q)
	require.NoError(t, err)
	assert.Equal(t, measure.Millimetres(98), s.Pattern.Pieces[0].Strips[0].Cells[2].Size)
	assert.Equal(t, measure.MustParse("2.3 mm"), s.Fits[0].Nominal)
	assert.Equal(t, measure.MustParse("97.95 mm"), s.Outside.Width, "the front has one fold: 98 - 0.2, and half a caliper of the left side")
}
