package solve

import (
	"math"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/tolerance"
)

// judge says for every fitted axis how the contents go in with the given sizes
// of the readings.
func (r *Request) judge(plan *enclosure.Plan, sizes []measure.Length) []Fit {
	fits := make([]Fit, len(plan.Fits))
	var terms [32]tolerance.Term
	for i, f := range plan.Fits {
		window := &plan.Problem.Windows[f.Window]
		clearance := f.Clearance(window.Form.Value(sizes))
		result := tolerance.Stack(clearance, r.terms(terms[:0], plan, &f))
		fits[i] = Fit{
			Axis: f.Axis, Between: f.Between, Verdict: enclosure.Verdict(clearance, r.Ruler.Unit()), Window: f.Wanted,
			Nominal: clearance, WorstCase: enclosure.Range(result.WorstCase), RSS: enclosure.Range(result.RSS), Chance: result.Chance,
		}
	}
	return fits
}

// terms lists what a clearance depends on and how uncertain that is: the marks
// that its readings lie between, the contents and the caliper.
func (r *Request) terms(terms []tolerance.Term, plan *enclosure.Plan, f *enclosure.Fit) []tolerance.Term {
	var coefficient coefficients
	for _, t := range plan.Problem.Windows[f.Window].Form.Terms {
		coefficient[t.Reading] += t.Coefficient
	}
	terms = r.settings(terms, plan, &coefficient)
	if f.Scale > 0 {
		share(terms, f.Share)
	} else if f.Curve != nil {
		alongCurve(terms, f.Curve)
	}
	terms = r.spread(terms, pattern.Width, f.Need.Width)
	terms = r.spread(terms, pattern.Height, f.Need.Height)
	terms = r.spread(terms, pattern.Thickness, f.Need.Thickness)
	return append(terms, tolerance.Term{Coefficient: f.Need.HalfCalipers, Over: 2, Error: r.CaliperTolerance})
}

// coefficients say, by reading, how often each goes into a length.
type coefficients [64]int64

// settings lists the marks and cuts that a length made of readings depends on;
// two neighbouring panels share the mark between them, so its errors cancel or
// add up there. It clears the coefficients.
func (r *Request) settings(terms []tolerance.Term, plan *enclosure.Plan, coefficient *coefficients) []tolerance.Term {
	for i := range plan.Strips {
		terms = r.marks(terms, &plan.Strips[i], coefficient)
	}
	for i, c := range coefficient[:len(plan.Problem.Readings)] {
		if c != 0 && !plan.Problem.Readings[i].Fixed { // in no strip: one cut of its own
			terms = append(terms, tolerance.Term{Coefficient: c, Error: r.CutError})
		}
	}
	return terms
}

// spread appends so many times the uncertainty of the contents along an axis:
// how much they vary or, where they are another enclosure, what its own outside
// depends on.
func (r *Request) spread(terms []tolerance.Term, axis pattern.Axis, times int64) []tolerance.Term {
	switch {
	case r.inner != nil:
		for _, t := range r.inner[axis] {
			terms = append(terms, tolerance.Term{Coefficient: t.Coefficient * times, Over: t.Over, Error: t.Error})
		}
		return terms
	case axis == pattern.Thickness:
		return append(terms, tolerance.Term{Coefficient: times, Error: r.ThicknessTolerance})
	default:
		return append(terms, tolerance.Term{Coefficient: times, Error: r.SizeTolerance})
	}
}

// share turns terms of marks into terms of a clearance that is measured at an
// angle to them: so many times, to a part in 10^8.
func share(terms []tolerance.Term, times float64) {
	const over = 100_000_000
	for i := range terms {
		terms[i].Coefficient, terms[i].Over = terms[i].Coefficient*int64(math.Round(times*over)), over
	}
}

// alongCurve turns terms of a reading into terms of a clearance that is a
// curve of it: times its slope, over a stretch of 1 mm.
func alongCurve(terms []tolerance.Term, curve func(measure.Length) measure.Length) {
	over := measure.Millimetres(1)
	rise := curve(over.Over(2)).Sub(curve(over.Over(-2)))
	for i := range terms {
		terms[i].Coefficient, terms[i].Over = terms[i].Coefficient*(rise.Nanometres()/1000), over.Nanometres()/1000
	}
}

// marks adds the marks of one strip. Positions are measured from the strip's
// start, which has no error; the end of the blank is a cut, what lies between
// is scored. What it has dealt with it clears from the coefficients.
func (r *Request) marks(terms []tolerance.Term, strip *enclosure.Strip, coefficient *coefficients) []tolerance.Term {
	last := len(strip.Readings) - 1
	for i, reading := range strip.Readings {
		own, next, err := coefficient[reading], int64(0), r.CutError
		if i < last {
			next, err = coefficient[strip.Readings[i+1]], r.ScoreError
		}
		if own != next { // the mark ends one panel and begins the next
			terms = append(terms, tolerance.Term{Coefficient: own - next, Error: err})
		}
	}
	for _, reading := range strip.Readings {
		coefficient[reading] = 0
	}
	return terms
}

// sureAxis is the least chance that needs no warning.
const sureAxis = 0.95

// unsure returns the fit that is the least sure to go in, nil if all are sure
// enough to need no warning.
func unsure(fits []Fit) *Fit {
	var least *Fit
	chance := sureAxis
	for i := range fits {
		if f := &fits[i]; f.Chance < chance {
			least, chance = f, f.Chance
		}
	}
	return least
}
