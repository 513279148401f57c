package ask

import (
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/measure"
)

// compact writes valid JSON without its spaces.
func compact(text []byte) string {
	var b strings.Builder
	b.Grow(len(text))
	for i := 0; i < len(text); i++ {
		switch from := i; text[i] {
		case ' ', '\t', '\r', '\n':
		case '"':
			i = stringEnd(text, i) - 1
			b.Write(text[from : i+1])
		default:
			b.WriteByte(text[i])
		}
	}
	return b.String()
}

// isObject reports whether a text is meant as a JSON object.
func isObject(text string) bool { return strings.HasPrefix(strings.TrimSpace(text), "{") }

// inner reads one object, or the plain text that stands for one, as a request
// of its own with the same units. ok says that it is an object; what is wrong
// with its values is found by Check.
func inner[Q Request](r *Reading, f *Form[Q], text, short string) (a *Asked[Q], ok bool) {
	a = f.Take()
	a.unit, a.named, a.mistaken, a.decimal = r.unit, r.named, r.mistaken, r.decimal
	if short != "" && !isObject(text) {
		a.Add(short, text)
	} else if f, ok := UnreadableJSON([]byte(text)); ok {
		a.AddMembers([]byte(text))
	} else {
		f.Value, f.Expected = text, "a JSON object"
		a.Report(f, "")
		return a, false
	}
	a.Parse()
	return a, true
}

// adopt reports the faults of an inner request under the name that leads to
// it. Those of names that it has taken from this one are reported once, as
// this one's.
func (r *Reading) adopt(inner *Reading, name string, taken map[string]bool) {
	for _, f := range inner.faults {
		if !taken[f.Field] {
			f = f.Under(name)
		} else if slices.Contains(r.faults, f) {
			continue
		}
		r.Report(f, "")
	}
	r.hidden += inner.hidden
	if r.unit == measure.NoUnit {
		r.unit = inner.unit
	}
}

// entry writes the name of one entry of a list.
func entry(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }
