package enclosure

import "creasefit/internal/measure"

// ParamType is the type of a kind's own parameter.
type ParamType uint8

// The parameter types.
const (
	LengthParam ParamType = iota // a length, with its unit or in the request's
	CountParam                   // a whole number
	ChoiceParam                  // one word of a list
)

// String returns the type as it is written on the wire.
func (t ParamType) String() string { return [...]string{"length", "count", "choice"}[t] }

// Param is one parameter of a kind: everything a form, a spec or a check
// needs to know about it.
type Param struct {
	Name     string
	Type     ParamType
	Help     string // one line
	Advanced bool   // seldom needed: a form may fold it away

	// Default, Least and Greatest hold for lengths: the default on an inch and
	// on a millimetre ruler, the bounds the same on both. A zero default means
	// that the kind derives one, as Help says.
	DefaultInch, DefaultMillimetre measure.Length
	Least, Greatest                measure.Length

	// DefaultCount, LeastCount and GreatestCount hold for counts.
	DefaultCount, LeastCount, GreatestCount int64

	// Choices holds for choices; the first is the default.
	Choices []string
	Drawn   bool // an outline as path data is taken beside the choices

	// ByBench holds for the fit between two pieces: unless one is given it is the
	// closest that the bench makes sure.
	ByBench bool
}

// lengthParam is a length of whole millimetres at the least and at the most, for
// which the kind has a size if it is not given.
func lengthParam(name string, least, greatest int64, help string) Param {
	return Param{Name: name, Help: help, Least: measure.Millimetres(least), Greatest: measure.Millimetres(greatest)}
}

// usually gives a length its default: 64ths of an inch on a ruler of inches, and
// millimetres.
func (p Param) usually(sixtyfourths, millimetres int64) Param {
	p.DefaultInch, p.DefaultMillimetre = measure.Sixtyfourths(sixtyfourths), measure.Millimetres(millimetres)
	return p
}

// seldom makes a parameter one that is seldom needed.
func (p Param) seldom() Param {
	p.Advanced = true
	return p
}

// DefaultLength returns the default of a length on rulers of the unit.
func (p Param) DefaultLength(u measure.Unit) measure.Length {
	if u == measure.Millimetre {
		return p.DefaultMillimetre
	}
	return p.DefaultInch
}

// Value is the value given for a parameter; only the member of its type is
// meaningful.
type Value struct {
	Length measure.Length
	Count  int64
	Choice string
}
