package solve

import (
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/settings"
)

// seed stands in for a size of the contents that is to be found.
var seed = measure.Millimetres(1)

// seeded returns a copy of the request in which no size that the kind needs is
// zero, and remembers which ones are to be found.
func (r *Request) seeded() *Request {
	c := *r
	for _, name := range c.Kind.Needs {
		size := c.size(name)
		if size.IsZero() {
			*size = seed
			c.toFind = append(c.toFind, name)
		}
	}
	return &c
}

// size returns where the request keeps a size of the contents; nil for another name.
func (r *Request) size(name string) *measure.Length {
	switch name {
	case pattern.Width.String():
		return &r.Width
	case pattern.Height.String():
		return &r.Height
	case pattern.Thickness.String():
		return &r.Thickness
	}
	return nil
}

// fill gives the sizes to be found the greatest that go in; false if none are
// to be found.
func (r *Request) fill(plan *enclosure.Plan, sizes []measure.Length) (*Request, bool) {
	if len(r.toFind) == 0 {
		return r, false
	}
	c := *r
	var made account
	made.open(r, plan, sizes, settings.Nearer)
	greatest := r.greatest(plan, made.eachFit(nil))
	for _, name := range r.toFind {
		grown := Request{Width: greatest.Width, Height: greatest.Height, Thickness: greatest.Thickness}
		if size := *grown.size(name); size.Sign() > 0 {
			*c.size(name) = size
		}
	}
	c.toFind = nil
	return &c, true
}

// greatest works out the largest contents, each size with the others as they
// are: what is left of the clearance over the least one that the fit allows,
// for the axis that has the least left.
func (r *Request) greatest(plan *enclosure.Plan, fits []Fit) Greatest {
	var g Greatest
	for i, f := range plan.Fits {
		left := fits[i].Nominal.Sub(r.Fit.Min)
		g.Width = lesser(g.Width, r.Width, left, f.Need.Width)
		g.Height = lesser(g.Height, r.Height, left, f.Need.Height)
		g.Thickness = lesser(g.Thickness, r.Thickness, left, f.Need.Thickness)
	}
	return g
}

// lesser returns the least of what one size may grow to. What the pattern goes
// into does not grow but shrink, until it has the least clearance round it.
func lesser(sofar, size, left measure.Length, times int64) measure.Length {
	switch {
	case times == 0:
		return sofar
	case times < 0:
		left, times = left.Neg(), -times
	}
	grown := measure.Max(measure.Length{}, size.Add(left.Over(times)))
	if sofar.IsZero() {
		return grown
	}
	return measure.Min(sofar, grown)
}
