package ask

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"unicode/utf8"

	"creasefit/internal/fault"
)

// MostDepth is how deep a JSON body may be nested before it is refused for
// its depth alone.
const MostDepth = 16

// AddJSON adds the members of a JSON object in the order written. The object
// is flat: its members are texts, numbers, true, false, or lists of those for
// the names that take lists. Trailing data, duplicate members and null, which
// encoding/json lets through, are faults; unknown members and those in the
// wrong case are found where names are looked up.
func (r *Reading) AddJSON(body []byte) {
	if f, ok := UnreadableJSON(body); !ok {
		r.Report(f, "")
		return
	}
	r.AddMembers(body)
}

// UnreadableJSON returns what keeps a text from being read as an object of
// names and values; ok says that nothing does.
func UnreadableJSON(body []byte) (f fault.Fault, ok bool) {
	f = fault.Fault{Code: fault.Unreadable, Expected: `one flat JSON object such as {"width": "3 1/2 in"}`}
	s := Scanner{Text: body}
	switch {
	case Depth(body) > MostDepth:
		f.Detail = "the JSON is nested deeper than 16 levels"
	case !json.Valid(body):
		f.Detail = syntaxDetail(body)
	case !utf8.Valid(body):
		f.Detail = "the JSON is not UTF-8"
	case s.Peek() != '{':
		f.Detail = "the body is not a JSON object"
	default:
		return f, true
	}
	return f, false
}

// syntaxDetail says where a text stops being JSON.
func syntaxDetail(body []byte) string {
	if len(bytes.TrimSpace(body)) == 0 {
		return "the body is empty"
	}
	var syntax *json.SyntaxError
	var raw json.RawMessage
	if err := json.Unmarshal(body, &raw); errors.As(err, &syntax) {
		return fmt.Sprintf("the body is not JSON: %s at byte %d", syntax.Error(), syntax.Offset)
	}
	return "the body is not JSON"
}

// AddMembers adds the members of a text that UnreadableJSON finds no fault with.
func (r *Reading) AddMembers(object []byte) {
	many := 0
	for name, value := range members(object, r.table.word) {
		if many == MostNames {
			r.Report(tooManyFields(), "")
			return
		}
		many++
		r.addMember(name, value)
	}
}

// addMember adds one member, a list as one field for each of its items.
func (r *Reading) addMember(name string, value []byte) {
	if value[0] != '[' {
		r.addScalar(name, value)
		return
	}
	if p := r.table.find(name); p == nil || !p.List {
		r.Report(fault.Fault{Code: fault.Unreadable, Field: name, Value: string(value), Detail: "this name takes one value, not a list"}, "")
		return
	}
	for item := range Items(value) {
		r.addScalar(name, item)
	}
}

// addScalar adds a text, a number, true or false.
func (r *Reading) addScalar(name string, value []byte) {
	if p := r.table.find(name); value[0] == '{' && p != nil && p.Type == ObjectType {
		r.Add(name, compact(value))
		return
	}
	switch value[0] {
	case '"':
		r.Add(name, Unquote(value))
	case '{', '[':
		r.Report(fault.Fault{Code: fault.Unreadable, Field: name, Value: string(value), Detail: "a value is a text or a number, not an object or a list"}, "")
	case 'n':
		r.Report(fault.Fault{Code: fault.Missing, Field: name, Value: "null", Detail: "null is no value", Hint: "leave the name out"}, "")
	default:
		r.Add(name, string(value))
	}
}

// Depth returns how deep the brackets of a text are nested, outside strings.
func Depth(text []byte) int {
	deep, deepest := 0, 0
	for i := 0; i < len(text); i++ {
		switch text[i] {
		case '"':
			i = stringEnd(text, i) - 1
		case '{', '[':
			deep++
			deepest = max(deepest, deep)
		case '}', ']':
			deep--
		}
	}
	return deepest
}
