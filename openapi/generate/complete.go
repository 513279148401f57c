package main

import (
	"cmp"
	"fmt"
	"maps"
	"net/http"
	"reflect"
	"slices"
	"strings"
	"sync"

	"creasefit/api"
	"creasefit/api/wire"
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
	components := spec["components"].(object)
	components["parameters"], components["examples"], components["responses"] = object{}, object{}, object{}
	tidySchemas(components["schemas"].(object))
	components["schemas"].(object)["Form"] = form
	p := patch{paths: spec["paths"].(object), components: components, named: map[string]bool{}, service: newService()}
	calls := api.CallSpecs()
	p.describeEnclosures(calls)
	for _, call := range calls {
		p.describe(call)
	}
	for _, call := range []string{"solve", "check", "adapt", "guide", "drawing"} {
		delete(p.paths, "/v1/"+call+"/{kind}")
	}
	p.describeBatch()
	p.finish()
	for _, item := range p.paths {
		hoist(item.(object))
	}
	return spec, p.err
}

// hoist states the parameters that both methods of a path have once, beside them.
func hoist(item object) {
	get, read := item["get"].(object)
	post, written := item["post"].(object)
	if !read || !written {
		return
	}
	among := func(known any) func(any) bool {
		return func(parameter any) bool {
			return slices.ContainsFunc(asList(known), func(k any) bool { return reflect.DeepEqual(k, parameter) })
		}
	}
	one := among(get["parameters"])
	both := slices.DeleteFunc(slices.Clone(asList(post["parameters"])), func(p any) bool { return !one(p) })
	for _, o := range []object{get, post} {
		o["parameters"] = slices.DeleteFunc(asList(o["parameters"]), among(both))
	}
	item["parameters"] = both
}

// patch adds to the paths of a specification.
type patch struct {
	paths, components object
	named             map[string]bool // the paths of calls that take names
	service           http.Handler    // in this process, for real answers to the examples
	err               error           // the first
}

// fail keeps the first error.
func (p *patch) fail(format string, details ...any) {
	if p.err == nil {
		p.err = fmt.Errorf(format, details...)
	}
}

// share puts a part into the components and returns a reference to it. What
// several calls have in common is there once; what differs from all that begin
// with its name gets what is called, the kind or both added to it.
func (p *patch) share(group, name, call string, part object) object {
	parts := p.components[group].(object)
	refer := func(name string) object { return object{"$ref": "#/components/" + group + "/" + name} }
	for _, known := range slices.Sorted(maps.Keys(parts)) {
		if strings.HasPrefix(known, name) && reflect.DeepEqual(parts[known], part) {
			return refer(known)
		}
	}
	what, kind, _ := strings.Cut(strings.TrimPrefix(call, "/v1/"), "/")
	for _, candidate := range []string{name, name + camel(what), name + camel(kind), name + camel(call)} {
		if _, taken := parts[candidate]; !taken {
			parts[candidate] = part
			return refer(candidate)
		}
	}
	p.fail("%s of %s is described in two ways", name, call)
	return nil
}

// describe adds the names and the examples of one call.
func (p *patch) describe(call api.CallSpec) {
	source := cmp.Or(call.Annotated, call.Path)
	annotated, ok := p.paths[source].(object)
	if !ok {
		p.fail("no annotations for %s", source)
		return
	}
	item := clone(annotated).(object)
	p.paths[call.Path], p.named[call.Path] = item, true
	for _, method := range slices.Sorted(maps.Keys(item)) { // the first one names what both share
		p.describeOperation(call, method, item[method].(object))
	}
}

// describeOperation adds to one method of a call.
func (p *patch) describeOperation(call api.CallSpec, method string, o object) {
	o["operationId"] = operationID(call, method, o)
	if call.Summary != "" {
		o["summary"] = call.Summary
	}
	if method == "post" {
		o["description"] = "As by GET, with the names in a body."
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
			parameters = append(parameters, p.queryParameter(call, q))
		}
	}
	o["parameters"] = parameters
	delete(o, "requestBody")
	if method == "post" {
		o["requestBody"] = p.requestBody(call, o["summary"].(string))
	}
	p.addAnswers(call, method, o)
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

// finish gives every response its own description, and puts responses into the
// components.
func (p *patch) finish() {
	for _, path := range slices.Sorted(maps.Keys(p.paths)) {
		item := p.paths[path].(object)
		for _, method := range slices.Sorted(maps.Keys(item)) {
			o := item[method].(object)
			fillIn(o)
			textSchemas(o)
			if !p.named[path] && method == "get" {
				p.fillExamples(path, o)
			}
			p.shareResponses(path, o)
		}
	}
}

// kindNames lists the kinds that calls are described for. Each call is described by
// solving its example, so that is done once.
var kindNames = sync.OnceValue(func() (names list) {
	for _, call := range api.CallSpecs() {
		if name, ok := strings.CutPrefix(call.Path, "/v1/solve/"); ok {
			names = append(names, name)
		}
	}
	return names
})

// words makes a list of JSON strings.
func words(texts []string) list { return wire.Each(texts, func(text string) any { return text }) }
