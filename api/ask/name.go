package ask

import (
	"strconv"
	"strings"

	"creasefit/internal/measure"
)

// Type is how the text of a name is read.
type Type uint8

// The types of names.
const (
	LengthType Type = iota // "3 1/2 in"
	SizeType               // "8 1/2 x 11 in"
	StepType               // "1/16 in"
	ChoiceType             // one word of a list
	PresetType             // one word of a longer list, looked up in a catalogue
	CountType              // a whole number
	NumberType             // a decimal number
	TextType               // any text
	ObjectType             // an object with names of its own
)

// String returns the type as it is written on the wire.
func (t Type) String() string {
	return [...]string{"length", "size", "step", "choice", "preset", "count", "number", "text", "object"}[t]
}

// Name is what is known of one name of a call: everything that reading it,
// listing it in /v1/kinds and specifying it needs. Its type and whether it is
// a list are those of the field it is bound to.
type Name struct {
	Name     string
	Help     string // one line
	Example  string
	Advanced bool    // seldom needed: a form may fold it away
	Default  Default // what a request that leaves the name out is computed with

	Least, Greatest             measure.Length // of a length, ends included
	LeastNumber, GreatestNumber float64        // of a count or a number
	Choices                     []string
	MostCharacters              int     // of a text; 64 if zero
	Catalogue                   string  // where the presets are listed
	Shapes                      []Shape // of an object
	Most                        int     // of a list; 50 if zero

	Type   Type
	List   bool // may be given several times
	Answer bool // says how to answer and is no part of what is computed
	// Narrows says that the name tells only what becomes of an answer that is
	// written.
	Narrows bool
}

// Default is a value on inch rulers and on millimetre rulers, as it would be
// written in a request; the zero Default is none.
type Default struct{ Inch, Millimetre string }

// Always is a default that is the same on every ruler.
func Always(text string) Default { return Default{text, text} }

// usualMost is how many values the lists of most names take.
const usualMost = 50

// length bounds a length, or each length of a size.
func (n Name) between(least, greatest measure.Length) Name {
	n.Least, n.Greatest = least, greatest
	return n
}

// numbers bounds a count or a number.
func (n Name) numbers(least, greatest float64) Name {
	n.LeastNumber, n.GreatestNumber = least, greatest
	return n
}

// number writes a bound without exponent.
func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// expected says in words what the name takes; bounds are written for the unit.
func (n *Name) expected(unit measure.Unit) string {
	switch n.Type {
	case LengthType:
		finest := measure.Finest(unit)
		return "a length from " + finest.Format(writable(n.Least, unit, true)) + " to " + finest.Format(writable(n.Greatest, unit, false)) + ", such as " + n.Example
	case SizeType:
		return "a size such as " + n.Example
	case StepType:
		return "a ruler mark such as " + n.Example
	case ChoiceType:
		return "one of " + strings.Join(n.Choices, ", ")
	case PresetType:
		return "a name listed at " + n.Catalogue
	case CountType:
		return "a whole number from " + number(n.LeastNumber) + " to " + number(n.GreatestNumber)
	case NumberType:
		return "a number from " + number(n.LeastNumber) + " to " + number(n.GreatestNumber)
	case ObjectType:
		return "a JSON object such as " + n.Example
	default:
		if len(n.Choices) > 0 {
			return "one of " + strings.Join(n.Choices, ", ") + ", or one closed outline such as " + exampleOutline
		}
		return "a text such as " + n.Example
	}
}

// writable is a bound in a unit: where inches have no short decimal for it, inwards to
// a ten-thousandth, so that a request in inches is not answered in millimetres.
func writable(bound measure.Length, unit measure.Unit, up bool) measure.Length {
	if unit != measure.Inch || bound.IsMultipleOf(measure.Finest(unit)) {
		return bound
	}
	part := measure.Thousandths(1).Over(10).Nanometres()
	n := bound.Nanometres() / part
	if up && n*part < bound.Nanometres() {
		n++
	}
	return measure.Nanometres(n * part)
}
