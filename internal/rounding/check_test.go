package rounding_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

func TestRefusedProblems(t *testing.T) {
	one := rounding.Form{Terms: terms(0, 1)}
	far := measure.Nanometres(math.MinInt64)
	many := func(n int, coefficient int64) rounding.Form {
		var f rounding.Form
		for i := range n {
			f.Terms = append(f.Terms, rounding.Term{Reading: i, Coefficient: coefficient})
		}
		return f
	}
	for name, row := range map[string]struct {
		change func(p *rounding.Problem)
		says   string
	}{
		"closure index":   {func(p *rounding.Problem) { p.Closures[0].Form.Terms = terms(14, 1) }, "closure 0 (sum): there is no reading 14"},
		"negative index":  {func(p *rounding.Problem) { p.Windows[0].Form.Terms = terms(-1, 1) }, "window 0 (width): there is no reading -1"},
		"pair index":      {func(p *rounding.Problem) { p.Even[0].B = 99 }, "even pair 0: there is no reading 99"},
		"negative weight": {func(p *rounding.Problem) { p.Windows[0].Weight = -1 }, "window 0 (width): the weight is negative"},
		"upside down":     {func(p *rounding.Problem) { p.Windows[0].Max = measure.Nanometres(-1) }, "window 0 (width): the least is above the greatest"},
		"far reading":     {func(p *rounding.Problem) { p.Readings[3].Min = far }, "reading 3 (panel): lengths"},
		"far constant":    {func(p *rounding.Problem) { p.Closures[0].Form.Constant = far }, "closure 0 (sum): lengths"},
		"steep closure":   {func(p *rounding.Problem) { p.Closures[0].Form.Terms = terms(0, math.MinInt64) }, "closure 0 (sum): lengths"},
		"heavy window":    {func(p *rounding.Problem) { p.Windows[0].Weight = math.MaxInt64 }, "window 0 (width): lengths"},
		"far window":      {func(p *rounding.Problem) { p.Windows[0].Min = far }, "window 0 (width): lengths"},
		"fourteen of a thousand": {func(p *rounding.Problem) {
			p.Windows = []rounding.Window{{Name: "width", Form: many(14, 1000), Weight: 1000}}
		}, "window 0 (width): lengths"},
		"many windows": {func(p *rounding.Problem) {
			for range 20 {
				p.Windows = append(p.Windows, rounding.Window{Name: "next", Form: many(10, 1000), Weight: 100})
			}
		}, "window 12 (next): lengths"},
		"many pairs": {func(p *rounding.Problem) {
			p.Readings[0].Max, p.Readings[0].Min = measure.Nanometres(rounding.Limit/3), measure.Length{}
			p.Windows, p.Closures = nil, nil
			p.Even = append(p.Even, p.Even[0], p.Even[0])
		}, "even pair 1: lengths"},
	} {
		t.Run(name, func(t *testing.T) {
			p := &rounding.Problem{
				Closures: []rounding.Closure{{Name: "sum", Form: one}},
				Windows:  []rounding.Window{{Name: "width", Form: one, Weight: 1}},
				Even:     []rounding.Pair{{A: 0, B: 1}},
			}
			for range 14 {
				p.Readings = append(p.Readings, rounding.Reading{Name: "panel", Max: measure.Largest()})
			}
			_, ok, err := rounding.NewSearch(p).At(context.Background(), measure.Marks(measure.Inch)[3])
			require.NoError(t, err, "as it stands")
			require.True(t, ok)
			row.change(p)
			search := rounding.NewSearch(p)
			_, ok, err = search.At(context.Background(), measure.Marks(measure.Inch)[3])
			assert.False(t, ok)
			assert.ErrorContains(t, err, "rounding: "+row.says)
			_, err = search.NearestMiss(context.Background(), measure.Marks(measure.Inch)[3])
			assert.ErrorContains(t, err, row.says)
		})
	}
}

func TestNoStep(t *testing.T) {
	search := rounding.NewSearch(thinStrip(measure.Inches(3)))
	_, _, err := search.At(context.Background(), measure.Step{})
	require.Error(t, err)
	_, err = search.NearestMiss(context.Background(), measure.Step{})
	require.Error(t, err)
}

func TestNoReadings(t *testing.T) {
	step := measure.Marks(measure.Millimetre)[2]
	sizes, ok, err := rounding.NewSearch(&rounding.Problem{}).At(context.Background(), step)
	require.NoError(t, err)
	assert.True(t, ok)
	assert.Empty(t, sizes)

	p := &rounding.Problem{Windows: []rounding.Window{{Form: rounding.Form{Constant: measure.Millimetres(3)}, Max: measure.Millimetres(1)}}}
	miss, err := rounding.NewSearch(p).NearestMiss(context.Background(), step)
	require.NoError(t, err)
	assert.Equal(t, rounding.Miss{Closes: true, Windows: []rounding.Off{{Window: 0, By: measure.Millimetres(2)}}}, miss)

	p = &rounding.Problem{Closures: []rounding.Closure{{Form: rounding.Form{Constant: measure.Millimetres(3)}}}}
	miss, err = rounding.NewSearch(p).NearestMiss(context.Background(), step)
	require.NoError(t, err)
	assert.Equal(t, rounding.Miss{}, miss)
}

// Readings of about 100 m, coefficients and weights up to 1000: what trying
// everything finds, in figures that just fit.
func TestLargeFiguresAreExact(t *testing.T) {
	random := rand.New(rand.NewPCG(100, 1000))
	feasible := 0
	for k := range 3_000 {
		ruler := measure.Marks([]measure.Unit{measure.Inch, measure.Millimetre}[k%2])
		step := ruler[1+random.IntN(len(ruler)-1)]
		p := farProblem(random, step)
		search := rounding.NewSearch(p)
		want, ok := brute(p, step, true)
		got, found, err := search.At(context.Background(), step)
		require.NoError(t, err)
		require.Equal(t, ok, found, "%+v", p)
		require.Equal(t, want.sizes, got, "%+v", p)
		if ok {
			feasible++
		} else {
			requireNearestMiss(t, search, p, step)
		}
	}
	assert.Greater(t, feasible, 500)
}

func farProblem(r *rand.Rand, step measure.Step) *rounding.Problem {
	p := &rounding.Problem{}
	n := 1 + r.IntN(4)
	for range n {
		most := step.Down(measure.Largest()).Sub(step.Size().Times(r.Int64N(6)))
		least := most.Sub(step.Size().Times(r.Int64N(6)))
		if r.IntN(2) == 0 {
			least, most = most.Neg(), least.Neg()
		}
		p.Readings = append(p.Readings, rounding.Reading{Ideal: most, Min: least, Max: most, Fixed: r.IntN(5) == 0})
	}
	ideals := idealsOf(p)
	for range r.IntN(2) {
		f := randomForm(r, n, n, 1000)
		f.Constant = f.Value(ideals).Neg()
		p.Closures = append(p.Closures, rounding.Closure{Form: f})
	}
	for range r.IntN(4) {
		f := randomForm(r, n, 3, 1000)
		f.Constant = f.Value(ideals).Neg()
		least := measure.Nanometres(-r.Int64N(10_000_000_000))
		p.Windows = append(p.Windows, rounding.Window{
			Form: f, Min: least, Max: measure.Nanometres(r.Int64N(10_000_000_000)), Weight: r.Int64N(300),
		})
	}
	for range r.IntN(3) {
		p.Even = append(p.Even, rounding.Pair{A: r.IntN(n), B: r.IntN(n)})
	}
	return p
}
