package api

import (
	"bytes"
	"encoding/json"
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// form is one shape that a value of objectType may have. In a query string it
// is written as JSON.
type form struct {
	help     string
	names    *table
	required []string
	short    string // the name that a plain text in the object's place stands for
	open     bool   // takes further names, which the specification does not list
}

// compact writes valid JSON without its spaces.
func compact(text []byte) string {
	var b bytes.Buffer
	// The text is part of a body that was found valid.
	_ = json.Compact(&b, text)
	return b.String()
}

// isObject reports whether a text is meant as a JSON object.
func isObject(text string) bool { return strings.HasPrefix(strings.TrimSpace(text), "{") }

// object reads one object, or the plain text that stands for one, as a
// reading of its own with the same units; adopt takes its faults back. ok says
// that it is an object.
func (r *reading) object(t *table, text, short string) (inner *reading, ok bool) {
	inner = newReading(t)
	inner.unit, inner.named, inner.mistaken, inner.decimal = r.unit, r.named, r.mistaken, r.decimal
	if short != "" && !isObject(text) {
		inner.add(short, text)
	} else if f, ok := unreadableJSON([]byte(text)); ok {
		inner.addMembers(&jsonScanner{text: []byte(text)})
	} else {
		f.Value, f.Expected = text, "a JSON object"
		inner.report(f, "")
		return inner, false
	}
	inner.parse()
	return inner, true
}

// adopt reports the faults of an inner reading under the name that leads to
// it, and gives the reading back.
func (r *reading) adopt(inner *reading, name string) {
	r.adoptFaults(inner, name, nil)
	inner.release()
}

// adoptFaults reports the faults of an inner reading under the name that leads
// to it. Those of names that it has taken from this one are reported once, as
// this one's.
func (r *reading) adoptFaults(inner *reading, name string, taken map[string]bool) {
	for _, f := range inner.faults {
		if !taken[f.Field] {
			f = f.Under(name)
		} else if slices.Contains(r.faults, f) {
			continue
		}
		r.report(f, "")
	}
	r.hidden += inner.hidden
	if r.unit == measure.NoUnit {
		r.unit = inner.unit
	}
}

// entry writes the name of one entry of a list.
func entry(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }

// limitObjects reports a list of more objects than are taken and shortens it.
func (r *reading) limitObjects(place, most int) {
	v := &r.values[place]
	if len(v.texts) <= most {
		return
	}
	r.report(fault.Fault{Code: fault.TooMany, Field: r.name(place), Value: strconv.Itoa(len(v.texts)), Detail: "the list has too many entries",
		Expected: "at most " + strconv.Itoa(most)}, "")
	v.texts = v.texts[:0]
}
