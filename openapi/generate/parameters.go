package main

import (
	"regexp"
	"strings"

	"creasefit/api"
	"creasefit/api/wire"
)

// queryParameter describes a name in a query string, where every value is
// text.
func (p *patch) queryParameter(call api.CallSpec, q wire.Parameter) (object, error) {
	schema := schemaOf(q, false)
	parameter := object{"name": q.Name, "in": "query", "description": explain(q), "schema": schema, "example": example(q)}
	if q.List {
		parameter["schema"] = object{"type": "array", "items": schema, "maxItems": q.Most}
		parameter["explode"], parameter["example"] = true, list{q.Example}
	}
	return p.share("parameters", q.Name, call.Path, parameter)
}

// value refers to the shared schema of one value of a name in JSON.
func (p *patch) value(call api.CallSpec, q wire.Parameter) (object, error) {
	schema := schemaOf(q, true)
	schema["description"] = explain(q)
	return p.share("schemas", camel(q.Name)+"Value", call.Path, schema)
}

// example is a value of the name's type.
func example(q wire.Parameter) any {
	if q.Type == "count" || q.Type == "number" {
		return number(q.Example)
	}
	return q.Example
}

// requestBody describes the names of a calculation as one JSON object. Those
// that say how to answer stand in the address, and the same names as a form are
// told in words. The other calls about what is solved have its names as a part,
// so that a program states an enclosure once.
func (p *patch) requestBody(call api.CallSpec, summary string) (object, error) {
	name, schemas := "Request"+camel(call.Path), p.components["schemas"].(object)
	solve := enclosureCall.ReplaceAllString(name, "RequestSolve")
	part, _ := schemas[solve].(object)
	own := object{}
	for _, q := range call.Parameters {
		if shared, _ := part["properties"].(object); q.About == "answer" || shared[q.Name] != nil {
			continue
		}
		value, err := p.value(call, q)
		if err != nil {
			return nil, err
		}
		if own[q.Name] = value; q.List {
			own[q.Name] = object{"oneOf": list{value, object{"type": "array", "items": value, "minItems": 1, "maxItems": q.Most}}}
		}
	}
	schema := object{"type": "object", "properties": own}
	if part != nil {
		schema = object{"allOf": list{reference(solve), schema}}
	}
	schema["description"] = "asks for: " + summary + "."
	schemas[name] = schema
	content := object{
		"application/json":                  object{"schema": reference(name), "example": decoded([]byte(call.Body))},
		"application/x-www-form-urlencoded": object{"schema": reference("Form")},
	}
	if call.Table != "" {
		content["text/csv"] = object{"schema": object{"type": "string"}, "example": call.Table}
	}
	return object{"required": false, "content": content}, nil
}

// enclosureCall begins the name of a request about what the call that solves
// takes as well.
var enclosureCall = regexp.MustCompile("^Request(Check|Drawing|Guide)")

// form is what an HTML form sends.
var form = object{"type": "object", "additionalProperties": true, "description": "The names of the JSON body, each value as text; a list by giving its name several times."}

// schemaOf is the schema of one value; in JSON a number may be a JSON number.
func schemaOf(q wire.Parameter, inJSON bool) object {
	switch q.Type {
	case "choice":
		return object{"type": "string", "enum": words(q.Choices)}
	case "preset":
		return object{"type": "string", "enum": words(q.Words)}
	case "count", "number":
		return numberSchema(q, inJSON)
	case "length":
		s := object{"type": "string", "minLength": 1, "maxLength": 32, "x-unit": "length", "x-least": bound(q.Least), "x-greatest": bound(q.Greatest)}
		if inJSON {
			s["type"], s["minimum"] = list{"string", "number"}, 0
		}
		if q.Default != nil {
			s["x-default"] = object{"in": q.Default.In, "mm": q.Default.MM}
		}
		return s
	case "object":
		return objectSchema(q, inJSON)
	case "text":
		return object{"type": "string", "minLength": 1, "maxLength": 256}
	default:
		return object{"type": "string", "minLength": 1, "maxLength": 64}
	}
}

// objectSchema is the schema of an object in any of its forms; a query string
// has it as JSON, or a plain text that stands for it.
func objectSchema(q wire.Parameter, inJSON bool) object {
	text := object{"type": "string", "minLength": 1, "maxLength": q.Longest}
	if !inJSON {
		return text
	}
	var forms list
	for _, f := range q.Forms {
		members := object{}
		for _, m := range f.Members {
			member := schemaOf(m, true)
			member["description"] = explain(m)
			members[m.Name] = member
		}
		forms = append(forms, object{"type": "object", "description": f.Help, "properties": members, "required": words(f.Required), "additionalProperties": f.Open})
		if f.Short != "" {
			forms = append(forms, object{"type": "string", "minLength": 1, "maxLength": q.Longest, standsFor: f.Short})
		}
	}
	return object{"oneOf": forms}
}

// numberSchema is the schema of a number with its bounds.
func numberSchema(q wire.Parameter, inJSON bool) object {
	kind := map[string]string{"count": "integer", "number": "number"}[q.Type]
	s := object{"type": kind, "minimum": *q.Least.Number, "maximum": *q.Greatest.Number}
	if inJSON {
		s["type"] = list{kind, "string"}
	}
	if q.Default != nil {
		s["default"] = number(q.Default.In)
	}
	return s
}

// reference refers to a schema.
func reference(name string) object { return object{"$ref": "#/components/schemas/" + name} }

// bound writes a bound of a length in both units.
func bound(b *wire.Bound) object { return object{"in": *b.In, "mm": *b.MM} }

// explain is the help with the default and the bounds in words.
func explain(q wire.Parameter) string {
	var b strings.Builder
	b.WriteString(q.Help)
	switch {
	case q.Default != nil && q.Default.In == q.Default.MM:
		b.WriteString(" Default: " + q.Default.In + ".")
	case q.Default != nil:
		b.WriteString(" Default: " + q.Default.In + " on inch rulers, " + q.Default.MM + " on millimetre rulers.")
	}
	if q.Unit == "length" && q.Least != nil {
		b.WriteString(" From " + decimal(*q.Least.MM) + " to " + decimal(*q.Greatest.MM) + " mm.")
	}
	if q.Catalogue != "" {
		b.WriteString(" Names are listed at " + q.Catalogue + ".")
	}
	return b.String()
}

// camel turns /v1/solve/slotted-band into SolveSlottedBand.
func camel(name string) string {
	var b strings.Builder
	for word := range strings.FieldsFuncSeq(strings.TrimPrefix(name, "/v1/"), func(c rune) bool { return strings.ContainsRune("/-_{}", c) }) {
		b.WriteString(strings.ToUpper(word[:1]) + word[1:])
	}
	return b.String()
}
