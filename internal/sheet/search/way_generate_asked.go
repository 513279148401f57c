package search

import (
	"math"
	"slices"
)

// asked is one round: prices, and whether a pattern was found that is worth more
// than it costs.
type asked struct {
	*generator
	prices []float64
	value  []int64 // the prices in whole numbers
	one    float64 // what a unit of cost is in them
	better bool
}

// ask takes the prices of the program.
func (g *generator) ask() *asked {
	a := &asked{generator: g, prices: g.duals.prices()}
	a.value, a.one = scaled(a.prices[:len(g.kinds)])
	return a
}

// scaled rounds prices down to integers and returns what one unit of cost
// became.
func scaled(prices []float64) (value []int64, one float64) {
	most := slices.Max(prices)
	value = make([]int64, len(prices))
	for k, v := range prices {
		value[k] = int64(v / most * priceScale)
	}
	return value, priceScale / most
}

// dear reports whether a sheet of a value is worth more than it costs.
func (a *asked) dear(value int64, b *board) bool {
	cost := float64(b.cost)
	for i, limited := range a.limited {
		if limited.stock == b.stock {
			cost += a.prices[len(a.kinds)+i]
		}
	}
	return float64(value) > cost*a.one*(1+1e-6)
}

// offer enters a layout if it is worth more than it costs, less the pieces that
// are not wanted unless prices are loose, and reports whether it is.
func (a *asked) offer(b *board, l *layout) bool {
	pt := drawn(b, l, len(a.kinds))
	for k, most := range a.caps(b) {
		if !a.loose {
			pt.counts[k] = min(pt.counts[k], int32(most))
		}
	}
	if !a.dear(pt.worth(a.value), b) {
		return false
	}
	a.better = true
	a.enter(drawn(b, only(l, pt.counts), len(a.kinds)))
	return true
}

// quickly enters what is found without the dear pricers, and reports whether
// that was anything.
func (a *asked) quickly() bool {
	for n := 0; n < pricedRounds && !a.better && !a.ended(); n++ {
		for i := range a.boards {
			a.fill(&a.boards[i])
		}
	}
	for i, list := range a.quick {
		for at := 0; at < len(list) && !a.better && !a.ended(); at++ {
			a.cheapen(&a.boards[i], list[at])
		}
	}
	return a.better
}

// cheapen enters what a pricer finds; where that takes more pieces of a kind than
// are wanted, they are made cheaper, and dearer again where fewer are taken.
func (a *asked) cheapen(b *board, t pricer) {
	value, caps, counts := slices.Clone(a.value), a.caps(b), make([]int32, len(a.value))
	for range cheaperTimes {
		if v, ok := t.solve(a.effort, value); !ok || v == 0 {
			return
		}
		l := t.trace()
		if a.offer(b, l) {
			return
		}
		clear(counts)
		tally(l, counts)
		fits := true
		for k, n := range counts {
			switch {
			case int(n) > caps[k]:
				value[k], fits = value[k]/8*7, false
			case int(n) < caps[k]:
				value[k] = min(a.value[k], value[k]/16*17)
			}
		}
		if fits {
			return
		}
	}
}

// cheaperTimes is how often pieces are made cheaper.
const cheaperTimes = 48

// pricedFills is how many random fills of a board are tried at once, and
// pricedRounds how often they are at some prices until one is worth its sheet.
const (
	pricedFills  = 64
	pricedRounds = 4
)

// fill enters the random fills of a board that are worth more than it costs and
// more than those before.
func (a *asked) fill(b *board) {
	random := a.greedy.random
	f := &filler{board: b, left: make([]int32, len(a.kinds)), score: make([]float64, len(b.faces)), random: random, stages: a.order.Stages}
	needs, value := a.needs(), make([]float64, len(a.kinds))
	most := int64(0)
	for n := range pricedFills {
		copy(f.left, needs)
		dense := 2*random.Float64() - 0.5
		for k := range value {
			value[k] = a.prices[k] * math.Pow(a.prices[k]/float64(a.kinds[k].area), dense)
		}
		f.shake(value, 0.3)
		l := f.whole(n%2 == 0)
		worth := int64(0)
		for k, left := range f.left {
			worth += int64(needs[k]-left) * a.value[k]
		}
		if worth > most && a.dear(worth, b) {
			most = worth
			a.offer(b, l)
		}
	}
	a.spend(4*f.looked + fillSteps*pricedFills)
}

// surely enters what the exact pricers find. It returns the greatest value of
// every board.
func (a *asked) surely() (tops []int64, ok bool) {
	for i := range a.boards {
		if len(a.exact) <= i {
			a.exact = append(a.exact, a.exactOn(&a.boards[i]))
		}
	}
	tops = make([]int64, len(a.boards))
	for i := range a.boards {
		for _, t := range a.exact[i] {
			v, ok := t.solve(a.effort, a.value)
			if !ok {
				return nil, false
			}
			if v > 0 {
				a.offer(&a.boards[i], t.trace())
			}
			tops[i] = max(tops[i], v)
		}
	}
	return tops, true
}
