package search

import (
	"context"
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/sheettest"
	"creasefit/internal/sheet/verify"
)

func TestMixedOrder(t *testing.T) {
	a := planned(t, sheettest.TeaOrder(t))
	assert.True(t, a.Proven)
	assert.Equal(t, []int{25, 6, 8}, a.Made)
	assert.NotEmpty(t, a.Proof)
}

// Two A5 blanks need an A4 at 10 or two A5 at 6: the dearer sheet is cheaper,
// until the A4 are used up.
func TestLeastCost(t *testing.T) {
	mm := measure.Millimetres
	ruler, err := measure.ParseStep("1 mm")
	require.NoError(t, err)
	o := sheet.Order{
		Sheets:   []sheet.Stock{{Width: mm(210), Height: mm(297), Price: 10, Available: 2}, {Width: mm(148), Height: mm(210), Price: 6}},
		Ruler:    ruler,
		Minimize: sheet.LeastCost,
		Items:    []sheet.Item{{Name: "card", Width: mm(148), Height: mm(210), Count: 2}},
	}
	a := planned(t, o)
	assert.Equal(t, int64(10), a.Cost)
	assert.True(t, a.Proven)
	o.Items[0].Count = 7
	a = planned(t, o)
	assert.Equal(t, int64(38), a.Cost)
	assert.Equal(t, 5, a.Sheets)
	o.Sheets[1].Available = 1
	_, err = Plan(context.Background(), o)
	assert.ErrorContains(t, err, "in stock")
}

// Of two items of the same size each gets its own count.
func TestEqualItems(t *testing.T) {
	o := sheettest.TeaOrder(t)
	o.Items = append(o.Items, o.Items[0])
	o.Items[3].Count = 4
	assert.Equal(t, []int{25, 6, 8, 4}, planned(t, o).Made)
}

// Sizes that share no common length are planned on a coarser grid, safely.
func TestFineGridIsCoarsened(t *testing.T) {
	o := sheettest.TeaOrder(t)
	for i := range o.Items {
		o.Items[i].Width = o.Items[i].Width.Sub(measure.Nanometres(int64(1 + 2*i)))
	}
	a := planned(t, o)
	require.Len(t, a.Warnings, 1)
	assert.Equal(t, "coarse-grid", a.Warnings[0].Code)
	assert.GreaterOrEqual(t, a.LowerBound, int64(5))
	for i := range o.Items {
		o.Items[i].Count = 0
	}
	a = planned(t, o)
	assert.False(t, a.Proven)
}

// A blank as large as the sheet comes out of it on any grid, alone and beside others,
// with counts and without: rounded up it is no larger than the sheet rounded down.
func TestWholeSheetsOnACoarseGrid(t *testing.T) {
	mm, hair := measure.Millimetres, measure.Nanometres(1)
	o := sheet.Order{Ruler: measure.Marks(measure.Millimetre)[2], Sheets: []sheet.Stock{{Width: mm(210), Height: mm(297)}},
		Items: []sheet.Item{{Name: "cover", Width: mm(210), Height: mm(297).Sub(hair), Count: 2}, {Name: "label", Width: mm(61).Add(hair), Height: mm(43).Sub(hair), Count: 3}}}
	a := planned(t, o)
	assert.Equal(t, 3, a.Sheets)
	assert.True(t, a.Proven)
	for i := range o.Items {
		o.Items[i].Count = 0
	}
	a = planned(t, o)
	assert.Equal(t, []int{1, 0}, a.Made)
	o.Items = o.Items[:1]
	assert.Equal(t, 1, planned(t, o).PerSheet)
}

// randomOrder draws an order with everything in it.
func randomOrder(t *rapid.T) sheet.Order {
	step, err := measure.ParseStep("1/8 in")
	require.NoError(t, err)
	eighths := func(low, high int, name string) measure.Length {
		return measure.Sixtyfourths(8 * int64(rapid.IntRange(low, high).Draw(t, name)))
	}
	o := sheet.Order{Ruler: step, Margin: eighths(0, 3, "margin"), Kerf: eighths(0, 1, "kerf")}
	o.Minimize = rapid.SampledFrom([]sheet.Goal{sheet.FewestSheets, sheet.LeastCost}).Draw(t, "goal")
	for range rapid.IntRange(1, 2).Draw(t, "sizes") {
		o.Sheets = append(o.Sheets, sheet.Stock{Width: eighths(50, 100, "W"), Height: eighths(50, 100, "H"),
			Grain: rapid.SampledFrom([]sheet.Side{sheet.AlongWidth, sheet.AlongHeight}).Draw(t, "sheet grain"), Price: rapid.Int64Range(1, 20).Draw(t, "price")})
	}
	if rapid.Bool().Draw(t, "bounded") {
		o.Trimmer = eighths(60, 110, "trimmer")
	}
	count := rapid.IntRange(0, 9).Draw(t, "most")
	for i := range rapid.IntRange(1, 7).Draw(t, "items") {
		it := sheet.Item{Name: fmt.Sprint("blank ", i), Width: eighths(3, 60, "w"), Height: eighths(3, 60, "h")}
		it.Grain = rapid.SampledFrom([]sheet.Side{sheet.AnySide, sheet.AlongWidth, sheet.AlongHeight}).Draw(t, "grain")
		if count > 0 {
			it.Count = rapid.IntRange(1, count).Draw(t, "count")
		}
		if rapid.IntRange(0, 5).Draw(t, "odd") == 0 {
			it.Width = it.Width.Add(measure.Micrometres(50))
		}
		o.Items = append(o.Items, it)
	}
	return o
}

// Whatever is planned can be cut, and whatever is refused is refused by name.
func TestRandomOrdersAreVerified(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := randomOrder(t)
		a, err := counted(o, 1_000_000)
		if o.Check() != nil {
			require.Error(t, err)
			return
		}
		require.NoError(t, err)
		require.NoError(t, verify.Plan(o, a))
	})
}

// The same orders with sizes a hair apart, some as long as the sheet inside its margins,
// are planned on a coarse grid, and can be cut.
func TestRandomOrdersOnACoarseGrid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := randomOrder(t)
		for i := range o.Items {
			it := &o.Items[i]
			w, h := o.Usable(0)
			if rapid.IntRange(0, 3).Draw(t, "long") == 0 {
				it.Width = w
			}
			if rapid.IntRange(0, 3).Draw(t, "high") == 0 {
				it.Height = h
			}
			it.Width = it.Width.Sub(measure.Nanometres(rapid.Int64Range(0, 9).Draw(t, "hair")))
			it.Height = it.Height.Sub(measure.Nanometres(rapid.Int64Range(0, 9).Draw(t, "hair")))
		}
		if o.Check() != nil {
			return
		}
		a, err := counted(o, 1_000_000)
		require.NoError(t, err)
		require.NoError(t, verify.Plan(o, a))
	})
}

// A larger sheet never needs more sheets, and one more piece never fewer.
func TestPlansAreMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o, _ := tinyOrder(t)
		o.Trimmer = measure.Length{}
		if o.Check() != nil {
			return
		}
		before, err := counted(o, littleWork)
		require.NoError(t, err)
		larger := o
		larger.Sheets = []sheet.Stock{o.Sheets[0]}
		larger.Sheets[0].Width = o.Sheets[0].Width.Add(measure.Millimetres(1))
		after, err := counted(larger, littleWork)
		require.NoError(t, err)
		assert.LessOrEqual(t, after.Sheets, before.Sheets)
		o.Items[0].Count++
		more, err := counted(o, littleWork)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, more.Sheets, before.Sheets)
	})
}

// A grid of many thousand points is still planned well.
func TestFineMixedOrder(t *testing.T) {
	ruler, err := measure.ParseStep("0.5 mm")
	require.NoError(t, err)
	o := sheet.Order{Sheets: []sheet.Stock{{Width: measure.Millimetres(297), Height: measure.Millimetres(210)}}, Ruler: ruler}
	for i := range int64(30) {
		o.Items = append(o.Items, sheet.Item{Width: measure.Micrometres(61_010 + 2_370*i), Height: measure.Micrometres(43_770 + 1_910*i), Count: 2})
	}
	a := planned(t, o)
	assert.LessOrEqual(t, float64(a.Sheets), 1.35*float64(a.LowerBound))
}

// refusedStock is the fault of an order that the stock does not suffice for.
func refusedStock(t *testing.T, o sheet.Order) fault.Fault {
	t.Helper()
	_, err := counted(o, littleWork)
	var faults fault.Faults
	require.NoError(t, faults.Add(err))
	require.Len(t, faults, 1)
	assert.Equal(t, fault.NoPlan, faults[0].Code)
	assert.Equal(t, "sheet", faults[0].Field)
	return faults[0]
}

// An order that the stock does not suffice for is refused, with what would do beside it: as
// the six sheets that it takes say, which are proven.
func TestOutOfStock(t *testing.T) {
	o := sheettest.TeaOrder(t)
	sheets := planned(t, o).Sheets
	for o.Sheets[0].Available = 1; o.Sheets[0].Available < sheets; o.Sheets[0].Available++ {
		f := refusedStock(t, o)
		assert.Equal(t, "The sheets in stock do not give all blanks.", f.Detail)
		assert.Equal(t, fmt.Sprintf("%d more of 12 in x 12 in would do", sheets-o.Sheets[0].Available), f.Hint)
	}
	planned(t, o)
	o.Sheets[0].Offcut, o.Sheets[0].Available = true, 2
	assert.Equal(t, "more sheets in stock", refusedStock(t, o).Hint, "nobody buys offcuts")
}

// What is said to be lacking does: with it in stock there is a plan.
func TestWhatIsLackingDoes(t *testing.T) {
	number := regexp.MustCompile(`(\d+) more of ([\d.]+) in`)
	rapid.Check(t, func(r *rapid.T) {
		o := sheettest.TeaOrder(t)
		o.Sheets = append(o.Sheets, sheet.Stock{Width: sheettest.Inches(t, "8 1/2"), Height: sheettest.Inches(t, "11"), Grain: sheet.AlongHeight})
		for i := range o.Sheets {
			o.Sheets[i].Available = rapid.IntRange(1, 2).Draw(r, "available")
		}
		for i := range o.Items {
			o.Items[i].Count = rapid.IntRange(8, 25).Draw(r, "count")
		}
		found := number.FindAllStringSubmatch(refusedStock(t, o).Hint, -1)
		require.NotEmpty(t, found)
		for _, f := range found {
			n, err := strconv.Atoi(f[1])
			require.NoError(t, err)
			o.Sheets[map[string]int{"12": 0, "8.5": 1}[f[2]]].Available += n
		}
		planned(t, o)
	})
}

// Blanks of one size without counts share what a sheet gives: by hand, six of 4 x 5 in on
// 12 x 12 in are three and three, or two of each.
func TestBlanksOfOneSizeShareASheet(t *testing.T) {
	o := sheet.Order{Sheets: []sheet.Stock{{Width: sheettest.Inches(t, "12"), Height: sheettest.Inches(t, "12")}}, Ruler: sheettest.Step(t, "1/16 in")}
	for n, want := range map[int][]int{1: {6}, 2: {3, 3}, 3: {2, 2, 2}, 4: {2, 2, 1, 1}} {
		o.Items = nil
		for range n {
			o.Items = append(o.Items, sheet.Item{Width: sheettest.Inches(t, "5"), Height: sheettest.Inches(t, "4")})
		}
		for _, o.Effort = range []time.Duration{0, time.Second} { // as it comes, and made easy
			a, err := Plan(context.Background(), o)
			require.NoError(t, err)
			require.NoError(t, verify.Plan(o, a))
			assert.Equal(t, want, a.Made)
		}
	}
}

func TestCancelledOrders(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	for _, count := range []int{0, 5} {
		o := sheettest.TeaOrder(t)
		for i := range o.Items {
			o.Items[i].Count = count
		}
		_, err := Plan(ctx, o)
		assert.True(t, errors.Is(err, context.Canceled))
	}
}
