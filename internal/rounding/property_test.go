package rounding_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// drawProblem makes a problem of 2 to 10 readings with some freedom in it, and
// a step of its ruler.
func drawProblem(t *rapid.T) (*rounding.Problem, measure.Step) {
	ruler := measure.Marks(rapid.SampledFrom([]measure.Unit{measure.Inch, measure.Millimetre}).Draw(t, "unit"))
	step := ruler[rapid.IntRange(1, len(ruler)-1).Draw(t, "step")]
	random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
	n := 2 + random.IntN(9)
	p := &rounding.Problem{}
	for range n {
		at := step.Size().Times(random.Int64N(60))
		nudge := measure.Nanometres(random.Int64N(step.Size().Nanometres()))
		q := rounding.Reading{Ideal: at.Add(nudge), Max: step.Size().Times(80)}
		if random.IntN(6) == 0 {
			q = rounding.Reading{Ideal: at, Fixed: true}
		}
		p.Readings = append(p.Readings, q)
	}
	ideals := idealsOf(p)
	for range random.IntN(3) {
		f := randomForm(random, n, 4, 2)
		f.Constant = step.Nearest(f.Value(ideals)).Neg()
		p.Closures = append(p.Closures, rounding.Closure{Form: f})
	}
	for range 1 + random.IntN(3) {
		f := randomForm(random, n, 3, 2)
		f.Constant = f.Value(ideals).Neg()
		width := measure.Nanometres(random.Int64N(3 * step.Size().Nanometres()))
		p.Windows = append(p.Windows, rounding.Window{Form: f, Max: width, Weight: 1 + random.Int64N(3)})
	}
	for range random.IntN(3) {
		p.Even = append(p.Even, rounding.Pair{A: random.IntN(n), B: random.IntN(n), Rising: random.IntN(3) == 0})
	}
	return p, step
}

// solve returns the optimum and its costs.
func solve(t require.TestingT, p *rounding.Problem, step measure.Step) (judged, bool) {
	sizes, ok, err := rounding.NewSearch(p).At(context.Background(), step)
	require.NoError(t, err)
	if !ok {
		return judged{}, false
	}
	j, closes := judge(p, step, sizes)
	require.True(t, closes, "the closures hold exactly")
	j.sizes = sizes
	return j, true
}

// summary returns the costs without the readings themselves.
func (j judged) summary() []int64 { return j.cost[:len(j.cost)-len(j.sizes)] }

func TestAnswersHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, step := drawProblem(t)
		j, ok := solve(t, p, step)
		if !ok {
			return
		}
		for i, r := range p.Readings {
			assert.True(t, j.sizes[i].IsMultipleOf(step), "reading %d is on a mark", i)
			if r.Fixed {
				assert.Equal(t, r.Ideal, j.sizes[i], "reading %d is as given", i)
				continue
			}
			assert.False(t, j.sizes[i].Less(r.Min) || r.Max.Less(j.sizes[i]), "reading %d is within its ends", i)
		}
		assert.Zero(t, j.cost[missed], "the windows hold")
	})
}

func TestFinerStepIsNoWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, step := drawProblem(t)
		coarse, ok := solve(t, p, step)
		if !ok {
			return
		}
		ruler := measure.Marks(step.Unit())
		for _, finer := range ruler[slices.Index(ruler, step):] {
			fine, ok := solve(t, p, finer)
			require.True(t, ok, "still feasible at %v", finer)
			assert.LessOrEqual(t, fine.cost[distance], coarse.cost[distance])
			coarse = fine
		}
	})
}

// A form counted from elsewhere, with its window moved along, is the same.
func TestShiftedWindowIsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, step := drawProblem(t)
		before, ok := solve(t, p, step)
		shift := measure.Nanometres(rapid.Int64Range(-1e9, 1e9).Draw(t, "shift"))
		w := &p.Windows[rapid.IntRange(0, len(p.Windows)-1).Draw(t, "window")]
		w.Form.Constant, w.Min, w.Max = w.Form.Constant.Add(shift), w.Min.Add(shift), w.Max.Add(shift)
		after, still := solve(t, p, step)
		assert.Equal(t, ok, still)
		assert.Equal(t, before, after)
	})
}

// A fixed reading is the same as its length in the constants.
func TestFixedReadingIsAConstant(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, step := drawProblem(t)
		before, ok := solve(t, p, step)
		fold := func(f *rounding.Form) {
			for k, term := range f.Terms {
				if r := p.Readings[term.Reading]; r.Fixed {
					f.Constant = f.Constant.Add(r.Ideal.Times(term.Coefficient))
					f.Terms[k].Coefficient = 0
				}
			}
		}
		for i := range p.Closures {
			fold(&p.Closures[i].Form)
		}
		for i := range p.Windows {
			fold(&p.Windows[i].Form)
		}
		after, still := solve(t, p, step)
		assert.Equal(t, ok, still)
		assert.Equal(t, before.sizes, after.sizes)
	})
}

func TestOrderOfReadingsChangesNoCost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, step := drawProblem(t)
		before, ok := solve(t, p, step)
		to := make([]int, len(p.Readings))
		for i := range to {
			to[i] = i
		}
		to = rapid.Permutation(to).Draw(t, "order")
		q := &rounding.Problem{Readings: make([]rounding.Reading, len(to))}
		for i, r := range p.Readings {
			q.Readings[to[i]] = r
		}
		move := func(f rounding.Form) rounding.Form {
			f.Terms = slices.Clone(f.Terms)
			for k := range f.Terms {
				f.Terms[k].Reading = to[f.Terms[k].Reading]
			}
			return f
		}
		for _, c := range p.Closures {
			q.Closures = append(q.Closures, rounding.Closure{Form: move(c.Form)})
		}
		for _, w := range slices.Backward(p.Windows) {
			w.Form = move(w.Form)
			q.Windows = append(q.Windows, w)
		}
		for _, e := range p.Even {
			e.A, e.B = to[e.A], to[e.B]
			if !e.Rising {
				e.A, e.B = e.B, e.A
			}
			q.Even = append(q.Even, e)
		}
		after, still := solve(t, q, step)
		require.Equal(t, ok, still)
		if ok {
			assert.Equal(t, before.summary(), after.summary())
		}
	})
}

func TestNearestMissMakesFeasible(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, step := drawProblem(t)
		_, ok := solve(t, p, step)
		miss, err := rounding.NewSearch(p).NearestMiss(context.Background(), step)
		require.NoError(t, err)
		nothing := miss.Closes && len(miss.Windows) == 0 && len(miss.OffMarks) == 0
		require.Equal(t, ok, nothing, "%+v", miss)
		if !miss.Closes || len(miss.OffMarks) > 0 {
			return
		}
		for _, off := range miss.Windows {
			w := &p.Windows[off.Window]
			require.NotZero(t, off.By.Sign())
			if off.By.Sign() < 0 {
				w.Min = w.Min.Add(off.By)
			} else {
				w.Max = w.Max.Add(off.By)
			}
		}
		_, ok = solve(t, p, step)
		assert.True(t, ok, "feasible once widened by %+v", miss)
	})
}

// A search that is prepared for one problem after another answers as a new one
// does, with what it returned before left as it was.
func TestPreparedAnewIsNew(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var search rounding.Search
		var before, kept []measure.Length
		for range 4 {
			p, step := drawProblem(t)
			search.Prepare(p)
			got, ok, err := search.At(context.Background(), step)
			require.NoError(t, err)
			want, found := solve(t, p, step)
			require.Equal(t, found, ok)
			require.Equal(t, want.sizes, got)
			require.Equal(t, kept, before)
			before, kept = got, slices.Clone(got)
		}
	})
}

// A search answers the same however often and in whatever order it is asked.
func TestSearchKeepsNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, step := drawProblem(t)
		search := rounding.NewSearch(p)
		ruler := measure.Marks(step.Unit())
		for _, step := range rapid.SliceOfN(rapid.SampledFrom(ruler[1:]), 1, 6).Draw(t, "steps") {
			if rapid.Bool().Draw(t, "miss") {
				got, err := search.NearestMiss(context.Background(), step)
				require.NoError(t, err)
				want, err := rounding.NewSearch(p).NearestMiss(context.Background(), step)
				require.NoError(t, err)
				assert.Equal(t, want, got)
				continue
			}
			got, ok, err := search.At(context.Background(), step)
			require.NoError(t, err)
			want, found := solve(t, p, step)
			assert.Equal(t, found, ok)
			assert.Equal(t, want.sizes, got)
		}
	})
}
