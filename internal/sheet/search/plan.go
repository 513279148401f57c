// Package search plans how blanks come out of sheets, in edge-to-edge cuts of
// any number of stages.
//
// A single blank, or a mix without counts, is solved exactly by dynamic
// programming over raster points. An order with counts gets the fewest sheets (or
// the least cost) with a proof where that is possible in the time allowed, and
// otherwise the best plan found with the greatest proven lower bound.
//
// Files named bound_ prove bounds, files named way_ look for plans; the others
// are what they share. The package does not check its own plans: package verify
// does, with no code of this one.
package search

import (
	"context"
	"fmt"
	"slices"
	"time"

	"creasefit/internal/sheet"
)

// Plan answers an order. A faulty order gives fault.Faults; a context that
// ends first gives its error.
func Plan(ctx context.Context, o sheet.Order) (sheet.Answer, error) { return Follow(ctx, o, nil) }

// Follow is Plan that gives away what it has on the way: a better plan or a
// greater bound, now and then, of an order with counts.
func Follow(ctx context.Context, o sheet.Order, each func(sheet.Answer)) (sheet.Answer, error) {
	if err := o.Check(); err != nil {
		return sheet.Answer{}, err
	}
	bare := o.Effort == 0
	if bare {
		o.Effort = sheet.DefaultEffort
	}
	if len(o.Papers()) > 1 {
		return followPapers(ctx, o, each)
	}
	end := time.Now().Add(o.Effort)
	p := newProblem(o)
	if o.Counted() {
		return p.planCounts(ctx, end, each)
	}
	return p.planYield(ctx, !bare)
}

// planYield gets as much as possible out of one sheet: blanks of a single
// item, or area of several. Of several sizes of sheet it takes the one that is
// used best. How it is cut is made easy on the hands if that is asked for.
func (p *problem) planYield(ctx context.Context, easy bool) (sheet.Answer, error) {
	var best sheet.Answer
	for i := range p.boards {
		a, err := p.yield(ctx, &p.boards[i], easy)
		if err != nil {
			return sheet.Answer{}, err
		}
		if i == 0 || a.Used > best.Used {
			best = a
		}
	}
	return best, nil
}

// yield gets as much as possible out of one sheet of a board.
func (p *problem) yield(ctx context.Context, b *board, easy bool) (sheet.Answer, error) {
	e, worth := newEffort(ctx, time.Time{}), p.worth()
	most, best := int64(0), (*layout)(nil)
	for _, t := range p.exactOn(b) {
		v, ok := t.solve(e, worth)
		if !ok {
			return sheet.Answer{}, ctx.Err()
		}
		if v > most {
			most, best = v, t.trace()
		}
	}
	plan, eager := cutting{b, best, 1}, false
	if easy && best != nil {
		plan, eager = p.easiest(ctx, plan)
	}
	a := p.finish([]cutting{plan}, eager)
	a.Proven = !p.coarse
	describeYield(&a, &p.order, b.cost/p.order.Whole())
	return a, nil
}

// yieldEased is the work done to make the plan of one sheet easier, a fifth of a
// millisecond: ten times as much found nothing more.
const yieldEased = 100_000

// easiest is the easiest way found to cut the pieces of a sheet from one.
func (p *problem) easiest(ctx context.Context, c cutting) (plan cutting, eager bool) {
	q, made := *p, make([]int32, len(p.kinds))
	tally(c.layout, made)
	q.kinds, q.boards = slices.Clone(p.kinds), []board{*c.board}
	for k, n := range made {
		q.kinds[k].need = int(n)
	}
	e := newEffort(ctx, time.Time{})
	e.left = yieldEased
	hands := &easier{planner: q.newPlanner(e)}
	hands.planner.best, hands.planner.cost = []cutting{c}, c.board.cost
	hands.ease()
	return hands.best[0], hands.eager
}

// worth is what a blank of each kind counts for when there are no counts: one
// if all are of a kind, else its area in squares of their common measure.
func (p *problem) worth() []int64 {
	worth := make([]int64, len(p.kinds))
	if len(p.kinds) == 1 {
		worth[0] = 1
		return worth
	}
	side := int64(0)
	for _, it := range p.order.Items {
		side = gcd(gcd(side, it.Width.Nanometres()), it.Height.Nanometres())
	}
	side = max(side, 50_000) // a sheet of 100 m still fits an int64
	for k := range worth {
		it := p.order.Items[p.kinds[k].items[0]]
		worth[k] = (it.Width.Nanometres() / side) * (it.Height.Nanometres() / side)
	}
	return worth
}

// describeYield fills in what an order without counts proves.
func describeYield(a *sheet.Answer, o *sheet.Order, cost int64) {
	made := 0
	for _, n := range a.Made {
		made += n
	}
	a.LowerBound = cost
	if len(o.Items) == 1 {
		a.PerSheet = made
	}
	if a.Proven {
		a.Proof = fmt.Sprintf(o.Word("Dynamic programming over all edge-to-edge cuts: no sheet gives more than these %d."), made)
	} else {
		a.Proof = "The best found on a coarser grid; more may be possible."
	}
}
