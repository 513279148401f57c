package main

import (
	"maps"
	"path"
	"slices"
	"strings"
)

// clientSpec is what a Go caller needs of the specification, in what the
// generator can express: each calculation by POST, each list by GET, answers
// in JSON, and one form of each value.
func clientSpec(spec object) object {
	reduced := clone(spec).(object)
	c := clientPatch{reduced["components"].(object)}
	paths := reduced["paths"].(object)
	for path, item := range paths {
		method := "get"
		if item.(object)["post"] != nil {
			method = "post"
		}
		o := item.(object)[method].(object)
		paths[path] = object{method: o}
		if !c.reduce(o) {
			delete(paths, path)
		}
	}
	c.simplify(c.components["schemas"])
	c.dropEnclosed()
	return reduced
}

// clientPatch takes away from the components of a specification.
type clientPatch struct{ components object }

// reduce leaves of an operation its path, its JSON body, its JSON answer and
// one problem, since they are all alike. It reports whether the specification
// has a shape for what goes in or, without a body, for what comes out.
func (c clientPatch) reduce(o object) bool {
	o["operationId"] = strings.TrimSuffix(o["operationId"].(string), "-post")
	responses := o["responses"].(object)
	maps.DeleteFunc(responses, func(status string, _ any) bool { return status != "200" && status != "400" })
	shaped := onlyShapes(c.resolve("responses", responses["200"]))
	if body, ok := o["requestBody"].(object); ok {
		shaped = onlyShapes(body)
	}
	o["parameters"] = slices.DeleteFunc(asList(o["parameters"]), func(p any) bool { return p.(object)["in"] != "path" })
	return shaped
}

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
func (c clientPatch) resolve(group string, node any) object {
	ref, _ := node.(object)["$ref"].(string)
	target, _ := c.components[group].(object)[path.Base(ref)].(object)
	return target
}

// simplify leaves one form of each value: of text and number the text, of one
// and several the list, of several kinds of object one with the members of
// all. Text needs no pointer in Go, since no name takes an empty one.
func (c clientPatch) simplify(node any) {
	switch n := node.(type) {
	case list:
		for _, child := range n {
			c.simplify(child)
		}
	case object:
		c.inline(n)
		if types, ok := n["type"].(list); ok {
			n["type"] = types[0]
		}
		if n["type"] == "string" {
			n["x-go-type-skip-optional-pointer"] = true
		}
		if forms, ok := n["oneOf"].(list); ok {
			delete(n, "oneOf")
			c.mergeForms(n, forms)
		}
		for _, child := range n {
			c.simplify(child)
		}
	}
}

// inline replaces a reference to a text or a number without a list of words by
// what it refers to: Go needs no type of its own for it.
func (c clientPatch) inline(n object) {
	target := c.resolve("schemas", n)
	if target == nil || target["enum"] != nil || target["oneOf"] != nil || target["properties"] != nil {
		return
	}
	delete(n, "$ref")
	maps.Copy(n, clone(target).(object))
}

// mergeForms adds to a schema the forms that it may have, but for the text
// that stands for an object and the single value that stands for a list.
func (c clientPatch) mergeForms(schema object, forms list) {
	members := object{}
	for _, form := range forms {
		switch f := form.(object); f["type"] {
		case "array":
			maps.Copy(schema, f)
			schema["description"] = c.help(f["items"])
		case "object":
			maps.Copy(members, f["properties"].(object))
			schema["type"], schema["properties"] = "object", members
			if f["additionalProperties"] == true {
				delete(members, "kind")
				members["enclosure"] = enclosure()
			}
		}
	}
}

// enclosure stands in Go for a kind and the names of its solution; the client
// writes those.
func enclosure() object {
	return object{"description": "A kind with its names: a RequestSolveBand or its like.",
		"x-go-type": "Request", "x-go-type-skip-optional-pointer": true, "x-oapi-codegen-extra-tags": object{"json": "-"}}
}

// dropEnclosed drops what an object repeats of the names of its enclosure.
func (c clientPatch) dropEnclosed() {
	schemas := c.components["schemas"].(object)
	solve := schemas["RequestSolve"+camel(kindNames()[0].(string))].(object)["properties"].(object)
	for _, schema := range schemas {
		properties, _ := schema.(object)["properties"].(object)
		if properties["enclosure"] == nil {
			continue
		}
		maps.DeleteFunc(properties, func(name string, member any) bool {
			return solve[name] != nil && c.help(solve[name]) == c.help(member)
		})
	}
}

// help is the description of a schema or of what it refers to.
func (c clientPatch) help(schema any) any {
	if target := c.resolve("schemas", schema); target != nil {
		return target["description"]
	}
	return schema.(object)["description"]
}
