package own

import (
	"bytes"
	"embed"
	"encoding/json"
	"path"
	"slices"
	"strings"
)

//go:embed designs/*.json designs/kinds/*.json
var files embed.FS

// Example is a design that is kept here to begin from.
type Example struct {
	Name string
	Text []byte            // without spaces
	Kind string            // the kind of the catalogue that it describes, "" for none
	With map[string]string // the choices of that kind that it holds for
}

// Examples lists the designs to learn from, by name.
func Examples() []Example { return folder("designs") }

// Simplest is the shortest of the examples.
func Simplest() Example {
	return slices.MinFunc(Examples(), func(a, b Example) int { return len(a.Text) - len(b.Text) })
}

// Kinds lists the kinds of the catalogue that are given as designs. A file is
// called by its kind and, behind points, by the choices that it holds for, such as
// sleeve.scores-two.json.
func Kinds() []Example { return folder("designs/kinds") }

// KindNames lists the kinds of the catalogue that are given as designs.
func KindNames() []string {
	var names []string
	for _, e := range Kinds() {
		if !slices.Contains(names, e.Kind) {
			names = append(names, e.Kind)
		}
	}
	return names
}

// folder reads the designs of a folder, which are part of the program.
func folder(name string) []Example {
	entries, err := files.ReadDir(name)
	if err != nil {
		panic(err)
	}
	var all []Example
	for _, e := range entries {
		if e.IsDir() {
			continue
		}
		text, err := files.ReadFile(path.Join(name, e.Name()))
		if err != nil {
			panic(err)
		}
		var plain bytes.Buffer
		if err := json.Compact(&plain, text); err != nil {
			panic(err)
		}
		x := Example{Name: strings.TrimSuffix(e.Name(), ".json"), Text: plain.Bytes(), With: map[string]string{}}
		kind, choices, ok := strings.Cut(x.Name, ".")
		if ok {
			x.Kind = kind
		}
		for _, c := range strings.Split(choices, ".") {
			if name, value, ok := strings.Cut(c, "-"); ok {
				x.With[name] = value
			}
		}
		all = append(all, x)
	}
	return all
}
