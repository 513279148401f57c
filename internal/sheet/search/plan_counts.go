package search

import (
	"context"
	"errors"
	"time"

	"creasefit/internal/fault"
	"creasefit/internal/sheet"
)

// planCounts answers an order with counts by a time. The best plan there is
// leaves even when the caller's own time is up.
func (p *problem) planCounts(ctx context.Context, end time.Time) (sheet.Answer, error) {
	a, err := p.planWith(newEffort(ctx, end))
	if gone := ctx.Err(); gone != nil && (err != nil || !errors.Is(gone, context.DeadlineExceeded)) {
		return sheet.Answer{}, gone
	}
	return a, err
}

// planWith answers an order with counts with the effort there is.
func (p *problem) planWith(e *effort) (sheet.Answer, error) {
	pl := p.newPlanner(e)
	pl.within(1, 2, pl.run)
	hands := &easier{planner: pl}
	if !pl.done() {
		pl.within(1, 3, hands.ease)
		pl.within(9, 10, pl.run)
	}
	hands.ease()
	if pl.best == nil {
		return sheet.Answer{}, pl.outOfStock()
	}
	a := p.finish(hands.best, hands.eager)
	a.LowerBound, a.Proof = pl.lower, pl.why
	if p.coarse {
		a.LowerBound, a.Proof = p.trueAreaBound(), tooLarge
	}
	a.Proven = a.LowerBound >= pl.cost
	a.Settled = pl.done() && hands.settled()
	return a, nil
}

// outOfStock is the fault of an order that no plan was found for.
func (pl *planner) outOfStock() fault.Fault {
	f := fault.Fault{Code: fault.Impossible, Field: "sheet", Detail: "The sheets in stock do not give all blanks.", Hint: "more sheets in stock"}
	if !pl.done() {
		f.Detail, f.Hint = "No way was found in the time allowed to cut all blanks from the sheets in stock.", "more sheets in stock, or a greater effort_ms"
	}
	return f
}
