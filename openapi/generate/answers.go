package main

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"

	"creasefit/api"
)

// addAnswers adds media types, real answers to the example, and 304.
func (p *patch) addAnswers(call api.CallSpec, method string, o object) {
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
		p.exemplify(content, media, p.answer(call, method, media))
	}
	if _, ok := content["text/plain"]; !ok {
		content["text/plain"] = object{"schema": object{"type": "string"}, "example": "in"}
	}
	success["description"] = "The answer; text/plain also for a picked value, and for a problem with errors=cell."
	success["headers"] = object{"ETag": object{"description": "strong, and known before anything is worked out", "schema": object{"type": "string"}}}
	if method == "get" {
		responses["304"] = object{"description": "Not Modified"}
	}
}

// exemplify gives an answer in a media type the one example of its type: that
// of the call which is described first.
func (p *patch) exemplify(content object, media string, answer any) {
	name := answerName(content) + camel(media)
	if known := p.components["examples"].(object); known[name] == nil {
		short := shortened(answer)
		if short == nil {
			return
		}
		known[name] = object{"value": short}
	}
	content[media].(object)["examples"] = object{"example": object{"$ref": "#/components/examples/" + name}}
}

// An example shows a form: of long answers it leaves the first entries of every
// list, as many as keep it short, and lines of a text with its last one. A text
// with lines that are long themselves is no example.
const (
	mostEntries = 3
	mostBytes   = 1000 // of JSON
	mostLines   = 2000 // of a text
	mostText    = 200
	mostPair    = 300
)

// shortened leaves of an answer what shows its form; nil if nothing short does.
func shortened(answer any) any {
	if text, ok := answer.(string); ok {
		if text = shortText(text); len(text) > mostLines {
			return nil
		}
		return text
	}
	for most := mostEntries; most > 0; most-- {
		short := shortLists(clone(answer), most)
		if text, err := json.Marshal(short); most == 1 || err == nil && len(text) <= mostBytes {
			return short
		}
	}
	return nil
}

// shortLists leaves the first entries of each list in a value, and short pairs,
// which may stand for a range, as they are.
func shortLists(node any, most int) any {
	switch n := node.(type) {
	case object:
		for name, member := range n {
			n[name] = shortLists(member, most)
		}
	case list:
		if text, err := json.Marshal(n); err == nil && len(n) == 2 && len(text) <= mostPair {
			return n
		}
		n = n[:min(len(n), most)]
		for i := range n {
			n[i] = shortLists(n[i], most)
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
	return strings.TrimPrefix(ref, "#/components/schemas/")
}

// shareResponses moves the responses of an operation into the components.
func (p *patch) shareResponses(path string, o object) {
	responses := o["responses"].(object)
	for _, status := range slices.Sorted(maps.Keys(responses)) {
		r := responses[status].(object)
		if r["$ref"] != nil {
			continue
		}
		name := responseNames[status]
		if status == "200" {
			content, _ := r["content"].(object)
			name = "Answer" + answerName(content)
		}
		responses[status] = p.share("responses", name, path, r)
	}
}

// responseNames are the names of responses that all calls share, by status.
var responseNames = map[string]string{"304": "NotModified", "503": "NotReady", "4XX": "Refused", "5XX": "Failed"}

// fillIn adds what every operation has in common: a description, and the
// problems.
func fillIn(o object) {
	if o["description"] == nil {
		o["description"] = o["summary"].(string) + "."
	}
	responses := o["responses"].(object)
	for status, words := range problems {
		responses[status] = object{"description": words, "content": object{"application/problem+json": object{"schema": reference("Problem")}}}
	}
}

// problems are the answers but the wanted one, by the first digit of the status:
// named one by one for every call they would be a tenth of the document.
var problems = map[string]string{
	"4XX": "What is wrong with the request: 400 it cannot be read or lacks a name, 404 there is nothing of that name, 408, 413 or 415 " +
		"its body is too slow, too long or of another type, 414 its address is too long, 422 it has no solution, 429 too many at once. " +
		"Each code is explained at /problems.",
	"5XX": "What went wrong here: 500 a mistake of the service, 503 it is busy; Retry-After says when to come again.",
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
