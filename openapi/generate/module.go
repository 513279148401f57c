package main

import (
	"bytes"
	"embed"
	"encoding/json"
	"fmt"
	"maps"
	"path"
	"slices"
	"strings"
	"text/template"

	"creasefit/api"
	"creasefit/api/wire"
)

//go:embed module/*.tmpl
var moduleTemplates embed.FS

// module is what the templates of the JavaScript module are filled with: the calls
// about one kind by their first word and the kind, calculations and lists by their names.
type module struct {
	Version      string
	Schemas      object
	OfKind       map[string]map[string]object
	Plain, Lists map[string]moduleCall
}

// moduleCall is a call that is not about one kind. In JavaScript it is its path.
type moduleCall struct {
	Path      string
	Operation object
}

// MarshalJSON writes the path.
func (c moduleCall) MarshalJSON() ([]byte, error) { return json.Marshal(c.Path) }

// OfKind reports whether the path has a gap for a kind.
func (c moduleCall) OfKind() bool { return strings.Contains(c.Path, "{kind}") }

// moduleOf returns the files of the JavaScript module of a specification with its
// types, laid out as a package.
func moduleOf(text object) map[string][]byte {
	components := text["components"].(object)
	functions := template.FuncMap{
		"literal": literal, "keys": func(calls map[string]map[string]object) []string { return slices.Sorted(maps.Keys(calls)) },
		"doc": doc, "title": title, "typeName": typeName, "typeOf": typeOf, "asked": func(o object) string {
			return typeOf(o["requestBody"].(object)["content"].(object)["application/json"].(object)["schema"].(object), "")
		},
		"answer": func(o object) string { return answerType(o, components["responses"].(object)) },
	}
	data, files := moduleData(text["paths"].(object)), map[string][]byte{}
	data.Schemas = components["schemas"].(object)
	for _, t := range template.Must(template.New("").Funcs(functions).ParseFS(moduleTemplates, "module/*.tmpl")).Templates() {
		var b bytes.Buffer
		if err := t.Execute(&b, data); err != nil {
			panic(err) // the templates are our own
		}
		files[strings.TrimSuffix(t.Name(), ".tmpl")] = b.Bytes()
	}
	return files
}

// literal writes a value as it stands in JavaScript.
func literal(v any) string {
	text, err := json.Marshal(v)
	if err != nil {
		panic(err) // texts always can be written
	}
	return string(text)
}

// moduleData sorts the operations of a specification.
func moduleData(paths object) *module {
	m := &module{Version: api.Release, OfKind: map[string]map[string]object{}, Plain: map[string]moduleCall{}, Lists: map[string]moduleCall{}}
	for path, methods := range paths {
		parts := strings.Split(strings.TrimPrefix(path, "/v1/"), "/")
		post, calculates := methods.(object)["post"].(object)
		get, reads := methods.(object)["get"].(object)
		switch {
		case !strings.HasPrefix(path, "/v1/") || path == "/v1/batch":
		case calculates && len(parts) == 2:
			if m.OfKind[parts[0]] == nil {
				m.OfKind[parts[0]] = map[string]object{}
			}
			m.OfKind[parts[0]][parts[1]] = post
		case calculates:
			m.Plain[parts[0]] = moduleCall{path, post}
		case reads:
			name := camel(get["operationId"].(string))
			m.Lists[strings.ToLower(name[:1])+name[1:]] = moduleCall{path, get}
		}
	}
	return m
}

// answerType is the type of the JSON answer; a picture is a text.
func answerType(o, shared object) string {
	response := o["responses"].(object)["200"].(object)
	if ref, ok := response["$ref"].(string); ok {
		response = shared[path.Base(ref)].(object)
	}
	content, _ := response["content"].(object)
	answer, ok := content["application/json"].(object)
	if !ok || answer["schema"] == nil {
		return "string"
	}
	return typeOf(answer["schema"].(object), "")
}

// typeOf writes a schema as a type, its members indented.
func typeOf(schema object, indent string) string {
	if ref, ok := schema["$ref"].(string); ok {
		return typeName(path.Base(ref))
	}
	for word, joint := range map[string]string{"allOf": " & ", "oneOf": " | ", "anyOf": " | "} {
		if parts, ok := schema[word].(list); ok {
			return "(" + strings.Join(wire.Each(parts, func(part any) string { return typeOf(part.(object), indent) }), joint) + ")"
		}
	}
	if words, ok := schema["enum"].(list); ok {
		return strings.Join(wire.Each(words, literal), " | ")
	}
	return plainType(schema, indent)
}

// plainType writes a schema that is no choice.
func plainType(schema object, indent string) string {
	switch schema["type"] {
	case "string", "number", "boolean":
		return schema["type"].(string)
	case "integer":
		return "number"
	case "array":
		items, ok := schema["items"].(object)
		if !ok {
			return "unknown[]"
		}
		return "Array<" + typeOf(items, indent) + ">"
	default:
		return objectType(schema, indent)
	}
}

// objectType writes an object.
func objectType(schema object, indent string) string {
	members, _ := schema["properties"].(object)
	if len(members) == 0 {
		if more, ok := schema["additionalProperties"].(object); ok {
			return "Record<string, " + typeOf(more, indent) + ">"
		}
		return "Record<string, unknown>"
	}
	var b strings.Builder
	needed := asList(schema["required"])
	b.WriteString("{\n")
	for _, name := range slices.Sorted(maps.Keys(members)) {
		member, inner := members[name].(object), indent+"  "
		mark := "?"
		if slices.Contains(needed, any(name)) {
			mark = ""
		}
		fmt.Fprintf(&b, "%s%s%s%s: %s;\n", doc(member, inner), inner, literal(name), mark, typeOf(member, inner))
	}
	return b.String() + indent + "}"
}

// doc is what a schema is described with as a comment.
func doc(schema object, indent string) string {
	text, _ := schema["description"].(string)
	if text == "" {
		return ""
	}
	return indent + "/** " + strings.ReplaceAll(strings.ReplaceAll(text, "*/", ""), "\n", " ") + " */\n"
}

// typeName is a schema's name as a type.
func typeName(name string) string {
	return strings.NewReplacer(".", "", "-", "", "_", "").Replace(name)
}

// title writes a word with a capital.
func title(word string) string { return strings.ToUpper(word[:1]) + word[1:] }
