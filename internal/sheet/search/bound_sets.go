package search

import (
	"math"
	"math/bits"
	"slices"
)

// priceRow is a set of pieces as a row of a linear program.
type priceRow struct {
	counts []int32
	board  int
}

// price proves the bound of the linear program over all sets of the kinds that are
// listed. Of the others, the smaller ones, any pieces go into the room that a set
// leaves: for them there is one price for every measure of room. It reports whether it
// came to its end.
func (n *enumeration) price() bool {
	listed := len(n.kinds)
	for _, s := range n.sets {
		listed = min(listed, len(s.ends))
	}
	if listed == n.priced {
		return true
	}
	goal := n.listed(n.needs(), listed)
	for _, r := range n.rooms {
		unlisted := 0.0
		for _, k := range n.order[listed:] {
			unlisted += float64(n.kinds[k].need) * r.share(k)
		}
		goal = append(goal, unlisted)
	}
	d := newDuals(goal)
	for k := range goal { // which bounds every price
		row := make([]float64, len(goal))
		row[k] = 1
		d.add(row, float64(n.dearest()))
	}
	for _, r := range n.entered {
		d.add(n.row(r, listed), float64(n.boards[r.board].cost))
	}
	for d.optimize(n.effort, 10_000) && n.enter(d, listed) {
	}
	if !n.boundAt(d.prices(), listed) {
		return false
	}
	n.priced = listed
	return true
}

// listed are the counts of so many kinds, in the order that they are listed in.
func (n *enumeration) listed(counts []int32, most int) []float64 {
	var list []float64
	for _, k := range n.order[:most] {
		list = append(list, float64(counts[k]))
	}
	return list
}

// row is what a set gives of the kinds that are listed, and the room that it leaves for
// the others by every measure.
func (n *enumeration) row(r priceRow, listed int) []float64 {
	row := n.listed(r.counts, listed)
	for i := range n.rooms {
		row = append(row, n.rooms[i].room(r.board, r.counts))
	}
	return row
}

// share is the part of a sheet of the first board that a kind takes.
func (w *weights) share(k int32) float64 { return float64(w.value[k]) / float64(w.tops[0]) }

// inRoom is what the room that a kind takes costs.
func (n *enumeration) inRoom(prices []float64, k int32) float64 {
	sum := 0.0
	for i := range n.rooms {
		sum += prices[i] * n.rooms[i].share(k)
	}
	return sum
}

// worthOn returns what a board is worth at some prices without a listed piece on it,
// all of it being room, and what every listed kind adds to that.
func (n *enumeration) worthOn(board int, prices []float64, listed int) (empty float64, adds []float64) {
	for i := range n.rooms {
		empty += prices[listed+i] * n.rooms[i].room(board, nil)
	}
	for at, k := range n.order[:listed] {
		adds = append(adds, prices[at]-n.inRoom(prices[listed:], k))
	}
	return empty, adds
}

// enter adds sets that cost more than their sheet, of each board the dearest of those
// that end with the same kind, and reports whether there are any.
func (n *enumeration) enter(d *duals, listed int) (any bool) {
	prices := d.prices()
	for i, s := range n.sets {
		cost, from := float64(s.board.cost), 0
		empty, adds := n.worthOn(i, prices, listed)
		for _, end := range s.ends[:listed] {
			dear, worth, ok := n.dearestSet(s, from, end, adds)
			if !ok {
				return false
			}
			if empty+worth > cost*(1+1e-7) {
				r := priceRow{s.counts(s.codes[dear]), i}
				n.entered = append(n.entered, r)
				d.add(n.row(r, listed), cost)
				any = true
			}
			from = end
		}
	}
	return any && !n.ended()
}

// room is what some pieces leave of a board, in sheets of the first.
func (w *weights) room(board int, counts []int32) float64 {
	return float64(w.tops[board]-w.sum(counts)) / float64(w.tops[0])
}

// dearestSet finds the one of some sets whose pieces add most; ok is false if it was cut
// short.
func (n *enumeration) dearestSet(s *sets, from, end int, adds []float64) (dear int, most float64, ok bool) {
	worth := worthOf(s, adds)
	most = math.Inf(-1)
	for at, code := range s.codes[from:end] {
		if at%worthEvery == 0 && !n.spend(worthSteps*min(worthEvery, end-from)) {
			return 0, 0, false
		}
		if v := worth(code); v > most {
			dear, most = from+at, v
		}
	}
	return dear, most, true
}

// worthSteps is what adding up the prices of a set costs, which is paid for so many
// sets at once.
const (
	worthSteps = 4
	worthEvery = 1 << 13
)

// boundAt proves in integers what some prices of the listed kinds, and of the room for
// the others, prove. It reports whether it came to its end.
func (n *enumeration) boundAt(prices []float64, listed int) bool {
	if slices.Max(prices) <= 0 {
		return !n.ended()
	}
	scale, _ := scaled(prices)
	for k, v := range scale {
		prices[k] = float64(v)
	}
	value := make([]int64, len(n.kinds))
	for at, k := range n.order {
		if at < listed {
			value[k] = scale[at]
		} else {
			value[k] = int64(n.inRoom(prices[listed:], k))
		}
	}
	w := weights{value: value, tops: make([]int64, len(n.boards))}
	for i, s := range n.sets {
		empty, adds := n.worthOn(i, prices, listed)
		_, worth, ok := n.dearestSet(s, 0, s.ends[listed-1], adds)
		if !ok {
			return false
		}
		w.tops[i] = int64(math.Ceil(empty+worth)) + 1 // one for what is rounded
	}
	if listed == len(n.kinds) || n.boundOf(&w) > n.lower {
		n.prove(w, "Priced by a linear program over all sets of large blanks that a sheet gives, the order is worth more than fewer sheets.")
	}
	return !n.ended()
}

// worthOf adds up the values of the pieces of a set, bit by bit.
func worthOf[T int64 | float64](s *sets, value []T) func(code uint64) T {
	var of [64]T
	for k, v := range value {
		for at := s.shift[k]; at < min(s.shift[k+1], 64); at++ { // sets of the others are not listed
			of[at], v = v, 2*v
		}
	}
	return func(code uint64) (sum T) {
		for ; code != 0; code &= code - 1 {
			sum += of[bits.TrailingZeros64(code)]
		}
		return sum
	}
}
