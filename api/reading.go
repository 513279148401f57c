package api

import (
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"github.com/go-playground/validator/v10"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// reading is one request on its way from text to values: the names as they
// came, what each was understood as, and everything that is wrong with them.
type reading struct {
	table  *table
	fields []field
	values []value      // one for each name of the table
	unit   measure.Unit // of the answer: the named one, or that of the first length
	named  measure.Unit // the unit that bare numbers are in
	// mistaken says that the request names a unit which is none: then bare
	// numbers are not blamed as well.
	mistaken bool
	decimal  measure.Decimal

	faults fault.Faults
	fixes  []fix
	hidden int // faults beyond the twenty that are reported

	canonical []byte // the canonical address, and
	key       []byte // the key among recent answers, while they are needed
}

// value is what one name was understood as; the member of its type counts.
type value struct {
	given   bool
	text    string // as given; the last one of a list
	length  measure.Length
	size    [2]measure.Length
	named   bool // the size is that of a named sheet
	step    measure.Step
	number  float64
	lengths []measure.Length    // of a list of lengths
	sizes   [][2]measure.Length // of a list of sizes
	texts   []string            // a list as given
}

// fix is a correction that would mend one fault: the name and the value that
// should stand in the place of those given.
type fix struct{ field, name, text string }

var readings = sync.Pool{New: func() any { return &reading{} }}

// newReading returns an empty reading for the names of a table.
func newReading(t *table) *reading {
	r := readings.Get().(*reading)
	values := slices.Grow(r.values[:0], len(t.params))[:len(t.params)]
	clear(values)
	*r = reading{table: t, fields: r.fields[:0], values: values, canonical: r.canonical[:0], key: r.key[:0]}
	return r
}

// release gives the reading back; nothing may refer to it any more.
func (r *reading) release() { readings.Put(r) }

// report adds a fault; correction is the value that would mend it, or empty.
func (r *reading) report(f fault.Fault, correction string) {
	if len(r.faults) == mostReported {
		r.hidden++
		return
	}
	f.Value = cut(f.Value, mostValue)
	f.Field = cut(f.Field, mostValue)
	r.faults = append(r.faults, f)
	if correction != "" {
		r.fixes = append(r.fixes, fix{f.Field, f.Field, correction})
	}
}

// parse understands every field, in the order given, and reports what it
// cannot understand.
func (r *reading) parse() {
	r.parseConventions()
	for _, f := range r.fields {
		p := r.table.find(f.name)
		if p == nil {
			r.reportUnknown(f)
			continue
		}
		v := &r.values[r.table.index[f.name]]
		if v.given && !p.List {
			r.report(fault.Fault{Code: fault.Repeated, Field: f.name, Value: f.text, Detail: "the name is given more than once", Expected: "each name once"}, "")
			continue
		}
		v.given = true
		if r.wellFormed(p, f) {
			v.text = f.text
			r.parseValue(p, v, f)
		}
	}
}

// parseConventions finds the unit and the decimal mark, which the other
// values are read with.
func (r *reading) parseConventions() {
	switch mark, _ := r.given("decimal"); mark {
	case "comma":
		r.decimal = measure.DecimalComma
	case "point":
		r.decimal = measure.DecimalPoint
	}
	if text, ok := r.given("unit"); ok {
		r.named = unitOf(text)
		r.unit, r.mistaken = r.named, r.named == measure.NoUnit
	}
}

// unitOf returns the unit of a word; NoUnit for any other word.
func unitOf(word string) measure.Unit {
	switch word {
	case measure.Inch.String():
		return measure.Inch
	case measure.Millimetre.String():
		return measure.Millimetre
	default:
		return measure.NoUnit
	}
}

// reportUnknown reports a name that the call does not know.
func (r *reading) reportUnknown(f field) {
	nearest := fault.Nearest(strings.ToLower(f.name), r.table.names)
	unknown := fault.Fault{Code: fault.Unknown, Field: f.name, Value: f.text, Detail: "no such name", Expected: "a name listed by /v1/kinds and /openapi.json"}
	if nearest != "" {
		unknown.Hint = "did you mean " + nearest + "?"
		if len(r.faults) < mostReported {
			r.fixes = append(r.fixes, fix{f.name, nearest, f.text})
		}
	}
	r.report(unknown, "")
}

// wellFormed checks what holds for values of every type.
func (r *reading) wellFormed(p *param, f field) bool {
	most := p.MostCharacters
	if most == 0 {
		most = mostValue
	}
	switch {
	case strings.TrimSpace(f.text) == "":
		r.report(fault.Fault{Code: fault.Missing, Field: f.name, Detail: "the value is empty; is the cell blank?", Expected: p.expected(r.unit), Hint: "leave the name out if there is nothing to say"}, "")
	case !utf8.ValidString(f.text):
		r.report(fault.Fault{Code: fault.Unreadable, Field: f.name, Value: strings.ToValidUTF8(f.text, "?"), Detail: "the value is not UTF-8"}, "")
	case p.Type != objectType && strings.ContainsFunc(f.text, unicode.IsControl):
		r.report(fault.Fault{Code: fault.Unreadable, Field: f.name, Value: f.text, Detail: "the value has a control character, such as a line break or a tab",
			Expected: p.expected(r.unit)}, "")
	case utf8.RuneCountInString(f.text) > most:
		r.report(fault.Fault{Code: fault.Unreadable, Field: f.name, Value: f.text, Detail: "the value is too long", Expected: "at most " + number(float64(most)) + " characters"}, "")
	default:
		return true
	}
	return false
}

// validate checks bounds and choices by the rules that the tables give.
var validate = validator.New(validator.WithRequiredStructEnabled())

// within reports whether a value keeps the bounds of its name, and if not,
// whether it is below the least one.
func within(x any, rule string) (ok, below bool) {
	err := validate.Var(x, rule)
	if err == nil {
		return true, false
	}
	if faults, is := err.(validator.ValidationErrors); is && len(faults) > 0 {
		return false, faults[0].Tag() == "gte"
	}
	return false, false
}
