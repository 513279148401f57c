// Package contents is what goes inside: presets of cards, photographs, sheets
// and envelopes, each with the source its size is taken from, and the goods of
// an invented market stall for the examples.
//
// It does not know enclosures and it never guesses: a size or tolerance that
// the source does not state is zero.
package contents

import (
	"slices"

	"creasefit/internal/measure"
)

// Item is one thing that can go inside.
type Item struct {
	Name               string // on the wire: lower case with hyphens
	Title              string
	Width, Height      measure.Length
	Thickness          measure.Length // zero: the source states none, the request must
	SizeTolerance      measure.Length // of width and height, plus or minus; zero: none stated
	ThicknessTolerance measure.Length // plus or minus; zero: none stated
	Unit               measure.Unit   // that the source states it in
	Source             string
	Invented           bool // made up for the examples
}

// All returns the items, grouped by source.
func All() []Item { return slices.Clone(items) }

// Names returns their names in the same order.
func Names() []string {
	names := make([]string, len(items))
	for i, item := range items {
		names[i] = item.Name
	}
	return names
}

// Lookup returns the item of that name, or false if there is none.
func Lookup(name string) (Item, bool) {
	i := slices.IndexFunc(items, func(item Item) bool { return item.Name == name })
	if i < 0 {
		return Item{}, false
	}
	return items[i], true
}
