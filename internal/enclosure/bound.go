package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// Widths is how wide and how high contents may be.
func Widths() Range { return Range{Min: measure.Millimetres(3), Max: measure.Millimetres(2000)} }

// Thicknesses is how thick contents may be.
func Thicknesses() Range { return Range{Min: measure.Micrometres(10), Max: measure.Millimetres(500)} }

// span returns the least and the greatest that a size with this need comes to
// within the wanted fit.
func (n Need) span(in *Input) Range {
	need := n.Of(in)
	return Range{Min: need.Add(in.Fit.Min), Max: need.Add(in.Fit.Max)}
}

// spine is what a fold of 180 degrees round a thickness takes of the sheet.
func (in *Input) spine(round measure.Length) measure.Length { return round.Add(in.Caliper) }

// bounded refuses an option that does not go with the other sizes.
func (in *Input) bounded(field string, bound Range, detail, hint string) error {
	if v := in.length(field); !v.Less(bound.Min) && !bound.Max.Less(v) {
		return nil
	}
	return in.Outside(field, bound, detail, hint)
}

// Outside is the fault of a size that lies outside a bound.
func (in *Input) Outside(field string, bound Range, detail, hint string) fault.Fault {
	return fault.Fault{Code: fault.Impossible, Field: field, Detail: detail, Expected: DescribeRange(in.Unit, bound), Hint: hint,
		Least: bound.Min.Nanometres(), Greatest: bound.Max.Nanometres()}
}

// DescribeRange writes bounds in a unit, inwards to the next marks.
func DescribeRange(unit measure.Unit, r Range) string {
	finest := measure.Finest(unit)
	least, greatest := finest.Up(r.Min), finest.Down(r.Max)
	switch {
	case greatest.Less(least):
		return "larger contents: there is no such length for these"
	case greatest == least:
		return finest.Format(least)
	case least.Sign() <= 0:
		return "at most " + finest.Format(greatest)
	case greatest == finest.Down(measure.Largest()):
		return "at least " + finest.Format(least)
	}
	return "from " + finest.Format(least) + " to " + finest.Format(greatest)
}

// describe writes a bound in the ruler's unit: up to the next mark.
func (in *Input) describe(l measure.Length) string {
	finest := measure.Finest(in.Unit)
	return finest.Format(finest.Up(l))
}

// flat refuses contents that are too thick for single scores, and warns of
// those that bend them round.
func (in *Input) flat(d *draft) error {
	if oneCapacity.Less(in.Thickness) {
		return in.Outside("thickness", Range{Max: oneCapacity}, "one score at each side does not go round contents that thick",
			"choose a kind with two scores a side, a gusset or walls")
	}
	if thinnest.Less(in.Thickness) {
		d.warn("one-score", "One score at each side goes round rather thick contents here: the corners come out round.")
	}
	return nil
}

// leastLap is how wide a glued lap must be: wide enough for glue, and for
// contents in the middle of their play to lie under it.
func (in *Input) leastLap() measure.Length {
	return measure.Max(leastGlue, in.Fit.Max.Over(2).Add(in.Caliper))
}

// least refuses contents that are too small for their enclosure.
func (in *Input) least(field string, size, least measure.Length, detail string) error {
	if !size.Less(least) {
		return nil
	}
	return in.Outside(field, Range{Min: least, Max: measure.Largest()}, detail, "choose an envelope or a sleeve for small contents")
}

// OnlyFor refuses an option that goes with one choice only.
func (in *Input) OnlyFor(name, choice, value string) error {
	if !in.given(name) {
		return nil
	}
	return fault.Fault{Code: fault.Conflict, Field: name, Detail: name + " goes with " + choice + "=" + value + " only",
		Hint: "leave it out, or choose " + choice + "=" + value}
}

// needless refuses an option that says something about another one that is not
// given.
func (in *Input) needless(name, without string) error {
	if !in.given(name) {
		return nil
	}
	return fault.Fault{
		Code: fault.Conflict, Field: name, Detail: name + " says something about " + without + ", which there is none of",
		Hint: "give " + without + " too, or leave " + name + " out",
	}
}
