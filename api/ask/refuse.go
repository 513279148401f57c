package ask

import (
	"cmp"
	"errors"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// parseNumber reads a decimal number without sign or exponent.
func (r *Reading) parseNumber(n *Name, f field) (float64, bool) {
	text := strings.TrimSpace(f.text)
	if r.decimal == measure.DecimalComma {
		text = strings.Replace(text, ",", ".", 1)
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || strings.Trim(text, "0123456789.") != "" {
		r.reportNumber(n, f)
		return 0, false
	}
	return x, true
}

// reportNumber reports a text that is no number of the type.
func (r *Reading) reportNumber(n *Name, f field) {
	detail := "cannot read " + strconv.Quote(Cut(f.text, MostValue)) + " as a number; signs, exponents and units are not read here"
	r.Report(fault.Fault{Code: fault.Unreadable, Field: f.name, Value: f.text, Detail: detail, Expected: n.expected(r.unit), Hint: n.Example}, "")
}

// reportWord reports a word that is not on the list; correction is the one to take
// instead, if there is one.
func (r *Reading) reportWord(n *Name, f field, correction, hint string) {
	code, detail := fault.Unknown, "there is no "+n.Name+" "+strconv.Quote(Cut(f.text, MostValue))
	if n.Answer && n.Name == "format" {
		code = NoFormat
	}
	r.Report(fault.Fault{Code: code, Field: f.name, Value: f.text, Detail: detail, Expected: n.expected(r.unit), Hint: hint}, correction)
}

// reportParse reports a text that package measure refused.
func (r *Reading) reportParse(n *Name, f field, err error) {
	var refused *measure.ParseError
	if !errors.As(err, &refused) {
		r.Report(fault.Fault{Code: fault.Unreadable, Field: f.name, Value: f.text, Detail: "cannot read it", Expected: n.expected(r.unit)}, "")
		return
	}
	if refused.Reason == measure.ReasonNoUnit && r.mistaken {
		return
	}
	correction := refused.Hint
	if strings.Contains(correction, " or ") {
		correction = "" // which of the two is not for us to guess
	}
	detail := "cannot read '" + Cut(f.text, MostValue) + "': " + refused.Detail
	r.Report(fault.Fault{Code: cmp.Or(parseCodes[refused.Reason], fault.Unreadable), Field: f.name, Value: f.text, Detail: detail, Expected: n.expected(r.unit), Hint: refused.Hint}, correction)
}

// parseCodes are the fault codes of the reasons of package measure, but for what is
// unreadable.
var parseCodes = map[measure.Reason]fault.Code{
	measure.ReasonNoUnit: fault.NoUnit, measure.ReasonAmbiguous: fault.Ambiguous, measure.ReasonTooFine: fault.TooFine,
	measure.ReasonTooLarge: fault.OutOfRange, measure.ReasonNotAMark: fault.OutOfRange, measure.ReasonEmpty: fault.Missing,
}

// conflict reports a name that contradicts another one.
func (r *Reading) conflict(v value, detail, hint string) {
	r.ReportAnswer(v.field(), detail, hint)
}

// rivals reports two names of which only one may be given.
func (r *Reading) rivals(v, other value, detail string) {
	r.conflict(v, detail, "leave out "+v.field().name().Name+" or "+other.field().name().Name)
}

// exclude reports a conflict if both names were given.
func (r *Reading) exclude(v, other value, detail string) {
	if v.field().Given && other.field().Given {
		r.rivals(v, other, detail)
	}
}

// missing reports a name that is needed, unless something is wrong with it
// already, an unknown name is taken for it, or the request could not be read at all.
func (r *Reading) missing(v value, detail, hint string) {
	n := v.field().name()
	if slices.ContainsFunc(r.fixes, func(x fix) bool { return x.name == n.Name && x.field != n.Name }) ||
		slices.ContainsFunc(r.faults, func(f fault.Fault) bool { return f.Field == n.Name || f.Field == "" }) {
		return
	}
	r.Report(fault.Fault{Code: fault.Missing, Field: n.Name, Detail: detail, Expected: n.expected(r.unit), Hint: hint}, "")
}

// together reports a name that another one is of no use without, once for each
// that is missing.
func (r *Reading) together(v, other value) {
	n := other.field().name()
	if !v.field().Given || other.field().Given || slices.ContainsFunc(r.faults, func(f fault.Fault) bool { return f.Field == n.Name }) {
		return
	}
	r.missing(other, v.field().name().Name+" says nothing without it", "add "+n.Name+"="+n.Example)
}

// needUnit reports a request that leaves the unit of its answer open.
func (r *Reading) needUnit(u *Unit) {
	if r.unit == measure.NoUnit && len(r.faults) == 0 {
		r.missing(u, "the request names no unit and has no length that does", "add unit=in or unit=mm")
	}
}

// limit reports a list with more values than the name takes.
func (r *Reading) limit(list value, values int) {
	n := list.field().name()
	if values > n.MostValues() {
		r.Report(fault.Fault{Code: fault.TooMany, Field: n.Name, Detail: "it is given too many times", Expected: "at most " + strconv.Itoa(n.MostValues()) + " times"}, "")
	}
}

// limitObjects reports a list of more objects than are taken and empties it.
func (r *Reading) limitObjects(o *Objects) {
	most := o.name().MostValues()
	if len(o.Texts) <= most {
		return
	}
	r.Report(fault.Fault{Code: fault.TooMany, Field: o.name().Name, Value: strconv.Itoa(len(o.Texts)), Detail: "the list has too many entries",
		Expected: "at most " + strconv.Itoa(most)}, "")
	o.Texts = o.Texts[:0]
}

// MostValues is how many values a list takes.
func (n *Name) MostValues() int { return cmp.Or(n.Most, usualMost) }

// mostCorrections is how often a correction is corrected: a name that was meant
// otherwise may have a value that the other name does not take.
const mostCorrections = 3

// Corrected is the query with every correction made, if every fault that was
// found has one and nothing is wrong with it any more.
func (a *Asked[Q]) Corrected() (query string, ok bool) {
	query, ok = a.corrected()
	for range mostCorrections {
		if !ok {
			return "", false
		}
		next := a.form.Take()
		next.AddQuery(query)
		next.Parse()
		if next.Check() {
			next.Release()
			return query, true
		}
		query, ok = next.corrected()
		next.Release()
	}
	return "", false
}

// corrected is the query with the corrections of the faults that were found.
func (r *Reading) corrected() (query string, ok bool) {
	if r.hidden > 0 || len(r.fixes) != len(r.faults) {
		return "", false
	}
	var b strings.Builder
	for i, f := range r.fields {
		at := slices.IndexFunc(r.fixes, func(x fix) bool { return x.field == f.name })
		if at >= 0 {
			f = field{r.fixes[at].name, strings.ReplaceAll(r.fixes[at].text, " ", "")}
		}
		if i > 0 {
			b.WriteByte('&')
		}
		b.WriteString(url.QueryEscape(f.name) + "=" + url.QueryEscape(f.text))
	}
	return b.String(), true
}

// ReportAnswer reports one of the names that say how to answer.
func (r *Reading) ReportAnswer(f *Field, detail, hint string) {
	r.Report(fault.Fault{Code: fault.Conflict, Field: f.name().Name, Value: f.Text, Detail: detail, Hint: hint}, "")
}
