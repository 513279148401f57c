package own

import (
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
)

// lengths are the exact lengths of a request that forms are made of. The unknowns have
// none yet. They may lie in memory of others.
func (v *derivation) lengths(in *enclosure.Input, memory []measure.Length) []measure.Length {
	l := room(memory, v.first+len(v.unknowns))
	clear(l)
	allowed := in.Allowance()
	copy(l, []measure.Length{caliper: in.Caliper, width: in.Width, height: in.Height, thickness: in.Thickness, one: measure.Nanometres(1),
		little: in.Little(), beside: in.Beside(), more: allowed.Max.Sub(allowed.Min), middle: middleIn(in.Fit), loosest: in.Fit.Max})
	for i, f := range enclosure.NamedFits() {
		l[named+i] = middleIn(f.Range(in.Unit))
	}
	for i := range v.Options {
		l[firstSize+i] = v.Options[i].length(in)
	}
	return l
}

// middleIn is the middle of a range.
func middleIn(r enclosure.Range) measure.Length { return r.Min.Add(r.Max).Over(2) }

// length is how long a size is in a request.
func (o *Option) length(in *enclosure.Input) measure.Length {
	if given, ok := in.Given[o.Name]; ok {
		return given.Length
	}
	return o.DefaultLength(in.Unit)
}

// room is a list of so many, in the memory of another one if that is long enough; what lay
// there is left in it.
func room[T any](memory []T, count int) []T { return slices.Grow(memory[:0], count)[:count] }

// values are lengths as numbers, in nanometres. They may lie in memory of others.
func values(exact []measure.Length, memory []float64) []float64 {
	values := room(memory, len(exact))
	for i, l := range exact {
		values[i] = float64(l.Nanometres())
	}
	return values
}

// guess fills in what the unknowns may be, large enough for a spine at each end. What is
// the sum of others by a statement is as large as they are together, so that what lies
// inside begins inside.
func (v *derivation) guess(values []float64) {
	spines := 0.0
	if slices.ContainsFunc(v.panels, func(p plate) bool { return p.Angle == 180 }) {
		spines = values[thickness]
	}
	for i := range v.unknowns {
		u := &v.unknowns[i]
		switch {
		case u.fixed.given:
			values[v.first+i] = v.amount(u.fixed).at(values)
		case u.allows:
			values[v.first+i] = values[caliper]
		case !u.end:
			values[v.first+i] = values[width+u.axis] + spines + 4*values[caliper] + values[loosest] + values[little]
		}
	}
	rows, ends := v.fold(values).rows, system{order: v.unknownsInTurn()}
	for i := range rows {
		if w := &rows[i]; w.hard && v.hasEnd(w.form) {
			ends.add(w.form)
		}
	}
	ends.settle(values)
	for range 2 {
		for i := range rows {
			w := &rows[i]
			if u := w.form.sum(v.first); u >= 0 && !v.of(u).fixed.given {
				times := w.form.count(u)
				values[u] = (w.best().at(values) - w.form.with(u, -times).at(values)) * parts / float64(times)
			}
		}
	}
}
