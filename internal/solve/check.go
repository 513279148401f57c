package solve

import (
	"context"
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// Check is what somebody's own measurements come to for a request: as if it had been
// solved so, but without its outside, which few ask for.
type Check struct {
	Solution
	Closures []Closure // what must add up and by how much it does not
	Windows  []Window  // the other limits, such as how deep a slit may be
	Findings []string  // what the fold proof says against it
	Works    bool      // all adds up, is within its limits, closes and holds
	Mend     []Change  // the smallest change that mends it; empty if it works
	Mended   bool      // whether there is one
	Greatest Greatest
	Lesson   *Lesson // of the finished piece, if it was measured
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
	c, err := examine(r, own)
	if err != nil || c.Works {
		return c, err
	}
	return c, c.mend(ctx)
}

// examine judges measurements without looking for what would mend them.
func examine(r *Request, own *Measurements) (*Check, error) {
	r = r.seeded()
	plan, sizes, err := r.measure(own)
	if err != nil {
		return nil, err
	}
	if filled, changed := r.fill(plan, sizes); changed {
		r = filled
		if plan, sizes, err = r.measure(own); err != nil {
			return nil, err
		}
	}
	j := r.judge(plan, sizes)
	c := &Check{Solution: Solution{Request: r, Step: r.Ruler, Pattern: plan.Lay(sizes), Fits: j.fits, Sure: j.sure(),
		Ornament: plan.Ornament, plan: plan, sizes: sizes, judged: j}}
	c.Ideal = c.Pattern
	for _, closure := range plan.Problem.Closures {
		c.Closures = append(c.Closures, Closure{closure.Name, closure.Form.Value(sizes)})
	}
	c.limits()
	c.fold()
	c.Works = c.sound() && c.Proof.Closes && c.Proof.Holds
	c.Greatest = r.greatest(plan, c.Fits)
	c.Warnings = append(append(c.Warnings, r.Notes...), plan.Warnings...)
	return c, nil
}

// limits lists the windows that are no fits.
func (c *Check) limits() {
	for i, w := range c.plan.Problem.Windows {
		if !slices.ContainsFunc(c.plan.Fits, func(f enclosure.Fit) bool { return f.Window == i }) {
			c.Windows = append(c.Windows, Window{w.Name, enclosure.Range{Min: w.Min, Max: w.Max}, w.Form.Value(c.sizes)})
		}
	}
}

// fold folds the measurements up as they are.
func (c *Check) fold() {
	p := fold.Prove(c.taken(), c.Request.closing())
	c.Proof = proofOf(&p)
	for _, f := range p.Faults {
		c.Findings = append(c.Findings, f.String())
	}
}

// sound reports whether all adds up and lies within its limits.
func (c *Check) sound() bool {
	if !c.adds() {
		return false
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
func (c *Check) mend(ctx context.Context) error {
	p := rounding.Problem{Closures: c.plan.Problem.Closures}
	for _, w := range c.plan.Problem.Windows {
		w.Weight = 0
		p.Windows = append(p.Windows, w)
	}
	for i, reading := range c.plan.Problem.Readings {
		size := c.sizes[i]
		reading.Min, reading.Max = measure.Max(reading.Min, measure.Nanometres(1)), measure.Max(reading.Max, size.Times(2))
		addNear(&p, reading, size, size)
	}
	sizes, ok, err := rounding.NewSearch(&p).At(ctx, c.Request.Ruler)
	if err != nil || !ok {
		return err
	}
	c.Mended = true
	for i, reading := range p.Readings {
		if sizes[i] != c.sizes[i] {
			c.Mend = append(c.Mend, Change{reading.Name, c.sizes[i], sizes[i]})
		}
	}
	return nil
}

// addNear adds a reading to a problem that is to be as near to a target as it can, and
// no farther off than that.
func addNear(p *rounding.Problem, reading rounding.Reading, target, far measure.Length) {
	reading.Fixed, reading.Ideal = false, target
	p.Windows = append(p.Windows, rounding.Window{Name: reading.Name, Weight: 1, Min: target.Sub(far), Max: target.Add(far),
		Form: rounding.Form{Terms: []rounding.Term{{Reading: len(p.Readings), Coefficient: 1}}}})
	p.Readings = append(p.Readings, reading)
}
