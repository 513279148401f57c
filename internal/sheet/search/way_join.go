package search

// joining looks for a better plan among sheets that waste little, ever more of
// it and among ever more sheets, with some random plans in between. A complete
// look is the last.
func (pl *planner) joining() way {
	width := 100
	return func(int) (again bool) {
		for share := int64(16); share >= 1 && !pl.done() && !pl.ended(); share /= 2 {
			before := pl.spent
			if whole := pl.tightAt(pl.target(), width, share); whole && share == 1 {
				return false
			}
			pl.lend(pl.spent-before, func() { pl.filling(0) })
		}
		width = min(width*3/2, 4_000)
		return true
	}
}

// tightAt looks for a plan of a cost among sheets that waste at most a share of
// what it can afford, and reports whether it is sure that there is none.
func (pl *planner) tightAt(target int64, width int, share int64) bool {
	patterns, whole := pl.tiles(target, width, share)
	found, sure := pl.tryCover(patterns, target, coverNodes)
	whole = whole && share == 1 && sure && !found
	if whole {
		pl.raise(target+1, "A complete search of all sheets that waste little enough found no plan with less.")
	}
	return whole
}

// coverNodes bounds the search of the sheets that one join gave.
const coverNodes = 20_000

// tiles joins the sheets of all boards that waste at most a share of what a
// plan of a cost can afford; whole is false if some were left out.
func (pl *planner) tiles(target int64, width int, share int64) (patterns []pattern, whole bool) {
	whole = true
	for i := range pl.boards {
		b := &pl.boards[i]
		pack, ok := newPacking(pl.caps(b))
		if !ok {
			return nil, false
		}
		t := newTight(pl.effort, b, pack, pl.affordable(target, b)/share, width, pl.greedy.random)
		t.run()
		whole = whole && t.whole
		patterns = append(patterns, t.patterns(len(pl.kinds))...)
	}
	return patterns, whole
}

// tryCover looks for a plan of a cost among some sheets and keeps it.
func (pl *planner) tryCover(patterns []pattern, target int64, nodes int) (found, sure bool) {
	c := newCover(pl.effort, patterns, pl.guides(), pl.needs(), nodes)
	found, sure = c.search(target)
	if found {
		pl.accept(c.chosen)
	}
	return found, sure
}

// affordable is the waste that a plan of a cost may have on one sheet.
func (pl *planner) affordable(target int64, b *board) int64 {
	area := pl.weights[0]
	return int64(b.w)*int64(b.h) - area.top*b.cost + area.top*target - pl.area()
}

// area is that of all pieces together.
func (p *problem) area() int64 {
	total := int64(0)
	for i := range p.kinds {
		total += int64(p.kinds[i].need) * p.kinds[i].area
	}
	return total
}
