package solve

import (
	"context"

	"creasefit/internal/enclosure"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/rounding"
)

// Check is what somebody's own measurements come to for a request.
type Check struct {
	Request  *Request
	Pattern  pattern.Pattern // laid out with those measurements
	Closures []Closure       // what must add up and by how much it does not
	Windows  []Window        // the other limits, such as how deep a slit may be
	Fits     []Fit
	Sure     Certainty
	Proof    Proof
	Findings []string // what the fold proof says against it
	Works    bool     // all adds up, is within its limits, closes and holds
	Mend     []Change // the smallest change that mends it; empty if it works
	Mended   bool     // whether there is one
	Greatest Greatest
	Warnings []enclosure.Warning
	Lesson   *Lesson // of the finished piece, if it was measured
	measured []measure.Length
	plan     *enclosure.Plan
	judged   *judgement
}

// Closure is a sum that must be zero.
type Closure struct {
	Name string
	Off  measure.Length
}

// Window is a limit on something other than a clearance.
type Window struct {
	Name    string
	Allowed enclosure.Range
	Value   measure.Length
}

// Change is one size and what it should become.
type Change struct {
	Name     string
	From, To measure.Length
}

// Greatest is the largest contents that go in with the least clearance of the
// wanted fit, each size with the others as asked for; zero for a size that
// nothing bounds.
type Greatest struct{ Width, Height, Thickness measure.Length }

// CheckOwn judges somebody's own measurements. Sizes of the contents that the
// request leaves at zero are taken as the greatest that go in. The error is a
// fault or faults, or the context's.
func CheckOwn(ctx context.Context, r *Request, own *Measurements) (*Check, error) {
	c, plan, err := examine(r, own)
	if err != nil || c.Works {
		return c, err
	}
	return c, c.mend(ctx, plan)
}

// examine judges measurements without looking for what would mend them.
func examine(r *Request, own *Measurements) (*Check, *enclosure.Plan, error) {
	r = r.seeded()
	plan, sizes, err := r.measure(own)
	if err != nil {
		return nil, nil, err
	}
	if filled, changed := r.fill(plan, sizes); changed {
		r = filled
		if plan, sizes, err = r.measure(own); err != nil {
			return nil, nil, err
		}
	}
	j := r.judge(plan, sizes)
	c := &Check{Request: r, Pattern: plan.Lay(sizes), Fits: j.fits, Sure: j.sure(), measured: sizes, plan: plan, judged: j}
	c.sums(plan)
	c.limits(plan)
	c.fold(plan)
	c.Works = c.sound() && c.Proof.Closes && c.Proof.Holds
	c.Greatest = r.greatest(plan, c.Fits)
	c.Warnings = append(append(c.Warnings, r.Notes...), plan.Warnings...)
	return c, plan, nil
}

// sums lists the closures.
func (c *Check) sums(plan *enclosure.Plan) {
	for _, closure := range plan.Problem.Closures {
		c.Closures = append(c.Closures, Closure{closure.Name, closure.Form.Value(c.measured)})
	}
}

// limits lists the windows that are no fits.
func (c *Check) limits(plan *enclosure.Plan) {
	fitted := map[int]bool{}
	for _, f := range plan.Fits {
		fitted[f.Window] = true
	}
	for i, w := range plan.Problem.Windows {
		if !fitted[i] {
			c.Windows = append(c.Windows, Window{w.Name, enclosure.Range{Min: w.Min, Max: w.Max}, w.Form.Value(c.measured)})
		}
	}
}

// fold folds the measurements up as they are.
func (c *Check) fold(plan *enclosure.Plan) {
	folded := c.Request.folded(plan, c.measured, plan.Lay)
	p := fold.Prove(&folded, c.Request.closing())
	c.Proof = Proof{Closes: p.Closes, Gap: p.Gap, Tolerance: p.Tolerance, Holds: p.Holds}
	for _, f := range p.Faults {
		c.Findings = append(c.Findings, f.String())
	}
}

// sound reports whether all adds up and lies within its limits.
func (c *Check) sound() bool {
	for _, closure := range c.Closures {
		if !closure.Off.IsZero() {
			return false
		}
	}
	for _, w := range c.Windows {
		if w.Value.Less(w.Allowed.Min) || w.Allowed.Max.Less(w.Value) {
			return false
		}
	}
	for _, f := range c.Fits {
		if f.Nominal.Sign() < 0 {
			return false
		}
	}
	return true
}

// mend looks for the readings nearest to the measured ones, at the finest mark
// of the ruler, that add up and fit: each measured size becomes the middle of
// a window as wide as the ruler is long, and the true limits become bounds.
func (c *Check) mend(ctx context.Context, plan *enclosure.Plan) error {
	p := rounding.Problem{Closures: plan.Problem.Closures}
	for _, w := range plan.Problem.Windows {
		w.Weight = 0
		p.Windows = append(p.Windows, w)
	}
	for i, reading := range plan.Problem.Readings {
		size := c.measured[i]
		reading.Fixed, reading.Ideal = false, size
		reading.Min, reading.Max = measure.Max(reading.Min, measure.Nanometres(1)), measure.Max(reading.Max, size.Times(2))
		p.Readings = append(p.Readings, reading)
		p.Windows = append(p.Windows, rounding.Window{
			Name: reading.Name, Weight: 1, Min: measure.Length{}, Max: size.Times(2),
			Form: rounding.Form{Terms: []rounding.Term{{Reading: i, Coefficient: 1}}},
		})
	}
	sizes, ok, err := rounding.NewSearch(&p).At(ctx, c.Request.Ruler)
	if err != nil || !ok {
		return err
	}
	c.Mended = true
	for i, reading := range p.Readings {
		if sizes[i] != c.measured[i] {
			c.Mend = append(c.Mend, Change{reading.Name, c.measured[i], sizes[i]})
		}
	}
	return nil
}
