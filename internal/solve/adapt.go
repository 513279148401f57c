package solve

import (
	"context"
	"maps"
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// Adapted is somebody's pattern made anew for another thing or paper.
type Adapted struct {
	Before *Check    // the pattern as it is, with what it was made for
	After  *Solution // the same for the new contents
	Style  []Choice  // options that were read off the measurements
	Sizes  []Change  // every size, before and after
}

// Choice is an option of the kind with its word.
type Choice struct{ Name, Word string }

// Adapt makes a pattern for other contents or other stock in the same character:
// whatever its maker left each size beyond the ideal one, such as a looser fit, a
// wider lap or a deeper tray, it is left again, at the marks that it was made with
// or finer ones. What a pattern was made for gives the very pattern back. Choices
// that the request leaves open are those under which the measurements are as many
// as the kind has and add up. The error is a fault or faults, or the context's.
func Adapt(ctx context.Context, madeFor, wanted *Request, own *Measurements) (*Adapted, error) {
	a := &Adapted{}
	madeFor, err := a.styled(madeFor, own)
	if err != nil {
		return nil, err
	}
	wanted.Options = maps.Clone(madeFor.Options)
	from, err := madeFor.planned()
	if err != nil {
		return nil, err
	}
	to, err := wanted.planned()
	if err != nil {
		return nil, err
	}
	problem, err := sameCharacter(from, to, a.Before.sizes)
	if err != nil {
		return nil, err
	}
	found, err := searchFrom(ctx, wanted, problem, a.Before.sizes)
	if err != nil {
		return nil, err
	}
	if a.After, err = wanted.layOut(to, &found); err != nil {
		return nil, err
	}
	for i, reading := range to.Problem.Readings {
		a.Sizes = append(a.Sizes, Change{reading.Name, a.Before.sizes[i], found.sizes[i]})
	}
	a.After.Warnings, err = a.After.warn(ctx)
	return a, err
}

// styled finds the choices that the measurements speak for: those given if all adds
// up with them, else the first that differs from them in one.
func (a *Adapted) styled(r *Request, own *Measurements) (*Request, error) {
	c, first := examine(r, own)
	if first == nil && c.adds() {
		a.Before = c
		return r, nil
	}
	for _, p := range r.Kind.Params {
		if _, given := r.Options[p.Name]; given || p.Type != enclosure.ChoiceParam {
			continue
		}
		for _, word := range p.Choices[1:] {
			q := r.with(enclosure.Option{Name: p.Name, Choice: word})
			if c, err := examine(&q, own); err == nil && c.adds() {
				a.Before, a.Style = c, []Choice{{p.Name, word}}
				return &q, nil
			}
		}
	}
	if first == nil {
		first = fault.Fault{Code: fault.Impossible, Field: "blank", Detail: "the measurements do not add up, so that there is no pattern to go by",
			Hint: "check them first: /v1/check/" + r.Kind.Name + " says which size is off"}
	}
	return nil, fault.Join(first)
}

// adds reports whether every sum comes out.
func (c *Check) adds() bool {
	return !slices.ContainsFunc(c.Closures, func(closure Closure) bool { return !closure.Off.IsZero() })
}

// sameCharacter is the problem of finding the sizes that are as far from the ideal
// ones of a plan as measured sizes are from those of another. Where the measured
// pattern lies beyond a limit, the new one may by as much.
func sameCharacter(from, to *enclosure.Plan, measured []measure.Length) (*rounding.Problem, error) {
	if len(from.Problem.Readings) != len(to.Problem.Readings) || len(from.Problem.Windows) != len(to.Problem.Windows) {
		return nil, fault.Fault{Code: fault.Impossible, Detail: "these contents take another construction than those that it was made for: its sizes are no others but of other parts",
			Hint: "solve anew for them"}
	}
	p := &rounding.Problem{Closures: to.Problem.Closures}
	for i, w := range to.Problem.Windows {
		was := from.Problem.Windows[i]
		value := was.Form.Value(measured)
		w.Weight = 0
		w.Min = w.Min.Add(measure.Min(measure.Length{}, value.Sub(was.Min)))
		w.Max = w.Max.Add(measure.Max(measure.Length{}, value.Sub(was.Max)))
		p.Windows = append(p.Windows, w)
	}
	for i, reading := range to.Problem.Readings {
		target := measured[i].Add(reading.Ideal).Sub(from.Problem.Readings[i].Ideal)
		if target.Sign() <= 0 && measured[i].Sign() > 0 {
			return nil, fault.Fault{Code: fault.Impossible, Detail: "in the same character nothing would be left of the " + reading.Name, Hint: "solve anew for these contents"}
		}
		far := target.Abs().Add(measure.Millimetres(10))
		reading.Min, reading.Max = measure.Min(target, measure.Nanometres(1)), target.Add(far)
		addNear(p, reading, target, far)
	}
	return p, nil
}

// searchFrom looks for sizes at the coarsest marks that all measured sizes lie on,
// and then at finer ones.
func searchFrom(ctx context.Context, r *Request, p *rounding.Problem, measured []measure.Length) (answer, error) {
	search := rounding.NewSearch(p)
	for _, step := range append(r.steps(), measure.Finest(r.Ruler.Unit())) {
		off := slices.ContainsFunc(measured, func(l measure.Length) bool { return !l.IsMultipleOf(step) })
		if off && step != measure.Finest(r.Ruler.Unit()) {
			continue
		}
		sizes, ok, err := search.At(ctx, step)
		if err != nil {
			return answer{}, err
		}
		if ok {
			return answer{step: step, sizes: sizes}, nil
		}
	}
	return answer{}, fault.Fault{Code: fault.NoFit, Field: "ruler", Value: r.Ruler.String(), Detail: "no readings of this ruler are near enough to the same character",
		Hint: "solve anew for these contents"}
}
