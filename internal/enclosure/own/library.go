package own

import (
	"bytes"
	"embed"
	"encoding/json"
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"

	"creasefit/internal/enclosure"
)

//go:embed designs/*.json designs/kinds/*.json designs/standing/*.json
var files embed.FS

// Example is a design that is kept here to begin from.
type Example struct {
	Name string
	Text []byte            // without spaces
	Kind string            // the kind of the catalogue that it describes, "" for none
	With map[string]string // the choices of that kind that it holds for
}

// Examples lists the designs to learn from, by name.
func Examples() []Example { return kept()[0] }

// Kinds lists the kinds that are given as designs, each for the choices that it holds for.
// The file of a kind that is made in Go is called by its name and, behind points, by those
// choices, such as sleeve.scores-two.json.
func Kinds() []Example { return kept()[1] }

var kept = sync.OnceValue(func() [2][]Example {
	kinds := folder("designs/kinds")
	for _, e := range folder("designs/standing") {
		kinds = append(kinds, e.ways()...)
	}
	return [...][]Example{folder("designs"), kinds}
})

// Kept reports whether a design is one of those that are kept here, as it stands.
func Kept(text string) bool {
	is := func(e Example) bool { return string(e.Text) == text }
	return slices.ContainsFunc(Examples(), is) || slices.ContainsFunc(Kinds(), is)
}

// Simplest is the shortest of the examples.
func Simplest() Example {
	return slices.MinFunc(Examples(), func(a, b Example) int { return len(a.Text) - len(b.Text) })
}

// KindNames lists the kinds that are given as designs.
func KindNames() (names []string) {
	for _, e := range Kinds() {
		names = append(names, e.Kind)
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// Standing makes the kind of the service that the design of that name is, which is part of
// the program.
func Standing(name string) *enclosure.Kind {
	text, err := files.ReadFile("designs/standing/" + name + ".json")
	if err != nil {
		panic(err)
	}
	d, err := decode(text, mostStanding)
	if err != nil {
		panic(err)
	}
	k := d.Kind()
	k.Name = name
	return k
}

// folder reads the designs of a folder, which are part of the program.
func folder(name string) (all []Example) {
	matches, _ := fs.Glob(files, name+"/*.json") // the pattern is one
	for _, file := range matches {
		text, err := files.ReadFile(file)
		if err != nil {
			panic(err)
		}
		var plain bytes.Buffer
		if err := json.Compact(&plain, text); err != nil {
			panic(err)
		}
		x := Example{Name: strings.TrimSuffix(path.Base(file), ".json"), Text: plain.Bytes(), With: map[string]string{}}
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
