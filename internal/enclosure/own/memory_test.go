package own

import (
	"fmt"
	"math/rand/v2"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
)

// What was asked of a design before changes no answer: foldings that are remembered give
// the same plan as new ones, in memory of an earlier plan too, and few are needed.
func TestRememberedFoldingsPlanAlike(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 19))
	for _, e := range append(Examples(), Kinds()...) {
		t.Run(e.Name, func(t *testing.T) {
			d, err := Decode(e.Text)
			require.NoError(t, err)
			warm := newDerivation(d)
			warm.try()
			for range 40 {
				in := trial()
				in.Width, in.Height = measure.Millimetres(40+r.Int64N(300)), measure.Millimetres(40+r.Int64N(300))
				in.Thickness, in.Caliper = measure.Micrometres(500+r.Int64N(60_000)), measure.Micrometres(80+r.Int64N(700))
				fresh := newDerivation(d)
				fresh.try()
				want, got := fresh.planner(in), warm.planner(in)
				assert.Equal(t, fresh.limited(want), warm.limited(got))
				wrong, err := fresh.attempt(want), warm.attempt(got)
				if assert.Equal(t, wrong, err); err == nil {
					assert.Equal(t, fmt.Sprint(want.plan.Problem, want.plan.Warnings), fmt.Sprint(got.plan.Problem, got.plan.Warnings)) // lists may be nil or empty
					assert.Equal(t, want.plan.Fits, got.plan.Fits)
					assert.Equal(t, want.build(want.plan.Ideals()), got.build(got.plan.Ideals()))
					got.GiveBack() // the next one is made in its memory, beside one that is not
				}
			}
			assert.LessOrEqual(t, len(warm.folded), 3, "foldings")
		})
	}
}

// A design that many ask at once gives each the plan that it alone would have got.
func TestOneDesignForManyAtOnce(t *testing.T) {
	k, err := Read(Kinds()[len(Kinds())-1].Text) // a tray, which has something cut away
	require.NoError(t, err)
	ask := func(n int64) *enclosure.Plan {
		in := trial()
		in.Width, in.Thickness = measure.Millimetres(50+n), measure.Millimetres(1+n%9)
		plan, err := k.Plan(in)
		if assert.NoError(t, err) {
			plan.Build(plan.Ideals())
		}
		return plan
	}
	var all sync.WaitGroup
	plans := make([]*enclosure.Plan, 32)
	for i := range plans {
		all.Go(func() { plans[i] = ask(int64(i)) })
	}
	all.Wait()
	for i, plan := range plans {
		assert.Equal(t, ask(int64(i)).Problem, plan.Problem)
	}
}
