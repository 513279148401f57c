package search

import (
	"math"
	"slices"
)

// generating prices patterns by column generation: the linear program over the
// patterns known so far prices the kinds, and the most valuable sheet at those
// prices is a new pattern, until none is worth more than it costs. Each round
// proves a bound (A. A. Farley, Operations Research 38 (1990) 922-923). The
// whole part of the fractional cover is cut, and what it leaves is planned as
// an order of its own.
func (pl *planner) generating() way {
	var g *generator
	return func(int) (again bool) {
		if g == nil {
			g = pl.newGenerator()
		}
		pl.lend(pl.left/2, g.run)
		if !pl.done() {
			pl.offer(g.rounded())
		}
		return true
	}
}

// generator is a column generation.
type generator struct {
	*planner
	duals    *duals
	patterns []pattern // one for each row of the program
	priced   bool      // no pattern is worth more than it costs
}

// newGenerator begins with the patterns of the plans known, those that reworking
// has met and, for each kind, one of that kind alone.
func (pl *planner) newGenerator() *generator {
	g := &generator{planner: pl, duals: newDuals(floats(pl.needs()))}
	for k := range pl.kinds {
		value := make([]int64, len(pl.kinds))
		value[k] = 1
		g.price(value, 0)
	}
	for _, c := range pl.best {
		g.enter(drawn(c.board, c.layout, len(pl.kinds)))
	}
	g.enterHoarded()
	return g
}

// enterHoarded adds the sheets that reworking has met, as far as they change
// the prices: far sooner than they would be found again.
func (g *generator) enterHoarded() {
	if g.hoard == nil {
		return
	}
	for g.duals.optimize(g.effort, 5_000) && g.spend(len(g.hoard.patterns)*len(g.kinds)) {
		at := overpriced(g.hoard.patterns, g.duals.prices())
		if at < 0 {
			return
		}
		g.enter(g.hoard.patterns[at])
	}
}

// enter adds a pattern to the program.
func (g *generator) enter(pt pattern) {
	g.patterns = append(g.patterns, pt)
	g.duals.add(floats(pt.counts), float64(pt.board.cost))
}

// price adds the most valuable pattern of every board, or one that is worth more
// than its sheet at so much for a unit of cost. It returns the greatest value
// for each unit of cost.
func (g *generator) price(value []int64, one float64) (top int64, ok bool) {
	top = 1
	for _, t := range g.allTables() {
		v, ok := t.solve(g.effort, value)
		if !ok {
			return 0, false
		}
		l := t.trace()
		if v > 0 && tooMany(l, g.caps(t.board)) {
			v, l = g.limited(t, v, l, one)
		}
		top = max(top, ceilDiv(v, t.board.cost))
		if v > 0 {
			g.enter(drawn(t.board, l, len(g.kinds)))
		}
	}
	return top, true
}

// tooMany reports whether a layout takes more pieces of a kind than are wanted.
func tooMany(l *layout, caps []int) bool {
	counts := make([]int32, len(caps))
	tally(l, counts)
	for k, n := range counts {
		if int(n) > caps[k] {
			return true
		}
	}
	return false
}

// quickTiles and limitedTiles bound the search for the most valuable sheet that
// takes no more pieces than are wanted.
const (
	quickTiles   = 1_500
	limitedTiles = 30_000
)

// limited looks for the most valuable sheet that takes no more pieces than are
// wanted, or quickly for one that is worth more than it costs. If the search is
// cut short, what it found goes with the value of unlimited copies, which is a
// bound all the same.
func (g *generator) limited(t *table, value int64, l *layout, one float64) (int64, *layout) {
	caps := g.caps(t.board)
	pack, ok := newPacking(caps)
	if !ok {
		return value, l
	}
	for _, most := range [...]int{quickTiles, limitedTiles} {
		b := newBounded(g.effort, t, pack, caps, most)
		v, sure := b.run()
		if b.best.layout != nil {
			l = b.best.layout
		}
		if sure {
			return v, l
		}
		if float64(b.best.value) > 1.0001*one*float64(t.board.cost) {
			break
		}
	}
	return value, l
}

// run alternates between the program and the tables.
func (g *generator) run() {
	for !g.priced && !g.done() && !g.ended() {
		if !g.duals.optimize(g.effort, 5_000) {
			return
		}
		prices := g.duals.prices()
		value, scale := scaled(prices)
		before := g.lower
		top, ok := g.price(value, scale)
		if !ok {
			return
		}
		w := weights{value, top}
		if w.bound(g.needs()) > before || float64(top) <= scale*(1+1e-6) {
			g.prove(w, "Priced by a linear program, the order is worth more than fewer sheets can give.")
		}
		g.priced = float64(top) <= scale*(1+1e-6)
	}
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

// rounded cuts the whole part of the fractional cover and plans the rest.
func (g *generator) rounded() []use {
	g.duals.optimize(g.effort, 5_000)
	left := g.needs()
	stock := map[int]int{}
	var plan []use
	for i, x := range g.duals.uses() {
		pt := g.patterns[i]
		n := min(int(math.Floor(x+1e-6)), pt.repeats(left))
		if pt.board.available > 0 {
			n = min(n, pt.board.available-stock[pt.board.stock])
		}
		if n <= 0 {
			continue
		}
		stock[pt.board.stock] += n
		for k, c := range pt.counts {
			left[k] -= int32(n) * c
		}
		plan = append(plan, use{pt, n})
	}
	rest, ok := g.rest(left, stock)
	if !ok {
		return nil
	}
	return append(plan, rest...)
}

// rest plans what is left as an order of its own, in half of the time left.
func (g *generator) rest(left []int32, stock map[int]int) ([]use, bool) {
	if !some(left) {
		return nil, true
	}
	p := *g.problem
	p.kinds = slices.Clone(p.kinds)
	for k := range p.kinds {
		p.kinds[k].need = int(left[k])
	}
	p.boards = nil
	for _, b := range g.boards {
		if b.available > 0 {
			if b.available -= stock[b.stock]; b.available == 0 {
				continue
			}
		}
		p.boards = append(p.boards, b)
	}
	sub := p.newPlanner(g.effort)
	g.planner.rest(sub)
	var plan []use
	for _, c := range sub.best {
		plan = append(plan, use{drawn(c.board, c.layout, len(p.kinds)), c.times})
	}
	return plan, sub.best != nil
}
