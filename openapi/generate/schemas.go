package main

import (
	"maps"
	"strings"
)

// renameSchemas drops the name of the package from the names of schemas.
func renameSchemas(spec object) {
	schemas := spec["components"].(object)["schemas"].(object)
	for name, schema := range maps.Clone(schemas) {
		delete(schemas, name)
		schemas[schemaName(name)] = schema
	}
	renameRefs(spec)
}

// schemaName is the name of a type without its package; those of a guide keep
// it as their beginning, since some are called like those of a solution.
func schemaName(name string) string {
	if part, ok := strings.CutPrefix(name, "guide."); ok && part != "Guide" {
		return "Guide" + part
	}
	return strings.TrimPrefix(strings.TrimPrefix(name, "guide."), "wire.")
}

// renameRefs does the same to every reference.
func renameRefs(node any) {
	switch n := node.(type) {
	case object:
		if ref, ok := n["$ref"].(string); ok {
			at := strings.LastIndex(ref, "/") + 1
			n["$ref"] = ref[:at] + schemaName(ref[at:])
		}
		for _, child := range n {
			renameRefs(child)
		}
	case list:
		for _, child := range n {
			renameRefs(child)
		}
	}
}

// membersRef is the type of the members of an object that a Go list stands for
// because their order says something (see the member tag of package wire).
const membersRef = "#/components/schemas/Given"

// tidySchemas drops what only repeats a default. Answers are open: they may get
// further members.
func tidySchemas(schemas object) {
	for _, schema := range schemas {
		s := schema.(object)
		properties, ok := s["properties"].(object)
		if !ok {
			continue
		}
		for _, property := range properties {
			p := property.(object)
			delete(p, "uniqueItems")
			if items, ok := p["items"].(object); ok && items["$ref"] == membersRef {
				delete(p, "items")
				p["type"], p["additionalProperties"] = "object", items
			}
		}
	}
}

// textSchemas says that answers which are no JSON are texts, and drops the
// JSON that the swag tool lists beside them when there is a problem as well.
func textSchemas(o object) {
	content, _ := o["responses"].(object)["200"].(object)["content"].(object)
	if beside, ok := content["application/json"].(object); ok && len(content) > 1 && bare(beside["schema"].(object)) {
		delete(content, "application/json")
	}
	for media, entry := range content {
		if !isJSON(media) {
			entry.(object)["schema"] = object{"type": "string"}
		}
	}
}

// clone copies a JSON value.
func clone(node any) any {
	switch n := node.(type) {
	case object:
		c := make(object, len(n))
		for k, v := range n {
			c[k] = clone(v)
		}
		return c
	case list:
		c := make(list, len(n))
		for i, v := range n {
			c[i] = clone(v)
		}
		return c
	default:
		return n
	}
}

// asList returns a list, which may be absent.
func asList(node any) list {
	l, _ := node.(list)
	return l
}

// bare reports whether a schema says nothing but a type.
func bare(schema object) bool { return schema["$ref"] == nil && len(schema) == 1 }
