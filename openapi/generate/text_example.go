package main

import (
	"encoding/json"
	"slices"
)

// standsFor is how a text says which member of an object it may stand for.
const standsFor = "x-stands-for"

// inOneForm writes the example of a request in the forms that textSpec leaves:
// a number that may be a text as text, a plain text that stands for an object as
// one, a single value that stands for a list as a list.
func (t textPatch) inOneForm(entry object) {
	example, _ := entry["example"].(object)
	for name, value := range example {
		example[name] = t.oneForm(t.memberOf(entry["schema"], name), value)
	}
}

// memberOf is the schema of a member of an object; empty if it has none.
func (t textPatch) memberOf(schema any, name string) object {
	s, _ := schema.(object)
	if target := t.resolve("schemas", s); target != nil {
		s = target
	}
	properties, _ := s["properties"].(object)
	if member, ok := properties[name].(object); ok {
		return member
	}
	for _, part := range slices.Concat(asList(s["allOf"]), asList(s["oneOf"])) {
		if member := t.memberOf(part, name); len(member) > 0 {
			return member
		}
	}
	return object{}
}

// oneForm writes a value in the form that its schema is left with.
func (t textPatch) oneForm(schema object, value any) any {
	if target := t.resolve("schemas", schema); target != nil {
		schema = target
	}
	forms := asList(schema["oneOf"])
	i := slices.IndexFunc(forms, func(f any) bool { return f.(object)["type"] == "array" })
	if i >= 0 {
		values, ok := value.(list)
		if !ok {
			values = list{value}
		}
		for n := range values {
			values[n] = t.oneForm(forms[i].(object)["items"].(object), values[n])
		}
		return values
	}
	switch v := value.(type) {
	case json.Number:
		if types, ok := schema["type"].(list); ok && types[0] == "string" {
			return v.String()
		}
	case string:
		for _, form := range forms {
			if name, ok := form.(object)[standsFor].(string); ok {
				return object{name: v}
			}
		}
	case object:
		for name, member := range v {
			v[name] = t.oneForm(t.memberOf(schema, name), member)
		}
	}
	return value
}
