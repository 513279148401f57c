// Package tolerance says how sure a clearance is: from a linear form's
// coefficients and the errors of its terms the worst case, the
// root-sum-square range and the chance that it is not negative (F. W. Scholz,
// "Tolerance Stack Analysis Methods", Boeing ISSTECH-95-030, 1995).
//
// It takes the errors as independent, centred and normal; it does not know
// what they are errors of, and it does not decide what chance is enough.
package tolerance

import (
	"math"

	"creasefit/internal/measure"
)

// Term is one uncertain quantity of a linear form: Coefficient / Over times
// a length that may be off by plus or minus Error, three standard deviations.
// An Over of zero counts as one.
type Term struct {
	Coefficient int64
	Over        int64
	Error       measure.Length // not negative
}

// Range is a least and a greatest length.
type Range struct{ Min, Max measure.Length }

// Result is how sure a clearance is.
type Result struct {
	Nominal   measure.Length
	WorstCase Range   // every error at its worst at once: the sum of |a| e
	RSS       Range   // root-sum-square, three standard deviations either way
	Chance    float64 // normal probability that the clearance is at least zero
}

// Stack adds up the errors of a clearance. Without any error the chance is 0
// or 1. Lengths are rounded to the nanometre, the worst case outwards.
func Stack(nominal measure.Length, terms []Term) Result {
	var worst measure.Length
	var squares float64
	for _, t := range terms {
		over := max(1, t.Over)
		scaled := t.Error.Times(max(t.Coefficient, -t.Coefficient)).Nanometres()
		worst = worst.Add(measure.Nanometres((scaled + over - 1) / over))
		part := float64(scaled) / float64(over)
		squares += part * part
	}
	spread := math.Sqrt(squares)
	rss := measure.Nanometres(int64(math.Round(spread)))
	return Result{
		Nominal:   nominal,
		WorstCase: Range{nominal.Sub(worst), nominal.Add(worst)},
		RSS:       Range{nominal.Sub(rss), nominal.Add(rss)},
		Chance:    chance(float64(nominal.Nanometres()), spread/3),
	}
}

// chance returns the probability that a normal quantity is at least zero.
func chance(mean, deviation float64) float64 {
	if deviation <= 0 {
		if mean < 0 {
			return 0
		}
		return 1
	}
	return math.Erfc(-mean/(deviation*math.Sqrt2)) / 2
}
