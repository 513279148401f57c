package wire

import (
	"strings"

	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// Check is the answer of /v1/check/{kind}.
type Check struct {
	Kind     string    `json:"kind" validate:"required" example:"slotted-band"`
	Unit     string    `json:"unit" validate:"required,oneof=in mm" example:"in"`
	Given    Givens    `json:"given" validate:"required"`
	Works    bool      `json:"works" validate:"required"` // all adds up, closes and holds the contents
	Words    string    `json:"words" validate:"required" example:"It closes, and the contents go in: width snug."`
	Closures []Closure `json:"closures" validate:"required"`
	Limits   []Limit   `json:"limits" validate:"required"`
	Fit      []Fit     `json:"fit" validate:"required"`
	Sure     Sure      `json:"sure" validate:"required"` // that all of it goes together
	Proof    Proof     `json:"proof" validate:"required"`
	Findings []string  `json:"findings" validate:"required"` // what the fold proof says against it
	Mend     []Change  `json:"mend" validate:"required"`     // the smallest change that mends it
	Greatest Greatest  `json:"greatest" validate:"required"`
	Learned  *Learned  `json:"learned,omitempty"` // of the folded piece, if it was measured
	Warnings []Warning `json:"warnings" validate:"required"`
	Links    Links     `json:"links" validate:"required"`
}

// OfCheck is the answer to somebody's own measurements.
func OfCheck(c *solve.Check, a *Asked) *Check {
	q, step := c.Request, c.Request.Ruler
	return &Check{
		Kind:     q.Kind.Name,
		Unit:     q.Unit.String(),
		Given:    a.Given,
		Works:    c.Works,
		Words:    checkWords(c),
		Closures: closures(step, c.Closures),
		Limits:   limits(step, c.Windows),
		Fit:      appendFits(a.solution.Fit[:0], step, c.Fits),
		Sure:     sureOf(q, c.Fits, c.Sure),
		Proof:    proof(&c.Proof),
		Findings: c.Findings,
		Mend:     changes(step, c.Mend),
		Greatest: Greatest{positive(step, c.Greatest.Width), positive(step, c.Greatest.Height), positive(step, c.Greatest.Thickness)},
		Learned:  learnedOf(c),
		Warnings: warnings(c.Warnings, a),
		Links:    Links{Self: a.Self, Kind: "/v1/kinds/" + q.Kind.Name},
	}
}

// checkWords says in a sentence or two what a check comes to.
func checkWords(c *solve.Check) string {
	goes, but := "nothing has to go into anything.", "It does not work as measured"
	if len(c.Fits) > 0 {
		contents := strings.Join(Each(c.Fits, func(f solve.Fit) string { return f.Axis.String() + " " + f.Verdict }), ", ")
		goes, but = "the contents go in: "+contents+".", but+" ("+contents+")"
	}
	switch {
	case c.Works:
		return "It closes, and " + goes
	case c.Mended && len(c.Mend) > 0:
		return but + ". The smallest change that mends it is listed."
	default:
		return but + ", and no readings of this ruler near it would."
	}
}

// Closure is a sum that must be zero.
type Closure struct {
	Name string `json:"name" validate:"required" example:"halves"`
	Off  Length `json:"off" validate:"required"`
}

func closures(step measure.Step, list []solve.Closure) []Closure {
	return Each(list, func(c solve.Closure) Closure { return Closure{c.Name, exact(step, c.Off)} })
}

// Limit is a bound on something other than a clearance.
type Limit struct {
	Name    string    `json:"name" validate:"required" example:"slit"`
	Allowed [2]Length `json:"allowed" validate:"required,min=2,max=2"`
	Value   Length    `json:"value" validate:"required"`
}

func limits(step measure.Step, windows []solve.Window) []Limit {
	return Each(windows, func(w solve.Window) Limit {
		return Limit{w.Name, span(step, w.Allowed.Min, w.Allowed.Max), exact(step, w.Value)}
	})
}

// Change is one size and what it should become.
type Change struct {
	Name string `json:"name" validate:"required" example:"right front"`
	From Length `json:"from" validate:"required"`
	To   Length `json:"to" validate:"required"`
}

func changes(step measure.Step, list []solve.Change) []Change {
	return Each(list, func(c solve.Change) Change { return Change{c.Name, exact(step, c.From), exact(step, c.To)} })
}

// Greatest is the largest contents that go in with the least clearance wanted,
// each size with the others as they are. A size that nothing bounds is absent.
type Greatest struct {
	Width     *Length `json:"width,omitempty"`
	Height    *Length `json:"height,omitempty"`
	Thickness *Length `json:"thickness,omitempty"`
}

// positive is a LENGTH, nil unless it is more than nothing.
func positive(step measure.Step, l measure.Length) *Length {
	if l.Sign() <= 0 {
		return nil
	}
	return new(exact(step, l))
}
