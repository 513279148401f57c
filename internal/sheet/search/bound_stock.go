package search

import (
	"math/bits"
	"slices"
)

// boundOf is the least cost of sheets that together hold the value of the whole
// order, the best of them no oftener than they are in stock, the last in part; more
// than any plan costs if the stock does not suffice.
func (pl *planner) boundOf(w *weights) int64 {
	left, cost := w.sum(pl.needs()), int64(0)
	order := make([]int, len(pl.boards))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		return compareProducts(w.tops[j], pl.boards[i].cost, w.tops[i], pl.boards[j].cost)
	})
	for _, i := range order {
		b := &pl.boards[i]
		if w.tops[i] <= 0 {
			break
		}
		if b.available == 0 || ceilDiv(left, w.tops[i]) <= int64(b.available) {
			return cost + ceilProduct(left, b.cost, w.tops[i])
		}
		left -= w.tops[i] * int64(b.available)
		cost += b.cost * int64(b.available)
	}
	return max(pl.cost, cost)
}

// compareProducts compares a*b with c*d.
func compareProducts(a, b, c, d int64) int {
	high, low := bits.Mul64(uint64(a), uint64(b))
	otherHigh, otherLow := bits.Mul64(uint64(c), uint64(d))
	return slices.Compare([]uint64{high, low}, []uint64{otherHigh, otherLow})
}

// ceilProduct is a*b/c, rounded up.
func ceilProduct(a, b, c int64) int64 {
	high, low := bits.Mul64(uint64(a), uint64(b))
	low, carry := bits.Add64(low, uint64(c-1), 0)
	quotient, _ := bits.Div64(high+carry, low, uint64(c))
	return int64(quotient)
}
