package main

import (
	"maps"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"creasefit/api"
)

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

// Of long answers an example leaves the first entries of every list, and lines of
// a text with its last one: it shows a form.
const (
	mostEntries = 3
	mostText    = 900 // bytes
)

// shortened leaves of an answer what shows its form.
func shortened(answer any) any {
	if text, ok := answer.(string); ok {
		return shortText(text)
	}
	most := mostEntries
	if o, ok := answer.(object); ok && len(o) == 1 { // a list, and nothing beside it
		most = 2
	}
	return shortLists(answer, most)
}

// shortLists leaves the first entries of each list in a value.
func shortLists(node any, most int) any {
	switch n := node.(type) {
	case object:
		for name, member := range n {
			n[name] = shortLists(member, most)
		}
	case list:
		n = n[:min(len(n), most)]
		for i := range n {
			n[i] = shortLists(n[i], mostEntries)
		}
		return n
	}
	return node
}

// shortText leaves the first lines of a text, one at least, and the last one.
func shortText(text string) string {
	lines := strings.SplitAfter(strings.TrimSuffix(text, "\n"), "\n")
	kept, last := 0, len(lines)-1
	for size := len(lines[last]); kept < last && (kept == 0 || size+len(lines[kept]) <= mostText); kept++ {
		size += len(lines[kept])
	}
	return strings.Join(append(lines[:kept:kept], lines[last]), "") + text[len(strings.TrimSuffix(text, "\n")):]
}

// answerName is the name of the type of an answer in JSON.
func answerName(content object) string {
	entry, _ := content["application/json"].(object)
	schema, _ := entry["schema"].(object)
	ref, _ := schema["$ref"].(string)
	return ref[strings.LastIndexByte(ref, '/')+1:]
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

// shown reports whether a real answer of the media type is short enough, and
// text enough, to stand in the specification.
func shown(media string) bool {
	return isJSON(media) || slices.Contains([]string{"text/csv", "application/xml", "text/plain"}, media)
}

// isJSON reports whether a media type is JSON.
func isJSON(media string) bool {
	return slices.Contains([]string{"application/json", "application/problem+json"}, media)
}
