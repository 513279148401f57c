package search

import (
	"cmp"
	"math/rand/v2"
	"slices"
)

// rework looks for a plan on given sheets: what finds no place stays out, and
// pieces are taken out and put back elsewhere until nothing stays out (after
// J. Gardeyn, T. Wauters, EJOR 301 (2022) 432-444). A step that makes things
// worse is kept if it is no worse than things were some steps ago (E. K.
// Burke, Y. Bykov, EJOR 258 (2017) 70-78).
type rework struct {
	*planner
	drafts []draft
	saved  []draft // as they were before the step
	dirty  []bool  // drafts changed in the step
	out    []int32 // kinds of the pieces that are on no draft
	before []int32 // out before the step
	faces  [][][]int16
	random *rand.Rand
	score  float64
	late   []float64 // scores of the last steps
	taken  []int16
	queue  []queued
	failed []int // of each kind, the last step in which it found no place
	number int   // of the step
}

// queued is a piece that waits for a place.
type queued struct {
	kind int32
	rank float64
}

// lateSteps is how many steps back a step is compared with.
const lateSteps = 200

// newRework prepares empty sheets.
func (pl *planner) newRework(boards []*board, random *rand.Rand) *rework {
	r := &rework{planner: pl, random: random, dirty: make([]bool, len(boards)), late: make([]float64, lateSteps),
		failed: make([]int, len(pl.kinds)), faces: make([][][]int16, len(pl.order.Sheets))}
	for _, b := range boards {
		if r.faces[b.stock] == nil {
			r.faces[b.stock] = facesOf(b, len(pl.kinds))
		}
		r.drafts, r.saved = append(r.drafts, newDraft(b)), append(r.saved, newDraft(b))
	}
	r.out = pl.singly()
	return r
}

// facesOf lists the faces of every kind on a board.
func facesOf(b *board, kinds int) [][]int16 {
	list := make([][]int16, kinds)
	for i, f := range b.faces {
		list[f.kind] = append(list[f.kind], int16(i))
	}
	return list
}

// run makes so many steps and reports whether every piece has found a place.
func (r *rework) run(steps int) bool {
	r.number = 1
	r.refill()
	r.score = r.rate()
	for i := range r.late {
		r.late[i] = r.score
	}
	for len(r.out) > 0 && r.number < steps && r.spend(100) {
		r.step()
	}
	return len(r.out) == 0
}

// step takes some pieces out, puts back what fits, and keeps that or not.
func (r *rework) step() {
	r.number++
	clear(r.dirty)
	r.before = append(r.before[:0], r.out...)
	r.ruin()
	r.refill()
	late := &r.late[r.number%lateSteps]
	if score := r.rate(); score <= max(*late, r.score) {
		r.score = score
		r.hoard.keep(r.drafts, r.dirty, len(r.kinds))
	} else {
		r.restore()
	}
	*late = r.score
}

// restore undoes a step.
func (r *rework) restore() {
	r.out = append(r.out[:0], r.before...)
	for i, changed := range r.dirty {
		if changed {
			r.drafts[i], r.saved[i] = r.saved[i], r.drafts[i]
		}
	}
}

// rate is the area of what is out, less something for room that is on few
// drafts instead of many.
func (r *rework) rate() float64 {
	score := 0.0
	for _, k := range r.out {
		score += float64(r.kinds[k].area)
	}
	for i := range r.drafts {
		b, free := r.drafts[i].board, float64(r.drafts[i].free)
		score -= 0.3 * free * free / (float64(b.w) * float64(b.h))
	}
	return score
}

// touch keeps a draft as it was before it is changed in a step.
func (r *rework) touch(i int) *draft {
	if !r.dirty[i] {
		r.dirty[i] = true
		r.saved[i].copyFrom(&r.drafts[i])
	}
	return &r.drafts[i]
}

// ruin takes one to three knots out, most of them small.
func (r *rework) ruin() {
	for range 1 + r.random.IntN(3) {
		i := r.random.IntN(len(r.drafts))
		if r.drafts[i].root == none {
			continue
		}
		t := r.touch(i)
		at := int16(r.random.IntN(len(t.knots)))
		for t.knots[at].up != none && r.random.IntN(4) == 0 {
			at = t.knots[at].up
		}
		r.taken = t.remove(at, r.taken[:0])
		for _, f := range r.taken {
			r.out = append(r.out, t.board.faces[f].kind)
		}
	}
}

// refill puts what is out back where it finds a place, large pieces first,
// more or less.
func (r *rework) refill() {
	r.queue = r.queue[:0]
	for _, k := range r.out {
		r.queue = append(r.queue, queued{k, float64(r.kinds[k].area) * (0.6 + 0.8*r.random.Float64())})
	}
	slices.SortFunc(r.queue, func(a, b queued) int { return cmp.Compare(b.rank, a.rank) })
	r.out = r.out[:0]
	for _, q := range r.queue {
		if r.failed[q.kind] < r.number {
			if p, ok := r.find(q.kind); ok {
				r.touch(int(p.draft)).insert(p)
				continue
			}
			r.failed[q.kind] = r.number
		}
		r.out = append(r.out, q.kind)
	}
}

// plan is the sheets as they are.
func (r *rework) plan() []use {
	var plan []use
	for i := range r.drafts {
		if t := &r.drafts[i]; t.root != none {
			plan = append(plan, use{drawn(t.board, t.layout(t.root), len(r.kinds)), 1})
		}
	}
	return plan
}
