package search

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// tags are six pieces of 4 x 6 in. from sheets of 12 x 12 in., which hold six.
func tags(t testing.TB) *problem {
	in := measure.Inches
	return newProblem(sheet.Order{Ruler: sixteenth(t), Sheets: []sheet.Stock{{Width: in(12), Height: in(12), Grain: sheet.AlongWidth}},
		Items: []sheet.Item{{Name: "tag", Width: in(4), Height: in(6), Count: 6, Grain: sheet.AlongWidth}}})
}

// sheetOf is a plan of so many sheets with so many tags each, side by side in rows of three.
func (p *problem) sheetOf(tags, times int) []use {
	var rows *layout
	for n := 0; n < tags; n += 3 {
		row := inRow(sheet.Width, &layout{}, int32(min(3, tags-n)))
		rows = beside(sheet.Height, rows, row)
	}
	return []use{{drawn(&p.boards[0], rows, 1), times}}
}

// A plan is kept if it is cheaper than the best; none, a dearer one and one of the same
// cost are not.
func TestCheaperPlansAreKept(t *testing.T) {
	p := tags(t)
	pl := p.newPlanner(endless())
	require.EqualValues(t, 7, pl.cost)
	pl.offer(nil)
	require.EqualValues(t, 7, pl.cost)
	pl.offer(p.sheetOf(2, 3))
	assert.EqualValues(t, 3, pl.cost)
	before := pl.best[0].layout
	pl.offer(p.sheetOf(1, 6))
	pl.offer(p.sheetOf(2, 3))
	assert.Same(t, before, pl.best[0].layout)
	assert.False(t, pl.done())
	pl.raise(1, "as large as that")
	pl.offer(p.sheetOf(6, 1))
	assert.True(t, pl.done())
	assert.Equal(t, "as large as that", pl.why)
	pl.raise(1, "no greater")
	assert.Equal(t, "as large as that", pl.why)
}

// Where an order allows so many stages, a plan of more is not kept.
func TestPlansOfTooManyStagesAreNotKept(t *testing.T) {
	p := tags(t)
	p.order.Stages = 2
	three := &layout{axis: sheet.Width, low: &layout{}, high: inRow(sheet.Height, inRow(sheet.Width, &layout{}, 2), 2)}
	pl := p.newPlanner(endless())
	pl.offer([]use{{drawn(&p.boards[0], three, 1), 1}, {drawn(&p.boards[0], &layout{}, 1), 1}})
	assert.Nil(t, pl.best, "columns, rows in one of them, and columns in those")
	assert.Equal(t, []bool{true, true, false}, []bool{p.allowed(1), p.allowed(2), p.allowed(3)})
	pl.offer(p.sheetOf(6, 1))
	assert.EqualValues(t, 1, pl.cost, "rows and columns")
	p.order.Stages = 0
	assert.True(t, p.allowed(9))
}

// Values of which a sheet holds at most so much prove a bound; the greatest counts, and the
// newest is the first to guide a search.
func TestValuesProveBounds(t *testing.T) {
	p := tags(t)
	p.kinds[0].need = 13
	pl := p.newPlanner(endless())
	pl.prove(weights{value: []int64{1}, tops: []int64{6}}, "six to a sheet")
	assert.EqualValues(t, 3, pl.lower)
	pl.prove(weights{value: []int64{1}, tops: []int64{7}}, "seven to a sheet")
	assert.EqualValues(t, 3, pl.lower)
	assert.Equal(t, "six to a sheet", pl.why)
	assert.Equal(t, []int64{7, 6}, []int64{pl.guides()[0].top, pl.guides()[1].top}, "the newest first")
	assert.Len(t, pl.weights, 2)
}

// Ways take turns, each with twice the work of the turn before, until they have no more
// to do or the best plan is proven.
func TestWaysTakeTurns(t *testing.T) {
	p := tags(t)
	pl := p.newPlanner(endless())
	var lent [2][]int64
	for i, turns := range []int{2, 4} {
		pl.ways = append(pl.ways, func(turn int) bool {
			lent[i] = append(lent[i], pl.left)
			return turn+1 < turns
		})
	}
	pl.take()
	assert.Equal(t, [2][]int64{{firstShare, 2 * firstShare}, {firstShare, 2 * firstShare, 4 * firstShare, 8 * firstShare}}, lent)
	pl.ways = []way{func(int) bool { pl.cost = pl.lower; return true }, func(int) bool { t.Error("the plan is proven"); return false }}
	pl.take()
	assert.Len(t, pl.ways, 2, "both might do more")
}

// What a cover takes of its patterns is the plan, the fuller sheets first.
func TestCoversBecomePlans(t *testing.T) {
	p := tags(t)
	pl := p.newPlanner(endless())
	four, two := p.sheetOf(4, 1)[0].pattern, p.sheetOf(2, 1)[0].pattern
	pl.accept([]choice{{&two, []int32{2}}, {&four, []int32{4}}})
	assert.EqualValues(t, 2, pl.cost)
	var counts []int
	for _, c := range pl.best {
		made := make([]int32, 1)
		tally(c.layout, made)
		counts = append(counts, int(made[0]))
	}
	assert.Equal(t, []int{4, 2}, counts)
	pl.cost = 99
	pl.accept([]choice{{&four, []int32{3}}, {&four, []int32{3}}})
	made := make([]int32, 1)
	tally(pl.best[0].layout, made)
	assert.Equal(t, []int32{3}, made, "a pattern gives no more than is taken of it")
}
