package tolerance

import "math"

// Phi is the cumulative normal distribution.
func Phi(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

// The table of the cumulative normal distribution from -end to end, and how many
// places a deviation has in it.
const (
	end    = 6.5
	places = 32
)

var table = func() (values [2*end*places + 4]float64) {
	for i := range values {
		values[i] = Phi(float64(i-1)/places - end)
	}
	return values
}()

// quickPhi is Phi from the table by cubic interpolation, to 10^-8.
func quickPhi(z float64) float64 {
	at := (z + end) * places
	switch {
	case at <= 0:
		return Phi(z)
	case at >= 2*end*places:
		return 1
	}
	return interpolated(table[:], at)
}

// interpolated is a table's value at a place, its second value being that at
// zero, by the cubic through the four around it.
func interpolated(table []float64, at float64) float64 {
	i := int(at)
	x := at - float64(i)
	a, b, c, d := table[i], table[i+1], table[i+2], table[i+3]
	return b + x/2*(c-a+x*(2*a-5*b+4*c-d+x*(3*(b-c)+d-a)))
}
