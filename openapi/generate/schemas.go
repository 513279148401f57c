package main

import "regexp"

// typeNames are the names of types of Go, as schemas are called and referred to.
var typeNames = regexp.MustCompile(`"(#/components/schemas/)?(wire|guide)\.(\w+)"`)

// renamed drops the names of packages from the names of schemas in a document. Those of
// a guide keep it as their beginning, since some are called like those of a solution.
func renamed(document []byte) []byte {
	return typeNames.ReplaceAllFunc(document, func(quoted []byte) []byte {
		name := typeNames.FindStringSubmatch(string(quoted))
		if name[2] == "guide" && name[3] != "Guide" {
			name[1] += "Guide"
		}
		return []byte(`"` + name[1] + name[3] + `"`)
	})
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
