package api

import (
	"slices"
	"strings"

	"creasefit/internal/fault"
)

// field is one name of a request with its text as it came. JSON numbers are
// kept as they were written.
type field struct{ name, text string }

// Limits of one request, as /v1/limits lists them.
const (
	mostFields    = 64 // names in one request
	mostValue     = 64 // characters in one value
	mostReported  = 20 // faults in one answer
	mostPickValue = 256
)

// ignored reports whether the name is a cache buster or a tracker that a
// browser, a spreadsheet or a link shortener hangs on to an address. Such
// names never reach the calculation or the cache key.
func ignored(name string) bool {
	switch name {
	case "_", "gclid", "fbclid", "update":
		return true
	default:
		return strings.HasPrefix(name, "x-") || strings.HasPrefix(name, "utm_")
	}
}

// add appends a field unless its name is to be ignored.
func (r *reading) add(name, text string) {
	if !ignored(name) {
		r.fields = append(r.fields, field{name, text})
	}
}

// given returns the text of a name, whether it was given, and nothing about
// whether it makes sense. It serves the names that must be known before the
// rest can be read.
func (r *reading) given(name string) (string, bool) {
	i := slices.IndexFunc(r.fields, func(f field) bool { return f.name == name })
	if i < 0 {
		return "", false
	}
	return r.fields[i].text, true
}

// cut shortens a text to n characters for an answer.
func cut(text string, n int) string {
	count := 0
	for i := range text {
		if count == n {
			return text[:i] + "..."
		}
		count++
	}
	return text
}

// tooManyFields is the fault of a request with more names than are taken.
func tooManyFields() fault.Fault {
	return fault.Fault{Code: fault.TooMany, Detail: "the request has too many names", Expected: "at most 64 names"}
}
