package tolerance

import "math"

// ChiSquareQuantile is the value that the sum of squares of so many standard
// normal quantities, one or more, stays under with probability p, to nine
// figures.
func ChiSquareQuantile(p float64, degrees int) float64 {
	return bisected(p, func(x float64) float64 { return ChiSquare(x, degrees) })
}

// StudentQuantile is the value that Student's t of so many degrees of freedom,
// one or more, stays under with probability p of at least a half, to nine
// figures.
func StudentQuantile(p float64, degrees int) float64 {
	return bisected(p, func(t float64) float64 { return student(t, degrees) })
}

// RectangularHalf is half of the width, about zero, in which the sum of
// independent errors lies with the given confidence, each of which is as likely
// anywhere within plus or minus one of the halves: those of readings are (JCGM
// 100:2008, 4.3.7). It takes up to ten of them, none negative.
func RectangularHalf(confidence float64, halves ...float64) float64 {
	var largest float64
	for _, h := range halves {
		largest = max(largest, h)
	}
	if largest == 0 {
		return 0
	}
	kept := make([]float64, 0, len(halves)) // in parts of the largest
	for _, h := range halves {
		if h > largest/200 { // less adds nothing, and loses all figures below
			kept = append(kept, h/largest)
		}
	}
	p := (1 + confidence) / 2
	return largest * bisected(p, func(x float64) float64 { return rectangularSum(x, kept) })
}

// bisected is where a rising function of what is not negative has a value.
func bisected(value float64, f func(float64) float64) float64 {
	low, high := 0.0, 1.0
	for f(high) < value && high < 1e12 {
		high *= 2
	}
	for range 80 {
		if middle := (low + high) / 2; f(middle) < value {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}

// ChiSquare is the probability that the sum of squares of so many standard normal
// quantities, one or more, is at most x, which is not negative (Abramowitz and
// Stegun, 26.4.4 and 26.4.5).
func ChiSquare(x float64, degrees int) float64 {
	if x <= 0 {
		return 0
	}
	var over, term float64
	first := 1
	if degrees%2 == 0 {
		over, term = math.Exp(-x/2), math.Exp(-x/2)
		first = 2
	} else {
		over = 2 * Phi(-math.Sqrt(x))
		term = 2 * math.Exp(-x/2) / math.Sqrt(2*math.Pi*x) // times x is the first one
	}
	for k := first; k < degrees; k += 2 {
		term *= x / float64(k)
		over += term
	}
	return 1 - over
}

// student is the cumulative distribution (Abramowitz and Stegun, 26.7.3 and
// 26.7.4).
func student(t float64, degrees int) float64 {
	angle := math.Atan(t / math.Sqrt(float64(degrees)))
	sin, cos := math.Sincos(angle)
	term, sum := 1.0, 0.0
	if degrees%2 == 1 {
		term = cos
	}
	for k := degrees%2 + 1; k < degrees; k += 2 {
		sum += term
		term *= cos * cos * float64(k) / float64(k+1)
	}
	if degrees%2 == 0 {
		return 0.5 + sin*sum/2
	}
	return 0.5 + (angle+sin*sum)/math.Pi
}

// rectangularSum is the cumulative distribution of a sum of errors that are as
// likely anywhere within plus or minus their halves.
func rectangularSum(x float64, halves []float64) float64 {
	var sum float64
	for corner := range 1 << len(halves) {
		at, sign := x, 1.0
		for i, h := range halves {
			if corner>>i&1 == 1 {
				at, sign = at-h, -sign
			} else {
				at += h
			}
		}
		if at > 0 {
			sum += sign * math.Pow(at, float64(len(halves)))
		}
	}
	for i, h := range halves {
		sum /= 2 * h * float64(i+1)
	}
	return min(max(sum, 0), 1)
}
