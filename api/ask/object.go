package ask

import (
	"bytes"
	"encoding/json"
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// Shape is one shape that an object may have. In a query string it is written
// as JSON.
type Shape struct {
	Help     string
	Names    []Name
	Required []string
	Short    string // the name that a plain text in the object's place stands for
	Open     bool   // takes further names, which the specification does not list
}

// shapeOf is the shape of an object with these names.
func shapeOf(help string, names []Name, required ...string) Shape {
	return Shape{Help: help, Names: names, Required: required}
}

// pickNames returns some of the names, in the order asked for.
func pickNames(names []Name, picked ...string) []Name {
	some := make([]Name, len(picked))
	for i, name := range picked {
		some[i] = names[slices.IndexFunc(names, func(n Name) bool { return n.Name == name })]
	}
	return some
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

// kindNamed returns the kind that an object names, empty if it names none.
func kindNamed(text string) string {
	if _, ok := UnreadableJSON([]byte(text)); !ok {
		return ""
	}
	return Member([]byte(text), "kind")
}

// noSuchKind is the fault of an object of a kind that there is not.
func noSuchKind(field, name string) fault.Fault {
	kinds := kindName()
	f := fault.Fault{Code: fault.Unknown, Field: field, Value: name, Detail: "there is no such kind of enclosure", Expected: kinds.expected(measure.NoUnit)}
	if nearest := fault.Nearest(strings.ToLower(name), kinds.Choices); nearest != "" {
		f.Hint = "did you mean " + nearest + "?"
	}
	return f
}
