package web

import (
	"cmp"
	"encoding/json"
	"maps"
	"slices"
	"strings"
)

// The members of an OpenAPI 3.1 document that the reference page shows.
type specification struct {
	Info struct {
		Title, Description, Version string
	}
	Tags       []struct{ Name, Description string }
	Paths      map[string]methods
	Components struct {
		Parameters map[string]parameter
		Responses  map[string]response
	}
}

// methods are the operations of a path, and the parameters that all of them have.
type methods struct {
	Parameters []parameter
	Get, Post  *operation
}

type operation struct {
	Summary, Description string
	Tags                 []string
	Parameters           []parameter
	RequestBody          struct {
		Content map[string]struct {
			Example json.RawMessage
		}
	}
	Responses map[string]response
}

type response struct {
	Ref         string `json:"$ref"`
	Description string
	Content     map[string]json.RawMessage
}

type parameter struct {
	Ref                   string `json:"$ref"`
	Name, In, Description string
	Required              bool
	Example               any
	Examples              map[string]struct{ Value any }
	Schema                schema
}

// schema is what the page tells of a value's form.
type schema struct {
	Type             any // a name, or a list of names
	Enum             []any
	Default, Example any
	Examples         []any
	Items            *schema
	AnyOf, OneOf     []schema
}

// read decodes a document and puts the shared parameters and responses in place.
func read(document []byte) (*specification, error) {
	s := &specification{}
	if err := json.Unmarshal(document, s); err != nil {
		return nil, err
	}
	for _, item := range s.Paths {
		for _, o := range item.all() {
			o.Parameters = append(o.Parameters, item.Parameters...)
			for i, p := range o.Parameters {
				if name, ok := strings.CutPrefix(p.Ref, "#/components/parameters/"); ok {
					o.Parameters[i] = s.Components.Parameters[name]
				}
			}
			for status, r := range o.Responses {
				if name, ok := strings.CutPrefix(r.Ref, "#/components/responses/"); ok {
					o.Responses[status] = s.Components.Responses[name]
				}
			}
		}
	}
	return s, nil
}

// all lists the operations that there are.
func (m methods) all() []*operation {
	return slices.DeleteFunc([]*operation{m.Get, m.Post}, func(o *operation) bool { return o == nil })
}

// Sample returns an example of the value, or nil.
func (p parameter) Sample() any {
	for _, name := range slices.Sorted(maps.Keys(p.Examples)) {
		return p.Examples[name].Value
	}
	if len(p.Schema.Examples) > 0 {
		return p.Schema.Examples[0]
	}
	for _, v := range []any{p.Example, p.Schema.Example, p.Schema.Default} {
		if v != nil {
			return v
		}
	}
	if len(p.Schema.Enum) > 0 {
		return p.Schema.Enum[0]
	}
	return nil
}

// kinds lists the kinds, which are the last segments below /v1/solve/.
func (s *specification) kinds() []string {
	var kinds []string
	for path := range s.Paths {
		if kind, ok := strings.CutPrefix(path, "/v1/solve/"); ok {
			kinds = append(kinds, kind)
		}
	}
	slices.Sort(kinds)
	return kinds
}

// call is one entry of the page: a path, or the paths of all kinds that
// differ in the kind alone.
type call struct {
	*operation // that the page describes
	ID, Path   string
	methods    methods
	Common     []parameter     // of the path, or of every kind
	Own        []ownParameters // of single kinds
	Tries      []attempt       // what can be tried
}

// ownParameters are the names that not every kind knows.
type ownParameters struct {
	Kind       string
	Parameters []parameter
}

// calls gathers the entries, in the order of their paths.
func (s *specification) calls() []call {
	kinds := s.kinds()
	families := map[string][]string{}
	for path := range s.Paths {
		at := strings.LastIndexByte(path, '/') + 1
		family := path
		if slices.Contains(kinds, path[at:]) {
			family = path[:at] + "{kind}"
		}
		families[family] = append(families[family], path)
	}
	var calls []call
	for family, paths := range families {
		slices.Sort(paths)
		calls = append(calls, s.call(family, paths))
	}
	slices.SortFunc(calls, func(a, b call) int { return cmp.Compare(a.Path, b.Path) })
	return calls
}

// call makes the entry of a family of paths.
func (s *specification) call(family string, paths []string) call {
	id := strings.Trim(strings.NewReplacer("/", "-", "{", "", "}", "", ".", "-").Replace(family), "-")
	methods := s.Paths[paths[0]]
	c := call{ID: id, Path: family, methods: methods, operation: methods.all()[0]}
	c.Common = c.Parameters
	for _, path := range paths[1:] {
		known := s.Paths[path].Get.Parameters
		c.Common = slices.DeleteFunc(slices.Clone(c.Common), func(p parameter) bool { return !knows(known, p.Name) })
	}
	if len(paths) > 1 {
		for _, path := range paths {
			own := slices.DeleteFunc(slices.Clone(s.Paths[path].Get.Parameters), func(p parameter) bool { return knows(c.Common, p.Name) })
			c.Own = append(c.Own, ownParameters{path[strings.LastIndexByte(path, '/')+1:], own})
		}
	}
	c.Tries = c.attempts(paths[0])
	return c
}

func knows(list []parameter, name string) bool {
	return slices.ContainsFunc(list, func(p parameter) bool { return p.Name == name })
}

// Summary is what the call does, in a line, without the name of the kind.
func (c call) Summary() string {
	if summary, _, ok := strings.Cut(c.operation.Summary, " of a"); ok && c.Own != nil {
		return summary
	}
	return c.operation.Summary
}

// Methods lists the methods, without HEAD.
func (c call) Methods() string {
	switch {
	case c.methods.Post == nil:
		return "GET"
	case c.methods.Get == nil:
		return "POST"
	default:
		return "GET, POST"
	}
}

// Media lists the content types of answers.
func (c call) Media() string {
	return strings.Join(slices.Sorted(maps.Keys(c.Responses["200"].Content)), ", ")
}
