package sheet

import "creasefit/internal/measure"

// trims makes the steps that take the margins off a sheet and returns the
// usable part's number and size. Each side is trimmed with the good part under
// the ruler, so that the kerf comes off the waste.
func (s *stepper) trims(stock int) job {
	size := Extent{s.order.Sheets[stock].Width, s.order.Sheets[stock].Height}
	s.next = 1
	j := job{parts: []int{0}, have: size}
	if s.order.Margin.IsZero() {
		return j
	}
	first := Width
	if !s.order.trimsFirst(stock, Width) {
		first = Height
	}
	for _, a := range []Axis{first, first.Other()} {
		j = s.trim(s.trim(j, a, false), a, true)
	}
	return j
}

// trim takes one margin off.
func (s *stepper) trim(j job, a Axis, turned bool) job {
	at := j.have.Along(a).Sub(s.order.Margin)
	st := s.setting(a, at, j.have.Along(a.Other()))
	st.Trim, st.Turned, st.Parts, st.Repeat = true, turned, j.parts, 1
	s.number(&st)
	if s.words {
		st.Text = s.set(st) + " Cut off the margin."
	}
	if s.words && turned {
		st.Text = "Turn the sheet half round. " + st.Text
	}
	s.ends = append(s.ends, Part{ID: st.Rest[0], Item: Offcut})
	s.steps = append(s.steps, st)
	low, _ := s.order.Divide(a, at, j.have)
	return job{parts: st.Low, have: low}
}

// trimsFirst reports whether the margins can be trimmed off a sheet beginning
// with those across an axis, with no cut longer than the trimmer.
func (o Order) trimsFirst(stock int, a Axis) bool {
	if o.Margin.IsZero() || o.Trimmer.IsZero() {
		return true
	}
	uw, uh := o.Usable(stock)
	size, usable := Extent{o.Sheets[stock].Width, o.Sheets[stock].Height}, Extent{uw, uh}
	longest := measure.Max(size.Along(a.Other()), usable.Along(a))
	return !o.Trimmer.Less(longest)
}
