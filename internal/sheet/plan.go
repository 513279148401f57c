package sheet

import (
	"context"
	"fmt"
	"log/slog"
	"time"
)

// Unsound is a plan that did not stand verification: a fault of the planner.
type Unsound struct {
	Order Order
	Wrong error // everything that is wrong with the plan
}

// Error says what is wrong.
func (u *Unsound) Error() string { return "sheet: an unsound plan: " + u.Wrong.Error() }

// Unwrap returns what is wrong.
func (u *Unsound) Unwrap() error { return u.Wrong }

// LogValue tells a log what is wrong together with the order.
func (u *Unsound) LogValue() slog.Value {
	return slog.GroupValue(slog.String("wrong", u.Wrong.Error()), slog.String("order", fmt.Sprintf("%+v", u.Order)))
}

// Plan answers an order. A faulty order gives fault.Faults; a context that
// ends first gives its error. Every plan is verified before it leaves: one that
// fails gives Unsound.
func Plan(ctx context.Context, o Order) (Answer, error) {
	if err := o.Check(); err != nil {
		return Answer{}, err
	}
	if o.Effort == 0 {
		o.Effort = DefaultEffort
	}
	a, err := o.plan(ctx)
	if err != nil {
		return Answer{}, err
	}
	if wrong := Verify(o, a); wrong != nil {
		return Answer{}, &Unsound{o, wrong}
	}
	return a, nil
}

// plan answers an order that has been checked.
func (o Order) plan(ctx context.Context) (Answer, error) {
	p := newProblem(o)
	if o.counted() {
		return p.planCounts(ctx, time.Now().Add(o.Effort))
	}
	return p.planYield(ctx)
}

// planYield gets as much as possible out of one sheet: blanks of a single
// item, or area of several. Of several sizes of sheet it takes the one that is
// used best.
func (p *problem) planYield(ctx context.Context) (Answer, error) {
	var best Answer
	for i := range p.boards {
		a, err := p.yield(ctx, &p.boards[i])
		if err != nil {
			return Answer{}, err
		}
		if i == 0 || a.Used > best.Used {
			best = a
		}
	}
	return best, nil
}

// yield gets as much as possible out of one sheet of a board.
func (p *problem) yield(ctx context.Context, b *board) (Answer, error) {
	t := newTable(b)
	if _, err := t.solve(ctx, p.worth()); err != nil {
		return Answer{}, err
	}
	a := p.finish([]cutting{{b, t.trace(), 1}})
	a.Proven = !p.coarse
	a.describeYield(len(p.kinds) == 1, b.cost)
	return a, nil
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
func (a *Answer) describeYield(single bool, cost int64) {
	made := 0
	for _, n := range a.Made {
		made += n
	}
	a.LowerBound = cost
	if single {
		a.PerSheet = made
	}
	if a.Proven {
		a.Proof = fmt.Sprintf("Dynamic programming over all edge-to-edge cuts: no sheet gives more than these %d.", made)
	} else {
		a.Proof = "The best found on a coarser grid; more may be possible."
	}
}
