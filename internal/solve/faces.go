package solve

import (
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// mostFaces is how many lengths are looked at beside one that a fit names.
const mostFaces = 16

// face is a length that must hold what a fit says, and how much more it has.
type face struct {
	of   coefficients
	more measure.Length
}

// faces lists the lengths that all have to hold what one fit says: the length
// that it names and those that lie opposite, which are as long by a closure, or
// go round one layer more. In the model they leave as much room; made by hand
// each has errors of its own.
func faces(list []face, plan *enclosure.Plan, fit *enclosure.Fit, sizes []measure.Length) []face {
	list = append(list[:0], face{})
	list[0].of.of(plan.Problem.Windows[fit.Window].Form.Terms)
	for i := 0; i < len(list); i++ {
		for j := range plan.Problem.Closures {
			list = list[i].across(list, plan, plan.Problem.Closures[j].Form.Terms)
		}
		for _, p := range plan.Over {
			list = list[i].round(list, p, sizes)
		}
	}
	return list
}

// across adds the face that a closure says is as long: it takes what is on the
// one side of the equation for what is on the other.
func (f *face) across(list []face, plan *enclosure.Plan, terms []rounding.Term) []face {
	for _, t := range terms {
		c := f.of[t.Reading]
		if c == 0 || t.Coefficient != 1 && t.Coefficient != -1 {
			continue
		}
		opposite := *f
		for _, o := range terms {
			if f.of[o.Reading] == 0 && !plan.Placed(o.Reading) {
				return list // what is set by itself elsewhere bounds nothing
			}
			opposite.of[o.Reading] -= c * int16(t.Coefficient*o.Coefficient)
		}
		list = opposite.into(list)
	}
	return list
}

// round adds the face that has the outer side instead of the inner one.
func (f face) round(list []face, p rounding.Pair, sizes []measure.Length) []face {
	c := f.of[p.B]
	if c <= 0 {
		return list
	}
	f.of[p.B] = 0
	f.of[p.A] += c
	f.more = f.more.Add(sizes[p.A].Sub(sizes[p.B]).Times(int64(c)))
	return f.into(list)
}

// into adds a face that is new and that there is room for.
func (f *face) into(list []face) []face {
	for i := range list {
		if list[i].of == f.of {
			return list
		}
	}
	if len(list) == mostFaces {
		return list
	}
	return append(list, *f)
}
