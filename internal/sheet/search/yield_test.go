package search

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/sheettest"
	"creasefit/internal/sheet/verify"
)

// in reads a length in inches.
func in(t testing.TB, text string) measure.Length { return sheettest.Inches(t, text) }

// sixteenth is the ruler of most tests.
func sixteenth(t testing.TB) measure.Step { return sheettest.Step(t, "1/16 in") }

// single is an order of one blank without a count.
func single(t testing.TB, sheetW, sheetH, w, h string) sheet.Order {
	return sheet.Order{
		Sheets: []sheet.Stock{{Width: in(t, sheetW), Height: in(t, sheetH)}},
		Ruler:  sixteenth(t),
		Items:  []sheet.Item{{Name: "band", Width: in(t, w), Height: in(t, h)}},
	}
}

// planned plans an order and verifies the plan.
func planned(t testing.TB, o sheet.Order) sheet.Answer {
	t.Helper()
	a, err := Plan(context.Background(), o)
	require.NoError(t, err)
	require.NoError(t, verify.Plan(o, a))
	return a
}

// muchWork is more than callers may ask for, several seconds on a quiet machine.
const muchWork = 2_000_000_000

// proven plans an order for the count alone, until that is proven, and checks
// whether it is in counted work: what is proven does not depend on what else the
// machine does.
func proven(t testing.TB, o sheet.Order, steps int64) sheet.Answer {
	t.Helper()
	require.NoError(t, o.Check())
	e := newEffort(context.Background(), time.Time{})
	e.left = steps
	p := newProblem(o)
	pl := p.newPlanner(e)
	pl.run()
	a := p.finish(pl.best, true)
	require.NoError(t, verify.Plan(o, a))
	a.LowerBound, a.Proven = pl.lower, pl.done()
	return a
}

// The first rows are the textbook how-many-per-sheet sums of a printing
// course (cancellation method, common practice); in the last ones rows and
// columns of one direction are not best.
func TestSingleBlank(t *testing.T) {
	for _, c := range []struct {
		sheetW, sheetH, w, h string
		want                 int
	}{
		{"8 1/2", "11", "4 1/4", "5 1/2", 4},
		{"8 1/2", "11", "3 1/2", "2", 12},
		{"11", "17", "3 1/2", "2", 25},
		{"200", "200", "2", "10", 2000},
		{"12", "12", "8 1/4", "1 3/4", 8},
		{"12", "12", "12", "12", 1},
		{"5", "5", "2", "3", 3},
	} {
		a := planned(t, single(t, c.sheetW, c.sheetH, c.w, c.h))
		assert.Equal(t, c.want, a.PerSheet, "%+v", c)
		assert.True(t, a.Proven)
	}
}

// BenchmarkSingleBlank plans one blank with cut plan and steps, beside the
// dynamic programming alone as a floor.
func BenchmarkSingleBlank(b *testing.B) {
	for name, o := range map[string]sheet.Order{
		"craft": single(b, "12", "12", "8 1/4", "1 3/4"),
		"tiny":  single(b, "12", "12", "3/8", "5/16"),
	} {
		b.Run(name+"/plan", func(b *testing.B) {
			for b.Loop() {
				_, err := Plan(context.Background(), o)
				require.NoError(b, err)
			}
		})
		b.Run(name+"/floor", func(b *testing.B) {
			p := newProblem(o)
			for b.Loop() {
				_, ok := newTable(&p.boards[0]).solve(endless(), []int64{1})
				require.True(b, ok)
			}
		})
	}
}
