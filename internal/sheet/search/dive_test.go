package search

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// stocked is an order of two kinds from sheets without end and from three that are in stock.
func stocked() *problem {
	in := measure.Inches
	return newProblem(sheet.Order{Ruler: measure.Marks(measure.Inch)[0], Minimize: sheet.LeastCost,
		Items:  []sheet.Item{{Width: in(3), Height: in(3), Count: 9}, {Width: in(2), Height: in(2), Count: 7}},
		Sheets: []sheet.Stock{{Width: in(6), Height: in(6), Price: 30}, {Width: in(6), Height: in(3), Price: 12, Available: 3}}})
}

// piecesOn joins pieces of some kinds in a row.
func piecesOn(kinds ...int32) (l *layout) {
	for _, k := range kinds {
		l = beside(sheet.Width, l, &layout{kind: k})
	}
	return l
}

// A pattern is cut as often as there are sheets, takes no more than is left, and what it
// takes and uses is noted.
func TestPatternsAreCut(t *testing.T) {
	p := stocked()
	g := p.newPlanner(endless()).newGenerator([]pattern{})
	left, stock := p.needs(), map[int]int{1: 1}
	pt := drawn(&p.boards[1], piecesOn(0, 0), 2)
	uses := g.cut(&pt, 4, left, stock)
	require.Len(t, uses, 1)
	assert.Equal(t, 2, uses[0].times, "one of three is used already")
	assert.Equal(t, []int32{5, 7}, left)
	assert.Equal(t, map[int]int{1: 3}, stock)
	assert.Nil(t, g.cut(&pt, 1, left, stock), "none is left")
	more := drawn(&p.boards[0], piecesOn(0, 1, 1, 1), 2)
	left = []int32{5, 2}
	uses = g.cut(&more, 1, left, stock)
	assert.Equal(t, []int32{1, 2}, uses[0].pattern.counts, "a third one is not wanted")
	assert.Equal(t, []int32{4, 0}, left)
}

// What is left is an order of its own: fewer pieces, fewer sheets, none of a size that is
// used up; the whole order stays as it is.
func TestWhatIsLeftIsAnOrder(t *testing.T) {
	p := stocked()
	rest := p.leaving([]int32{4, 0}, map[int]int{0: 5, 1: 1})
	assert.Equal(t, []int32{4, 0}, rest.needs())
	assert.Equal(t, []int{0, 2}, []int{rest.boards[0].available, rest.boards[1].available})
	assert.Len(t, p.leaving([]int32{4, 0}, map[int]int{1: 3}).boards, 1)
	assert.Equal(t, []int32{9, 7}, p.needs())
	assert.Equal(t, 3, p.boards[1].available)
}

// Known patterns serve what is left without the pieces that are not wanted any more, on
// the sheets that there still are, and not at all if they give nothing of it.
func TestKnownPatternsServeWhatIsLeft(t *testing.T) {
	p := stocked()
	known := []pattern{drawn(&p.boards[0], piecesOn(0, 1, 1), 2), drawn(&p.boards[1], piecesOn(0, 0), 2), drawn(&p.boards[0], piecesOn(1), 2)}
	rest := p.leaving([]int32{1, 0}, map[int]int{1: 3})
	list := rest.patternsOf(known)
	require.Len(t, list, 1)
	assert.Equal(t, []int32{1, 0}, list[0].counts)
	assert.Same(t, &rest.boards[0], list[0].board)
	assert.Equal(t, piecesOn(0), list[0].draw())
	assert.Equal(t, piecesOn(0), list[0].draw(), "drawn again it is the same")
}

// A dive gives every piece, on sheets that there are; what it costs is no less than the
// greatest bound that generating has proven.
func TestDivesAreWholePlans(t *testing.T) {
	whole := 0
	for seed := range seeds(40) {
		o := craftOrder(t, seed)
		p := newProblem(o)
		e := endless()
		pl := p.newPlanner(e)
		pl.rest = (*planner).runRest
		pl.begin()
		g := pl.newGenerator(nil)
		e.left = 3_000_000
		pl.lend(1_000_000, g.run)
		plan := g.dive()
		if plan == nil { // the effort has ended
			continue
		}
		whole++
		made := make([]int32, len(p.kinds))
		for _, u := range plan {
			for k, n := range u.pattern.counts {
				made[k] += n * int32(u.times)
			}
			w, h := replay(t, u.pattern.board, u.pattern.draw(), func(int32) {})
			require.True(t, w <= u.pattern.board.w && h <= u.pattern.board.h)
		}
		assert.Equal(t, p.needs(), made)
		assert.GreaterOrEqual(t, costOf(cuttingsOf(plan)), pl.lower)
	}
	assert.Positive(t, whole)
}

// On a coarser grid blanks are rounded up and sheets down, in a roomier order the other
// way about: what fits the one fits as given, and what fits as given fits the other.
func TestGridsAreRoundedSafely(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := randomOrder(t)
		if o.Check() != nil {
			return
		}
		p := newProblem(o)
		p.coarsen()
		p.unit = measure.Millimetres(rapid.Int64Range(1, 4).Draw(t, "unit")).Nanometres()
		p.layBoards()
		r, ok := p.roomier()
		nothing := slices.ContainsFunc(o.Items, func(it sheet.Item) bool {
			return measure.Min(it.Width, it.Height).Add(o.Kerf).Nanometres() < p.unit
		})
		require.Equal(t, !nothing, ok, "it is of use as long as something is left of each blank")
		if !ok {
			return
		}
		for _, q := range []*problem{p, r} {
			rounded := func(units int32, l measure.Length, up bool) {
				given, size := l.Add(o.Kerf).Nanometres(), int64(units)*p.unit
				require.True(t, size == given || up == (size > given), "%d for %d nm", size, given)
				require.Less(t, max(size-given, given-size), p.unit)
			}
			for i := range q.boards {
				b := &q.boards[i]
				w, h := o.Usable(b.stock)
				rounded(b.w, w, q.roomy)
				rounded(b.h, h, q.roomy)
				for _, f := range b.faces {
					fw, fh := o.Items[q.kinds[f.kind].items[0]].Lying(f.turned)
					if f.w < b.w { // else it fills the board
						rounded(f.w, fw, !q.roomy)
					}
					if f.h < b.h {
						rounded(f.h, fh, !q.roomy)
					}
				}
			}
		}
		require.GreaterOrEqual(t, len(r.boards), len(p.boards))
	})
}
