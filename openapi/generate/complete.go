package main

import (
	"fmt"
	"maps"
	"net/http"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"creasefit/api"
)

// object is a JSON object, list a JSON list.
type (
	object = map[string]any
	list   = []any
)

// complete adds to the annotations what the swag tool cannot say: the names
// of every call, media types, examples, and what operations have in common.
func complete(spec object) (object, error) {
	delete(spec, "externalDocs")
	spec["security"] = list{}
	spec["info"].(object)["version"] = api.Release
	renameSchemas(spec)
	components := spec["components"].(object)
	components["parameters"], components["examples"], components["responses"] = object{}, object{}, object{}
	tidySchemas(components["schemas"].(object))
	components["schemas"].(object)["Form"] = form
	p := patch{paths: spec["paths"].(object), components: components, named: map[string]bool{}, try: newTrial()}
	for _, call := range api.CallSpecs() {
		if err := p.describe(call); err != nil {
			return nil, err
		}
	}
	delete(p.paths, "/v1/solve/{kind}")
	delete(p.paths, "/v1/check/{kind}")
	delete(p.paths, "/v1/guide/{kind}")
	delete(p.paths, "/v1/drawing/{kind}")
	if err := p.describeBatch(); err != nil {
		return nil, err
	}
	return spec, p.finish()
}

// patch adds to the paths of a specification.
type patch struct {
	paths, components object
	named             map[string]bool // the paths of calls that take names
	try               trial
}

// share puts a part into the components and returns a reference to it. What
// several calls have in common is there once; where one differs from the
// others, what is called, the kind or both are added to its name.
func (p *patch) share(group, name, call string, part object) (object, error) {
	parts := p.components[group].(object)
	what, kind, _ := strings.Cut(strings.TrimPrefix(call, "/v1/"), "/")
	for _, candidate := range []string{name, name + camel(what), name + camel(kind), name + camel(call)} {
		known, taken := parts[candidate]
		if !taken {
			parts[candidate] = part
		}
		if !taken || reflect.DeepEqual(known, part) {
			return object{"$ref": "#/components/" + group + "/" + candidate}, nil
		}
	}
	return nil, fmt.Errorf("%s of %s is described in two ways", name, call)
}

// describe adds the names and the examples of one call.
func (p *patch) describe(call api.CallSpec) error {
	source := call.Annotated
	if source == "" {
		source = call.Path
	}
	annotated, ok := p.paths[source].(object)
	if !ok {
		return fmt.Errorf("no annotations for %s", source)
	}
	item := clone(annotated).(object)
	p.paths[call.Path], p.named[call.Path] = item, true
	for _, method := range slices.Sorted(maps.Keys(item)) { // the first one names what both share
		if err := p.describeOperation(call, method, item[method].(object)); err != nil {
			return err
		}
	}
	return nil
}

// describeOperation adds to one method of a call.
func (p *patch) describeOperation(call api.CallSpec, method string, o object) error {
	o["operationId"] = operationID(call, method, o)
	if call.Summary != "" {
		o["summary"] = call.Summary
	}
	if method == "post" {
		o["description"] = "The same names in a body, and the same answer, as by GET."
	}
	var parameters list
	for _, existing := range asList(o["parameters"]) {
		if strings.Contains(call.Path, "{"+existing.(object)["name"].(string)+"}") {
			existing.(object)["schema"].(object)["enum"] = kindNames()
			existing.(object)["example"] = kindNames()[0]
			parameters = append(parameters, existing)
		}
	}
	for _, q := range call.Parameters {
		if method == "get" || q.About == "answer" {
			shared, err := p.queryParameter(call, q)
			if err != nil {
				return err
			}
			parameters = append(parameters, shared)
		}
	}
	o["parameters"] = parameters
	delete(o, "requestBody")
	if method == "post" {
		body, err := p.requestBody(call, o["summary"].(string))
		if err != nil {
			return err
		}
		o["requestBody"] = body
	} else {
		dropBodyFailures(o)
	}
	return p.addAnswers(call, method, o)
}

// operationID is the annotated one, with the kind and the method where one
// annotation stands for several operations.
func operationID(call api.CallSpec, method string, o object) string {
	id := o["operationId"].(string)
	if call.Annotated != "" {
		id += "-" + call.Path[strings.LastIndex(call.Path, "/")+1:]
	}
	if call.Body != "" {
		id += "-" + method
	}
	return id
}

// dropBodyFailures removes the failures that only a body can have.
func dropBodyFailures(o object) {
	responses := o["responses"].(object)
	for _, status := range []string{"408", "413", "415"} {
		delete(responses, status)
	}
}

// addAnswers adds media types, real answers to the example, and 304.
func (p *patch) addAnswers(call api.CallSpec, method string, o object) error {
	responses := o["responses"].(object)
	success := responses["200"].(object)
	content := success["content"].(object)
	for _, media := range call.Media {
		entry, ok := content[media].(object)
		if !ok {
			entry = object{"schema": object{"type": "string"}}
			content[media] = entry
		}
		if !isJSON(call.Media[0]) { // a file, which may be JSON too
			if isJSON(media) {
				entry["schema"] = object{"type": "object", "additionalProperties": true}
			}
			continue
		}
		if !shown(media) {
			continue
		}
		answer, err := p.try.answer(call, method, media)
		if err != nil {
			return err
		}
		p.exemplify(content, media, answer)
	}
	if _, ok := content["text/plain"]; !ok {
		content["text/plain"] = object{"schema": object{"type": "string"}, "example": "in"}
	}
	success["description"] = "The answer; text/plain also for a picked value, and for a problem with errors=cell."
	if method == "get" {
		responses["304"] = object{"description": "Not Modified"}
	}
	return nil
}

// exemplify gives an answer in a media type the one example of its type: that
// of the call which is described first.
func (p *patch) exemplify(content object, media string, answer any) {
	name := answerName(content) + camel(media)
	if known := p.components["examples"].(object); known[name] == nil {
		known[name] = object{"value": shortened(answer)}
	}
	content[media].(object)["examples"] = object{"example": object{"$ref": "#/components/examples/" + name}}
}

// shortened leaves the first entries of a long table, and the first corners of a
// long outline: an example shows a form.
func shortened(answer any) any {
	table, ok := answer.(object)
	if !ok {
		return answer
	}
	for _, p := range asList(table["pieces"]) {
		piece, _ := p.(object)
		for name, most := range map[string]int{"outline": 4, "partials": 1} {
			if l := asList(piece[name]); len(l) > most {
				piece[name] = l[:most]
			}
		}
	}
	if len(table) > 1 {
		return answer
	}
	for name, entries := range table {
		if l := asList(entries); len(l) > 2 {
			table[name] = l[:2]
		}
	}
	return table
}

// answerName is the name of the type of an answer in JSON.
func answerName(content object) string {
	entry, _ := content["application/json"].(object)
	schema, _ := entry["schema"].(object)
	ref, _ := schema["$ref"].(string)
	return ref[strings.LastIndexByte(ref, '/')+1:]
}

// finish gives every response its own description, and puts responses into the
// components.
func (p *patch) finish() error {
	for _, path := range slices.Sorted(maps.Keys(p.paths)) {
		item := p.paths[path].(object)
		for _, method := range slices.Sorted(maps.Keys(item)) {
			o := item[method].(object)
			fillIn(o)
			describeResponses(o)
			textSchemas(o)
			if !p.named[path] && method == "get" {
				if err := p.fillExamples(path, o); err != nil {
					return err
				}
			}
			if err := p.shareResponses(path, o); err != nil {
				return err
			}
		}
	}
	return nil
}

// shareResponses moves the responses of an operation into the components.
func (p *patch) shareResponses(path string, o object) error {
	responses := o["responses"].(object)
	for _, status := range slices.Sorted(maps.Keys(responses)) {
		r := responses[status].(object)
		name := camel(r["description"].(string))
		if status == "200" {
			content, _ := r["content"].(object)
			name = "Answer" + answerName(content)
		}
		shared, err := p.share("responses", strings.ReplaceAll(name, " ", ""), path, r)
		if err != nil {
			return err
		}
		responses[status] = shared
	}
	return nil
}

// fillIn adds what every operation has in common: a description, and the one
// problem that even a call without names can have.
func fillIn(o object) {
	if o["description"] == nil {
		o["description"] = o["summary"].(string) + "."
	}
	responses := o["responses"].(object)
	if responses["414"] == nil {
		responses["414"] = object{"content": object{"application/problem+json": object{"schema": reference("Problem")}}}
	}
}

// describeResponses names each status by its own reason phrase.
func describeResponses(o object) {
	for status, response := range o["responses"].(object) {
		code, err := strconv.Atoi(status)
		if r := response.(object); err == nil && code >= 300 {
			r["description"] = http.StatusText(code)
		}
	}
}

// kindNames lists the kinds that calls are described for.
func kindNames() list {
	var names list
	for _, call := range api.CallSpecs() {
		if name, ok := strings.CutPrefix(call.Path, "/v1/solve/"); ok {
			names = append(names, name)
		}
	}
	return names
}

// words makes a list of JSON strings.
func words(texts []string) list {
	l := make(list, len(texts))
	for i, t := range texts {
		l[i] = t
	}
	return l
}

// shown reports whether a real answer of the media type is short enough, and
// text enough, to stand in the specification.
func shown(media string) bool {
	return isJSON(media) || slices.Contains([]string{"text/csv", "application/xml", "text/plain"}, media)
}

// isJSON reports whether a media type is JSON.
func isJSON(media string) bool {
	return slices.Contains([]string{"application/json", "application/problem+json"}, media)
}
