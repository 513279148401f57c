package search

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"creasefit/internal/fault"
	"creasefit/internal/sheet"
)

// planCounts answers an order with counts by a time. The best plan there is
// leaves even when the caller's own time is up.
func (p *problem) planCounts(ctx context.Context, end time.Time, each func(sheet.Answer)) (sheet.Answer, error) {
	a, err := p.planWith(newEffort(ctx, end), each)
	if gone := ctx.Err(); gone != nil && (err != nil || !errors.Is(gone, context.DeadlineExceeded)) {
		return sheet.Answer{}, gone
	}
	return a, err
}

// planWith answers an order with counts with the effort there is.
func (p *problem) planWith(e *effort, each func(sheet.Answer)) (sheet.Answer, error) {
	pl := p.newPlanner(e)
	hands := &easier{planner: pl}
	if each != nil {
		e.pulse = (&follower{hands: hands, each: each}).pulse
	}
	hands.count()
	hands.ease()
	if pl.best == nil {
		return sheet.Answer{}, pl.outOfStock()
	}
	return hands.answer(), nil
}

// count looks for the least cost, and now and then for easier plans where that is
// not proven by half of the effort.
func (e *easier) count() {
	e.within(1, 2, e.run)
	if e.coarse {
		e.within(1, 4, e.boundExactly)
	}
	if !e.done() {
		e.within(1, 3, e.ease)
		e.within(9, 10, e.run)
	}
}

// answer is the easiest of the cheapest plans so far.
func (e *easier) answer() sheet.Answer {
	plan, eager := e.best, e.eager
	if plan == nil || e.cost > e.planner.cost { // a cheaper one that nobody has made easier
		plan, eager = e.planner.best, false
	}
	a := e.finish(plan, eager)
	a.LowerBound, a.Proof = e.lower, e.why
	if e.coarse {
		a.LowerBound, a.Proof = e.trueAreaBound(), tooLarge
		if e.exactly > a.LowerBound {
			a.LowerBound, a.Proof = e.exactly, tooLargeThough
		}
	}
	a.LowerBound /= e.order.Whole()
	a.Proven = a.LowerBound >= costOf(plan)/e.order.Whole()
	a.Settled = e.done() && e.settled()
	return a
}

// tooLargeThough is what the bound of a roomier order says.
const tooLargeThough = "Even with blanks a little smaller and sheets a little larger, fewer sheets are not worth all blanks."

// follower gives away what is better than what it gave before.
type follower struct {
	hands *easier
	each  func(sheet.Answer)
	next  time.Time
	cost  int64
	lower int64
	found int64
}

// followEvery is how much time passes at least between two plans that are given
// away: writing one down takes time off the search.
const followEvery = 50 * time.Millisecond

// pulse gives away what there is, if it is time and it is better.
func (f *follower) pulse(now time.Time) {
	h := f.hands
	same := h.planner.cost == f.cost && h.lower == f.lower && h.found == f.found
	if now.Before(f.next) || same || h.planner.best == nil {
		return
	}
	f.cost, f.lower, f.found = h.planner.cost, h.lower, h.found
	f.each(h.answer())
	f.next = time.Now().Add(followEvery)
}

// outOfStock is the fault of an order that no plan was found for. Its hint is what would
// do beside the stock, if a plan with more sheets is found.
func (pl *planner) outOfStock() fault.Fault {
	f := fault.Fault{Code: fault.NoPlan, Field: "sheet", Detail: "The sheets in stock do not give all blanks.", Hint: "more sheets in stock"}
	if lacking := pl.lacking(); lacking != "" {
		f.Hint = lacking
	}
	if !pl.done() {
		f.Detail = "No way was found in the time allowed to cut all blanks from the sheets in stock."
		f.Hint += ", or a greater effort_ms"
	}
	return f
}

// lackingSteps is the work to find out what is lacking, some ten milliseconds.
const lackingSteps = 2_000_000

// lacking says how many sheets of which sizes would do beside those in stock; "" if that
// is not found. Offcuts do not get more.
func (pl *planner) lacking() string {
	p, e := *pl.problem, newEffort(pl.ctx, time.Time{})
	p.boards, e.left = slices.Clone(p.boards), lackingSteps
	for i := range p.boards {
		if !p.order.Sheets[p.boards[i].stock].Offcut {
			p.boards[i].available = 0
		}
	}
	free := p.newPlanner(e)
	free.tryGreedy(20, 8)
	more := make([]int, len(p.order.Sheets))
	for _, c := range free.best {
		more[c.board.stock] += c.times
	}
	var words []string
	for i, s := range p.order.Sheets {
		if n := more[i] - s.Available; n > 0 && s.Available > 0 {
			unit := p.order.Ruler.Unit()
			words = append(words, fmt.Sprintf("%d more of %s x %s", n, s.Width.Plain(unit), s.Height.Plain(unit)))
		}
	}
	if words == nil {
		return ""
	}
	return strings.Join(words, " and ") + " would do"
}
