package main

import (
	"maps"
	"path"
	"slices"
	"strings"

	"creasefit/openapi"
)

// textSpec is the specification for generators that want one type: each
// calculation by POST, each list by GET, answers in JSON, and one form of each
// value.
func textSpec(spec object) object {
	reduced := clone(spec).(object)
	t := textPatch{reduced["components"].(object)}
	t.spellOut()
	paths := reduced["paths"].(object)
	for path, item := range paths {
		method := "get"
		if item.(object)["post"] != nil {
			method = "post"
		}
		o := item.(object)[method].(object)
		paths[path] = object{method: o}
		if !t.reduce(o) {
			delete(paths, path)
		}
	}
	openapi.Prune(reduced)
	t.simplify(t.components["schemas"])
	return reduced
}

// textPatch takes away from the components of a specification.
type textPatch struct{ components object }

// spellOut puts the names that requests share in their place, so that a type in
// Go has them as its own fields. Only a whole request stays a part of others.
func (t textPatch) spellOut() {
	for _, schema := range t.components["schemas"].(object) {
		s, own := schema.(object), object{}
		whole := slices.DeleteFunc(asList(s["allOf"]), func(part any) bool {
			ref, shared := part.(object)["$ref"].(string)
			if shared && !strings.Contains(ref, "Names") {
				return false
			}
			if shared {
				part = clone(t.resolve("schemas", part))
			}
			maps.Copy(own, part.(object)["properties"].(object))
			return true
		})
		delete(s, "allOf")
		names := object{"type": "object", "properties": own}
		switch {
		case len(whole) > 0:
			s["allOf"] = append(whole, names)
		case len(own) > 0:
			maps.Copy(s, names)
		}
	}
}

// reduce leaves of an operation its path, its JSON body and its JSON answer, of a
// drawing its usual picture. It reports whether the specification has a shape
// for what goes in or, without a body, for what comes out.
func (t textPatch) reduce(o object) bool {
	o["operationId"] = strings.TrimSuffix(o["operationId"].(string), "-post")
	answer := t.resolve("responses", o["responses"].(object)["200"])
	picture := answer["content"].(object)[svg]
	shaped := onlyShapes(answer)
	if !shaped && picture != nil {
		answer["content"].(object)[svg] = picture
	}
	if body, ok := o["requestBody"].(object); ok {
		shaped = onlyShapes(body)
		for _, entry := range body["content"].(object) {
			t.inOneForm(entry.(object))
		}
	}
	o["parameters"] = slices.DeleteFunc(asList(o["parameters"]), func(p any) bool { return p.(object)["in"] != "path" })
	return shaped
}

// svg is the format of a drawing that is asked for without one.
const svg = "image/svg+xml"

// onlyShapes drops the media types of a body that are no JSON or have no
// schema of their own, and reports whether any is left.
func onlyShapes(body object) bool {
	content := body["content"].(object)
	maps.DeleteFunc(content, func(media string, entry any) bool {
		return !isJSON(media) || entry.(object)["schema"].(object)["$ref"] == nil
	})
	return len(content) > 0
}

// resolve follows a reference to a component; nil if the node is none.
func (t textPatch) resolve(group string, node any) object {
	ref, _ := node.(object)["$ref"].(string)
	target, _ := t.components[group].(object)[path.Base(ref)].(object)
	return target
}

// simplify leaves one form of each value: of text and number the text, of one
// and several the list, of several kinds of object one with the members of
// all. Text needs no pointer in Go, since no name takes an empty one.
func (t textPatch) simplify(node any) {
	switch n := node.(type) {
	case list:
		for _, child := range n {
			t.simplify(child)
		}
	case object:
		t.inline(n)
		if types, ok := n["type"].(list); ok {
			n["type"] = types[0]
		}
		if n["type"] == "string" {
			delete(n, "minimum")
			n[skipPointer] = true
		}
		if forms, ok := n["oneOf"].(list); ok {
			delete(n, "oneOf")
			mergeForms(n, forms)
		}
		for _, child := range n {
			t.simplify(child)
		}
		if n["additionalProperties"] == true { // what is written with further members leaves nothing empty out
			properties, _ := n["properties"].(object)
			for _, member := range properties {
				delete(member.(object), skipPointer)
			}
		}
	}
}

// skipPointer says that an empty text stands for none in Go.
const skipPointer = "x-go-type-skip-optional-pointer"

// inline replaces a reference to a text or a number without a list of words by
// what it refers to: no program needs a type of its own for it.
func (t textPatch) inline(n object) {
	target := t.resolve("schemas", n)
	if target == nil || target["enum"] != nil || target["oneOf"] != nil || target["properties"] != nil || target["allOf"] != nil {
		return
	}
	delete(n, "$ref")
	maps.Copy(n, clone(target).(object))
}

// mergeForms adds to a schema the forms that it may have, but for the text
// that stands for an object and the single value that stands for a list.
func mergeForms(schema object, forms list) {
	members := object{}
	for _, form := range forms {
		switch f := form.(object); f["type"] {
		case "array":
			maps.Copy(schema, f)
		case "object":
			maps.Copy(members, f["properties"].(object))
			schema["type"], schema["properties"] = "object", members
			if f["additionalProperties"] == true {
				schema["additionalProperties"] = true
			}
		}
	}
}
