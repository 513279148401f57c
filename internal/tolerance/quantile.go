package tolerance

import "math"

// Quantile is the inverse of the cumulative normal distribution, for p between
// 0 and 1, to seven figures (M. J. Wichura, Algorithm AS 241, "The percentage
// points of the normal distribution", Applied Statistics 37, 1988, PPND7).
func Quantile(p float64) float64 {
	q := p - 0.5
	if math.Abs(q) <= 0.425 {
		r := 0.180625 - q*q
		return q * (((59.109374720*r+159.29113202)*r+50.434271938)*r + 3.3871327179) /
			(((67.187563600*r+78.757757664)*r+17.895169469)*r + 1)
	}
	r := p
	if q > 0 {
		r = 1 - p
	}
	z := tail(math.Sqrt(-math.Log(max(r, 1e-300))))
	if q < 0 {
		return -z
	}
	return z
}

// tail is the percentage point for r, the root of minus the logarithm of what
// lies beyond it.
func tail(r float64) float64 {
	if r <= 5 {
		r -= 1.6
		return (((0.17023821103*r+1.3067284816)*r+2.7568153900)*r + 1.4234372777) /
			((0.12021132975*r+0.73700164250)*r + 1)
	}
	r -= 5
	return (((0.017337203997*r+0.42868294337)*r+3.0812263860)*r + 6.6579051150) /
		((0.012258202635*r+0.24197894225)*r + 1)
}

// spread are the percentage points from 0 to 1 in so many parts.
const parts = 2048

var spread = func() (points [parts + 4]float64) {
	for i := range points {
		points[i] = Quantile(min(max(float64(i-1)/parts, 1e-9), 1-1e-9))
	}
	return points
}()

// quickQuantile is Quantile from the table by cubic interpolation, to 10^-6; near
// the ends it is Quantile.
func quickQuantile(p float64) float64 {
	if p < 0.02 || p > 0.98 {
		return Quantile(p)
	}
	return interpolated(spread[:], p*parts)
}
