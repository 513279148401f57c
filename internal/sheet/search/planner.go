package search

import (
	"context"
	"math"
	"time"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// planner looks for the least cost of an order with counts.
type planner struct {
	*problem
	ctx     context.Context // ends with the caller's or when the time is up
	weights []weights       // proven bounds
	lower   int64           // the greatest of them
	why     string          // what proves it
	best    []cutting
	cost    int64 // of best
	greedy  *greedy
	tables  []*table
	hoard   *hoard
	rest    bool   // plans what a rounded plan leaves: no further rounding
	sums    []bool // that sheets may cost together, in coins
	coin    int64
}

// planCounts answers an order with counts.
func (p *problem) planCounts(ctx context.Context, deadline time.Time) (sheet.Answer, error) {
	limited, cancel := context.WithDeadline(ctx, deadline)
	defer cancel()
	pl := p.newPlanner(limited)
	pl.run()
	if err := ctx.Err(); err != nil {
		return sheet.Answer{}, err
	}
	if pl.best == nil {
		return sheet.Answer{}, fault.Fault{Code: fault.Impossible, Field: "sheet", Detail: "The sheets in stock do not give all blanks.", Hint: "more sheets in stock"}
	}
	a := p.finish(pl.best)
	a.LowerBound, a.Proof = pl.lower, pl.why
	if p.coarse {
		a.LowerBound, a.Proof = p.trueAreaBound(), tooLarge
	}
	a.Proven = a.LowerBound >= pl.cost
	return a, nil
}

// tooLarge is what the bound by area says.
const tooLarge = "The blanks together are too large for fewer sheets."

// trueAreaBound is the bound by area at the exact sizes, for orders that are
// planned on a coarser grid: what is proven there does not hold for them.
func (p *problem) trueAreaBound() int64 {
	kerf, sum, most := p.order.Kerf, 0.0, 0.0
	area := func(w, h measure.Length) float64 { return w.Add(kerf).Millimetres() * h.Add(kerf).Millimetres() }
	for _, it := range p.order.Items {
		sum += float64(it.Count) * area(it.Width, it.Height)
	}
	for s := range p.order.Sheets {
		most = max(most, area(p.order.Usable(s))/float64(p.order.Cost(s)))
	}
	return int64(math.Ceil(sum/most - 1e-6))
}

// newPlanner begins without a plan, one above what any plan can cost: a sheet
// for every piece, or all the sheets in stock.
func (p *problem) newPlanner(ctx context.Context) *planner {
	pieces, stock := int64(p.pieces()), int64(0)
	for _, b := range p.boards {
		if b.available == 0 {
			stock = math.MaxInt64 - 1
			break
		}
		stock += int64(b.available) * b.cost
	}
	return &planner{problem: p, ctx: ctx, cost: min(pieces*p.dearest(), stock) + 1, greedy: p.newGreedy()}
}

// done reports whether the best plan is proven best.
func (pl *planner) done() bool { return pl.cost <= pl.lower }

// run tries ever harder ways until the best plan is proven or time is up.
func (pl *planner) run() {
	pl.boundByArea()
	pl.boundByExtents()
	pl.tryGreedy(8, 4)
	if !pl.done() {
		pl.within(2, pl.fitOneSheet)()
	}
	for _, next := range pl.ways() {
		if pl.done() || pl.ctx.Err() != nil {
			return
		}
		next()
	}
}

// ways lists the further ways, cheap ones first: bounds are looked into before
// long searches, which most often are for plans that there are none of; an order
// of many pieces is rounded before it is searched.
func (pl *planner) ways() []func() {
	quick, more, most := pl.enumeration(quickSplits), pl.enumeration(moreSplits), pl.enumeration(mostSplits)
	brief, long := pl.joining(50*time.Millisecond), pl.joining(sheet.MostEffort)
	peel := pl.peeling(1200 * time.Millisecond)
	rework, further, last := pl.reworking(3_000), pl.reworking(60_000), pl.reworking(math.MaxInt)
	switch {
	case pl.rest:
		return []func(){rework, pl.boundByRaster, quick, brief, more, long}
	case pl.pieces() > manyPieces:
		return []func(){pl.boundByRaster, pl.generate, rework, quick, brief, further, peel, more, long}
	case pl.scarce():
		return []func(){rework, pl.boundByRaster, pl.within(3, more), pl.within(3, pl.generate), brief, peel, pl.generate, most, further, peel, long}
	case pl.pieces() <= fewPieces:
		return []func(){rework, pl.boundByRaster, pl.within(2, more), pl.within(3, pl.generate), brief, further, most, peel, pl.generate, last}
	default:
		return []func(){rework, pl.boundByRaster, quick, pl.within(2, pl.generate), brief, further, more, peel, pl.generate, most, last}
	}
}

// within is a way that takes no more than a part of the time that is left.
func (pl *planner) within(part time.Duration, way func()) func() {
	return func() {
		end, _ := pl.ctx.Deadline()
		ctx, cancel := context.WithTimeout(pl.ctx, time.Until(end)/part)
		defer cancel()
		whole := pl.ctx
		pl.ctx = ctx
		way()
		pl.ctx = whole
	}
}

// Of up to fewPieces all sets that fit a sheet may well be found in a moment;
// above manyPieces rounding a fractional plan loses little.
const (
	fewPieces  = 25
	manyPieces = 100
)

// prove takes a bound in, with what proves it.
func (pl *planner) prove(w weights, why string) {
	pl.weights = append(pl.weights, w)
	pl.raise(w.bound(pl.needs()), why)
}

// raise takes a lower bound in, with what proves it: no plan costs a sum that
// no sheets come to.
func (pl *planner) raise(bound int64, why string) {
	if bound = pl.payable(bound); bound > pl.lower {
		pl.lower, pl.why = bound, why
	}
}

// boundByArea proves that the sheets are at least as large as the blanks.
func (pl *planner) boundByArea() {
	w := weights{value: make([]int64, len(pl.kinds))}
	for k := range pl.kinds {
		w.value[k] = pl.kinds[k].area
	}
	for _, b := range pl.boards {
		area := int64(b.w) * int64(b.h)
		w.top = max(w.top, (area+b.cost-1)/b.cost)
	}
	pl.prove(w, tooLarge)
}

// boundByRaster proves the same with the greatest area that edge-to-edge cuts
// can use of a sheet.
func (pl *planner) boundByRaster() {
	value := pl.weights[0].value
	if top, ok := pl.top(value); ok {
		pl.prove(weights{value, top}, "Edge-to-edge cuts cannot use enough of fewer sheets.")
	}
}

// top is the greatest value of one sheet for each unit of its cost, with
// unlimited copies.
func (pl *planner) top(value []int64) (int64, bool) {
	top := int64(1)
	for _, t := range pl.allTables() {
		v, err := t.solve(pl.ctx, value)
		if err != nil {
			return 0, false
		}
		top = max(top, ceilDiv(v, t.board.cost))
	}
	return top, true
}

// allTables are the tables of all boards, made once.
func (pl *planner) allTables() []*table {
	for i := len(pl.tables); i < len(pl.boards); i++ {
		pl.tables = append(pl.tables, newTable(&pl.boards[i]))
	}
	return pl.tables
}

// tryGreedy builds some plans and keeps the cheapest.
func (pl *planner) tryGreedy(rounds, fills int) {
	for range rounds {
		if pl.done() || pl.ctx.Err() != nil && pl.best != nil {
			return
		}
		pl.offer(pl.greedy.run(fills, 0.3, pl.cost))
	}
}

// offer keeps a plan of patterns if it is cheaper than the best.
func (pl *planner) offer(plan []use) {
	cost := int64(0)
	var cuttings []cutting
	for _, u := range plan {
		cost += int64(u.times) * u.pattern.board.cost
		cuttings = append(cuttings, cutting{u.pattern.board, u.pattern.draw(), u.times})
	}
	if plan != nil && cost < pl.cost {
		pl.best, pl.cost = cuttings, cost
	}
}

// scarce reports whether a plan at the lower bound has hardly any waste: then
// edges meet exactly, and joining them finds what reworking does not.
func (pl *planner) scarce() bool {
	b := &pl.boards[0]
	return 100*pl.affordable(pl.lower, b) < int64(b.w)*int64(b.h)*pl.lower/b.cost
}
