package wire

import (
	"time"

	"creasefit/internal/sheet"
)

// PlanLine is one line of a plan that is followed while it is looked for: the best
// so far. The last line is done; a problem on the way is in it in place of a plan.
type PlanLine struct {
	Plan    *Yield   `json:"plan,omitempty"`
	Bound   float64  `json:"bound" validate:"required" example:"3"`     // no plan needs less
	Gap     float64  `json:"gap" validate:"required" example:"0"`       // of the plan over the bound, in sheets or cost
	Seconds float64  `json:"seconds" validate:"required" example:"0.2"` // since planning began
	Done    bool     `json:"done" validate:"required"`                  // the last line
	Why     string   `json:"why,omitempty" validate:"omitempty,oneof=settled proven time" example:"settled"`
	Problem *Problem `json:"problem,omitempty"`
}

// OfPlanLine is a plan after some time of looking.
func OfPlanLine(y *Yield, o *sheet.Order, p *sheet.Answer, took time.Duration, done bool) *PlanLine {
	l := &PlanLine{Plan: y, Bound: y.LowerBound, Seconds: Seconds(took), Done: done}
	l.Gap = float64(y.Sheets-y.StockOffcuts) - l.Bound
	if o.Minimize == sheet.LeastCost {
		l.Gap = round(y.Cost-l.Bound, 4)
	}
	if !o.Counted() {
		l.Gap = 0
	}
	switch {
	case !done:
	case p.Settled || !o.Counted():
		l.Why = "settled" // more time would change nothing
	case p.Proven:
		l.Why = "proven"
	default:
		l.Why = "time"
	}
	return l
}

// Seconds is a time as it is written on the wire.
func Seconds(d time.Duration) float64 { return round(d.Seconds(), 3) }
