package openapi

import (
	"bytes"
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"sync"
)

// object is a JSON object.
type object = map[string]any

// kinds are the documents that OfKind has made.
var kinds sync.Map

// OfKind returns what the specification says of the calls about one kind, by
// name; nil if there are none. The bytes must not be changed.
func OfKind(kind string) []byte {
	if known, ok := kinds.Load(kind); ok {
		return known.([]byte)
	}
	var spec object
	if err := json.Unmarshal(specJSON, &spec); err != nil {
		panic(err) // it is embedded
	}
	paths := spec["paths"].(object)
	maps.DeleteFunc(paths, func(path string, _ any) bool { return !strings.HasSuffix(path, "/"+kind) || kind == "" })
	if len(paths) == 0 {
		return nil
	}
	Prune(spec)
	text, err := json.Marshal(spec)
	if err != nil {
		panic(err) // it was JSON before
	}
	kinds.Store(kind, text)
	return text
}

// Prune drops from a specification the components and the tags that none of its
// paths leads to.
func Prune(spec object) {
	components := spec["components"].(object)
	used := map[string]bool{}
	var walk func(any)
	walk = func(node any) {
		switch n := node.(type) {
		case []any:
			for _, child := range n {
				walk(child)
			}
		case object:
			ref, _ := n["$ref"].(string)
			group, name, ok := strings.Cut(strings.TrimPrefix(ref, "#/components/"), "/")
			if ok && !used[ref] {
				used[ref] = true
				walk(components[group].(object)[name])
			}
			for _, child := range n {
				walk(child)
			}
		}
	}
	walk(spec["paths"])
	for group, parts := range components {
		maps.DeleteFunc(parts.(object), func(name string, _ any) bool { return !used["#/components/"+group+"/"+name] })
	}
	spec["tags"] = slices.DeleteFunc(spec["tags"].([]any), func(tag any) bool { return !tagged(spec["paths"].(object), tag.(object)["name"]) })
}

// tagged reports whether an operation of the paths has a tag.
func tagged(paths object, tag any) bool {
	for _, item := range paths {
		for _, o := range item.(object) {
			operation, _ := o.(object) // the parameters of all operations stand beside them
			if tags, _ := operation["tags"].([]any); slices.Contains(tags, tag) {
				return true
			}
		}
	}
	return false
}

// compact writes a document without its spaces.
func compact(text []byte) []byte {
	var b bytes.Buffer
	if err := json.Compact(&b, text); err != nil {
		panic(err) // it is embedded
	}
	return b.Bytes()
}
