package search

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/sheet"
	"creasefit/internal/sheet/sheettest"
	"creasefit/internal/sheet/verify"
)

// plannedWith plans an order with so many steps of work, counted and not timed,
// and returns the plan and the steps done.
func plannedWith(t testing.TB, o sheet.Order, steps int64) (sheet.Answer, int64) {
	t.Helper()
	require.NoError(t, o.Check())
	e := newEffort(context.Background(), time.Time{})
	e.left = steps
	a, err := newProblem(o).planWith(e, nil)
	require.NoError(t, err)
	require.NoError(t, verify.Plan(o, a))
	return a, e.spent
}

// manyOrders are the published orders of few kinds with many copies.
func manyOrders(t testing.TB) map[string]sheet.Order {
	orders := map[string]sheet.Order{}
	for _, name := range []string{"A2", "A4", "A6", "A8", "A10", "A12", "A14", "A16", "A18", "A20", "A22", "A24", "A26", "A28", "A30", "A32", "A34", "A36", "A38", "A40", "A42"} {
		orders[name+" fixed"] = binOrder(t, "../many/"+name, false)
		orders[name+" turned"] = binOrder(t, "../many/"+name, true)
	}
	return orders
}

// Every loop spends in small pieces, so that work ends when it should; what one
// piece and the first plan may take is a few milliseconds. And more work is
// never a worse plan nor a lower bound, since it goes on where less has ended.
func TestMoreWorkIsNeverWorse(t *testing.T) {
	t.Parallel()
	for name, o := range manyOrders(t) {
		if testing.Short() && len(o.Items) > 8 {
			continue
		}
		before := sheet.Answer{Sheets: o.Items[0].Count * 1_000_000}
		for _, steps := range []int64{0, 1_000_000, 10_000_000, 60_000_000} {
			a, spent := plannedWith(t, o, steps)
			assert.Less(t, spent, steps+3_000_000, "%s with %d steps", name, steps)
			assert.LessOrEqual(t, a.Sheets, before.Sheets, "%s with %d steps", name, steps)
			assert.GreaterOrEqual(t, a.LowerBound, before.LowerBound, "%s with %d steps", name, steps)
			before = a
			if a.Proven {
				break
			}
		}
	}
}

// A caller whose time is up gets the best plan there is; one that has left, none.
func TestTheBestPlanIsAnswered(t *testing.T) {
	o := sheettest.TeaOrder(t)
	late, cancel := context.WithDeadline(context.Background(), time.Now().Add(-time.Second))
	defer cancel()
	a, err := Plan(late, o)
	require.NoError(t, err)
	require.NoError(t, verify.Plan(o, a))
	left, leave := context.WithCancel(context.Background())
	leave()
	_, err = Plan(left, o)
	require.ErrorIs(t, err, context.Canceled)
}

// Work that is lent comes off the whole, and no more of it is done than lent.
func TestEffortIsLent(t *testing.T) {
	e := newEffort(context.Background(), time.Time{})
	e.left = 100
	e.lend(30, func() {
		assert.True(t, e.spend(30))
		assert.False(t, e.spend(1))
	})
	assert.EqualValues(t, 69, e.left)
	e.lend(500, func() { assert.False(t, e.spend(70)) })
	assert.True(t, e.ended())
}

// Orders of few kinds with many copies come to their bound, or close: their
// fractional covers lose little where they are rounded sheet by sheet.
func TestManyCopiesAreRounded(t *testing.T) {
	if testing.Short() {
		t.Skip("seconds of searching")
	}
	t.Parallel()
	for name, gap := range map[string]int64{"A18": 0, "A14": 1, "A12": 0, "A2": 0} {
		a, _ := plannedWith(t, binOrder(t, "../many/"+name, false), 250_000_000)
		assert.LessOrEqual(t, int64(a.Sheets)-a.LowerBound, gap, name)
	}
}
