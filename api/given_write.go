package api

import (
	"strings"

	"creasefit/internal/measure"
)

// filled is a value that the request did not give itself: it comes from a
// preset or is a default.
type filled struct {
	place int
	text  string // of a word; empty for a length
	size  measure.Length
	from  string
}

// appendGiven appends how each value was understood, and what was filled in
// from where.
func (r *reading) appendGiven(dst []byte, more ...filled) []byte {
	dst = append(dst, '{')
	from := len(dst)
	for i := range r.table.params {
		p, v := &r.table.params[i], &r.values[i]
		if v.given && !p.Answer {
			dst = appendMember(dst, from, p.Name)
			dst = append(r.appendUnderstood(dst, p, v), '}')
		}
	}
	for _, f := range more {
		if r.values[f.place].given || f.text == "" && f.size.IsZero() {
			continue
		}
		dst = appendMember(dst, from, r.table.params[f.place].Name)
		dst = r.appendFilled(dst, f)
	}
	return append(dst, '}')
}

// appendMember appends the name of the next member of an object whose first
// member begins at from.
func appendMember(dst []byte, from int, name string) []byte {
	if len(dst) > from {
		dst = append(dst, ',')
	}
	return append(append(append(dst, '"'), name...), `":`...)
}

// appendUnderstood appends the text of a value and, if it is a length, what
// it is in both units.
func (r *reading) appendUnderstood(dst []byte, p *param, v *value) []byte {
	if p.List {
		return appendString(append(dst, `{"text":`...), strings.Join(v.texts, ", "))
	}
	dst = appendString(append(dst, `{"text":`...), v.text)
	switch p.Type {
	case lengthType:
		return appendBoth(dst, v.length)
	case stepType:
		return appendBoth(dst, v.step.Size())
	default:
		return dst
	}
}

// appendBoth appends the members mm and in.
func appendBoth(dst []byte, l measure.Length) []byte {
	dst = measure.AppendDecimal(append(dst, `,"mm":`...), l, measure.Millimetre, 6)
	return measure.AppendDecimal(append(dst, `,"in":`...), l, measure.Inch, 6)
}

// appendFilled appends a value that was filled in.
func (r *reading) appendFilled(dst []byte, f filled) []byte {
	dst = append(dst, `{"text":`...)
	if f.text != "" {
		dst = appendString(dst, f.text)
	} else {
		dst = append(dst, '"')
		dst = append(finestMark(r.unit).AppendReading(dst, f.size), '"')
	}
	if !f.size.IsZero() {
		dst = appendBoth(dst, f.size)
	}
	return append(append(append(dst, `,"from":"`...), f.from...), `"}`...)
}
