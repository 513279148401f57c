package wire

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"sync"

	"creasefit/api/ask"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
)

// Asked is what an answer repeats of its request. It also has the memory that
// the larger answers are made in.
type Asked struct {
	*ask.Reading
	Self  string // the canonical address of the answer
	Query string // that of it, with its question mark
	Given Givens

	path     string // of the call
	both     []Both // that Given points to
	solution Solution
	texts    strings.Builder // what was joined so far
}

// askeds are those that no answer needs any more.
var askeds = sync.Pool{New: func() any { return new(Asked) }}

// usualTexts is how many bytes most answers join.
const usualTexts = 2 << 10

// Ask returns what answers of the call at a path repeat of a request.
func Ask(r *ask.Reading, path string) *Asked { return AskAt(r, path, "") }

// AskAt is Ask where the canonical address is known already, unless it is empty.
func AskAt(r *ask.Reading, path, self string) *Asked {
	a := askeds.Get().(*Asked)
	a.Reading, a.path, a.Self = r, path, self
	a.texts.Grow(usualTexts)
	if self == "" {
		a.Self = a.text(r.Link(path))
	}
	a.Query = a.Self[len(path):]
	list := r.Given()
	a.Given, a.both = slices.Grow(a.Given[:0], len(list)), slices.Grow(a.both[:0], len(list))
	for _, g := range list {
		given := Given{Name: g.Name, Text: g.Text, From: g.From}
		if g.Measured {
			a.both = append(a.both, InBoth(g.Length))
			given.Both = &a.both[len(a.both)-1]
		}
		a.Given = append(a.Given, given)
	}
	return a
}

// Release gives the memory of the answer back: nobody may look at its lists any more,
// while texts stay.
func (a *Asked) Release() {
	a.texts.Reset()
	askeds.Put(a)
}

// text is a text in the memory of the answer.
func (a *Asked) text(of []byte) string {
	from := a.texts.Len()
	_, _ = a.texts.Write(of) // it takes every write
	return a.texts.String()[from:]
}

// join is what texts come to one after another.
func (a *Asked) join(texts ...string) string {
	from := a.texts.Len()
	for _, t := range texts {
		_, _ = a.texts.WriteString(t)
	}
	return a.texts.String()[from:]
}

// with is the canonical address with another word for one name; empty if the call
// has no such name.
func (a *Asked) with(o enclosure.Option) string { return a.text(a.LinkWith(a.path, o.Name, o.Choice)) }

// more makes a list longer by an entry. Where the memory was used before, its old
// entry is still there, so that the lists in it serve again.
func more[T any](list []T) ([]T, *T) {
	list = slices.Grow(list, 1)[:len(list)+1]
	return list, &list[len(list)-1]
}

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
