package search

import (
	"math"

	"creasefit/internal/measure"
)

// way looks for a cheaper plan or proves a greater bound within the effort lent
// to it in a turn, and says whether it may do more in another.
type way func(turn int) (again bool)

// planner looks for the least cost of an order with counts.
type planner struct {
	*problem
	*effort
	weights []weights // proven bounds
	rooms   []weights // measures of the room on a sheet: area, and by both sides
	lower   int64     // the greatest of them
	why     string    // what proves it
	exactly int64     // the same for the exact sizes, of an order on a coarser grid
	best    []cutting
	cost    int64 // of best
	greedy  *greedy
	hoard   *hoard
	sums    []bool // that sheets may cost together, in coins
	coin    int64
	rest    func(*planner) // plans what a part of a plan leaves
	ways    []way          // that may do more
	turn    int
}

// tooLarge is what the bound by area says.
const tooLarge = "The blanks together are too large for fewer sheets."

// trueAreaBound is the bound by area at the exact sizes, for orders that are
// planned on a coarser grid: what is proven there does not hold for them.
func (p *problem) trueAreaBound() int64 {
	kerf, sum, most := p.order.Kerf, 0.0, 0.0
	area := func(w, h measure.Length) float64 { return w.Add(kerf).Millimetres() * h.Add(kerf).Millimetres() }
	for _, it := range p.order.Items {
		sum += float64(it.Count) * area(it.Width, it.Height)
	}
	for s := range p.order.Sheets {
		most = max(most, area(p.order.Usable(s))/float64(p.order.Cost(s)))
	}
	return int64(math.Ceil(sum/most - 1e-6))
}

// newPlanner begins without a plan, one above what any plan can cost: a sheet
// for every piece, or all the sheets in stock.
func (p *problem) newPlanner(e *effort) *planner {
	pieces, stock := int64(p.pieces()), int64(0)
	for _, b := range p.boards {
		if b.available == 0 {
			stock = math.MaxInt64 - 1
			break
		}
		stock += int64(b.available) * b.cost
	}
	return &planner{problem: p, effort: e, cost: min(pieces*p.dearest(), stock) + 1, greedy: p.newGreedy(e)}
}

// done reports whether the best plan is proven best.
func (pl *planner) done() bool { return pl.cost <= pl.lower }

// prove takes a bound in, with what proves it: values of the kinds, and the most
// that a sheet of every board can be worth.
func (pl *planner) prove(w weights, why string) {
	w.top = 1
	for i := range pl.boards {
		w.top = max(w.top, ceilDiv(w.tops[i], pl.boards[i].cost))
	}
	pl.weights = append(pl.weights, w)
	pl.raise(pl.boundOf(&w), why)
}

// raise takes a lower bound in, with what proves it: no plan costs a sum that
// no sheets come to.
func (pl *planner) raise(bound int64, why string) {
	if bound = pl.payable(bound); bound > pl.lower {
		pl.lower, pl.why = bound, why
	}
}

// tryGreedy builds some plans and keeps the cheapest.
func (pl *planner) tryGreedy(rounds, fills int) {
	for range rounds {
		if pl.done() || pl.ended() {
			return
		}
		pl.offer(pl.greedy.run(fills, 0.3, pl.cost))
	}
}

// filling builds random plans.
func (pl *planner) filling(int) (again bool) {
	pl.tryGreedy(math.MaxInt, 8)
	return true
}

// offer keeps a plan of patterns if it is cheaper than the best and has no more
// stages than the order allows.
func (pl *planner) offer(plan []use) {
	cuttings := cuttingsOf(plan)
	if cost := costOf(cuttings); plan != nil && cost < pl.cost && pl.fewStages(cuttings) {
		pl.best, pl.cost = cuttings, cost
	}
}

// fewStages reports whether a plan has no more stages than the order allows.
func (p *problem) fewStages(plan []cutting) bool {
	if p.order.Stages == 0 {
		return true
	}
	a := p.outline(plan, false)
	return p.allowed(a.Work.Stages)
}

// allowed reports whether a plan may have so many stages.
func (p *problem) allowed(stages int) bool { return p.order.Stages == 0 || stages <= p.order.Stages }

// cuttingsOf draws the patterns of a plan.
func cuttingsOf(plan []use) []cutting {
	var list []cutting
	for _, u := range plan {
		list = append(list, cutting{u.pattern.board, u.pattern.draw(), u.times})
	}
	return list
}

// costOf is what the sheets of a plan cost.
func costOf(plan []cutting) int64 {
	cost := int64(0)
	for _, c := range plan {
		cost += int64(c.times) * c.board.cost
	}
	return cost
}
