package search

import (
	"math"
	"math/rand/v2"
	"slices"
)

// greedy builds whole plans, one sheet after another, each the best of some
// random fills. The value of a kind grows where plans waste paper on it
// (sequential value correction: G. Belov, G. Scheithauer, G. Mukhacheva, E.
// Mukhacheva, J. Opl. Res. Soc. 59 (2008) 823-832).
type greedy struct {
	*problem
	*effort
	value  []float64
	random *rand.Rand
	strips bool // fills in strips, for few settings
}

// newGreedy begins with every kind worth its area.
func (p *problem) newGreedy(e *effort) *greedy {
	g := &greedy{problem: p, effort: e, random: rand.New(rand.NewPCG(1, 2))}
	for _, k := range p.kinds {
		g.value = append(g.value, math.Pow(float64(k.area), 1.02))
	}
	return g
}

// run returns the patterns of one plan and how often each is used, or nil if
// the stock does not suffice. It gives up above the cost that is to be beaten, and
// where nothing more may be done if there is one.
func (g *greedy) run(fills int, noise float64, below int64) []use {
	left := g.needs()
	stock := make(map[int]int)
	var plan []use
	for cost := int64(0); some(left); {
		pt, ok := g.sheet(left, stock, fills, noise)
		if !ok || below < math.MaxInt64 && g.ended() {
			return nil
		}
		n := pt.repeats(left)
		if pt.board.available > 0 {
			n = min(n, pt.board.available-stock[pt.board.stock])
		}
		stock[pt.board.stock] += n
		if cost += int64(n) * pt.board.cost; cost >= below {
			return nil
		}
		for k, c := range pt.counts {
			left[k] -= int32(n) * c
		}
		plan = append(plan, use{pt, n})
		g.correct(pt)
	}
	return plan
}

// use is a pattern and how many sheets are cut by it.
type use struct {
	pattern pattern
	times   int
}

// fillSteps is what a fill costs beside the faces that it looks at.
const fillSteps = 400

// sheet returns the best of some random fills of all boards in stock.
func (g *greedy) sheet(left []int32, stock map[int]int, fills int, noise float64) (pattern, bool) {
	var best pattern
	most := 0.0
	for i := range g.boards {
		b := &g.boards[i]
		if b.available > 0 && stock[b.stock] >= b.available {
			continue
		}
		f := &filler{board: b, left: make([]int32, len(left)), score: make([]float64, len(b.faces)), random: g.random, stages: g.order.Stages}
		for range fills {
			copy(f.left, left)
			f.shake(g.valued(), noise)
			l := f.whole(g.strips)
			sum := 0.0
			for k := range left {
				sum += float64(left[k]-f.left[k]) * g.value[k]
			}
			if sum /= float64(b.cost); sum > most {
				most = sum
				best = drawn(b, l, len(left))
			}
		}
		g.spend(4*f.looked + fillSteps*fills)
	}
	return best, most > 0
}

// urgent is how much more a kind counts that has priority, every other time.
const urgent = 8

// valued is what the kinds are worth, those with priority more, now and then.
func (g *greedy) valued() []float64 {
	if !g.strips || !g.order.Prioritized() || g.random.IntN(2) == 0 {
		return g.value
	}
	value := slices.Clone(g.value)
	for k := range value {
		if g.order.Items[g.kinds[k].items[0]].Priority > 0 {
			value[k] *= urgent
		}
	}
	return value
}

// correct moves the values of a pattern's kinds towards what the paper they
// took cost.
func (g *greedy) correct(pt pattern) {
	used := 0.0
	for k, n := range pt.counts {
		used += float64(n) * float64(g.kinds[k].area)
	}
	waste := float64(pt.board.w) * float64(pt.board.h) / used
	for k, n := range pt.counts {
		if n > 0 {
			want := math.Pow(float64(g.kinds[k].area), 1.02) * waste
			g.value[k] = 0.8*g.value[k] + 0.2*want
		}
	}
}

// needs returns the pieces wanted of each kind.
func (p *problem) needs() []int32 {
	left := make([]int32, len(p.kinds))
	for k := range p.kinds {
		left[k] = int32(p.kinds[k].need)
	}
	return left
}

// some reports whether any piece is left.
func some(left []int32) bool {
	return slices.ContainsFunc(left, func(n int32) bool { return n > 0 })
}

// repeats is how often a pattern can be used in full.
func (pt *pattern) repeats(left []int32) int {
	n := math.MaxInt32
	for k, c := range pt.counts {
		if c > 0 {
			n = min(n, int(left[k]/c))
		}
	}
	return n
}
