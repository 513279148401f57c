package main

import (
	"maps"
	"path"
	"reflect"
	"regexp"
	"slices"
	"strings"

	"creasefit/api"
	"creasefit/api/wire"
)

// queryParameter describes a name in a query string, where every value is
// text.
func (p *patch) queryParameter(call api.CallSpec, q wire.Parameter) object {
	schema := schemaOf(q, false)
	parameter := object{"name": q.Name, "in": "query", "description": explain(q), "schema": schema, "example": example(q)}
	if q.List {
		parameter["schema"] = object{"type": "array", "items": schema, "maxItems": q.Most}
		parameter["explode"], parameter["example"] = true, list{q.Example}
	}
	return p.share("parameters", q.Name, call.Path, parameter)
}

// value refers to the shared schema of one value of a name in JSON.
func (p *patch) value(call api.CallSpec, q wire.Parameter) object {
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
// told in words. Names that requests have in common are a part of them.
func (p *patch) requestBody(call api.CallSpec, summary string) object {
	name, common := "Request"+camel(call.Path), commonNames(call)
	own := p.names(call, call.Parameters, p.described(common))
	schema := object{"type": "object", "properties": own}
	if about := enclosureCall.FindStringSubmatch(call.Path); common != "" && about[1] != "solve" && len(own) > 0 {
		schema = p.share("schemas", camel(about[1])+"Names", call.Path, schema)
	}
	if common != "" {
		schema = object{"allOf": list{reference(common), schema}}
	}
	schema["description"] = "asks for: " + summary + "."
	p.components["schemas"].(object)[name] = schema
	content := object{
		"application/json":                  object{"schema": reference(name), "example": decoded([]byte(call.Body))},
		"application/x-www-form-urlencoded": object{"schema": reference("Form")},
	}
	if call.Table != "" {
		content["text/csv"] = object{"example": call.Table, "schema": object{"type": "string",
			"description": "The list alone, a row an entry. The other names stand in the address, as by GET."}}
	}
	return object{"content": content}
}

// enclosureCall is the path of a call about an enclosure.
var enclosureCall = regexp.MustCompile("^/v1/(solve|adapt|check|drawing|guide)/")

// enclosureNames is the schema of the names that all enclosures are asked for
// with.
const enclosureNames = "EnclosureNames"

// commonNames is the schema whose names are a part of a request, so that a program
// states an enclosure once: for a call that solves those that all solve with,
// for the other calls about what is solved those that it is solved with. It is
// empty for the other calls.
func commonNames(call api.CallSpec) string {
	switch about := enclosureCall.FindStringSubmatch(call.Path); {
	case about == nil:
		return ""
	case about[1] == "solve":
		return enclosureNames
	default:
		return "RequestSolve" + camel(strings.TrimPrefix(call.Path, about[0]))
	}
}

// describeEnclosures describes the names that every call which solves has alike.
func (p *patch) describeEnclosures(calls []api.CallSpec) {
	calls = slices.DeleteFunc(slices.Clone(calls), func(c api.CallSpec) bool { return commonNames(c) != enclosureNames })
	alike := slices.DeleteFunc(slices.Clone(calls[0].Parameters), func(q wire.Parameter) bool {
		same := func(other wire.Parameter) bool { return reflect.DeepEqual(q, other) }
		return slices.ContainsFunc(calls, func(c api.CallSpec) bool { return !slices.ContainsFunc(c.Parameters, same) })
	})
	p.components["schemas"].(object)[enclosureNames] = object{"type": "object", "properties": p.names(calls[0], alike, nil)}
}

// names describes the names of a request, but for those that are described
// elsewhere and those that say how to answer.
func (p *patch) names(call api.CallSpec, parameters []wire.Parameter, elsewhere object) object {
	own := object{}
	for _, q := range parameters {
		if q.About == "answer" || elsewhere[q.Name] != nil {
			continue
		}
		value := p.value(call, q)
		if own[q.Name] = value; q.List {
			own[q.Name] = object{"oneOf": list{value, object{"type": "array", "items": value, "minItems": 1, "maxItems": q.Most}}}
		}
	}
	return own
}

// described are the names of a schema and its parts.
func (p *patch) described(schema string) object {
	all := object{}
	s, _ := p.components["schemas"].(object)[schema].(object)
	parts := append(asList(s["allOf"]), s)
	for _, part := range parts {
		if ref, ok := part.(object)["$ref"].(string); ok {
			maps.Copy(all, p.described(path.Base(ref)))
		}
		properties, _ := part.(object)["properties"].(object)
		maps.Copy(all, properties)
	}
	return all
}

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
		return lengthSchema(q, inJSON)
	case "object":
		return objectSchema(q, inJSON)
	case "text":
		return object{"type": "string", "minLength": 1, "maxLength": max(256, q.Longest)}
	default:
		return object{"type": "string", "minLength": 1, "maxLength": 64}
	}
}

// lengthSchema is the schema of a length. Its bounds in both units stand at the value
// in JSON alone: those of a query say them in words.
func lengthSchema(q wire.Parameter, inJSON bool) object {
	s := object{"type": "string", "minLength": 1, "maxLength": 32}
	if !inJSON {
		return s
	}
	maps.Copy(s, object{"type": list{"string", "number"}, "minimum": 0, "x-unit": "length", "x-least": bound(q.Least), "x-greatest": bound(q.Greatest)})
	if q.Default != nil {
		s["x-default"] = object{"in": q.Default.In, "mm": q.Default.MM}
	}
	return s
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
