package search

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/sheet"
)

// stagesOf is the number of stages of a layout: runs of one direction count once, and so
// does a trim along the other side of what is not as long as its strip.
func stagesOf(b *board, l *layout, room corner, a sheet.Axis, left int) bool {
	if l == nil {
		return true
	}
	if l.low != nil && l.axis == a {
		low, _ := replaySize(b, l.low)
		high := sides(a, room.along(a)-low.along(a), room.along(a.Other()))
		return stagesOf(b, l.low, sides(a, low.along(a), room.along(a.Other())), a, left) && stagesOf(b, l.high, high, a, left)
	}
	need, leaf := replaySize(b, l)
	if leaf && need.along(a.Other()) == room.along(a.Other()) {
		return true
	}
	return left > 1 && stagesOf(b, l, sides(a, need.along(a), room.along(a.Other())), a.Other(), left-1)
}

// replaySize is the least rectangle of a layout, and whether it is a piece.
func replaySize(b *board, l *layout) (corner, bool) {
	if l.low == nil {
		for _, f := range b.faces {
			if f.kind == l.kind && f.turned == l.turned {
				return corner{f.w, f.h}, true
			}
		}
	}
	p, _ := replaySize(b, l.low)
	q, _ := replaySize(b, l.high)
	if l.axis == sheet.Width {
		return corner{p.w + q.w, max(p.h, q.h)}, false
	}
	return corner{max(p.w, q.w), p.h + q.h}, false
}

// Every way to fill a board stays within it, takes just the pieces that it lays out and
// no more than there are, leaves no piece that would fill the whole board alone, and
// keeps the stages it is given.
func TestFillsAreWithinTheBoard(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, values := drawnBoard(t, 25)
		stages := rapid.SampledFrom([]int{0, 0, 2, 3}).Draw(t, "stages")
		f := &filler{board: b, score: make([]float64, len(b.faces)), random: rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1)), stages: stages}
		value := make([]float64, len(values))
		for k := range value {
			value[k] = 1 + float64(values[k])
			f.left = append(f.left, rapid.Int32Range(0, 6).Draw(t, "left"))
		}
		before := append([]int32(nil), f.left...)
		f.shake(value, 0.3)
		for i, fc := range b.faces {
			require.InDelta(t, value[fc.kind], f.score[i], 0.16*value[fc.kind])
		}
		l := f.whole(rapid.Bool().Draw(t, "strips"))
		counts := make([]int32, len(value))
		tally(l, counts)
		for k := range counts {
			require.Equal(t, before[k], f.left[k]+counts[k])
			require.GreaterOrEqual(t, f.left[k], int32(0))
		}
		if l == nil {
			for _, fc := range b.faces {
				require.True(t, before[fc.kind] == 0 || stages > 0, "nothing is laid though a piece fits")
			}
			return
		}
		w, h := replay(t, b, l, func(int32) {})
		require.True(t, w <= b.w && h <= b.h)
		all := corner{b.w, b.h}
		require.True(t, stages == 0 || stagesOf(b, l, all, sheet.Width, stages) || stagesOf(b, l, all, sheet.Height, stages), "more than %d stages", stages)
	})
}

// On a sheet of 10 x 10 strips of pieces of 3 x 5 are three, each of two in a stack.
func TestStripsByHand(t *testing.T) {
	b := plainBoard(10, 10, [][2]int{{3, 5}}, false)
	f := &filler{board: b, score: []float64{1}, left: []int32{9}, random: rand.New(rand.NewPCG(1, 1))}
	l := f.strip(corner{10, 10}, sheet.Width)
	assert.Equal(t, int32(3), f.left[0])
	assert.Equal(t, sheet.Width, l.axis)
	stack := &layout{axis: sheet.Height, low: &layout{}, high: &layout{}}
	assert.Equal(t, &layout{axis: sheet.Width, low: &layout{axis: sheet.Width, low: stack, high: stack}, high: stack}, l)
	assert.EqualValues(t, 2, (&filler{left: []int32{2, 9}}).again([]int32{3, 11}, 5), "two more of the first are left, one at a time")
}

// Greedy plans give every piece, repeat a sheet as often as it goes, keep to the stock
// and give up at the cost to beat.
func TestGreedyPlansAreWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := randomOrder(t)
		if o.Check() != nil || !o.Counted() {
			return
		}
		p := newProblem(o)
		g := p.newGreedy(endless())
		plan := g.run(2, 0.3, 1<<40)
		made, cost := make([]int32, len(p.kinds)), costOf(cuttingsOf(plan))
		for _, u := range plan {
			for k, n := range u.pattern.counts {
				made[k] += n * int32(u.times)
			}
			l := u.pattern.draw()
			w, h := replay(t, u.pattern.board, l, func(int32) {})
			require.True(t, w <= u.pattern.board.w && h <= u.pattern.board.h)
		}
		require.Equal(t, p.needs(), made)
		again := p.newGreedy(endless())
		assert.Nil(t, again.run(2, 0.3, cost), "the same plan is not below its own cost")
	})
}

// A value moves a fifth of the way to what the paper that a piece took cost: of a sheet
// that is half used, twice its area.
func TestValuesAreCorrected(t *testing.T) {
	g := &greedy{problem: &problem{kinds: []kind{{area: 1}, {area: 1}}}, value: []float64{1, 1}}
	g.correct(pattern{board: &board{w: 4, h: 1}, counts: []int32{2, 0}})
	assert.InDeltaSlice(t, []float64{0.8 + 0.2*2, 1}, g.value, 1e-12)
}

// A pattern of two and one goes three times into seven and three.
func TestPatternsAreRepeated(t *testing.T) {
	pt := pattern{counts: []int32{2, 1, 0}}
	assert.Equal(t, 3, pt.repeats([]int32{7, 3, 0}))
	assert.Equal(t, 0, pt.repeats([]int32{1, 3, 9}))
	assert.EqualValues(t, 2*5+1*7, pt.gain([]int64{5, 7, 9}, []int32{4, 4, 4}))
	assert.EqualValues(t, 1*5, pt.gain([]int64{5, 7, 9}, []int32{1, 0, 4}), "what is not wanted counts nothing")
	assert.EqualValues(t, 17, pt.worth([]int64{5, 7, 9}))
}

// What is not in the counts is taken out of a layout; the rest stays joined as it was.
func TestOnlyWhatIsWantedStays(t *testing.T) {
	a, b := &layout{kind: 0}, &layout{kind: 1}
	pair := &layout{axis: sheet.Height, low: a, high: b}
	whole := &layout{axis: sheet.Width, low: pair, high: a}
	assert.Equal(t, whole, only(whole, []int32{2, 1}))
	assert.Equal(t, &layout{axis: sheet.Width, low: a, high: a}, only(whole, []int32{2, 0}))
	assert.Equal(t, pair, only(whole, []int32{1, 1}))
	assert.Nil(t, only(whole, []int32{0, 0}))
	assert.Nil(t, only(nil, []int32{1}))
	assert.Nil(t, beside(sheet.Width, nil, nil))
}
