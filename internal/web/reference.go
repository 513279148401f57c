package web

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"net/url"
	"slices"
	"strings"
)

// attempt is an example that the page can send.
type attempt struct {
	Method, Address string
	Media, Body     string // of a POST
}

// attempts are the examples of a call: its names as a query when they are
// plain values, else its body.
func (c *call) attempts(path string) []attempt {
	address := fillPath(path, c.Parameters)
	if c.methods.Post == nil {
		return []attempt{{Method: "GET", Address: address}}
	}
	content := c.methods.Post.RequestBody.Content
	var tries []attempt
	for _, media := range slices.Sorted(maps.Keys(content)) {
		example := content[media].Example
		if example == nil {
			continue
		}
		query, plain := queryOf(example)
		switch {
		case plain && c.methods.Get != nil:
			return []attempt{{Method: "GET", Address: address + "?" + query}}
		case media == "text/csv": // beside a table the other names stand in the address
			at := address
			if names, _ := queryOf(content["application/json"].Example); names != "" {
				at += "?" + names
			}
			tries = append(tries, attempt{"POST", at, media, bodyOf(example)})
		default:
			tries = append(tries, attempt{"POST", address, media, bodyOf(example)})
		}
	}
	return tries
}

// fillPath puts examples into the places of a path.
func fillPath(path string, parameters []parameter) string {
	for _, p := range parameters {
		if p.In == "path" {
			path = strings.ReplaceAll(path, "{"+p.Name+"}", url.PathEscape(fmt.Sprint(p.Sample())))
		}
	}
	return path
}

// queryOf writes those values of an object that are plain as a query, and reports
// whether all of them are.
func queryOf(example json.RawMessage) (query string, plain bool) {
	var values map[string]any
	plain = json.Unmarshal(example, &values) == nil
	q := url.Values{}
	for name, value := range values {
		switch value.(type) {
		case string, float64:
			q.Set(name, fmt.Sprint(value))
		default:
			plain = false
		}
	}
	return q.Encode(), plain
}

// bodyOf is the example as it is sent: a text as it is, anything else as JSON.
func bodyOf(example json.RawMessage) string {
	var text string
	if json.Unmarshal(example, &text) == nil {
		return text
	}
	var indented bytes.Buffer
	if err := json.Indent(&indented, example, "", "  "); err != nil {
		panic(err) // it was decoded before
	}
	return indented.String()
}

// Kind tells the form of a value in words.
func (p parameter) Kind() string { return strings.Join(p.Schema.words(), " or ") }

func (s schema) words() []string {
	if len(s.Enum) > 0 {
		return []string{"one of " + joined(s.Enum)}
	}
	var words []string
	for _, part := range slices.Concat(s.AnyOf, s.OneOf) {
		for _, w := range part.words() {
			if !slices.Contains(words, w) {
				words = append(words, w)
			}
		}
	}
	switch t := s.Type.(type) {
	case string:
		words = append(words, t)
	case []any:
		words = append(words, joined(t))
	}
	return words
}

// joined writes a list with commas.
func joined(list []any) string {
	words := make([]string, len(list))
	for i, v := range list {
		words[i] = fmt.Sprint(v)
	}
	return strings.Join(words, ", ")
}

// Reference returns the specification, an OpenAPI document of the project
// itself, as a page to read and to try.
func Reference(document []byte) []byte {
	s, err := read(document)
	if err != nil {
		panic(err) // it is embedded
	}
	type group struct {
		Name, Description string
		Calls             []call
	}
	var groups []group
	calls := s.calls()
	for _, tag := range s.Tags {
		g := group{Name: tag.Name, Description: tag.Description}
		for _, c := range calls {
			if slices.Contains(c.Tags, tag.Name) {
				g.Calls = append(g.Calls, c)
			}
		}
		groups = append(groups, g)
	}
	return rendered("page/reference.html", struct {
		*files
		Spec   *specification
		Groups []group
	}{made(), s, groups})
}
