package mail

import (
	"math"

	"creasefit/internal/measure"
)

// Mass is an exact mass; the zero Mass is unknown. It compares with ==.
type Mass struct{ picograms int64 }

const picogram = 1e12 // in a gram

// ounce is one avoirdupois ounce in grams: 1/16 of a pound of 453.592 37 g
// (the international pound of 1 July 1959; NIST SP 811, appendix B).
const ounce = 28.349523125

// Grams returns a mass of x grams, to the nearest picogram. x is at most a
// million.
func Grams(x float64) Mass { return Mass{int64(math.Round(x * picogram))} }

// Ounces returns a mass of x avoirdupois ounces, to the nearest picogram.
func Ounces(x float64) Mass { return Grams(x * ounce) }

// Grams returns the mass in grams.
func (m Mass) Grams() float64 { return float64(m.picograms) / picogram }

// Ounces returns the mass in avoirdupois ounces.
func (m Mass) Ounces() float64 { return m.Grams() / ounce }

// Quantity is what a limit is of.
type Quantity uint8

// The quantities. The thickness is the shortest side, the length the longest,
// or by a post's rules the one that the address reads along.
const (
	OfLength Quantity = iota
	OfHeight
	OfLongerSide // whichever way the address reads
	OfShorterSide
	OfThickness
	OfSum   // length, height and thickness together
	OfMass  // with everything inside
	OfRatio // length divided by height
)

// String returns the quantity as it is written on the wire.
func (q Quantity) String() string {
	return [...]string{"length", "height", "longer-side", "shorter-side", "thickness", "sum", "mass", "ratio"}[q]
}

// Amount is so much of a quantity, exactly: nanometres, picograms, or
// millionths of a ratio.
type Amount struct {
	of Quantity
	n  int64
}

// ratioUnit is what ratios are counted in.
const ratioUnit = 1_000_000

// Of returns what the amount is of.
func (a Amount) Of() Quantity { return a.of }

// IsZero reports whether it is nothing.
func (a Amount) IsZero() bool { return a.n == 0 }

// Abs returns the amount without its sign.
func (a Amount) Abs() Amount { return Amount{a.of, max(a.n, -a.n)} }

// Length returns the amount of a length, a height, a side, a thickness or a sum.
func (a Amount) Length() measure.Length { return measure.Nanometres(a.n) }

// Mass returns the amount of a mass.
func (a Amount) Mass() Mass { return Mass{a.n} }

// Ratio returns the amount of a ratio.
func (a Amount) Ratio() float64 { return float64(a.n) / ratioUnit }
