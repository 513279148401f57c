// Package stock is the paper: presets of stocks and sheet sizes with their
// sources, the ways of saying how heavy a paper is, and what can be told of a
// paper from whatever is known.
//
// A caliper that was not measured or published is marked as an estimate with
// its range. The package does not know enclosures, and it does not guess the
// grain.
package stock

import (
	"slices"

	"creasefit/internal/measure"
)

// Stock is one paper as made.
type Stock struct {
	Name             string // on the wire: lower case with hyphens
	Title            string
	Caliper          measure.Length // thickness of one sheet
	CaliperTolerance measure.Length // plus or minus
	Estimated        bool           // a default that ought to be measured: Low to High is likely
	Low, High        measure.Length // of the caliper; both Caliper unless Estimated
	Grammage         float64        // g/m2; zero if the source states none
	Source           string
}

// All returns the stocks, grouped by source.
func All() []Stock { return slices.Clone(stocks) }

// Names returns their names in the same order.
func Names() []string {
	names := make([]string, len(stocks))
	for i, s := range stocks {
		names[i] = s.Name
	}
	return names
}

// Lookup returns the stock of that name, or false if there is none.
func Lookup(name string) (Stock, bool) {
	i := slices.IndexFunc(stocks, func(s Stock) bool { return s.Name == name })
	if i < 0 {
		return Stock{}, false
	}
	return stocks[i], true
}

// MeasuredTolerance returns how much the thickness of one sheet varies from
// edge to edge: 0.011 mm at most (JCP Paper Specification Standards, A55, K10,
// L80). No caliper is known better.
func MeasuredTolerance() measure.Length { return measure.Micrometres(11) }

// Spread returns how far a caliper may be off that somebody states without
// saying how it was measured: 7 % of it, as grammage and caliper are delivered
// (+-5 to 7 %, trade terms of mills and printers), and at least what one sheet
// varies.
func Spread(caliper measure.Length) measure.Length {
	return measure.Max(MeasuredTolerance(), caliper.Times(7).Over(100))
}
