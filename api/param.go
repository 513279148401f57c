package api

import (
	"strconv"
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
)

// paramType is how the text of a name is read.
type paramType uint8

// The types of names.
const (
	lengthType paramType = iota // "3 1/2 in"
	sizeType                    // "8 1/2 x 11 in"
	stepType                    // "1/16 in"
	choiceType                  // one word of a list
	presetType                  // one word of a longer list, looked up in the catalogue
	countType                   // a whole number
	numberType                  // a decimal number
	textType                    // any text
	objectType                  // an object with names of its own, see objects.go
)

// String returns the type as it is written on the wire.
func (t paramType) String() string {
	return [...]string{"length", "size", "step", "choice", "preset", "count", "number", "text", "object"}[t]
}

// param is one name that a call knows: everything that reading it, listing it
// in /v1/kinds and specifying it needs.
type param struct {
	Name     string
	Type     paramType
	Help     string // one line
	Example  string
	List     bool // may be given several times
	Advanced bool // seldom needed: a form may fold it away
	Answer   bool // says how to answer and is no part of what is computed

	// DefaultInch and DefaultMillimetre are the value taken when the name is
	// left out, on rulers of that unit; empty when there is none.
	DefaultInch, DefaultMillimetre string

	Least, Greatest             measure.Length // of a length, ends included
	LeastNumber, GreatestNumber float64        // of a count or a number
	Choices                     []string
	MostCharacters              int    // of a text; 64 if zero
	Catalogue                   string // where the presets are listed
	Forms                       []form // of an object
	Most                        int    // of a list; 50 if zero

	rule string // the same bounds for the validator
}

// table is the names of one call in the order they are listed.
type table struct {
	params []param
	index  map[string]int
	names  []string
	large  bool // bodies are larger than those of other calls
}

// newTable joins lists of names into a table.
func newTable(lists ...[]param) *table {
	t := &table{index: map[string]int{}}
	for _, list := range lists {
		for _, p := range list {
			p.rule = p.validation()
			t.index[p.Name] = len(t.params)
			t.params = append(t.params, p)
			t.names = append(t.names, p.Name)
		}
	}
	return t
}

// find returns the description of a name, or nil if the call does not know it.
func (t *table) find(name string) *param {
	i, ok := t.index[name]
	if !ok {
		return nil
	}
	return &t.params[i]
}

// validation writes the bounds as a rule of the validator.
func (p param) validation() string {
	switch p.Type {
	case lengthType:
		return "gte=" + strconv.FormatInt(p.Least.Nanometres(), 10) + ",lte=" + strconv.FormatInt(p.Greatest.Nanometres(), 10)
	case countType, numberType:
		return "gte=" + number(p.LeastNumber) + ",lte=" + number(p.GreatestNumber)
	case choiceType:
		return "oneof=" + strings.Join(p.Choices, " ")
	default:
		return ""
	}
}

// number writes a bound of a table without exponent.
func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// expected says in words what the name takes; bounds are written for the unit.
func (p *param) expected(unit measure.Unit) string {
	finest := finestMark(unit)
	switch p.Type {
	case lengthType:
		return "a length from " + finest.Format(p.Least) + " to " + finest.Format(p.Greatest) + ", such as " + p.Example
	case sizeType:
		return "a size such as " + p.Example
	case stepType:
		return "a ruler mark such as " + p.Example
	case choiceType:
		return "one of " + strings.Join(p.Choices, ", ")
	case presetType:
		return "a name listed at " + p.Catalogue
	case countType:
		return "a whole number from " + number(p.LeastNumber) + " to " + number(p.GreatestNumber)
	case numberType:
		return "a number from " + number(p.LeastNumber) + " to " + number(p.GreatestNumber)
	case objectType:
		return "a JSON object such as " + p.Example
	default:
		return "a text such as " + p.Example
	}
}

// finestMark returns the finest ruler mark of the unit; of millimetres when a
// request has not said.
func finestMark(unit measure.Unit) measure.Step {
	if unit == measure.NoUnit {
		unit = measure.Millimetre
	}
	marks := measure.Marks(unit)
	return marks[len(marks)-1]
}

// kindParam translates a kind's own parameter.
func kindParam(p enclosure.Param) param {
	q := param{Name: p.Name, Help: p.Help, Advanced: p.Advanced}
	switch p.Type {
	case enclosure.LengthParam:
		q.Type, q.Least, q.Greatest = lengthType, p.Least, p.Greatest
		q.DefaultInch = optionalReading(p.DefaultInch, measure.Inch)
		q.DefaultMillimetre = optionalReading(p.DefaultMillimetre, measure.Millimetre)
		q.Example = lengthExample(p)
	case enclosure.CountParam:
		q.Type, q.LeastNumber, q.GreatestNumber = countType, float64(p.LeastCount), float64(p.GreatestCount)
		q.DefaultInch = strconv.FormatInt(p.DefaultCount, 10)
		q.DefaultMillimetre, q.Example = q.DefaultInch, q.DefaultInch
	case enclosure.ChoiceParam:
		q.Type, q.Choices = choiceType, p.Choices
		q.DefaultInch, q.DefaultMillimetre, q.Example = p.Choices[0], p.Choices[0], p.Choices[0]
	}
	return q
}

// optionalReading writes a default, or nothing for one that the kind derives.
func optionalReading(l measure.Length, unit measure.Unit) string {
	if l.IsZero() {
		return ""
	}
	return finestMark(unit).Format(l)
}

// lengthExample is a length that the parameter takes.
func lengthExample(p enclosure.Param) string {
	if !p.DefaultInch.IsZero() {
		return finestMark(measure.Inch).Format(p.DefaultInch)
	}
	for _, l := range []measure.Length{measure.Sixtyfourths(32), measure.Inches(2), measure.Sixtyfourths(1)} {
		if !l.Less(p.Least) && !p.Greatest.Less(l) {
			return finestMark(measure.Inch).Format(l)
		}
	}
	return finestMark(measure.Inch).Format(p.Least)
}
