package search

import (
	"math"
	"slices"

	"creasefit/internal/sheet"
)

// mostSplits bounds the work of one enumeration, in sets parted in two.
const mostSplits = 50_000_000

// enumeration finds every set of pieces that a sheet can give, proves the bound
// of the linear program over all of them, and searches them for a plan at that
// bound, then one above it, and so on up to the best plan known.
type enumeration struct {
	*planner
	sets     []*sets // of the boards so far
	patterns []pattern
	priced   bool
	cover    *cover // the search at a target
	target   int64
}

// enumerating goes on with an enumeration from turn to turn.
func (pl *planner) enumerating() way {
	n := &enumeration{planner: pl}
	return func(int) (again bool) {
		whole, err := n.list()
		if !whole {
			return err == nil
		}
		if !n.priced {
			n.boundByPatterns(n.patterns)
			n.priced = !n.ended()
		}
		for !n.done() && n.search() {
		}
		return true
	}
}

// list goes on with the sets of pieces that the boards can give.
func (n *enumeration) list() (whole bool, err error) {
	for at := range n.boards {
		b := &n.boards[at]
		if at < len(n.sets)-1 || n.patterns != nil && at < len(n.sets) {
			continue
		}
		if at == len(n.sets) {
			s, err := newSets(b, n.kinds, n.caps(b), mostSplits)
			if err != nil {
				return false, err
			}
			n.sets = append(n.sets, s)
		}
		if whole, err := n.sets[at].enumerate(n.effort); !whole {
			return false, err
		}
	}
	if n.patterns == nil {
		for _, s := range n.sets {
			n.patterns = append(n.patterns, s.patterns(n.kinds)...)
		}
	}
	return true, nil
}

// search looks for a plan of a cost among all patterns, where it was cut short
// with what it knows, and reports whether it came to an end.
func (n *enumeration) search() bool {
	if target := n.planner.target(); n.cover == nil || n.target != target {
		n.cover, n.target = newCover(n.effort, n.patterns, n.guides(), n.needs(), math.MaxInt), target
	}
	n.cover.nodes = math.MaxInt
	found, sure := n.cover.search(n.target)
	switch {
	case found:
		n.accept(n.cover.chosen)
		n.cover = nil
	case sure:
		n.raise(n.target+1, "A complete search of all sets of blanks that a sheet gives found no plan with less.")
	}
	return found || sure
}

// target is the cost to look for next: from the lower bound up for sheets, of
// which there are few, and from the best plan down for prices.
func (pl *planner) target() int64 {
	if pl.order.Minimize == sheet.LeastCost {
		return pl.cost - 1
	}
	return pl.lower
}

// guides lists the bounds with the greatest first: that one guides a search.
func (pl *planner) guides() []weights {
	guides := slices.Clone(pl.weights)
	slices.Reverse(guides)
	return guides
}

// caps is the most pieces of each kind that are wanted and that a board's area
// could hold.
func (pl *planner) caps(b *board) []int {
	caps := make([]int, len(pl.kinds))
	for _, f := range b.faces {
		caps[f.kind] = min(pl.kinds[f.kind].need, int(int64(b.w)*int64(b.h)/pl.kinds[f.kind].area))
	}
	return caps
}

// accept makes a found cover the best plan.
func (pl *planner) accept(chosen []choice) {
	var plan []use
	for _, ch := range chosen {
		counts := slices.Clone(ch.take)
		l := only(ch.pattern.draw(), counts)
		plan = append(plan, use{drawn(ch.pattern.board, l, len(pl.kinds)), 1})
	}
	slices.SortStableFunc(plan, func(x, y use) int {
		return slices.Compare(y.pattern.counts, x.pattern.counts)
	})
	pl.offer(plan)
}

// priceScale is the number of steps that prices are rounded down to.
const priceScale = 1 << 30

// boundByPatterns solves the linear program over all patterns and proves its
// bound in integers.
func (pl *planner) boundByPatterns(patterns []pattern) {
	d := newDuals(floats(pl.needs()))
	pl.enterSingles(d)
	for d.optimize(pl.effort, 10_000) {
		pl.spend(len(patterns) * len(pl.kinds))
		at := overpriced(patterns, d.prices())
		if at < 0 {
			break
		}
		d.add(floats(patterns[at].counts), float64(patterns[at].board.cost))
	}
	w := weights{value: whole(d.prices()), tops: make([]int64, len(pl.boards))}
	for i := range patterns {
		at := pl.place(patterns[i].board)
		w.tops[at] = max(w.tops[at], patterns[i].worth(w.value))
	}
	pl.prove(w, "Priced by a linear program over all sets of blanks that a sheet gives, the order is worth more than fewer sheets.")
}

// worth is the value of all pieces of a pattern.
func (pt *pattern) worth(value []int64) int64 {
	sum := int64(0)
	for k, n := range pt.counts {
		sum += int64(n) * value[k]
	}
	return sum
}

// enterSingles bounds every price by the cost of the cheapest sheet.
func (pl *planner) enterSingles(d *duals) {
	for k := range pl.kinds {
		row := make([]float64, len(pl.kinds))
		row[k] = 1
		d.add(row, float64(pl.dearest()))
	}
}

// dearest is the cost of the dearest sheet.
func (p *problem) dearest() int64 {
	most := int64(0)
	for _, b := range p.boards {
		most = max(most, b.cost)
	}
	return most
}

// overpriced is the pattern whose price exceeds its cost the most, or -1.
func overpriced(patterns []pattern, prices []float64) int {
	worst, at := 1e-7, -1
	for i := range patterns {
		sum := 0.0
		for k, n := range patterns[i].counts {
			sum += float64(n) * prices[k]
		}
		if over := sum/float64(patterns[i].board.cost) - 1; over > worst {
			worst, at = over, i
		}
	}
	return at
}

// whole rounds prices down to integers.
func whole(prices []float64) []int64 {
	most := 0.0
	for _, v := range prices {
		most = max(most, v)
	}
	out := make([]int64, len(prices))
	for k, v := range prices {
		out[k] = int64(v / most * priceScale)
	}
	return out
}

// floats converts counts.
func floats(counts []int32) []float64 {
	out := make([]float64, len(counts))
	for k, n := range counts {
		out[k] = float64(n)
	}
	return out
}

// ceilDiv divides positive numbers, rounding up.
func ceilDiv(a, b int64) int64 { return (a + b - 1) / b }
