package ask

import "slices"

// Shape is one shape that an object may have. In a query string it is written
// as JSON.
type Shape struct {
	Help     string
	Names    []Name
	Required []string
	Short    string // the name that a plain text in the object's place stands for
	Open     bool   // takes further names, which the specification does not list
}

// pickNames returns some of the names, in the order asked for.
func pickNames(names []Name, picked ...string) []Name {
	some := make([]Name, len(picked))
	for i, name := range picked {
		some[i] = names[slices.IndexFunc(names, func(n Name) bool { return n.Name == name })]
	}
	return some
}
