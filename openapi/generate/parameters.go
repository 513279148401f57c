package main

import (
	"strings"

	"creasefit/api"
	"creasefit/api/wire"
)

// queryParameter describes a name in a query string, where every value is
// text.
func (p *patch) queryParameter(call api.CallSpec, q wire.Parameter) (object, error) {
	schema, err := p.value(call, q, false)
	if err != nil {
		return nil, err
	}
	parameter := object{"name": q.Name, "in": "query", "description": explain(q), "schema": schema, "example": example(q)}
	if q.List {
		parameter["schema"] = object{"type": "array", "items": schema, "maxItems": q.Most}
		parameter["explode"], parameter["example"] = true, list{q.Example}
	}
	return p.share("parameters", q.Name, call.Path, parameter)
}

// value refers to the shared schema of one value of a name.
func (p *patch) value(call api.CallSpec, q wire.Parameter, inJSON bool) (object, error) {
	schema := schemaOf(q, inJSON)
	schema["description"] = explain(q)
	where := "Text"
	if inJSON {
		where = "Value"
	}
	return p.share("schemas", camel(q.Name)+where, call.Path, schema)
}

// example is a value of the name's type.
func example(q wire.Parameter) any {
	if q.Type == "count" || q.Type == "number" {
		return number(q.Example)
	}
	return q.Example
}

// requestBody describes the same names as one JSON object or form.
func (p *patch) requestBody(call api.CallSpec) (object, error) {
	inJSON, inForm := object{}, object{}
	for _, q := range call.Parameters {
		value, err := p.value(call, q, true)
		if err != nil {
			return nil, err
		}
		text, err := p.value(call, q, false)
		if err != nil {
			return nil, err
		}
		inJSON[q.Name], inForm[q.Name] = value, text
		if q.List {
			inJSON[q.Name] = object{"oneOf": list{value, object{"type": "array", "items": value, "minItems": 1, "maxItems": q.Most}}}
			inForm[q.Name] = object{"type": "array", "items": text}
		}
	}
	name := "Request" + camel(call.Path)
	schemas := p.components["schemas"].(object)
	schemas[name] = object{"type": "object", "additionalProperties": false, "properties": inJSON}
	schemas[name+"Form"] = object{"type": "object", "additionalProperties": false, "properties": inForm}
	return object{"required": false, "content": object{
		"application/json":                  object{"schema": reference(name), "example": decoded([]byte(call.Body))},
		"application/x-www-form-urlencoded": object{"schema": reference(name + "Form")},
	}}, nil
}

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
			forms = append(forms, text)
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
