package search

import (
	"cmp"
	"math"
	"slices"

	"creasefit/internal/sheet"
)

// mostSplits bounds the work of one enumeration, in sets parted in two.
const mostSplits = 50_000_000

// enumeration finds every set of pieces that a sheet can give, one kind after
// another, the largest first. The linear program over all sets of the kinds so far
// proves a bound, since those alone need so many sheets; with all kinds there, the sets
// are searched for a plan at the bound, then one above it, and so on up to the best
// plan known.
type enumeration struct {
	*planner
	order    []int32 // in which kinds are listed
	sets     []*sets // of every board
	priced   int     // kinds whose sets are priced
	entered  []priceRow
	patterns []pattern
	cover    *cover // the search at a target
	target   int64
}

// newEnumeration begins with nothing listed.
func (pl *planner) newEnumeration() *enumeration {
	n := &enumeration{planner: pl, order: pl.largest()}
	for i := range pl.boards {
		s := newSets(&pl.boards[i], n.order, pl.caps(&pl.boards[i]), mostSplits)
		for r := range pl.rooms {
			s.measure(&pl.rooms[r], i)
		}
		n.sets = append(n.sets, s)
	}
	return n
}

// largest lists the kinds by the room that they take by all measures together: what is
// long or wide takes much, however small its area.
func (pl *planner) largest() []int32 {
	order, takes := make([]int32, len(pl.kinds)), make([]float64, len(pl.kinds))
	for k := range order {
		order[k] = int32(k)
		for r := range pl.rooms {
			takes[k] += pl.rooms[r].share(int32(k))
		}
	}
	slices.SortStableFunc(order, func(x, y int32) int { return cmp.Compare(takes[y], takes[x]) })
	return order
}

// enumerating goes on with an enumeration from turn to turn.
func (pl *planner) enumerating() way {
	n := pl.newEnumeration()
	return func(int) (again bool) {
		whole := false
		n.lend(n.left/2, func() { whole = n.list() })
		if done := n.price(); !whole {
			return !done || !slices.ContainsFunc(n.sets, func(s *sets) bool { return s.full })
		}
		for !n.done() && n.search() {
		}
		return true
	}
}

// list goes on with the sets of pieces that the boards can give.
func (n *enumeration) list() (whole bool) {
	for k := range n.kinds {
		for _, s := range n.sets {
			if !s.enumerate(n.effort, k) {
				return false
			}
		}
	}
	if n.patterns == nil {
		for _, s := range n.sets {
			n.patterns = append(n.patterns, s.patterns()...)
		}
	}
	return true
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

// guides lists what proves bounds, the newest first: that one guides a search.
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

// worth is the value of all pieces of a pattern.
func (pt *pattern) worth(value []int64) int64 {
	sum := int64(0)
	for k, n := range pt.counts {
		sum += int64(n) * value[k]
	}
	return sum
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
