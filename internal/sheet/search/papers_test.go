package search

import (
	"context"
	"errors"
	"math"
	"math/big"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// The parts of an order by paper have every item and every sheet of their paper once,
// and know their places in the whole.
func TestOrdersAreParted(t *testing.T) {
	o := shopOrder(t)
	o.Sheets = append(o.Sheets, o.Sheets[0])
	parts := byPaper(o)
	require.Len(t, parts, 2)
	assert.Equal(t, []string{"kraft", "ivory"}, []string{parts[0].paper, parts[1].paper})
	assert.Equal(t, [][]int{{0}, {1, 2}}, [][]int{parts[0].items, parts[1].items})
	assert.Equal(t, [][]int{{0, 2}, {1}}, [][]int{parts[0].sheets, parts[1].sheets})
	for _, p := range parts {
		for i, at := range p.items {
			assert.Equal(t, o.Items[at], p.Items[i])
		}
		for i, at := range p.sheets {
			assert.Equal(t, o.Sheets[at], p.Sheets[i])
		}
		assert.Equal(t, o.Margin, p.Margin)
	}
}

// A fault in one paper says which; another error is left as it is.
func TestFaultsNameTheirPaper(t *testing.T) {
	p := paperOrder{paper: "kraft"}
	var f fault.Fault
	require.ErrorAs(t, p.renamed(fault.Fault{Code: fault.Impossible, Detail: "There are too few."}), &f)
	assert.Equal(t, "kraft: There are too few.", f.Detail)
	other := errors.New("gone")
	assert.Equal(t, other, p.renamed(other))
	p.paper = ""
	require.ErrorAs(t, p.renamed(fault.Fault{Detail: "There are too few."}), &f)
	assert.Equal(t, "There are too few.", f.Detail)
}

// Two papers joined use the area of both, in parts of their sheets: 0.5 of one sheet and
// 0.8 of two of the same size are 0.7 of three. One that is not proven leaves the whole
// so, and what comes first comes first among all.
func TestPapersAreJoined(t *testing.T) {
	in := measure.Inches
	o := sheet.Order{Sheets: []sheet.Stock{{Width: in(4), Height: in(5), Paper: "kraft"}, {Width: in(5), Height: in(4), Paper: "ivory"}},
		Items: []sheet.Item{{Paper: "kraft"}, {Paper: "ivory", Priority: 1}}}
	parts := byPaper(o)
	made := func(times int, used float64) sheet.Answer {
		return sheet.Answer{Sheets: times, Cost: int64(3 * times), LowerBound: int64(times), Proven: true, Settled: true, Used: used, Made: []int{4 * times}, Proof: "It is so.",
			Warnings: []sheet.Warning{{Code: "coarse-grid"}}, Plans: []sheet.Sheets{{Times: times, Tree: &sheet.Node{}, Placed: []sheet.Placement{{}}, Parts: []sheet.Part{{}, {Item: sheet.Offcut}}}}}
	}
	none := sheet.Answer{Proven: true, Settled: true, Made: make([]int, 2)}
	first := parts[0].joined(o, none, made(1, 0.5))
	second := made(2, 0.8)
	second.Proven = false
	a := parts[1].joined(o, first, second)
	assert.Equal(t, []int{3, 9, 3}, []int{a.Sheets, int(a.Cost), int(a.LowerBound)})
	assert.InDelta(t, 0.7, a.Used, 1e-12)
	assert.Equal(t, []bool{true, false, true}, []bool{first.Proven, a.Proven, a.Settled})
	assert.Equal(t, []int{4, 8}, a.Made)
	assert.Equal(t, "kraft: It is so. ivory: It is so.", a.Proof)
	assert.Len(t, a.Warnings, 2)
	assert.Equal(t, []int{1, 0}, []int{a.Plans[0].Stock, a.Plans[1].Stock}, "ivory has priority")
	assert.Equal(t, []int{1, 1}, []int{a.Plans[0].Tree.Item, a.Plans[0].Placed[0].Item})
	assert.Equal(t, []sheet.Part{{Item: 1}, {Item: sheet.Offcut}}, a.Plans[0].Parts)
	assert.Equal(t, []int{3, 2}, a.Ready)
	assert.Equal(t, 0, second.Plans[0].Stock, "what was joined is left as it was")
}

// A part of what is left is lent in steps as in time; what it does not use is there for
// the next.
func TestEffortWithinAPart(t *testing.T) {
	now := time.Unix(100, 0)
	e := newEffort(context.Background(), now.Add(8*time.Second))
	e.clock, e.left = func() time.Time { return now }, 800
	e.within(1, 4, func() {
		assert.EqualValues(t, 200, e.left)
		assert.Equal(t, now.Add(2*time.Second), e.end)
		assert.True(t, e.spend(50))
		now = now.Add(3 * time.Second)
		e.look = 0
		assert.False(t, e.spend(1), "the time of the part is over")
		assert.True(t, e.ended())
	})
	assert.Equal(t, time.Unix(108, 0), e.end)
	assert.True(t, e.spend(1), "that of the whole is not")
	assert.EqualValues(t, 800-50-1-1-1, e.left)
	now = now.Add(6 * time.Second)
	e.look = 0
	assert.False(t, e.spend(1))
}

// The clock is looked at once in so many steps, and a caller that has left is noticed then.
func TestTheClockIsLookedAtSeldom(t *testing.T) {
	ctx, leave := context.WithCancel(context.Background())
	e, looks := newEffort(ctx, time.Time{}), 0
	e.clock = func() time.Time { looks++; return time.Time{} }
	for range 10 * lookEvery / 1000 {
		require.True(t, e.spend(1000))
	}
	assert.InDelta(t, 10, looks, 1)
	leave()
	e.spend(lookEvery)
	assert.True(t, e.ended())
}

// Of two sizes that hold 6 and 4 at costs of 2 and 1, of which there are two and many, 13
// are worth 4 with the better size alone, the last in part: 3 1/4. Three of the better
// size are 3 for 12, and one left takes half of the other.
func TestBoundsKeepToTheStock(t *testing.T) {
	w := weights{value: []int64{1}, tops: []int64{6, 4}}
	bound := func(need, many, few int) int64 {
		p := &problem{kinds: []kind{{need: need, area: 1}}, boards: []board{{cost: 2, available: many}, {cost: 1, available: few}}}
		return (&planner{problem: p, cost: 99}).boundOf(&w)
	}
	assert.EqualValues(t, 4, bound(13, 2, 0))
	assert.EqualValues(t, 4, bound(13, 2, 3), "12 for 3, and the part of a sheet at 2")
	assert.EqualValues(t, 7, bound(23, 2, 3), "12 for 3 and 11 for 4")
	assert.EqualValues(t, 99, bound(25, 2, 3), "more than there is")
	w.tops = []int64{0, 4}
	assert.EqualValues(t, 99, bound(13, 0, 2), "a size that holds nothing does not help")
}

// Products and quotients of large numbers are exact, as in numbers of any length.
func TestLargeProductsAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := rapid.Int64Range(0, 1<<40).Draw(t, "a"), rapid.Int64Range(0, 1<<40).Draw(t, "b"), rapid.Int64Range(1<<30, 1<<50).Draw(t, "c")
		d, exact := rapid.Int64Range(0, 1<<40).Draw(t, "d"), big.NewInt
		x, y := new(big.Int).Mul(exact(a), exact(b)), new(big.Int).Mul(exact(c), exact(d))
		assert.Equal(t, x.Cmp(y), compareProducts(a, b, c, d))
		want := new(big.Int).Add(x, exact(c-1))
		assert.Equal(t, want.Quo(want, exact(c)).Int64(), ceilProduct(a, b, c))
	})
	assert.Equal(t, []int64{0, 1, 1, 2}, []int64{ceilDiv(0, 5), ceilDiv(1, 5), ceilDiv(5, 5), ceilDiv(6, 5)})
	assert.EqualValues(t, math.MaxInt64, ceilProduct(math.MaxInt64, 3, 3))
}

// A planner begins above what any plan can cost: a sheet for every piece, or all sheets
// in stock; sheets are drawn within the target and the stock.
func TestPlannersBeginAboveEveryPlan(t *testing.T) {
	in := measure.Inches
	o := sheet.Order{Ruler: sixteenth(t), Minimize: sheet.LeastCost, Items: []sheet.Item{{Width: in(2), Height: in(2), Count: 5}},
		Sheets: []sheet.Stock{{Width: in(4), Height: in(4), Price: 30, Available: 2}, {Width: in(2), Height: in(2), Price: 10, Available: 3}}}
	p := newProblem(o)
	assert.EqualValues(t, 91, p.newPlanner(endless()).cost)
	assert.EqualValues(t, []int64{30, 10}, []int64{p.dearest(), p.cheapest()})
	o.Sheets[1].Available = 0
	p = newProblem(o)
	pl := p.newPlanner(endless())
	assert.EqualValues(t, 151, pl.cost)
	for target := int64(0); target < 120; target += 5 {
		cost, large := int64(0), 0
		for _, b := range pl.draw(target) {
			cost += b.cost
			if b.stock == 0 {
				large++
			}
		}
		assert.LessOrEqual(t, cost, target)
		assert.LessOrEqual(t, large, 2)
		assert.Greater(t, cost+10, target, "another small sheet would not go")
	}
	assert.Equal(t, []int{4}, pl.caps(&pl.boards[0]), "no more than there is room for")
	assert.Equal(t, []int{1}, pl.caps(&pl.boards[1]))
	assert.Equal(t, []int32{0, 0, 0, 0, 0}, pl.singly())
}
