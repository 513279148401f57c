package search

import "creasefit/internal/sheet"

// mostSums bounds the sums of sheets' costs that are listed.
const mostSums = 1 << 22

// payable is the least sum of sheets' costs that is no less than a bound; the
// bound itself if there are too many sums to tell.
func (pl *planner) payable(bound int64) int64 {
	if pl.order.Minimize != sheet.LeastCost {
		return bound
	}
	if pl.sums == nil {
		pl.listSums()
	}
	for at := ceilDiv(bound, pl.coin); at < int64(len(pl.sums)); at++ {
		if pl.sums[at] {
			return at * pl.coin
		}
	}
	return bound
}

// listSums marks the sums of sheets' costs that a plan may come to, counted in
// what all costs are multiples of.
func (pl *planner) listSums() {
	pl.coin = 0
	for i := range pl.boards {
		pl.coin = gcd(pl.coin, pl.boards[i].cost)
	}
	pl.sums = []bool{true}
	if pl.cost/pl.coin > mostSums {
		return
	}
	for at := int64(1); at <= pl.cost/pl.coin; at++ {
		paid := false
		for i := range pl.boards {
			before := at - pl.boards[i].cost/pl.coin
			paid = paid || before >= 0 && pl.sums[before]
		}
		pl.sums = append(pl.sums, paid)
	}
}
