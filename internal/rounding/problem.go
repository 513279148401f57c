// Package rounding finds the plainest ruler readings that still fit. A problem
// is a set of readings, linear closures that must hold exactly, and windows
// that linear forms of the readings must lie in; the search finds the exact
// optimum over whole multiples of a step, or proves that there is none and
// says how near it comes.
//
// A problem falls into parts that share no closure, window or pair. Each is
// searched by branch and bound, in whole numbers throughout: ranges and
// remainders are propagated through the equations and through those that come of
// eliminating readings from them; the windows are decided first, nearest to the
// middle first, then the pairs, then the marks. The sum of the readings is bounded by
// shares of the equations and searched from that bound upwards.
//
// The package knows nothing of paper and of rulers' steps to be tried, parses
// nothing and prints nothing.
package rounding

import "creasefit/internal/measure"

// Problem is one set of readings to be chosen together. The zero Problem has
// no readings and one solution. A problem is refused if an index is out of
// range, a window's least is above its greatest, a weight is negative, or the
// figures come to more than Limit.
type Problem struct {
	Readings []Reading
	Closures []Closure
	Windows  []Window
	Even     []Pair // readings that should be equal
}

// Reading is a number that a person sets on a ruler.
type Reading struct {
	Name  string
	Ideal measure.Length // what it would be on an endlessly fine ruler; unless Fixed it only tells where to look first
	Min   measure.Length // the least it may be; may be negative
	Max   measure.Length // the greatest it may be; zero is zero, not "no end"
	Fixed bool           // kept at Ideal as given, whatever Min and Max are
}

// Form is a linear form of the readings: the sum of coefficient times reading,
// plus a constant. A reading may be named more than once. The zero Form is
// always zero.
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
// middle the better: Weight says how much a nanometre of distance counts
// beside those of other windows. Weight zero means that anywhere in the window
// is as good.
type Window struct {
	Name     string
	Form     Form
	Min, Max measure.Length
	Weight   int64
}

// Pair is two readings, by index, that should be equal if they can be. Of a Rising
// one A must not be above B: where several readings are alike, so that one order of
// them is as good as another, it spares the search the others.
type Pair struct {
	A, B   int
	Rising bool
}

// Value returns the form's value for the given sizes of the readings. It is
// exact for the sizes that a search returns.
func (f Form) Value(sizes []measure.Length) measure.Length {
	sum := f.Constant
	for _, t := range f.Terms {
		sum = sum.Add(sizes[t.Reading].Times(t.Coefficient))
	}
	return sum
}
