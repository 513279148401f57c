package ask

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// Limits of one request, as /v1/limits lists them.
const (
	MostNames    = 64 // names in one request
	MostValue    = 64 // characters in one value
	MostReported = 20 // faults in one answer
)

// mostPick is how long a name that narrows the answer may be.
const mostPick = 256

// Reading is what is read of one request: the names as they came, the fields
// that they fill, and everything that is wrong with them.
type Reading struct {
	Answer Answer // how to answer

	table  *table
	values []slot // one for each name of the table
	fields []field
	unit   measure.Unit // of the answer: the named one, or that of the first length
	named  measure.Unit // the unit that bare numbers are in
	// mistaken says that the request names a unit which is none: then bare
	// numbers are not blamed as well.
	mistaken bool
	decimal  measure.Decimal

	faults fault.Faults
	fixes  []fix
	hidden int // faults beyond the twenty that are reported
	bounds []bound

	given     []Given // what Given returned, and
	canonical []byte  // the canonical address, while they are needed
}

// field is one name of a request with its text as it came. JSON numbers are
// kept as they were written.
type field struct{ name, text string }

// fix is a correction that would mend one fault: the name and the value that
// should stand in the place of those given.
type fix struct{ field, name, text string }

// reset empties the reading for another request.
func (r *Reading) reset() {
	for _, v := range r.values {
		v.reset()
	}
	*r = Reading{Answer: r.Answer, table: r.table, values: r.values, fields: r.fields[:0], bounds: r.bounds[:0], given: r.given[:0], canonical: r.canonical[:0]}
}

// Unit is the unit of the answer; NoUnit if the request has none.
func (r *Reading) Unit() measure.Unit { return r.unit }

// Faults is everything found wrong, but for those hidden.
func (r *Reading) Faults() fault.Faults { return r.faults }

// Hidden is how many faults there are beyond those that are reported.
func (r *Reading) Hidden() int { return r.hidden }

// Report adds a fault; correction is the value that would mend it, or empty.
func (r *Reading) Report(f fault.Fault, correction string) {
	if len(r.faults) == MostReported {
		r.hidden++
		return
	}
	f.Value = Cut(f.Value, MostValue)
	f.Field = Cut(f.Field, MostValue)
	r.faults = append(r.faults, f)
	if correction != "" {
		r.fixes = append(r.fixes, fix{f.Field, f.Field, correction})
	}
}

// Cut shortens a text to n characters for an answer.
func Cut(text string, n int) string {
	count := 0
	for i := range text {
		if count == n {
			return text[:i] + "..."
		}
		count++
	}
	return text
}

// ignored reports whether the name is a cache buster or a tracker that a
// browser, a spreadsheet or a link shortener hangs on to an address. Such
// names never reach the calculation or the cache key.
func ignored(name string) bool {
	return name == "_" || name == "gclid" || name == "fbclid" || name == "update" || strings.HasPrefix(name, "x-") || strings.HasPrefix(name, "utm_")
}

// Add adds a name with its text unless the name is to be ignored.
func (r *Reading) Add(name, text string) {
	if !ignored(name) {
		r.fields = append(r.fields, field{name, text})
	}
}

// Drop takes the first field of that name away; further ones stay and are
// refused as unknown names.
func (r *Reading) Drop(name string) {
	if i := slices.IndexFunc(r.fields, func(f field) bool { return f.name == name }); i >= 0 {
		r.fields = slices.Delete(r.fields, i, i+1)
	}
}

// Parse understands every name that was added, in the order given, and
// reports what it cannot understand.
func (r *Reading) Parse() {
	r.parseConventions()
	for _, f := range r.fields {
		i, ok := r.table.index[f.name]
		if !ok {
			r.reportUnknown(f)
			continue
		}
		n, v, is := &r.table.names[i], r.values[i], r.values[i].is
		if is.Given && !n.List {
			r.Report(fault.Fault{Code: fault.Repeated, Field: f.name, Value: f.text, Detail: "the name is given more than once", Expected: "each name once"}, "")
			continue
		}
		is.Given = true
		if r.wellFormed(n, f) {
			is.Text = f.text
			v.understand(r, f)
		}
	}
}

// units are the words for units; none is NoUnit.
var units = map[string]measure.Unit{measure.Inch.String(): measure.Inch, measure.Millimetre.String(): measure.Millimetre}

// parseConventions finds the unit and the decimal mark, which the other
// values are read with.
func (r *Reading) parseConventions() {
	for _, f := range slices.Backward(r.fields) { // the first one counts
		switch {
		case f.name == "unit":
			r.named = units[f.text]
			r.unit, r.mistaken = r.named, r.named == measure.NoUnit
		case f.name == "decimal" && f.text == decimalComma:
			r.decimal = measure.DecimalComma
		case f.name == "decimal" && f.text == decimalPoint:
			r.decimal = measure.DecimalPoint
		}
	}
}

// reportUnknown reports a name that the call does not know.
func (r *Reading) reportUnknown(f field) {
	nearest := fault.Nearest(strings.ToLower(f.name), r.table.words)
	if nearest != "" && len(r.faults) < MostReported {
		r.fixes = append(r.fixes, fix{f.name, nearest, f.text})
	}
	r.Report(fault.Fault{Code: fault.Unknown, Field: f.name, Value: f.text, Detail: "no such name", Expected: "a name listed by /v1/kinds and /openapi.json",
		Hint: fault.Meant(nearest)}, "")
}

// wellFormed checks what holds for values of every type.
func (r *Reading) wellFormed(n *Name, f field) bool {
	most := cmp.Or(n.MostCharacters, MostValue)
	switch {
	case strings.TrimSpace(f.text) == "":
		r.Report(fault.Fault{Code: fault.Missing, Field: f.name, Detail: "the value is empty; is the cell blank?", Expected: n.expected(r.unit), Hint: "leave the name out if there is nothing to say"}, "")
	case !utf8.ValidString(f.text):
		r.Report(fault.Fault{Code: fault.Unreadable, Field: f.name, Value: strings.ToValidUTF8(f.text, "?"), Detail: "the value is not UTF-8"}, "")
	case n.Type != ObjectType && strings.ContainsFunc(f.text, unicode.IsControl):
		r.Report(fault.Fault{Code: fault.Unreadable, Field: f.name, Value: f.text, Detail: "the value has a control character, such as a line break or a tab",
			Expected: n.expected(r.unit)}, "")
	case utf8.RuneCountInString(f.text) > most:
		r.Report(fault.Fault{Code: fault.Unreadable, Field: f.name, Value: f.text, Detail: "the value is too long", Expected: "at most " + number(float64(most)) + " characters"}, "")
	default:
		return true
	}
	return false
}
