package main

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"text/template"

	"creasefit/api"
)

//go:embed module.js.tmpl
var moduleTemplate string

// moduleCalls are the calls of the JavaScript module: those about one kind by
// their first word and the kind, calculations and lists by their names.
type moduleCalls struct {
	ofKind       map[string]map[string]object // operations by call and kind
	plain, lists map[string]string            // paths by name
	operations   map[string]object            // those of plain calls and lists
}

// moduleOf returns the files of the JavaScript module of a specification with its
// types, laid out as a package.
func moduleOf(text object) map[string][]byte {
	calls := callsOf(text)
	var module bytes.Buffer
	err := template.Must(template.New("module").Parse(moduleTemplate)).Execute(&module, map[string]string{
		"Version": api.Release, "OfKind": literal(slices.Sorted(maps.Keys(calls.ofKind))), "Plain": literal(calls.plain), "Lists": literal(calls.lists),
	})
	if err != nil {
		panic(err) // the template is our own
	}
	return map[string][]byte{"creasefit.js": module.Bytes(), "creasefit.d.ts": []byte(typesOf(text, calls)), "package.json": fmt.Appendf(nil, packageManifest, api.Release)}
}

// packageManifest is the manifest of a package, whose conditions are looked at in
// the order written.
const packageManifest = `{
  "name": "creasefit",
  "version": %q,
  "description": "Asks a Creasefit service: one typed function a call.",
  "type": "module",
  "exports": { ".": { "types": "./creasefit.d.ts", "default": "./creasefit.js" } },
  "types": "./creasefit.d.ts",
  "files": ["creasefit.js", "creasefit.d.ts"],
  "engines": { "node": ">=20" },
  "sideEffects": false
}
`

// literal writes a value as it stands in JavaScript.
func literal(v any) string {
	text, err := json.Marshal(v)
	if err != nil {
		panic(err) // texts always can be written
	}
	return string(text)
}

// callsOf sorts the operations of a specification.
func callsOf(text object) *moduleCalls {
	calls := &moduleCalls{ofKind: map[string]map[string]object{}, plain: map[string]string{}, lists: map[string]string{}, operations: map[string]object{}}
	for path, methods := range text["paths"].(object) {
		parts := strings.Split(strings.TrimPrefix(path, "/v1/"), "/")
		post, calculates := methods.(object)["post"].(object)
		get, reads := methods.(object)["get"].(object)
		switch {
		case !strings.HasPrefix(path, "/v1/") || path == "/v1/batch":
		case calculates && len(parts) == 2:
			if calls.ofKind[parts[0]] == nil {
				calls.ofKind[parts[0]] = map[string]object{}
			}
			calls.ofKind[parts[0]][parts[1]] = post
		case calculates:
			calls.plain[parts[0]], calls.operations[parts[0]] = path, post
		case reads:
			name := functionName(get["operationId"].(string))
			calls.lists[name], calls.operations[name] = path, get
		}
	}
	return calls
}

// functionName is an operation's id as the name of a function.
func functionName(id string) string {
	words := strings.Split(id, "-")
	for i, word := range words[1:] {
		words[i+1] = title(word)
	}
	return strings.Join(words, "")
}

// typesOf writes the declarations: an interface a schema, and the functions.
func typesOf(text object, calls *moduleCalls) string {
	var b strings.Builder
	fmt.Fprintf(&b, "// Creasefit %s: the types of creasefit.js. Made from the specification.\n\n", api.Release)
	schemas, responses := text["components"].(object)["schemas"].(object), text["components"].(object)["responses"].(object)
	for _, name := range slices.Sorted(maps.Keys(schemas)) {
		schema := schemas[name].(object)
		writeDoc(&b, schema, "")
		fmt.Fprintf(&b, "export type %s = %s;\n", typeName(name), typeOf(schema, ""))
	}
	writeKindTypes(&b, calls, responses)
	b.WriteString(fixedTypes)
	for _, call := range slices.Sorted(maps.Keys(calls.ofKind)) {
		name := title(call)
		fmt.Fprintf(&b, "  %s<K extends keyof %sNames>(kind: K, names: %sNames[K] & Narrowing, how: How & { format: Format }): Promise<string | Blob>;\n", call, name, name)
		fmt.Fprintf(&b, "  %s<K extends keyof %sNames>(kind: K, names: %sNames[K] & Narrowing, how?: How): Promise<%sAnswers[K]>;\n", call, name, name, name)
	}
	for _, call := range slices.Sorted(maps.Keys(calls.plain)) {
		o := calls.operations[call]
		fmt.Fprintf(&b, "  %s(names: %s & Narrowing, how: How & { format: Format }): Promise<string | Blob>;\n", call, requestType(o))
		fmt.Fprintf(&b, "  %s(names: %s & Narrowing, how?: How): Promise<%s>;\n", call, requestType(o), answerType(o, responses))
	}
	for _, call := range slices.Sorted(maps.Keys(calls.lists)) {
		argument := ""
		if strings.Contains(calls.lists[call], "{kind}") {
			argument = "kind: string, "
		}
		fmt.Fprintf(&b, "  %s(%show?: How): Promise<%s>;\n", call, argument, answerType(calls.operations[call], responses))
	}
	b.WriteString("}\n")
	return b.String()
}

// writeKindTypes writes what the calls about one kind are asked and answer, by kind.
func writeKindTypes(b *strings.Builder, calls *moduleCalls, responses object) {
	for _, call := range slices.Sorted(maps.Keys(calls.ofKind)) {
		of := calls.ofKind[call]
		fmt.Fprintf(b, "\n/** What %s is asked, by kind. */\nexport interface %sNames {\n", call, title(call))
		for _, kind := range slices.Sorted(maps.Keys(of)) {
			fmt.Fprintf(b, "  %q: %s;\n", kind, requestType(of[kind]))
		}
		fmt.Fprintf(b, "}\n\n/** What %s answers, by kind. */\nexport interface %sAnswers {\n", call, title(call))
		for _, kind := range slices.Sorted(maps.Keys(of)) {
			fmt.Fprintf(b, "  %q: %s;\n", kind, answerType(of[kind], responses))
		}
		b.WriteString("}\n")
	}
}

// fixedTypes are the declarations that no schema has.
const fixedTypes = `
/** A format that is no JSON. */
export type Format = "csv" | "xml" | "text" | "markdown" | "html" | "svg" | "pdf" | "png" | "dxf" | "fold" | "glb";

/** How to ask; format names another than JSON, post asks by POST. */
export interface How { format?: Format; signal?: AbortSignal; post?: boolean }

/** Names that narrow the answer: those of pick and show have another type than the whole. */
export interface Narrowing { show?: string; pick?: string; decimal?: "point" | "comma" }

/** One calculation of a batch: the path of its call, an id that comes back, and its names. */
export interface Line { call?: string; kind?: string; id?: string; [name: string]: unknown }

/** The answer to one line, or its problem. */
export interface LineAnswer { line: number; id?: string; status: number; answer?: unknown; problem?: Problem }

/** What the service says is wrong (RFC 9457). */
export class CreasefitProblem extends Error {
  status: number;
  problem: { [name in keyof Problem]?: Problem[name] };
  errors: NonNullable<Problem["errors"]>;
}

export interface Settings { fetch?: typeof fetch; tries?: number; headers?: Record<string, string> }

/** The service at an address; by default where this module comes from. */
export function creasefit(base?: string | URL, settings?: Settings): Creasefit;

/** One function a call. */
export interface Creasefit {
  batch(lines: Iterable<Line>, names?: Record<string, string>, how?: { signal?: AbortSignal }): AsyncGenerator<LineAnswer>;
  table(text: string, names?: Record<string, string>, how?: { signal?: AbortSignal }): Promise<string>;
`

// requestType is the type of what an operation is asked.
func requestType(o object) string {
	content := o["requestBody"].(object)["content"].(object)["application/json"].(object)
	return typeOf(content["schema"].(object), "")
}

// answerType is the type of the JSON answer; a picture is a text.
func answerType(o, shared object) string {
	response := o["responses"].(object)["200"].(object)
	if ref, ok := response["$ref"].(string); ok {
		response = shared[ref[strings.LastIndexByte(ref, '/')+1:]].(object)
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
		return typeName(ref[strings.LastIndexByte(ref, '/')+1:])
	}
	for word, joint := range map[string]string{"allOf": " & ", "oneOf": " | ", "anyOf": " | "} {
		if parts, ok := schema[word].(list); ok {
			types := make([]string, len(parts))
			for i, part := range parts {
				types[i] = typeOf(part.(object), indent)
			}
			return "(" + strings.Join(types, joint) + ")"
		}
	}
	if words, ok := schema["enum"].(list); ok {
		types := make([]string, len(words))
		for i, word := range words {
			types[i] = literal(word)
		}
		return strings.Join(types, " | ")
	}
	return plainType(schema, indent)
}

// plainType writes a schema that is no choice.
func plainType(schema object, indent string) string {
	switch schema["type"] {
	case "string":
		return "string"
	case "number", "integer":
		return "number"
	case "boolean":
		return "boolean"
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
	needed := map[string]bool{}
	for _, name := range asList(schema["required"]) {
		needed[fmt.Sprint(name)] = true
	}
	var b strings.Builder
	b.WriteString("{\n")
	for _, name := range slices.Sorted(maps.Keys(members)) {
		member, inner := members[name].(object), indent+"  "
		writeDoc(&b, member, inner)
		mark := "?"
		if needed[name] {
			mark = ""
		}
		fmt.Fprintf(&b, "%s%s%s: %s;\n", inner, literal(name), mark, typeOf(member, inner))
	}
	return b.String() + indent + "}"
}

// writeDoc writes what a schema is described with as a comment.
func writeDoc(b *strings.Builder, schema object, indent string) {
	if text, ok := schema["description"].(string); ok && text != "" {
		b.WriteString(indent + "/** " + strings.ReplaceAll(strings.ReplaceAll(text, "*/", ""), "\n", " ") + " */\n")
	}
}

// typeName is a schema's name as a type.
func typeName(name string) string {
	return strings.NewReplacer(".", "", "-", "", "_", "").Replace(name)
}

// title writes a word with a capital.
func title(word string) string { return strings.ToUpper(word[:1]) + word[1:] }
