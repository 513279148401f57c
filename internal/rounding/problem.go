// Package rounding finds the plainest ruler readings that still fit. A problem
// is a set of readings, linear closures that must hold exactly, and windows
// that linear forms of the readings must lie in; the search finds the exact
// optimum over whole multiples of a step, or proves that there is none.
//
// It knows nothing of paper, parses nothing and prints nothing.
package rounding

import "creasefit/internal/measure"

// Problem is one set of readings to be chosen together.
type Problem struct {
	Readings []Reading
	Closures []Closure
	Windows  []Window
	Even     []Pair // readings that should be equal
}

// Reading is a number that a person sets on a ruler.
type Reading struct {
	Name  string
	Ideal measure.Length // what it would be on an endlessly fine ruler
	Min   measure.Length // the least it may be
	Max   measure.Length // the greatest it may be
	Fixed bool           // kept at Ideal as given
}

// Form is a linear form of the readings: the sum of coefficient times reading,
// plus a constant.
type Form struct {
	Terms    []Term
	Constant measure.Length
}

// Term is a reading, by index, with its whole coefficient.
type Term struct {
	Reading     int
	Coefficient int64
}

// Closure is a form that must be exactly zero.
type Closure struct {
	Name string
	Form Form
}

// Window is a range that a form must lie in, ends included. The nearer to its
// middle the better; Weight, a positive number, says how much that counts.
type Window struct {
	Name     string
	Form     Form
	Min, Max measure.Length
	Weight   int64
}

// Pair is two readings, by index, that should be equal if they can be.
type Pair struct{ A, B int }

// Value returns the form's value for the given sizes of the readings.
func (f Form) Value(sizes []measure.Length) measure.Length {
	sum := f.Constant
	for _, t := range f.Terms {
		sum = sum.Add(sizes[t.Reading].Times(t.Coefficient))
	}
	return sum
}
