package sheet

import "creasefit/internal/measure"

// trims makes the steps that take the margins off a sheet and returns the
// usable part's number and size. Each side is trimmed with the good part under
// the ruler, so that the kerf comes off the waste.
func (s *stepper) trims(stock int) job {
	size := Extent{s.order.Sheets[stock].Width, s.order.Sheets[stock].Height}
	s.next = 1
	j := job{parts: []int{0}, have: size, whole: true}
	if s.order.Margin.IsZero() {
		return j
	}
	if long, late := s.order.trimsLate(stock); late {
		s.long = long
		j = s.trim(s.trim(j, long, false), long, true)
		j.sides = true
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
		st.Text = s.set(st) + s.take(j) + s.say(" Cut off the margin.")
	}
	if s.words && turned { // what was cut before is still in hand
		st.Text = s.say("Turn it half round. ") + s.set(st) + s.say(" Cut off the margin.")
	}
	for _, id := range st.Rest {
		s.ends = append(s.ends, Part{ID: id, Item: Offcut})
	}
	s.steps = append(s.steps, st)
	low, _ := s.order.Divide(a, at, j.have)
	return job{parts: st.Low, node: j.node, have: low, whole: j.whole}
}

// trimSides takes the margins at the sides off parts that were cut across the
// sheet before, and goes on with them. An offcut keeps its margins.
func (s *stepper) trimSides(j job) {
	if !j.node.IsCut() && j.node.Item == Offcut {
		s.end(j)
		return
	}
	across := s.long.Other()
	j = s.trim(s.trim(j, across, false), across, true)
	if j.node.IsCut() {
		s.run(j)
	} else {
		s.end(j)
	}
}

// trimsLate reports whether a sheet is cut across its long side first and the
// margins there are trimmed off the parts, since the trimmer is too short for
// the whole side; long is that side.
func (o Order) trimsLate(stock int) (long Axis, late bool) {
	if o.trimsFirst(stock, Width) || o.trimsFirst(stock, Height) {
		return Width, false
	}
	s := o.Sheets[stock]
	if s.Width.Less(s.Height) {
		long = Height
	}
	return long, !o.Trimmer.Less(Extent{s.Width, s.Height}.Along(long.Other()))
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
