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

// wideProblem makes a problem of readings from 0 to 12 in, with windows of one
// to three inches.
func wideProblem(r *rand.Rand, readings, windows, pairs, closureTerms int) *rounding.Problem {
	p := &rounding.Problem{}
	for range readings {
		ideal := measure.Nanometres(r.Int64N(measure.Inches(8).Nanometres()))
		p.Readings = append(p.Readings, rounding.Reading{Ideal: ideal, Max: measure.Inches(12)})
	}
	ideals := idealsOf(p)
	for range 2 + r.IntN(3) {
		f := randomForm(r, readings, closureTerms, 3)
		f.Constant = measure.Marks(measure.Inch)[1+r.IntN(4)].Nearest(f.Value(ideals)).Neg()
		p.Closures = append(p.Closures, rounding.Closure{Form: f})
	}
	for range windows {
		f := randomForm(r, readings, 3, 3)
		f.Constant = f.Value(ideals).Neg()
		p.Windows = append(p.Windows, rounding.Window{Form: f, Max: measure.Sixtyfourths(64 + r.Int64N(128)), Weight: 1 + r.Int64N(3)})
	}
	for range pairs {
		p.Even = append(p.Even, rounding.Pair{A: r.IntN(readings), B: r.IntN(readings)})
	}
	return p
}

// patience is a context that ends when it has been looked at often enough.
type patience struct {
	context.Context
	looks, most int
}

func (p *patience) Err() error {
	if p.looks++; p.looks > p.most {
		return context.Canceled
	}
	return nil
}

// Ten thousand problems of fourteen readings with wide windows stay below ten thousand nodes
// at any step. One in ten thousand of those with uneven pairs and no windows does not.
func TestWideProblemsStaySmall(t *testing.T) {
	for name, class := range map[string]struct{ windows, pairs, closureTerms, stubborn int }{
		"five windows": {5, 2, 4, 0},
		"two windows":  {2, 1, 5, 0},
		"one window":   {1, 0, 7, 0},
		"no windows":   {0, 3, 6, 1},
	} {
		t.Run(name, func(t *testing.T) {
			random := rand.New(rand.NewPCG(14, 14))
			found, stubborn, most, all := 0, 0, 0, 0
			for range 2_500 {
				search := rounding.NewSearch(wideProblem(random, 14, class.windows, class.pairs, class.closureTerms))
				for _, step := range measure.Marks(measure.Inch)[2:6] {
					_, ok, err := search.At(&patience{context.Background(), 0, 500}, step) // each look stands for some thousand rows
					require.NoError(t, err)
					if ok {
						found++
					}
					if search.Nodes() > 10_000 {
						stubborn++
					}
					most, all = max(most, search.Nodes()), all+search.Nodes()
				}
			}
			t.Logf("%d with solutions; at most %d nodes, %d on average", found, most, all/10_000)
			assert.Greater(t, found, 2_500)
			assert.LessOrEqual(t, stubborn, class.stubborn)
			assert.Less(t, all/10_000, 120)
		})
	}
}

// Twenty readings in six closures stay a matter of some thousand nodes, which is
// well under a millisecond, in the worst of ten thousand problems.
func TestTwentyReadingsStaySmall(t *testing.T) {
	random := rand.New(rand.NewPCG(20, 6))
	found, worst := 0, 0
	inch, mm := measure.Marks(measure.Inch), measure.Marks(measure.Millimetre)
	steps := []measure.Step{inch[2], inch[3], inch[4], mm[1], mm[2], mm[3]}
	for k := range 10_000 {
		step, unit := steps[k%len(steps)], int64(3_175)
		if step.Unit() == measure.Millimetre {
			unit = 10_000
		}
		search := rounding.NewSearch(largeProblem(random, step, unit, 20, 6))
		_, ok, err := search.At(&patience{context.Background(), 0, 100}, step)
		require.NoError(t, err)
		if ok {
			found++
		}
		worst = max(worst, search.Nodes())
	}
	t.Logf("%d with solutions; at most %d nodes", found, worst)
	assert.Greater(t, found, 4_000)
	assert.Less(t, worst, 2_000)
}

// marketSplit is a problem of a class that is known to be hard for branch and
// bound (G. Cornuéjols and M. Dawande, A class of hard small 0-1 programs,
// IPCO 1998): each of a few sums of forty choices is to be just half of the
// whole.
func marketSplit(r *rand.Rand) *rounding.Problem {
	p := &rounding.Problem{}
	for range 40 {
		p.Readings = append(p.Readings, rounding.Reading{Max: measure.Inches(1)})
	}
	for range 5 {
		var f rounding.Form
		var whole int64
		for i := range p.Readings {
			c := r.Int64N(100)
			whole += c
			f.Terms = append(f.Terms, rounding.Term{Reading: i, Coefficient: c})
		}
		f.Constant = measure.Inches(whole / 2).Neg()
		p.Closures = append(p.Closures, rounding.Closure{Form: f})
	}
	return p
}

// However stubborn a problem is, the search ends at the first look at a
// context that has ended.
func TestEndedContextEndsTheSearch(t *testing.T) {
	search := rounding.NewSearch(marketSplit(rand.New(rand.NewPCG(5, 40))))
	whole := measure.Marks(measure.Inch)[0]
	for _, most := range []int{0, 1, 2, 10, 100} {
		ctx := &patience{context.Background(), 0, most}
		_, ok, err := search.At(ctx, whole)
		require.ErrorIs(t, err, context.Canceled)
		assert.False(t, ok)
		assert.Equal(t, most+1, ctx.looks)

		ctx = &patience{context.Background(), 0, most}
		_, err = search.NearestMiss(ctx, whole)
		require.ErrorIs(t, err, context.Canceled)
		assert.Equal(t, most+1, ctx.looks)
	}
	sizes, ok, err := rounding.NewSearch(thinStrip(measure.Inches(3))).At(context.Background(), measure.Marks(measure.Inch)[4])
	require.NoError(t, err, "another search goes on")
	assert.True(t, ok)
	assert.NotEmpty(t, sizes)
}
