package search

import (
	"math"
	"slices"
)

// generating prices patterns by column generation: the linear program over the
// patterns known so far prices the kinds, and the most valuable sheet at those
// prices is a new pattern, until none is worth more than it costs. Each round
// proves a bound (A. A. Farley, Operations Research 38 (1990) 922-923). The
// fractional cover is rounded to whole sheets by diving.
func (pl *planner) generating() way {
	var g *generator
	return func(int) (again bool) {
		if g == nil {
			g = pl.newGenerator(nil)
		}
		pl.lend(pl.left/4*3, g.run)
		for whole := pl.left; !pl.done() && !pl.ended() && pl.left >= leastDive; {
			pl.lend(whole/4, func() { pl.offer(g.dive()) })
		}
		return true
	}
}

// leastDive is the effort below which no other dive is worth beginning.
const leastDive = 1 << 18

// generator is a column generation. The program has a price for every kind and,
// behind them, one for every board of which there are only so many.
type generator struct {
	*planner
	greedy   *greedy // of its own, so that other ways go on as without it
	duals    *duals
	goal     []float64 // of the program
	restarts int
	patterns []pattern // one for each row of the program
	limited  []*board
	quick    []pricer
	exact    []pricer
	rough    bool // without the exact pricers
	tiles    int  // that a limited search may try
	priced   bool // no pattern is found that is worth more than it costs
}

// newGenerator begins with some patterns, those of the plans known, those that
// reworking has met and, for each kind, one of that kind alone.
func (pl *planner) newGenerator(known []pattern) *generator {
	g := &generator{planner: pl, greedy: pl.newGreedy(pl.effort), tiles: leastTiles}
	g.goal = floats(pl.needs())
	for i := range pl.boards {
		if b := &pl.boards[i]; b.available > 0 {
			g.limited = append(g.limited, b)
			g.goal = append(g.goal, -float64(b.available))
		}
	}
	g.duals = newDuals(g.goal)
	for i := range pl.boards {
		if pl.order.Stages == 0 {
			g.quick = append(g.quick, rowsOn(&pl.boards[i], false, true)...)
		}
	}
	g.enterSingly()
	for _, c := range pl.best {
		g.enter(drawn(c.board, c.layout, len(pl.kinds)))
	}
	if known == nil {
		known = g.drafted()
	}
	if g.hoard != nil {
		known = append(known, g.hoard.patterns...)
	}
	g.enterDear(known)
	return g
}

// draftedPlans is how many random plans give the first patterns.
const draftedPlans = 24

// drafted lists the sheets of some random plans.
func (g *generator) drafted() []pattern {
	var list []pattern
	for n := 0; n < draftedPlans && !g.ended(); n++ {
		for _, u := range g.greedy.run(1+n%4, 0.5, math.MaxInt64) {
			list = append(list, u.pattern)
		}
	}
	return list
}

// enterSingly adds a sheet of every kind alone, by which every kind has a price.
func (g *generator) enterSingly() {
	left := make([]int32, len(g.kinds))
	for k := range g.kinds {
		if g.kinds[k].need == 0 {
			continue
		}
		clear(left)
		left[k] = int32(g.kinds[k].need)
		if pt, ok := g.greedy.sheet(left, nil, 1, 0); ok {
			g.enter(pt)
		}
	}
}

// enterDear adds known patterns as far as they change the prices: far sooner than
// they would be found again.
func (g *generator) enterDear(known []pattern) {
	for g.duals.optimize(g.effort, 5_000) && g.spend(len(known)*len(g.kinds)) {
		at := overpriced(known, g.duals.prices())
		if at < 0 {
			return
		}
		g.enter(known[at])
	}
}

// enter adds a pattern to the program.
func (g *generator) enter(pt pattern) {
	g.patterns = append(g.patterns, pt)
	row := append(floats(pt.counts), make([]float64, len(g.limited))...)
	if at := slices.IndexFunc(g.limited, func(b *board) bool { return b.stock == pt.board.stock }); at >= 0 {
		row[len(pt.counts)+at] = -1
	}
	g.duals.add(row, float64(pt.board.cost))
}

// run alternates between the program and the pricers, the quick ones first.
func (g *generator) run() {
	for !g.priced && !g.done() && !g.ended() {
		if !g.duals.optimize(g.effort, 5_000) {
			if !g.ended() && !g.restart() {
				return
			}
			continue
		}
		p := g.ask()
		if p.quickly() {
			continue
		}
		if g.rough {
			return
		}
		tops, ok := p.surely()
		if !ok || g.ended() {
			return
		}
		if !p.better {
			g.priced, g.tiles = g.tiles >= mostTiles, 4*g.tiles
		}
		if w := (weights{value: p.value, tops: tops}); g.boundOf(&w) > g.lower || g.priced {
			g.prove(w, "Priced by a linear program, the order is worth more than fewer sheets can give.")
		}
	}
}

// restart makes the program anew from its patterns, since rounding may have spoilt
// it after thousands of steps; it reports whether that is any better.
func (g *generator) restart() bool {
	known := g.patterns
	g.duals, g.patterns = newDuals(g.goal), nil
	g.enterSingly()
	g.enterDear(known)
	g.restarts++
	return g.restarts < mostRestarts
}

// mostRestarts is how often a program is made anew.
const mostRestarts = 50

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
// are not wanted, and reports whether it is.
func (a *asked) offer(b *board, l *layout) bool {
	pt := drawn(b, l, len(a.kinds))
	caps := a.caps(b)
	for k, n := range pt.counts {
		pt.counts[k] = min(n, int32(caps[k]))
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
	for at := 0; at < len(a.quick) && !a.better && !a.ended(); at++ {
		a.cheapen(a.quick[at])
	}
	return a.better
}

// cheapen enters what a pricer finds; where that takes more pieces of a kind than
// are wanted, they are made cheaper, and dearer again where fewer are taken.
func (a *asked) cheapen(t pricer) {
	value, caps, counts := slices.Clone(a.value), a.caps(t.on()), make([]int32, len(a.value))
	for range cheaperTimes {
		if v, ok := t.solve(a.effort, value); !ok || v == 0 {
			return
		}
		l := t.trace()
		if a.offer(t.on(), l) {
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
	a.prepare()
	tops = make([]int64, len(a.boards))
	for _, t := range a.exact {
		b := t.on()
		v, ok := t.solve(a.effort, a.value)
		if !ok {
			return nil, false
		}
		l := t.trace()
		if table, any := t.(*table); any && v > 0 && tooMany(l, a.caps(b)) {
			v, l = a.limitedTo(table, v, l)
		}
		if v > 0 {
			a.offer(b, l)
		}
		at := a.place(b)
		tops[at] = max(tops[at], v)
	}
	return tops, true
}

// prepare makes the exact pricers, once.
func (g *generator) prepare() {
	if g.exact != nil {
		return
	}
	for i := range g.boards {
		g.exact = append(g.exact, g.exactOn(&g.boards[i])...)
	}
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

// leastTiles and mostTiles bound the search for the most valuable sheet that takes
// no more pieces than are wanted.
const (
	leastTiles = 1_500
	mostTiles  = 24_000
)

// limitedTo looks for the most valuable sheet that takes no more pieces than are
// wanted. If the search is cut short, what it found goes with a value that no such
// sheet exceeds.
func (a *asked) limitedTo(t *table, value int64, l *layout) (int64, *layout) {
	caps := a.caps(t.board)
	pack, ok := newPacking(caps)
	if !ok {
		return value, l
	}
	b := newBounded(a.effort, t, pack, caps, a.tiles)
	b.quickly(a.tiles)
	v, sure := value, false
	if !a.dear(b.best.value, t.board) {
		v, sure = b.run()
	}
	if b.best.layout != nil {
		l = b.best.layout
	}
	if !sure {
		v = min(v, value)
	}
	return v, l
}
