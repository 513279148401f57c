package search

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/verify"
)

// shopOrder is bands of one paper and cards of another.
func shopOrder(t testing.TB) sheet.Order {
	o := stallOrder(t)
	kraft, ivory := o.Sheets[0], o.Sheets[0]
	kraft.Paper, ivory.Paper = "kraft", "ivory"
	ivory.Width, ivory.Height = measure.Inches(9), measure.Inches(12)
	o.Sheets = []sheet.Stock{kraft, ivory}
	for i := range o.Items {
		o.Items[i].Paper = []string{"kraft", "ivory", "ivory"}[i]
	}
	return o
}

// An order of two papers is two orders: as many sheets of each, and all pieces
// from their own.
func TestEachPaperIsPlanned(t *testing.T) {
	o := shopOrder(t)
	a := planned(t, o)
	assert.True(t, a.Proven)
	sheets, bound := 0, int64(0)
	for _, p := range byPaper(o) {
		alone := planned(t, p.Order)
		sheets += alone.Sheets
		bound += alone.LowerBound
	}
	assert.Equal(t, sheets, a.Sheets)
	assert.Equal(t, bound, a.LowerBound)
	assert.Equal(t, []int{14, 11, 20}, a.Made)
	assert.Contains(t, a.Proof, "kraft: ")
	assert.Contains(t, a.Proof, "ivory: ")
	for _, s := range a.Plans {
		for _, p := range s.Placed {
			assert.Equal(t, o.Sheets[s.Stock].Paper, o.Items[p.Item].Paper)
		}
	}
}

// What comes out of offcuts needs no sheet: three cards of 5 x 3 in. out of a strip
// of 5 x 9 in., which leaves 8 for one sheet of 12 x 12 in.
func TestOffcutsAreUsedFirst(t *testing.T) {
	in := measure.Inches
	o := sheet.Order{Ruler: sixteenth(t), Items: []sheet.Item{{Name: "card", Width: in(5), Height: in(3), Count: 11}},
		Sheets: []sheet.Stock{{Width: in(12), Height: in(12)}, {Width: in(5), Height: in(9), Available: 1, Offcut: true}}}
	a := planned(t, o)
	assert.Equal(t, 2, a.Sheets)
	assert.Equal(t, 1, a.Offcuts)
	assert.Equal(t, int64(1), a.LowerBound)
	assert.True(t, a.Proven)
	o.Items[0].Count, o.Sheets[1].Available = 12, 4
	a = planned(t, o)
	assert.Equal(t, 4, a.Offcuts, "four offcuts give them all")
	assert.Equal(t, 4, a.Sheets)
	assert.Zero(t, a.LowerBound)
	o.Minimize, o.Sheets[0].Price = sheet.LeastCost, 35
	o.Items[0].Count = 13
	a = planned(t, o)
	assert.Equal(t, int64(35), a.Cost)
	assert.LessOrEqual(t, a.Offcuts, 2)
}

// A stock that does not suffice shows in the bound: of the larger sheet, which
// holds four, there is one, so that nine pieces need one and five of the smaller.
func TestStockCountsInTheBound(t *testing.T) {
	in := measure.Inches
	o := sheet.Order{Ruler: sixteenth(t), Items: []sheet.Item{{Width: in(6), Height: in(6), Count: 9}},
		Sheets: []sheet.Stock{{Width: in(12), Height: in(12), Available: 1}, {Width: in(6), Height: in(6)}}}
	p := newProblem(o)
	pl := p.newPlanner(endless())
	pl.boundByArea()
	assert.Equal(t, int64(6), pl.lower)
	a := planned(t, o)
	assert.Equal(t, 6, a.Sheets)
	assert.True(t, a.Proven)
}

// Whatever is in stock, a bound is none above a plan, and equals it where it is
// proven; less stock never needs fewer sheets.
func TestRandomStockIsPlanned(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o, _ := tinyOrder(t)
		o.Effort = 10 * time.Millisecond
		large := o.Sheets[0]
		large.Width = large.Width.Times(2)
		large.Available = rapid.IntRange(1, 2).Draw(t, "available")
		large.Offcut = rapid.Bool().Draw(t, "offcut")
		o.Sheets = append(o.Sheets, large)
		if o.Check() != nil {
			return
		}
		a, err := Plan(context.Background(), o)
		if err != nil { // what lies on the large sheet alone may be too much for it
			require.ErrorContains(t, err, "in stock")
			return
		}
		require.NoError(t, verify.Plan(o, a))
		less := o
		less.Sheets = []sheet.Stock{o.Sheets[0], large}
		less.Sheets[1].Available = 1
		b, err := Plan(context.Background(), less)
		if err != nil {
			require.ErrorContains(t, err, "in stock")
			return
		}
		require.NoError(t, verify.Plan(less, b))
		if a.Proven && b.Proven {
			assert.GreaterOrEqual(t, b.LowerBound, a.LowerBound)
		}
	})
}

// Orders with everything that a shop asks for: whatever is planned can be cut, keeps its
// stages and the stock, and whatever is not planned lacks stock.
func TestRandomShopOrdersAreVerified(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := randomOrder(t)
		o.Effort = 5 * time.Millisecond
		o.Stages = rapid.SampledFrom([]int{0, 0, 2, 3}).Draw(t, "stages")
		o.Prefer = sheet.Preference(rapid.IntRange(0, 2).Draw(t, "prefer"))
		o.Least = measure.Inches(rapid.Int64Range(0, 3).Draw(t, "least"))
		for i := range rapid.IntRange(0, 2).Draw(t, "offcuts") {
			s := o.Sheets[0]
			s.Width, s.Offcut, s.Available = s.Width.Sub(measure.Inches(int64(1+i))), true, rapid.IntRange(1, 3).Draw(t, "offcuts of a size")
			o.Sheets = append(o.Sheets, s)
		}
		o.Sheets[0].Available = rapid.IntRange(0, 4).Draw(t, "stock")
		for i := range o.Items {
			o.Items[i].Priority = rapid.IntRange(0, 2).Draw(t, "priority")
			if o.Counted() && rapid.IntRange(0, 3).Draw(t, "ivory") == 0 {
				o.Items[i].Paper = "ivory"
			}
		}
		ivory := o.Sheets[0]
		ivory.Paper = "ivory"
		o.Sheets = append(o.Sheets, ivory)
		a, err := Plan(context.Background(), o)
		if o.Check() != nil {
			require.Error(t, err)
			return
		}
		if err != nil {
			require.ErrorContains(t, err, "in stock")
			return
		}
		require.NoError(t, verify.Plan(o, a))
		for i, it := range o.Items {
			assert.Positive(t, a.Ready[i]*a.Made[i]+1-min(it.Count, 1), "when all of an item is made")
		}
		for i, u := range a.Usable {
			require.True(t, !u.Width.Less(o.Least) && !u.Height.Less(o.Least))
			require.True(t, i == 0 || u.Width.Millimetres()*u.Height.Millimetres() <= a.Usable[i-1].Width.Millimetres()*a.Usable[i-1].Height.Millimetres())
		}
	})
}

// Looking for an easier plan may meet a cheaper one, here one that uses offcuts
// alone but for one sheet: what is proven is said of the plan that leaves. The
// effort is counted up, since it is met where the search ends just there.
func TestEasierPlanMayBeCheaper(t *testing.T) {
	mm := func(n int) measure.Length { return measure.Millimetres(int64(n)) }
	ruler, err := measure.ParseStep("1 mm")
	require.NoError(t, err)
	o := sheet.Order{Ruler: ruler, Trimmer: mm(9), Effort: time.Second,
		Sheets: []sheet.Stock{{Width: mm(3), Height: mm(7), Grain: sheet.AlongHeight, Price: 3}, {Width: mm(6), Height: mm(7), Grain: sheet.AlongHeight, Price: 3, Available: 2, Offcut: true}},
		Items: []sheet.Item{{Name: "label", Width: mm(2), Height: mm(6), Count: 1, Grain: sheet.AlongWidth}, {Name: "tag", Width: mm(2), Height: mm(4), Count: 3},
			{Name: "card", Width: mm(3), Height: mm(5), Count: 3}, {Name: "strip", Width: mm(3), Height: mm(4), Count: 1}}}
	for steps := int64(110_000); steps < 150_000; steps += 400 {
		plannedWith(t, o, steps)
	}
}

// Of two items of one size the first is ready on the first sheet, and what has the next
// priority before the second: one lid, two sheets of cards, then the bases.
func TestPriorityOfOneSize(t *testing.T) {
	in := measure.Inches
	o := sheet.Order{Ruler: sixteenth(t), Sheets: []sheet.Stock{{Width: in(12), Height: in(12)}}, Items: []sheet.Item{
		{Name: "lid", Width: in(12), Height: in(12), Count: 1, Priority: 1}, {Name: "base", Width: in(12), Height: in(12), Count: 2},
		{Name: "card", Width: in(6), Height: in(6), Count: 8, Priority: 2}}}
	assert.Equal(t, []int{1, 5, 3}, planned(t, o).Ready)
}

// What has priority is ready first, and its settings come first.
func TestPriorityComesFirst(t *testing.T) {
	o := stallOrder(t)
	for i := range o.Items {
		o.Items[i].Count *= 4
	}
	plain := planned(t, o)
	o.Items[2].Priority = 1
	first := planned(t, o)
	assert.Equal(t, plain.Sheets, first.Sheets)
	assert.LessOrEqual(t, first.Ready[2], plain.Ready[2])
	assert.Less(t, first.Ready[2], first.Sheets)
	at := 0
	for _, s := range first.Settings {
		for _, step := range s.Steps {
			rank := first.Plans[step.Plan]
			if o.RankOf(&rank) == 1 {
				assert.Zero(t, at, "a plan with what comes first is cut after others")
			} else {
				at++
			}
		}
	}
}
