package search

import "slices"

// peeling looks for plans without much waste that are too large to search: it
// takes one good sheet after another out of the order, those of pieces that are
// hard to place first, and searches what is left each time.
func (pl *planner) peeling() way {
	n := 0
	return func(int) (again bool) {
		for again = true; again && !pl.done() && !pl.ended(); n++ {
			again = pl.peel(400 << (n % 4))
		}
		return again
	}
}

// peel tries one succession of sheets; it reports whether another may do
// better.
func (pl *planner) peel(width int) bool {
	target, rest := pl.target(), pl
	var plan []use
	for target > 0 && !pl.ended() {
		patterns := rest.sparing(target, width)
		if found, _ := rest.tryCover(patterns, target, peelNodes); found {
			pl.offerWith(plan, rest)
			return true
		}
		best := rest.rarest(patterns, target)
		if best == nil {
			return len(plan) > 0 || pl.ended()
		}
		target -= best.board.cost
		plan = append(plan, use{drawn(best.board, best.draw(), len(pl.kinds)), 1})
		rest = rest.without(best)
	}
	return true
}

// sparing joins sheets that waste no more than half their share of what a plan
// can afford, or more if there are none.
func (pl *planner) sparing(target int64, width int) []pattern {
	for share := 2 * target; ; share /= 2 {
		patterns, _ := pl.tiles(target, width, max(1, share))
		if len(patterns) > 0 || share <= 1 || pl.ended() {
			return patterns
		}
	}
}

// peelNodes bounds the search after each peeled sheet.
const peelNodes = 2_000

// offerWith offers some sheets and the plan of what they leave.
func (pl *planner) offerWith(plan []use, rest *planner) {
	if len(plan) == 0 {
		return
	}
	for _, c := range rest.best {
		plan = append(plan, use{drawn(c.board, c.layout, len(pl.kinds)), c.times})
	}
	pl.offer(plan)
}

// rarest chooses the sheet to take out, more or less at random: one of pieces
// that few other sheets use, since those would be left over in the end.
func (pl *planner) rarest(patterns []pattern, target int64) *pattern {
	common := make([]float64, len(pl.kinds))
	for i := range patterns {
		for k, n := range patterns[i].counts {
			common[k] += float64(n)
		}
	}
	var best *pattern
	most := 0.0
	for i := range patterns {
		pt := &patterns[i]
		sum := 0.0
		for k, n := range pt.counts {
			if n > 0 {
				sum += float64(n) * float64(pl.kinds[k].need) / common[k]
			}
		}
		if sum *= 0.7 + 0.6*pl.greedy.random.Float64(); sum > most && pt.board.cost < target {
			best, most = pt, sum
		}
	}
	return best
}

// without is a planner for what a sheet leaves. The bounds of the whole order
// hold for a part of it.
func (pl *planner) without(pt *pattern) *planner {
	p := *pl.problem
	p.kinds = slices.Clone(p.kinds)
	for k, n := range pt.counts {
		p.kinds[k].need -= int(n)
	}
	p.boards = slices.Clone(p.boards)
	for i := range p.boards {
		if b := &p.boards[i]; b.stock == pt.board.stock && b.available > 0 {
			b.available--
		}
	}
	p.boards = slices.DeleteFunc(p.boards, func(b board) bool { return b.stock == pt.board.stock && pt.board.available == 1 })
	rest := p.newPlanner(pl.effort)
	rest.greedy.random, rest.weights = pl.greedy.random, pl.weights
	return rest
}
