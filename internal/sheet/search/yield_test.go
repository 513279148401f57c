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
	a, err := counted(o, littleWork)
	require.NoError(t, err)
	require.NoError(t, verify.Plan(o, a))
	return a
}

// counted is Plan with so much work instead of a time. Orders of several papers share
// out a time, and those without counts take what they need.
func counted(o sheet.Order, steps int64) (sheet.Answer, error) {
	if err := o.Check(); err != nil || !o.Counted() || len(o.Papers()) > 1 {
		return Plan(context.Background(), o)
	}
	e := endless()
	e.left = steps
	return newProblem(o).planWith(e, nil)
}

// littleWork is what a second of a quiet machine does, more than small orders need.
const littleWork = 400_000_000

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

// Of several sizes of sheet the one that is used best is taken: three labels of 2 x 4 in.
// are the whole of 6 x 4, while 3 x 4 leaves a third of itself and 5 x 4 a fifth.
func TestTheSheetThatIsUsedBest(t *testing.T) {
	o := single(t, "3", "4", "2", "4")
	o.Sheets = append(o.Sheets, sheet.Stock{Width: in(t, "6"), Height: in(t, "4")}, sheet.Stock{Width: in(t, "5"), Height: in(t, "4")})
	a := planned(t, o)
	assert.Equal(t, 3, a.PerSheet)
	assert.Equal(t, 1, a.Plans[0].Stock)
	assert.InDelta(t, 1, a.Used, 1e-12)
	assert.Contains(t, a.Proof, "no sheet gives more than these 3")
	assert.EqualValues(t, 1, a.LowerBound)
}

// Of several items without counts as much area as possible is used, in squares of their
// common measure: 3 x 2 and 2 x 2 in. fill 5 x 4 in. with two of each.
func TestAsMuchOfASheetAsPossible(t *testing.T) {
	o := single(t, "5", "4", "3", "2")
	o.Items = append(o.Items, sheet.Item{Name: "tag", Width: in(t, "2"), Height: in(t, "2")})
	p := newProblem(o)
	assert.Equal(t, []int64{6, 4}, p.worth())
	a := planned(t, o)
	assert.InDelta(t, 1, a.Used, 1e-12)
	assert.Zero(t, a.PerSheet, "of one item alone")
	assert.True(t, a.Proven)
	o.Items = o.Items[:1]
	p = newProblem(o)
	assert.Equal(t, []int64{1}, p.worth())
}

// A unit is the greatest length that all sizes with their kerf are multiples of; items of
// the same size and grain are one kind, the largest first, those that come first in front.
func TestOrdersInUnits(t *testing.T) {
	o := sheet.Order{Ruler: sixteenth(t), Kerf: in(t, "1/4"), Sheets: []sheet.Stock{{Width: in(t, "12"), Height: in(t, "9"), Grain: sheet.AlongWidth}}, Trimmer: in(t, "10"),
		Items: []sheet.Item{{Width: in(t, "1 3/4"), Height: in(t, "1 3/4"), Count: 3}, {Width: in(t, "5 3/4"), Height: in(t, "2 3/4"), Count: 2},
			{Width: in(t, "5 3/4"), Height: in(t, "2 3/4"), Count: 4, Priority: 1}, {Width: in(t, "5 3/4"), Height: in(t, "2 3/4"), Count: 5, Grain: sheet.AlongHeight}}}
	p := newProblem(o)
	assert.EqualValues(t, 25_400_000, p.unit, "2, 3 and 6 in. with a kerf")
	var kinds []kind
	for _, k := range p.kinds {
		kinds = append(kinds, kind{k.items, k.need, k.area})
	}
	assert.Equal(t, []kind{{[]int{2, 1}, 6, 18}, {[]int{3}, 5, 18}, {[]int{0}, 3, 4}}, kinds)
	b := p.boards[0]
	assert.Equal(t, []int32{12, 9, 10}, []int32{b.w, b.h, b.limit}, "12 1/4, 9 1/4 and 10 1/4 in. in whole units")
	assert.Equal(t, []face{{6, 3, 0, false}, {3, 6, 0, true}, {3, 6, 1, true}, {2, 2, 2, false}}, b.faces)
	assert.Equal(t, corner{12, 9}, b.whole)
	assert.Equal(t, []bool{true, false}, []bool{b.crossable(10), b.crossable(11)})
	assert.Equal(t, []int64{6, 7, 0}, []int64{gcd(54, 24), gcd(0, 7), gcd(0, 0)})
}

// Eight bands are six beside each other and two across what is left: two settings by
// hand. Whoever only wants to know how many there are gets any way to cut them.
func TestASheetIsEasyOnTheHands(t *testing.T) {
	o := single(t, "12", "12", "8 1/4", "1 3/4")
	any := planned(t, o)
	o.Effort = sheet.MostEffort
	a := planned(t, o)
	assert.Equal(t, 8, a.PerSheet)
	assert.Equal(t, any.PerSheet, a.PerSheet)
	assert.Equal(t, []int{2, 3}, []int{a.Work.Settings, a.Work.Stages})
	assert.Len(t, a.Plans[0].Steps, 4)
	assert.True(t, a.Proven)
	o.Items = append(o.Items, sheet.Item{Name: "card", Width: in(t, "5"), Height: in(t, "3")}, sheet.Item{Name: "tag", Width: in(t, "2"), Height: in(t, "3 1/2")})
	mixed := planned(t, o)
	o.Effort = 0
	any = planned(t, o)
	assert.Equal(t, any.Made, mixed.Made)
	assert.LessOrEqual(t, mixed.Work.Settings, any.Work.Settings)
}

// What is made easier is the same blanks as before, and never harder to cut; grain, kerf,
// margin and trimmer are kept, which the verifier replays.
func TestEasierSheetsGiveAsMuch(t *testing.T) {
	before, after := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		o, _ := tinyOrder(t)
		for i := range o.Items {
			o.Items[i].Count = 0
		}
		o.Effort = 0
		if o.Check() != nil {
			return
		}
		bare, err := Plan(context.Background(), o)
		require.NoError(t, err)
		o.Effort = sheet.MostEffort
		easy, err := Plan(context.Background(), o)
		require.NoError(t, err)
		require.NoError(t, verify.Plan(o, easy))
		assert.Equal(t, bare.Made, easy.Made)
		assert.Equal(t, []any{bare.PerSheet, bare.Proven, bare.Used, bare.Proof}, []any{easy.PerSheet, easy.Proven, easy.Used, easy.Proof})
		p := newProblem(o)
		h, was := p.handsOf(&easy), p.handsOf(&bare)
		assert.LessOrEqual(t, h.compare(&was, o.Prefer), 0)
		before, after = before+was.Settings, after+h.Settings
	})
	assert.LessOrEqual(t, after, before)
}

// Items of one size are given out one after another, whole sheets of one at once: ten lids,
// seven bases and four trays, six of which go on a sheet, are four sheets of three plans or
// four, and what has priority is ready first.
func TestItemsOfOneSizeAreGivenOut(t *testing.T) {
	o := sheet.Order{Ruler: sixteenth(t), Effort: sheet.MostEffort, Sheets: []sheet.Stock{{Width: in(t, "12"), Height: in(t, "8")}}}
	for i, n := range []int{10, 7, 4} {
		o.Items = append(o.Items, sheet.Item{Name: []string{"lid", "base", "tray"}[i], Width: in(t, "4"), Height: in(t, "4"), Count: n})
	}
	a := planned(t, o)
	assert.Equal(t, 4, a.Sheets)
	assert.Equal(t, []int{10, 7, 4}, a.Made)
	assert.Equal(t, []int{2, 3, 4}, a.Ready)
	o.Items[2].Priority = 1
	assert.Equal(t, []int{3, 4, 1}, planned(t, o).Ready)
	for i := range o.Items {
		o.Items[i].Count *= 1_000
	}
	a = planned(t, o)
	assert.Equal(t, 3_500, a.Sheets)
	assert.Equal(t, []int{10_000, 7_000, 4_000}, a.Made)
	assert.LessOrEqual(t, len(a.Plans), 5, "sheets of one item are one plan")
}
