package search

import (
	"context"
	"flag"
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/verify"
)

// stallOrder is 14 bands, 11 cards and 20 tags from 12 x 18 in.
func stallOrder(t testing.TB) sheet.Order {
	in := measure.Inches
	return sheet.Order{
		Sheets: []sheet.Stock{{Width: in(12), Height: in(18), Grain: sheet.AlongHeight}}, Margin: in(1).Over(4), Trimmer: in(18), Ruler: sixteenth(t),
		Items: []sheet.Item{
			{Name: "band", Width: in(33).Over(4), Height: in(7).Over(4), Count: 14, Grain: sheet.AlongWidth},
			{Name: "card", Width: in(5), Height: in(3), Count: 11},
			{Name: "tag", Width: in(2), Height: in(7).Over(2), Count: 20},
		},
	}
}

// By hand the order takes three sheets and eleven settings.
func TestAnOrderIsEasyOnTheHands(t *testing.T) {
	a, _ := plannedWith(t, stallOrder(t), 40_000_000)
	assert.Equal(t, 3, a.Sheets)
	assert.LessOrEqual(t, a.Work.Settings, 11)
	assert.Equal(t, a.Work.Settings, len(a.Settings))
}

// craftOrder is a random order of a craft table: a few kinds of some dozen pieces.
func craftOrder(t testing.TB, seed uint64) sheet.Order {
	r := rand.New(rand.NewPCG(seed, 18))
	in := measure.Inches
	sizes := [][2]int64{{12, 18}, {12, 12}, {9, 12}, {11, 17}}
	size := sizes[r.IntN(len(sizes))]
	o := sheet.Order{
		Sheets: []sheet.Stock{{Width: in(size[0]), Height: in(size[1]), Grain: sheet.AlongHeight}}, Ruler: sixteenth(t),
		Margin: []measure.Length{{}, in(1).Over(4)}[r.IntN(2)],
	}
	for k := range 3 + r.IntN(4) {
		it := sheet.Item{Name: fmt.Sprint("blank ", k), Width: in(6 + r.Int64N(28)).Over(4), Height: in(4 + r.Int64N(16)).Over(4), Count: 2 + r.IntN(20)}
		if r.IntN(4) == 0 && it.Width.Less(in(size[0]-1)) {
			it.Grain = sheet.AlongHeight
		}
		o.Items = append(o.Items, it)
	}
	return o
}

// craftOrders is how many orders of craft tables are planned; the work is a third of
// a second for each.
var craftOrders = flag.Uint64("crafts", 40, "orders of craft tables")

// Settings fall by half against plans that are made for the count alone, at the
// same count.
func TestSettingsFallByHalf(t *testing.T) {
	t.Parallel()
	before, told, after := 0, 0, 0
	for seed := range seeds(*craftOrders) {
		o := craftOrder(t, seed)
		p := newProblem(o)
		e := newEffort(context.Background(), time.Time{})
		e.left = 20_000_000
		pl := p.newPlanner(e)
		pl.run()
		plain := p.finish(pl.best, true)
		for i := range plain.Plans {
			before += len(plain.Plans[i].Steps)
		}
		told += plain.Work.Settings
		a, _ := plannedWith(t, o, 40_000_000)
		require.NoError(t, verify.Plan(o, a))
		assert.LessOrEqual(t, a.Sheets, plain.Sheets, "seed %d", seed)
		after += a.Work.Settings
	}
	t.Logf("%d settings plan by plan, %d over the whole order, %d with the plan chosen for the hands", before, told, after)
	assert.LessOrEqual(t, 2*after, before)
}
