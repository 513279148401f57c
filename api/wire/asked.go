package wire

import (
	"encoding/json"
	"maps"
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
)

// Asked is what answers repeat of their request.
type Asked struct {
	Path  string // of the call
	Query string // the canonical one, with its question mark
	Given Givens
	Sheet string // the named or measured sheet as it stands in an address
	// With is the canonical address with another word for one name; empty if the
	// call has no such name.
	With func(enclosure.Option) string
}

// Self is the canonical address of the answer.
func (a *Asked) Self() string { return a.Path + a.Query }

// Given is how one value of the request was understood.
type Given struct {
	Name string `json:"-" member:"name"`
	Text string `json:"text" validate:"required" example:"3 1/2 in"` // as given, or as filled in
	*Both
	From string `json:"from,omitempty" validate:"omitempty,oneof=contents stock grammage default"` // where it comes from, if not from the request
}

// Both is a length in both units.
type Both struct {
	MM float64 `json:"mm" example:"88.9"` // of a length
	In float64 `json:"in" example:"3.5"`  // of a length
}

// InBoth is a length in both units.
func InBoth(l measure.Length) Both { return Both{l.Millimetres(), l.Rounded(measure.Inch)} }

// Givens are the values of a request by name, in the order that the call lists
// its names.
type Givens []Given

// Of returns how the value of a name was understood; the zero Given if it was
// not given.
func (g Givens) Of(name string) Given {
	if i := slices.IndexFunc(g, func(x Given) bool { return x.Name == name }); i >= 0 {
		return g[i]
	}
	return Given{}
}

// UnmarshalJSON reads what was written, in the order of the names.
func (g *Givens) UnmarshalJSON(text []byte) error {
	var byName map[string]Given
	if err := json.Unmarshal(text, &byName); err != nil {
		return err
	}
	*g = nil
	for _, name := range slices.Sorted(maps.Keys(byName)) {
		given := byName[name]
		given.Name = name
		*g = append(*g, given)
	}
	return nil
}
