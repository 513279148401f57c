// Package tolerance says how sure clearances are: from the errors that they
// come about from, the worst case, the root-sum-square range and the chance
// that a clearance is not negative (F. W. Scholz, "Tolerance Stack Analysis
// Methods", Boeing ISSTECH-95-030, 1995), and the chance that none of several
// is, which share errors.
//
// It takes the sources as independent of one another and normal; it does not
// know what they are errors of, and it does not decide what chance is enough.
package tolerance

import (
	"math"

	"creasefit/internal/measure"
)

// Source is an uncertain quantity: it may be off by Low less or by High more
// than its nominal value, neither of them negative. Deviation is its standard
// deviation about the middle; zero stands for a third of the way to the ends.
type Source struct{ Low, High, Deviation measure.Length }

// Within is a source that may be off by as much either way.
func Within(e measure.Length) Source { return Source{Low: e, High: e} }

// deviations is how many of them are counted to each side.
const deviations = 3

// Normal returns the middle and the standard deviation of the source, in
// nanometres.
func (s Source) Normal() (middle, deviation float64) {
	low, high := float64(s.Low.Nanometres()), float64(s.High.Nanometres())
	if middle, deviation = (high-low)/2, float64(s.Deviation.Nanometres()); deviation == 0 {
		deviation = (low + high) / (2 * deviations)
	}
	return middle, deviation
}

// Form is a length that depends on sources: Times says, by source, how often
// each goes into it. Sources beyond the end of Times do not.
type Form struct {
	Nominal measure.Length
	Times   []float64
}

// Result is how sure a clearance is.
type Result struct {
	Nominal   measure.Length
	WorstCase measure.Range // every error at its worst at once
	RSS       measure.Range // root-sum-square, three standard deviations either way
	Chance    float64       // normal probability that the clearance is at least zero
	// Deviations is what Form.Deviations says of it.
	Deviations float64
}

// Stack adds up the errors of a clearance. Without any error the chance is 0
// or 1. Lengths are rounded to the nanometre, the worst case outwards.
func Stack(f *Form, sources []Source) Result {
	var under, over float64
	for i, times := range f.Times {
		if times == 0 {
			continue // as most sources do not matter to most forms
		}
		low, high := float64(sources[i].Low.Nanometres()), float64(sources[i].High.Nanometres())
		if times < 0 {
			low, high = high, low
		}
		under += math.Abs(times) * low
		over += math.Abs(times) * high
	}
	mean, deviation := f.normal(sources)
	spread, by := deviations*deviation, above(mean, deviation)
	return Result{
		Nominal:   f.Nominal,
		WorstCase: measure.Range{Min: f.Nominal.Sub(outwards(under)), Max: f.Nominal.Add(outwards(over))},
		RSS:       measure.Range{Min: rounded(mean - spread), Max: rounded(mean + spread)},
		Chance:    Phi(by), Deviations: by,
	}
}

// Deviations is by how many standard deviations a form lies over zero on average:
// endlessly many, or less than none, where it is certain.
func (f *Form) Deviations(sources []Source) float64 { return above(f.normal(sources)) }

// normal returns the mean and the standard deviation of a form, in nanometres.
func (f *Form) normal(sources []Source) (mean, deviation float64) {
	mean = float64(f.Nominal.Nanometres())
	var squares float64
	for i, times := range f.Times {
		if times == 0 {
			continue
		}
		middle, deviation := sources[i].Normal()
		mean += times * middle
		squares += times * times * deviation * deviation
	}
	return mean, math.Sqrt(squares)
}

// rounded and outwards are whole nanometres; a part in 10^9 of one over a whole
// number is the arithmetic's.
func rounded(nm float64) measure.Length { return measure.Nanometres(int64(math.Round(nm))) }
func outwards(nm float64) measure.Length {
	return measure.Nanometres(int64(math.Ceil(nm * (1 - 1e-12))))
}

// above is by how many deviations a mean lies over zero.
func above(mean, deviation float64) float64 {
	switch {
	case deviation > 0:
		return mean / deviation
	case mean < 0:
		return math.Inf(-1)
	}
	return math.Inf(1)
}
