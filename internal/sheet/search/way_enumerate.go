package search

import (
	"context"
	"math"
	"slices"
	"time"

	"creasefit/internal/sheet"
)

// Bounds of the work of one enumeration, in sets parted in two.
const (
	quickSplits = 100_000
	moreSplits  = 2_000_000
	mostSplits  = 20_000_000
)

// enumeration is an attempt to enumerate within a bound of work.
func (pl *planner) enumeration(splits int) func() { return func() { pl.enumerate(splits) } }

// enumerate finds every set of pieces that a sheet can give, proves the bound
// of the linear program over all of them, and searches them for a plan at that
// bound, then one above it, and so on up to the best plan known.
func (pl *planner) enumerate(splits int) {
	patterns, ok := pl.allPatterns(splits)
	if !ok {
		return
	}
	pl.boundByPatterns(patterns)
	end, _ := pl.ctx.Deadline()
	ctx, cancel := context.WithTimeout(pl.ctx, time.Until(end)/2)
	defer cancel()
	for !pl.done() && pl.searchAt(ctx, pl.target(), patterns) {
	}
}

// target is the cost to look for next: from the lower bound up for sheets, of
// which there are few, and from the best plan down for prices.
func (pl *planner) target() int64 {
	if pl.order.Minimize == sheet.LeastCost {
		return pl.cost - 1
	}
	return pl.lower
}

// searchAt looks for a plan of a cost among all patterns and reports whether it
// came to an end.
func (pl *planner) searchAt(ctx context.Context, target int64, patterns []pattern) bool {
	c := newCover(ctx, patterns, pl.guides(), pl.needs(), math.MaxInt)
	found, sure := c.search(target)
	switch {
	case found:
		pl.accept(c.chosen)
	case sure:
		pl.raise(target+1, "A complete search of all sets of blanks that a sheet gives found no plan with less.")
	}
	return (found || sure) && ctx.Err() == nil
}

// guides lists the bounds with the greatest first: that one guides a search.
func (pl *planner) guides() []weights {
	guides := slices.Clone(pl.weights)
	slices.Reverse(guides)
	return guides
}

// allPatterns lists the maximal sets of pieces of every board.
func (pl *planner) allPatterns(splits int) ([]pattern, bool) {
	var all []pattern
	for i := range pl.boards {
		b := &pl.boards[i]
		s, err := newSets(b, pl.kinds, pl.caps(b), splits)
		if err != nil || s.enumerate(pl.ctx) != nil {
			return nil, false
		}
		for _, at := range s.maximal() {
			code := s.codes[at]
			pt := pattern{board: b, counts: make([]int32, len(pl.kinds))}
			for k := range pl.kinds {
				pt.counts[k] = int32(s.count(code, k))
			}
			pt.draw = func() *layout { return s.layout(code, corner{b.w, b.h}) }
			all = append(all, pt)
		}
	}
	return all, true
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
	for d.optimize(10_000) && pl.ctx.Err() == nil {
		at := overpriced(patterns, d.prices())
		if at < 0 {
			break
		}
		d.add(floats(patterns[at].counts), float64(patterns[at].board.cost))
	}
	value := whole(d.prices())
	top := int64(1)
	for i := range patterns {
		top = max(top, ceilDiv(patterns[i].worth(value), patterns[i].board.cost))
	}
	pl.prove(weights{value, top}, "Priced by a linear program over all sets of blanks that a sheet gives, the order is worth more than fewer sheets.")
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
