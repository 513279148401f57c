package solve

import (
	"context"
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// mostBounds is how many sizes are tried at the most for one bound.
const mostBounds = 12

// tried returns what an error says is wrong, each thing once, with bounds that were
// tried: within what the size itself may be, and not refused again.
func (r *Request) tried(ctx context.Context, err error) error {
	var all, kept fault.Faults
	if other := all.Add(err); other != nil {
		return other
	}
	for _, f := range all {
		if f.Least != 0 || f.Greatest != 0 {
			t := r.trial(f.Field, all)
			if err := t.bound(ctx, &f); err != nil {
				return err
			}
		}
		if !slices.Contains(kept, f) {
			kept = append(kept, f)
		}
	}
	return kept.Err()
}

// trial tries other sizes for one field of a request.
type trial struct {
	r       *Request
	field   string
	option  bool            // it is one of the kind's own, and so lies on a mark of the ruler
	mark    measure.Step    // that the sizes lie on
	allowed enclosure.Range // what the size may be, whatever the others are
	beside  []string        // what else is wrong with the request: it stays so
}

func (r *Request) trial(field string, all fault.Faults) *trial {
	t := &trial{r: r, field: field, mark: measure.Finest(r.Ruler.Unit()), allowed: enclosure.Range{Max: measure.Largest()}}
	switch own := slices.IndexFunc(r.Kind.Params, func(p enclosure.Param) bool { return p.Name == field }); {
	case own >= 0:
		p := &r.Kind.Params[own]
		t.option, t.mark, t.allowed = true, r.steps()[len(r.steps())-1], enclosure.Range{Min: p.Least, Max: p.Greatest}
	case field == "width" || field == "height":
		t.allowed = enclosure.Widths()
	case field == "thickness":
		t.allowed = enclosure.Thicknesses()
	}
	for _, f := range all {
		if f.Field != field {
			t.beside = append(t.beside, f.Field)
		}
	}
	return t
}

// bound makes the bound of a fault one whose ends were tried. What has no size that
// helps says so.
func (t *trial) bound(ctx context.Context, f *fault.Fault) error {
	allowed := t.allowed
	low, high := measure.Max(measure.Nanometres(f.Least), allowed.Min), measure.Min(measure.Nanometres(f.Greatest), allowed.Max)
	near, far := t.mark.Up(low), t.mark.Down(high)
	f.Least, f.Greatest, f.Expected = 0, 0, ""
	none := far.Less(near)
	if high.Less(t.r.sizeOf(t.field)) {
		near, far = far, near
	}
	var err error
	if !none {
		near, none, err = t.search(ctx, near, far)
	}
	if err != nil || none {
		f.Hint = "no other " + t.field + " alone would do: " + f.Hint
		return err
	}
	if t.option || far != t.mark.Up(allowed.Min) && far != t.mark.Down(allowed.Max) { // no bound of all contents
		far, _, err = t.search(ctx, far, near)
	}
	shown := enclosure.Range{Min: measure.Min(near, far), Max: measure.Max(near, far)}
	switch {
	case t.option: // its own bounds are worth saying
	case far == t.mark.Down(allowed.Max):
		shown.Max = measure.Largest()
	case far == t.mark.Up(allowed.Min):
		shown.Min = measure.Length{}
	}
	f.Expected = enclosure.DescribeRange(t.r.Ruler.Unit(), shown)
	return err
}

// search goes from one size towards another, a mark first and then twice as far each
// time, until one is not refused; it follows the bounds that refusals name. Then it
// goes back to the nearest mark that is not refused either.
func (t *trial) search(ctx context.Context, from, to measure.Length) (at measure.Length, none bool, err error) {
	up, refused := from.Less(to), from
	for n := range mostBounds {
		next, ok, err := t.try(ctx, from, up)
		switch {
		case err != nil:
			return from, false, err
		case ok && n == 0:
			return from, false, nil
		case ok:
			return t.back(ctx, from, refused)
		case from == to:
			return to, true, nil
		case next.IsZero() && up: // refused for something else: further on
			next = from.Add(t.mark.Size().Times(1 << n))
		case next.IsZero():
			next = from.Sub(t.mark.Size().Times(1 << n))
		}
		if refused = from; up {
			from = measure.Min(to, t.mark.Up(next))
		} else {
			from = measure.Max(to, t.mark.Down(next))
		}
	}
	return to, true, nil
}

// back halves the way from a size that is not refused to one that is, mark by mark.
func (t *trial) back(ctx context.Context, good, refused measure.Length) (at measure.Length, none bool, err error) {
	for {
		middle := t.mark.Nearest(good.Add(refused).Over(2))
		if middle == good || middle == refused {
			return good, false, nil
		}
		_, ok, err := t.try(ctx, middle, true)
		if err != nil {
			return good, false, err
		}
		if ok {
			good = middle
		} else {
			refused = middle
		}
	}
}

// try reports whether a size of the field is not refused; else, if the refusal names
// a bound further on, that.
func (t *trial) try(ctx context.Context, size measure.Length, up bool) (next measure.Length, ok bool, err error) {
	q := t.r.sized(t.field, size)
	tries, err := q.attempts(ctx)
	if err != nil {
		return next, false, err
	}
	defer tries.drop()
	if len(tries.good) > 0 {
		ok, err = q.feasible(ctx)
		return next, ok, err
	}
	var faults fault.Faults
	if tries.refused == nil || faults.Add(tries.refused) != nil {
		return next, false, nil
	}
	ok = true
	for _, f := range faults {
		ok = ok && slices.Contains(t.beside, f.Field)
		bound := measure.Nanometres(f.Greatest)
		if up {
			bound = measure.Nanometres(f.Least)
		}
		if f.Field == t.field && (up && size.Less(bound) || !up && bound.Less(size)) {
			next = bound
		}
	}
	return next, ok, nil
}

// sizeOf is a size of a request; zero for an option that is not given.
func (r *Request) sizeOf(field string) measure.Length {
	if size := r.size(field); size != nil {
		return *size
	}
	return r.Options[field].Length
}

// sized is the request with another size.
func (r *Request) sized(field string, size measure.Length) Request {
	q := *r
	if own := q.size(field); own != nil {
		*own = size
		return q
	}
	q = r.with(enclosure.Option{Name: field})
	q.Options[field] = enclosure.Value{Length: size}
	return q
}
