package api

import (
	"bytes"
	"strconv"
	"strings"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/internal/fault"
)

// find returns the value that a JSON Pointer (RFC 6901) leads to.
func find(document []byte, pointer string) ([]byte, fault.Fault) {
	value := document
	for token := range strings.SplitSeq(pointer[1:], "/") {
		token = strings.ReplaceAll(strings.ReplaceAll(token, "~1", "/"), "~0", "~")
		inner, names := descend(value, token)
		if inner == nil {
			return nil, notThere(pointer, token, names)
		}
		value = inner
	}
	return value, fault.Fault{}
}

// pick returns the value that a pointer leads to: a text without its quotes, a
// number as it is, anything else as JSON.
func pick(document []byte, pointer string, comma bool) ([]byte, fault.Fault) {
	value, f := find(document, pointer)
	switch {
	case value == nil:
		return nil, f
	case value[0] == '"':
		return []byte(ask.Unquote(value)), fault.Fault{}
	case comma && (value[0] == '-' || '0' <= value[0] && value[0] <= '9'):
		return bytes.Replace(value, []byte{'.'}, []byte{','}, 1), fault.Fault{}
	default:
		return value, fault.Fault{}
	}
}

// notThere is the fault of a pointer that leads nowhere.
func notThere(pointer, token string, names []string) fault.Fault {
	f := fault.Fault{Code: fault.Unknown, Field: "pick", Value: pointer, Detail: "the answer has no member " + strconv.Quote(ask.Cut(token, ask.MostValue)) + " there"}
	if len(names) > 0 {
		f.Expected = "one of " + strings.Join(names, ", ")
	}
	f.Hint = fault.Meant(fault.Nearest(token, names))
	return f
}

// descend returns a member of an object or an item of a list, or nil and the
// names that there are.
func descend(value []byte, token string) (inner []byte, names []string) {
	for name, member := range ask.Members(value) {
		if name == token {
			return member, nil
		}
		names = append(names, name)
	}
	for item := range ask.Items(value) {
		index := strconv.Itoa(len(names))
		if index == token {
			return item, nil
		}
		names = append(names, index)
	}
	return nil, names
}

// show returns an object with only the named members of the given one, each once.
func show(document []byte, wanted []string) ([]byte, fault.Fault) {
	shown := []byte{'{'}
	seen := map[string]bool{}
	for _, name := range wanted {
		if name = strings.TrimSpace(name); seen[name] {
			continue
		}
		seen[name] = true
		member, names := descend(document, name)
		if member == nil {
			f := notThere(name, name, names)
			f.Field, f.Detail = "show", "the answer has no member "+strconv.Quote(ask.Cut(name, ask.MostValue))
			return nil, f
		}
		if len(seen) > 1 {
			shown = append(shown, ',')
		}
		shown = append(append(tell.AppendString(shown, name), ':'), member...)
	}
	return append(shown, '}'), fault.Fault{}
}
