package search

import (
	"math"
	"slices"
)

// generating prices patterns by column generation: the linear program over the
// patterns known so far prices the kinds, and the most valuable sheet at those
// prices is a new pattern, until none is worth more than it costs. Each round
// proves a bound (A. A. Farley, Operations Research 38 (1990) 922-923). The
// fractional cover is rounded to whole sheets by a search among the patterns and by
// diving.
func (pl *planner) generating() way {
	var g *generator
	many := pl.pieces() >= looseCopies*len(pl.kinds)
	return func(int) (again bool) {
		if g == nil {
			g = pl.newGenerator(nil)
			g.loose = pl.order.Stages == 0 && many
		} else if g.hoard != nil && !many { // more sheets since
			g.enterDear(g.hoard.patterns)
		}
		pl.lend(pl.left/4*3, g.run)
		if !many && !pl.done() { // diving does where there are many copies
			pl.tryCover(g.patterns, pl.cost-1)
		}
		for whole := pl.left; !pl.done() && !pl.ended() && pl.left >= leastDive; {
			pl.lend(whole/4, func() { pl.offer(g.dive()) })
		}
		return true
	}
}

// tryCover looks for a plan of a cost among some sheets and keeps it.
func (pl *planner) tryCover(patterns []pattern, target int64) (found bool) {
	c := newCover(pl.effort, patterns, pl.guides(), pl.needs(), coverNodes)
	if found, _ = c.search(target); found {
		pl.accept(c.chosen)
	}
	return found
}

// coverNodes bounds the search of the patterns that were priced.
const coverNodes = 20_000

// looseCopies is from how many pieces of a kind on, on average, patterns first may
// take more of a kind than are wanted: such patterns are priced in a moment, and where
// there are many copies they prove nearly as much.
const looseCopies = 8

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
	quick    [][]pricer // of every board
	exact    [][]pricer
	rough    bool  // without the exact pricers
	loose    bool  // patterns may take more pieces than are wanted
	due      int64 // effort spent when the exact pricers are asked again, whatever the quick ones find
	priced   bool  // no pattern is found that is worth more than it costs
}

// newGenerator begins with some patterns, those of the plans known, those that
// reworking has met and, for each kind, one of that kind alone.
func (pl *planner) newGenerator(known []pattern) *generator {
	g := &generator{planner: pl, greedy: pl.newGreedy(pl.effort)}
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
			g.quick = append(g.quick, rowsOn(&pl.boards[i], false, true))
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
		hurried := (g.loose || g.coarse && !g.rough) && g.spent >= g.due
		if !hurried && p.quickly() {
			continue
		}
		if g.rough {
			return
		}
		begun := g.spent
		tops, ok := p.surely()
		if !ok || g.ended() {
			return
		}
		g.due = g.spent + dueAfter*(g.spent-begun)
		if !p.better && !g.loose && !hurried {
			g.priced = true
		}
		if w := (weights{value: p.value, tops: tops}); g.boundOf(&w) > g.lower || g.priced {
			g.prove(w, "Priced by a linear program, the order is worth more than fewer sheets can give.")
		}
		g.loose = g.loose && (p.better || hurried)
	}
}

// dueAfter is how many times as long as the exact pricers took the others may go on:
// what the exact ones find proves a bound, even when there are better patterns still.
const dueAfter = 6

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
