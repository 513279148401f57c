package settings

import "creasefit/internal/measure"

// Datum is the edge that the lines of a blank are measured from.
type Datum uint8

// The data. Measuring from the nearer edge takes the fewest settings, since
// lines as far from opposite edges share a stop; what lies between two such
// lines then varies with the blank and twice with the stop. Measuring from one
// edge takes a setting a line, and what lies between two lines varies with
// these two.
const (
	Nearer  Datum = iota
	OneEdge       // the left, or the bottom
)

// From returns how far from its edge a line lies that is so far from the left or
// the bottom of a blank of that length, and whether its edge is the right or
// the top one. Lines in the middle are measured from the left or the bottom.
func (d Datum) From(at, length measure.Length) (from measure.Length, far bool) {
	if other := length.Sub(at); d == Nearer && other.Less(at) {
		return other, true
	}
	return at, false
}
