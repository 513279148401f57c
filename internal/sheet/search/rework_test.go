package search

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// inHand counts the pieces of every kind on the drafts of a rework and beside them.
func (r *rework) inHand() []int32 {
	counts := make([]int32, len(r.kinds))
	for i := range r.drafts {
		tally(r.drafts[i].layout(r.drafts[i].root), counts)
	}
	for _, k := range r.out {
		counts[k]++
	}
	return counts
}

// Step after step every piece is on one sheet or beside them, every sheet is sound, and
// the score is that of what is there.
func TestReworkLosesNoPiece(t *testing.T) {
	for seed := range seeds(12) {
		pl := newProblem(craftOrder(t, seed)).newPlanner(endless())
		pl.boundByArea()
		boards := pl.draw(pl.lower + 1)
		r := pl.newRework(boards, rand.New(rand.NewPCG(seed, 1)))
		pl.hoardFor(pl.lower + 1)
		r.number = 1
		r.refill()
		r.score = r.rate()
		for range 150 {
			r.step()
			require.Equal(t, pl.needs(), r.inHand())
			require.InDelta(t, r.rate(), r.score, 1e-6)
			for i := range r.drafts {
				r.drafts[i].sound(t)
			}
		}
		plan := r.plan()
		assert.LessOrEqual(t, len(plan), len(boards))
	}
}

// What a step changed is put back as it was.
func TestStepsAreUndone(t *testing.T) {
	pl := newProblem(craftOrder(t, 5)).newPlanner(endless())
	pl.boundByArea()
	r := pl.newRework(pl.draw(pl.lower), rand.New(rand.NewPCG(5, 1)))
	r.number = 1
	r.refill()
	for range 40 {
		r.number++
		clear(r.dirty)
		r.before = append(r.before[:0], r.out...)
		score, counts := r.rate(), [][]int32{}
		for i := range r.drafts {
			counts = append(counts, make([]int32, len(r.kinds)))
			tally(r.drafts[i].layout(r.drafts[i].root), counts[i])
		}
		r.ruin()
		r.refill()
		r.restore()
		require.InDelta(t, score, r.rate(), 1e-9)
		for i := range r.drafts {
			again := make([]int32, len(r.kinds))
			tally(r.drafts[i].layout(r.drafts[i].root), again)
			require.Equal(t, counts[i], again)
			r.drafts[i].sound(t)
		}
	}
}

// A piece finds a place wherever there is one, and it is a place that goes.
func TestPlacesAreFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o, _ := tinyOrder(t)
		if o.Check() != nil {
			return
		}
		pl := newProblem(o).newPlanner(endless())
		b := &pl.boards[0]
		r := pl.newRework([]*board{b}, rand.New(rand.NewPCG(1, 1)))
		for range rapid.IntRange(0, 4).Draw(t, "before") {
			if list := r.drafts[0].places(int16(rapid.IntRange(0, len(b.faces)-1).Draw(t, "face"))); len(list) > 0 {
				r.drafts[0].insert(rapid.SampledFrom(list).Draw(t, "place"))
			}
		}
		kind := rapid.Int32Range(0, int32(len(pl.kinds)-1)).Draw(t, "kind")
		var all []place
		for _, face := range r.faces[b.stock][kind] {
			all = append(all, r.drafts[0].places(face)...)
		}
		p, ok := r.find(kind)
		require.Equal(t, len(all) > 0, ok)
		if ok {
			require.Contains(t, all, p)
			r.drafts[0].insert(p)
			r.drafts[0].sound(t)
		}
	})
}
