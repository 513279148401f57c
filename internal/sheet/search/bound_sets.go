package search

import (
	"math/bits"
	"slices"
)

// priceRow is a set of pieces as a row of a linear program.
type priceRow struct {
	counts []int32
	room   float64 // that the set leaves for kinds that are not listed
	cost   float64
}

// price proves the bound of the linear program over all sets of the kinds that are
// listed. Of the others, the smaller ones, any pieces go into the room that a set
// leaves: for them there is one price, of area. It reports whether it came to its end.
func (n *enumeration) price() bool {
	listed := len(n.kinds)
	for _, s := range n.sets {
		listed = min(listed, len(s.ends))
	}
	if listed == n.priced {
		return true
	}
	goal := append(floats(n.needs()[:listed]), 0)
	for _, kd := range n.kinds[listed:] {
		goal[listed] += float64(kd.need) * n.share(kd.area)
	}
	d := newDuals(goal)
	for k := range goal { // which bounds every price
		row := make([]float64, len(goal))
		row[k] = 1
		d.add(row, float64(n.dearest()))
	}
	for _, r := range n.entered {
		d.add(append(floats(r.counts[:listed]), r.room), r.cost)
	}
	for d.optimize(n.effort, 10_000) && n.enter(d, listed) {
	}
	if !n.boundAt(d.prices(), listed) {
		return false
	}
	n.priced = listed
	return true
}

// share is an area as part of a sheet.
func (p *problem) share(area int64) float64 {
	return float64(area) / (float64(p.boards[0].w) * float64(p.boards[0].h))
}

// enter adds sets that cost more than their sheet, of each board the dearest of those
// that end with the same kind, and reports whether there are any.
func (n *enumeration) enter(d *duals, listed int) (any bool) {
	prices := d.prices()
	for _, s := range n.sets {
		cost, from, worth := float64(s.board.cost), 0, worthOf(s, prices[:listed])
		for _, end := range s.ends[:listed] {
			dear, most := -1, cost*(1+1e-7)
			for at := from; at < end; at++ {
				if at%worthEvery == 0 && !n.spend(worthSteps*worthEvery) {
					return false
				}
				if v := worth(s.codes[at]) + prices[listed]*n.room(s, at); v > most {
					dear, most = at, v
				}
			}
			if dear >= 0 {
				row := priceRow{s.counts(s.codes[dear]), n.room(s, dear), cost}
				n.entered = append(n.entered, row)
				d.add(append(floats(row.counts[:listed]), row.room), cost)
				any = true
			}
			from = end
		}
	}
	return any && !n.ended()
}

// worthSteps is what adding up the prices of a set costs, which is paid for so many
// sets at once.
const (
	worthSteps = 4
	worthEvery = 1 << 13
)

// room is what a set leaves of its board.
func (n *enumeration) room(s *sets, at int) float64 {
	return n.share(int64(s.board.w)*int64(s.board.h) - s.areas[at])
}

// boundAt proves in integers what some prices of the listed kinds, and of the area of
// the others, prove. It reports whether it came to its end.
func (n *enumeration) boundAt(prices []float64, listed int) bool {
	if slices.Max(prices) <= 0 {
		return !n.ended()
	}
	scale, _ := scaled(prices)
	value, area := scale[:listed:listed], float64(scale[listed])
	for _, kd := range n.kinds[listed:] {
		value = append(value, int64(area*n.share(kd.area)))
	}
	w := weights{value: value, tops: make([]int64, len(n.boards))}
	for i, s := range n.sets {
		worth := worthOf(s, value[:listed])
		for at, code := range s.codes[:s.ends[listed-1]] {
			if at%worthEvery == 0 && !n.spend(worthSteps*worthEvery) {
				return false
			}
			w.tops[i] = max(w.tops[i], worth(code)+int64(area*n.room(s, at))+1) // one for what is rounded
		}
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
		for at := s.shift[k]; at < s.shift[k+1]; at++ {
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
