package enclosure

import (
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// NamedFit is a window of total clearance along an axis (common practice; a
// request may give two numbers instead).
type NamedFit struct {
	Name                       string
	InchRange, MillimetreRange Range
}

var namedFits = []NamedFit{
	{"snug", Range{Min: measure.Length{}, Max: measure.Sixtyfourths(4)}, Range{Min: measure.Length{}, Max: measure.Micrometres(1500)}},
	{"easy", Range{Min: measure.Sixtyfourths(4), Max: measure.Sixtyfourths(8)}, Range{Min: measure.Micrometres(1500), Max: measure.Millimetres(3)}},
	{"loose", Range{Min: measure.Sixtyfourths(8), Max: measure.Sixtyfourths(16)}, Range{Min: measure.Millimetres(3), Max: measure.Millimetres(6)}},
}

// NamedFits returns the named fits, the closest first. The slice is shared and
// must not be changed.
func NamedFits() []NamedFit { return namedFits }

// UsualFit is the fit of a request that wants none.
const UsualFit = "easy"

// FitNamed returns the window of a named fit on rulers of the unit; a name that
// is none has the window without width at zero.
func FitNamed(name string, u measure.Unit) Range {
	for _, f := range namedFits {
		if f.Name == name {
			return f.Range(u)
		}
	}
	return Range{}
}

// Range returns the window on rulers of the unit.
func (f NamedFit) Range(u measure.Unit) Range {
	if u == measure.Millimetre {
		return f.MillimetreRange
	}
	return f.InchRange
}

// Verdict names a clearance: the first named fit that it is within, "tight"
// under zero, "slack" over all of them.
func Verdict(clearance measure.Length, u measure.Unit) string {
	if clearance.Sign() < 0 {
		return "tight"
	}
	for _, f := range namedFits {
		if !f.Range(u).Max.Less(clearance) {
			return f.Name
		}
	}
	return "slack"
}

// FitParam returns the parameter that chooses the fit between two pieces of the
// kind, nil if it has none.
func (k *Kind) FitParam() *Param {
	for i := range k.Params {
		p := &k.Params[i]
		lacks := func(f NamedFit) bool { return !slices.Contains(p.Choices, f.Name) }
		if len(p.Choices) >= len(namedFits) && !slices.ContainsFunc(namedFits, lacks) {
			return p
		}
	}
	return nil
}

// anyFit leaves the fit between two pieces open: whatever a named fit has.
const anyFit = "auto"

// byBench is the parameter of a fit between two pieces that the bench chooses
// unless it is given.
func byBench(name, help string) Param {
	return Param{Name: name, Type: ChoiceParam, Choices: []string{anyFit, "snug", "easy", "loose"}, ByBench: true,
		Help: help + " auto is the closest of the others that goes together 95 times in 100 with this bench, or as often as wanted_chance says."}
}

// Leaves reports whether options leave this fit open.
func (p *Param) Leaves(given map[string]Value) bool {
	v, ok := given[p.Name]
	return !ok && p.Choices[0] == anyFit || v.Choice == anyFit
}

// named returns the window of a named fit on the request's ruler; from the least
// to the greatest of all where that is left open.
func (in *Input) named(param string) Range {
	choice := in.choice(param)
	if choice == anyFit {
		return Range{Max: namedFits[len(namedFits)-1].Range(in.Unit).Max}
	}
	return FitNamed(choice, in.Unit)
}

// claimed is how much room beside what is glued a fit between two pieces claims: its
// greatest clearance, or none where it is left open, since any may have been chosen.
func (in *Input) claimed(param string, play Range) measure.Length {
	if in.choice(param) == anyFit {
		return play.Min
	}
	return play.Max
}

// WallGive is how much tighter than touching a part may be that goes over
// another or into it: two walls of paper bow by half a caliper each, board does
// not (common practice; a request may say otherwise).
func WallGive(caliper, boardFrom measure.Length) measure.Length {
	if pattern.Stiff(caliper, boardFrom) {
		return measure.Length{}
	}
	return caliper
}

// Closing is how far a closure may be off and still close: half of the window of the
// asked fit, which is what that leaves open to each side, or one caliper of paper, which
// gives. It does not depend on the step: a coarse ruler does not make a gap close.
func Closing(fit Range, caliper, boardFrom measure.Length) measure.Length {
	return measure.Max(fit.Max.Sub(fit.Min).Over(2), WallGive(caliper, boardFrom))
}
