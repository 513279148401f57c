package api

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"unicode/utf8"

	"creasefit/internal/fault"
)

// mostDepth is how deep a JSON body may be nested before it is refused for
// its depth alone.
const mostDepth = 16

// addJSON adds the members of a JSON object in the order written. The object
// is flat: its members are texts, numbers, true, false, or lists of those for
// the names that take lists. Trailing data, duplicate members and null, which
// encoding/json lets through, are faults; unknown members and those in the
// wrong case are found where names are looked up.
func (r *reading) addJSON(body []byte) {
	if f, ok := unreadableJSON(body); !ok {
		r.report(f, "")
		return
	}
	r.addMembers(&jsonScanner{text: body})
}

// unreadableJSON returns what keeps a text from being read as an object of
// names and values; ok says that nothing does.
func unreadableJSON(body []byte) (f fault.Fault, ok bool) {
	f = fault.Fault{Code: fault.Unreadable, Expected: `one flat JSON object such as {"width": "3 1/2 in"}`}
	s := jsonScanner{text: body}
	switch {
	case depth(body) > mostDepth:
		f.Detail = "the JSON is nested deeper than 16 levels"
	case !json.Valid(body):
		f.Detail = syntaxDetail(body)
	case !utf8.Valid(body):
		f.Detail = "the JSON is not UTF-8"
	case s.peek() != '{':
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

// addMembers adds the members of the object that the scanner stands at.
func (r *reading) addMembers(s *jsonScanner) {
	s.peek()
	s.next()
	for members := 0; s.peek() != '}'; members++ {
		name := s.str()
		s.expect(':')
		if members == mostFields {
			r.report(tooManyFields(), "")
			return
		}
		r.addMember(name, s)
		if s.peek() == ',' {
			s.next()
		}
	}
}

// addMember adds one member, a list as one field for each of its items.
func (r *reading) addMember(name string, s *jsonScanner) {
	if s.peek() != '[' {
		r.addScalar(name, s)
		return
	}
	p := r.table.find(name)
	if p == nil || !p.List {
		value := string(s.skip())
		r.report(fault.Fault{Code: fault.Unreadable, Field: name, Value: value, Detail: "this name takes one value, not a list"}, "")
		return
	}
	s.next()
	for s.peek() != ']' {
		r.addScalar(name, s)
		if s.peek() == ',' {
			s.next()
		}
	}
	s.next()
}

// addScalar adds a text, a number, true or false.
func (r *reading) addScalar(name string, s *jsonScanner) {
	first := s.peek()
	if p := r.table.find(name); first == '{' && p != nil && p.Type == objectType {
		r.add(name, compact(s.skip()))
		return
	}
	switch first {
	case '"':
		r.add(name, s.str())
	case '{', '[':
		value := string(s.skip())
		r.report(fault.Fault{Code: fault.Unreadable, Field: name, Value: value, Detail: "a value is a text or a number, not an object or a list"}, "")
	case 'n':
		s.skip()
		r.report(fault.Fault{Code: fault.Missing, Field: name, Value: "null", Detail: "null is no value", Hint: "leave the name out"}, "")
	default:
		r.add(name, string(s.skip()))
	}
}

// depth returns how deep the brackets of a text are nested, outside strings.
func depth(text []byte) int {
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
