package rounding_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// judged is a choice of readings and all it is judged by, in order.
type judged struct {
	sizes []measure.Length
	cost  []int64
	off   []int64 // by how much each window is missed
}

// brute tries every choice of multiples of the step, as the definition says.
// It keeps the best that closes, or with strict the best that fits as well.
func brute(p *rounding.Problem, step measure.Step, strict bool) (best judged, ok bool) {
	choices := make([][]measure.Length, len(p.Readings))
	for i, r := range p.Readings {
		if r.Fixed {
			if strict && !r.Ideal.IsMultipleOf(step) {
				return best, false
			}
			choices[i] = []measure.Length{r.Ideal}
			continue
		}
		for at := step.Down(r.Min); !r.Max.Less(at); at = at.Add(step.Size()) {
			if !at.Less(r.Min) {
				choices[i] = append(choices[i], at)
			}
		}
	}
	sizes := make([]measure.Length, len(p.Readings))
	var choose func(i int)
	choose = func(i int) {
		if i < len(sizes) {
			for _, sizes[i] = range choices[i] {
				choose(i + 1)
			}
			return
		}
		this, closes := judge(p, step, sizes)
		if !closes || strict && this.cost[0] > 0 {
			return
		}
		if !ok || slices.Compare(this.cost, best.cost) < 0 {
			this.sizes = slices.Clone(sizes)
			best, ok = this, true
		}
	}
	choose(0)
	return best, ok
}

// judge returns the costs: what the windows are missed by, the distance from
// their middles, the unevenness, the readings at each mark from the finest on,
// their sum, and the readings themselves.
func judge(p *rounding.Problem, step measure.Step, sizes []measure.Length) (j judged, closes bool) {
	for _, c := range p.Closures {
		if value(c.Form, sizes) != 0 {
			return j, false
		}
	}
	for _, e := range p.Even {
		if e.Rising && sizes[e.B].Less(sizes[e.A]) {
			return j, false
		}
	}
	var missed, distance, uneven, sum int64
	for _, w := range p.Windows {
		v, least, greatest := value(w.Form, sizes), w.Min.Nanometres(), w.Max.Nanometres()
		var off int64
		if v < least {
			off = v - least
		}
		if v > greatest {
			off = v - greatest
		}
		j.off = append(j.off, off)
		if off < 0 {
			off = -off
		}
		missed += off * max(w.Weight, 1)
		twice := 2*v - least - greatest
		if twice < 0 {
			twice = -twice
		}
		distance += twice * w.Weight
	}
	for _, e := range p.Even {
		uneven += sizes[e.A].Sub(sizes[e.B]).Abs().Nanometres()
	}
	j.cost = []int64{missed, distance, uneven}
	ruler := measure.Marks(step.Unit())
	for k := slices.Index(ruler, step); k > 0; k-- {
		var n int64
		for i, size := range sizes {
			if mark, on := measure.CoarsestMark(size, step.Unit()); !p.Readings[i].Fixed && on && mark == ruler[k] {
				n++
			}
		}
		j.cost = append(j.cost, n)
	}
	for _, size := range sizes {
		sum += size.Nanometres()
	}
	j.cost = append(j.cost, sum)
	for _, size := range sizes {
		j.cost = append(j.cost, size.Nanometres())
	}
	return j, true
}

func value(f rounding.Form, sizes []measure.Length) int64 {
	v := f.Constant.Nanometres()
	for _, t := range f.Terms {
		v += t.Coefficient * sizes[t.Reading].Nanometres()
	}
	return v
}

// smallProblem makes a problem of one to five readings that can be tried out
// whole at any step not finer than the given one.
func smallProblem(r *rand.Rand, step measure.Step) *rounding.Problem {
	marks := [...]int64{1: 60, 2: 24, 3: 11, 4: 6, 5: 4}
	n := 1 + r.IntN(5)
	p := &rounding.Problem{Readings: make([]rounding.Reading, n)}
	steps := func(from, count int64) measure.Length { return step.Size().Times(from + r.Int64N(count)) }
	nudge := func() measure.Length { return measure.Nanometres(r.Int64N(step.Size().Nanometres())) }
	for i := range p.Readings {
		from := r.Int64N(20)
		if r.IntN(8) == 0 {
			from = -from
		}
		least := step.Size().Times(from)
		q := rounding.Reading{Ideal: least.Add(steps(0, marks[n])), Min: least, Max: least.Add(step.Size().Times(r.Int64N(marks[n])))}
		switch r.IntN(40) {
		case 0:
			q.Fixed, q.Ideal = true, q.Ideal.Add(nudge())
		case 1, 2, 3, 4, 5, 6:
			q.Fixed, q.Ideal = true, measure.Marks(step.Unit())[1].Nearest(q.Ideal)
		case 7, 8, 9, 10, 11:
			q.Min, q.Max, q.Ideal = q.Min.Add(nudge()), q.Max.Add(nudge()), q.Ideal.Add(nudge())
		}
		p.Readings[i] = q
	}
	ideals := idealsOf(p)
	for range r.IntN(3) {
		f := randomForm(r, n, n, 3)
		f.Constant = step.Down(f.Value(ideals)).Neg()
		if r.IntN(6) == 0 {
			f.Constant = f.Constant.Add(steps(0, 3))
		}
		p.Closures = append(p.Closures, rounding.Closure{Form: f})
	}
	for range r.IntN(5) {
		f := randomForm(r, n, n, 3)
		f.Constant = f.Value(ideals).Neg().Add(nudge())
		w := rounding.Window{Form: f, Weight: r.Int64N(4), Min: steps(-8, 9), Max: steps(0, 9).Add(nudge())}
		p.Windows = append(p.Windows, w)
	}
	for range r.IntN(3) {
		p.Even = append(p.Even, rounding.Pair{A: r.IntN(n), B: r.IntN(n), Rising: r.IntN(3) == 0})
	}
	return p
}

func idealsOf(p *rounding.Problem) []measure.Length {
	ideals := make([]measure.Length, len(p.Readings))
	for i, r := range p.Readings {
		ideals[i] = r.Ideal
	}
	return ideals
}

// randomForm makes a form of one to most terms, now and then with a zero
// coefficient or a reading named twice.
func randomForm(r *rand.Rand, n, most int, coefficient int64) rounding.Form {
	var f rounding.Form
	for range 1 + r.IntN(most) {
		f.Terms = append(f.Terms, rounding.Term{Reading: r.IntN(n), Coefficient: r.Int64N(2*coefficient+1) - coefficient})
	}
	return f
}

// Every step of small problems, from coarse to fine: the search finds what
// trying everything finds, and so the same coarsest step that is feasible.
func TestSearchEqualsTryingEverything(t *testing.T) {
	const problems = 30_000
	random := rand.New(rand.NewPCG(20, 26))
	var feasible, infeasible, coarser, closing int
	for k := range problems {
		ruler := measure.Marks([]measure.Unit{measure.Inch, measure.Millimetre}[k%2])
		finest := 1 + random.IntN(len(ruler)-1)
		p := smallProblem(random, ruler[finest])
		search := rounding.NewSearch(p)
		for i, step := range ruler[:finest+1] {
			want, ok := brute(p, step, true)
			got, found, err := search.At(context.Background(), step)
			require.NoError(t, err)
			require.Equal(t, ok, found, "feasible at %v: problem %d %+v", step, k, p)
			require.Equal(t, want.sizes, got, "at %v: problem %d %+v", step, k, p)
			if ok {
				require.True(t, search.Whole(step), "whole at %v: problem %d %+v", step, k, p)
				feasible++
				if i < finest {
					coarser++
				}
				break
			}
			infeasible++
			if requireNearestMiss(t, search, p, step) {
				closing++
			}
		}
	}
	t.Logf("%d feasible, %d of them at a coarser step; %d infeasible, %d of them close", feasible, coarser, infeasible, closing)
	require.Greater(t, min(feasible, coarser, infeasible, closing), problems/15)
}

// requireNearestMiss compares the nearest miss with what trying everything
// finds and returns whether the closures close.
func requireNearestMiss(t *testing.T, search *rounding.Search, p *rounding.Problem, step measure.Step) bool {
	var want rounding.Miss
	for i, r := range p.Readings {
		if r.Fixed && !r.Ideal.IsMultipleOf(step) {
			want.OffMarks = append(want.OffMarks, i)
		}
	}
	best, closes := brute(p, step, false)
	want.Closes = closes
	for i, off := range best.off {
		if off != 0 {
			want.Windows = append(want.Windows, rounding.Off{Window: i, By: measure.Nanometres(off)})
		}
	}
	got, err := search.NearestMiss(context.Background(), step)
	require.NoError(t, err)
	require.Equal(t, want, got, "at %v: %+v", step, p)
	return closes
}
