package search

import "slices"

// mostReworked bounds the orders that are reworked: each step looks at every
// piece on the sheets that have room.
const mostReworked = 400

// stepsEach is how many steps of rework may go by without a plan before it
// begins anew, and rounds how often it does before the target changes.
const (
	stepsEach = 20_000
	rounds    = 8
)

// reworking looks for cheaper plans by rework. It begins just below the best
// plan, since the lower bound may be out of reach.
func (pl *planner) reworking() way {
	return func(int) (again bool) {
		for pl.pieces() <= mostReworked && !pl.done() && !pl.ended() {
			pl.reworkAt(pl.cost - 1)
			if !pl.done() && pl.target() < pl.cost-1 {
				pl.reworkAt(pl.target())
			}
		}
		return pl.pieces() <= mostReworked
	}
}

// reworkAt looks for a plan of a cost, and keeps the sheets that are met on the way for
// column generation.
func (pl *planner) reworkAt(target int64) {
	for round := 0; round < rounds && !pl.ended(); round++ {
		boards := pl.draw(target)
		if len(boards) == 0 {
			return
		}
		r := pl.newRework(boards, pl.greedy.random)
		pl.hoardFor(target)
		if r.run(stepsEach) {
			pl.offer(r.plan())
			return
		}
	}
}

// pieces is how many are wanted in all.
func (p *problem) pieces() int {
	sum := 0
	for _, k := range p.kinds {
		sum += k.need
	}
	return sum
}

// singly lists the kind of every piece.
func (p *problem) singly() []int32 {
	var list []int32
	for k := range p.kinds {
		list = append(list, slices.Repeat([]int32{int32(k)}, p.kinds[k].need)...)
	}
	return list
}

// draw chooses sheets at random that cost no more than target together.
func (pl *planner) draw(target int64) []*board {
	var drawn []*board
	stock := map[int]int{}
	for {
		var affordable []*board
		for i := range pl.boards {
			if b := &pl.boards[i]; b.cost <= target && (b.available == 0 || stock[b.stock] < b.available) {
				affordable = append(affordable, b)
			}
		}
		if len(affordable) == 0 || len(drawn) == mostReworked {
			return drawn
		}
		b := affordable[pl.greedy.random.IntN(len(affordable))]
		stock[b.stock]++
		target -= b.cost
		drawn = append(drawn, b)
	}
}

// hoardFor begins the hoard for a cost; that for another cost is dropped.
func (pl *planner) hoardFor(target int64) {
	if pl.hoard != nil && pl.hoard.target == target {
		return
	}
	h := &hoard{target: target, allow: make([]int64, len(pl.order.Sheets)), seen: map[string]bool{}}
	for i := range pl.boards {
		h.allow[pl.boards[i].stock] = pl.affordable(target, &pl.boards[i])
	}
	pl.hoard = h
}

// affordable is the waste that a plan of a cost may have on one sheet.
func (pl *planner) affordable(target int64, b *board) int64 {
	area := pl.weights[0]
	return int64(b.w)*int64(b.h) - area.top*b.cost + area.top*target - area.sum(pl.needs())
}
