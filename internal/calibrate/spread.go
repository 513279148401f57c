package calibrate

import (
	"math"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/tolerance"
)

// fewest is how many strips say something of how much they vary.
const fewest = 5

// few refuses fewer strips than that.
func few(field string, n int) error {
	if n >= fewest {
		return nil
	}
	return fault.Fault{Code: fault.Missing, Field: field, Detail: count(n, "measured") + ", which says too little of how they vary",
		Expected: "at least " + count(fewest, "strips"), Hint: "ten are better: make them all in the same way"}
}

// sample is the mean of several lengths and their deviation as read, and what
// reading them to a mark adds to their variance. In nanometres.
type sample struct {
	n                         int
	mean, deviation, rounding float64
}

// sampleOf is the sample of lengths read to so wide a mark. No deviation is known
// closer than that.
func sampleOf(lengths []measure.Length, mark float64) sample {
	s := sample{n: len(lengths), rounding: mark * mark / 12}
	for _, l := range lengths {
		s.mean += nanometres(l) / float64(s.n)
	}
	var squares float64
	for _, l := range lengths {
		squares += (nanometres(l) - s.mean) * (nanometres(l) - s.mean)
	}
	s.deviation = math.Sqrt(max(squares/float64(s.n-1), 2*s.rounding))
	return s
}

// made is the deviation of what was made, by that of what was read, so many times
// as large: without what rounding adds (W. F. Sheppard, 1898).
func (s *sample) made(times float64) float64 {
	read := times * s.deviation
	return math.Sqrt(max(read*read-s.rounding, 0))
}

// student is the factor of a deviation all that is known from own, of the
// sample, and from what else it has (the effective degrees of freedom of B. L.
// Welch and F. E. Satterthwaite; JCGM 100:2008, G.4).
func (s *sample) student(own, all float64) float64 {
	degrees := float64(s.n-1) * math.Pow(all/own, 4)
	return tolerance.StudentQuantile((1+Confidence)/2, int(min(degrees, 10_000)))
}

// normal is within how many standard deviations 95 % lie.
const normal = 1.959964

// spread is how far lines are off that were made at one stop, three standard
// deviations; its limits follow from the chi-square distribution (NIST/SEMATECH
// e-Handbook of Statistical Methods, 1.3.5.8). What is to be used is so much more
// that one line in twenty lies outside its 95 %: the next line is another draw,
// and few strips know their deviation badly. Where all lie to one side, that is
// in it as well, and what to do about it in the notes. Without any strips it is what the
// bench has.
func (r *Record) spread(s *Stop, field, name string, m *Measured) ([]Known, error) {
	n := len(s.Lines)
	if n == 0 {
		for _, k := range OfBench(m.Bench).Known {
			if k.Name == name {
				return []Known{k}, nil
			}
		}
	}
	if err := few(field, n); err != nil {
		return nil, err
	}
	if err := s.strange(field, m); err != nil {
		return nil, err
	}
	lines := sampleOf(s.Lines, nanometres(m.Ruler.Size()))
	limit := func(p float64) measure.Length {
		return length(3 * lines.made(math.Sqrt(float64(n-1)/tolerance.ChiSquareQuantile(p, n-1))))
	}
	student := tolerance.StudentQuantile((1+Confidence)/2, n-1)
	off, unsure := lines.mean-nanometres(s.At), lines.deviation/math.Sqrt(float64(n))
	next := lines.made(student / normal * math.Sqrt(1+1/float64(n)))
	k := Known{Name: name, Use: length(3 * math.Sqrt(next*next+max(0, off*off-unsure*unsure))),
		Estimate: length(3 * lines.made(1)), Least: limit((1 + Confidence) / 2), Greatest: limit((1 - Confidence) / 2),
		From: count(n, field) + " at " + m.words(s.At)}
	if math.Abs(off) > student*unsure {
		r.Notes = append(r.Notes, s.correction(field, off, m))
	}
	return []Known{k}, nil
}

// correction says how to set a stop that is off to one side.
func (s *Stop) correction(field string, off float64, m *Measured) string {
	where, other := "too far", "short"
	if off < 0 {
		where, other = "too short", "farther"
	}
	by := m.words(length(math.Abs(off)))
	return "Your " + field + " lie " + by + " " + where + " on average: set the stop " + by + " " + other + ", and measure again."
}

// strange refuses lines that were not made at that stop.
func (s *Stop) strange(field string, m *Measured) error {
	most := measure.Max(s.At.Over(5), measure.Millimetres(3))
	for _, l := range s.Lines {
		if most.Less(l.Sub(s.At).Abs()) {
			return fault.Fault{Code: fault.Conflict, Field: field, Value: m.words(l), Detail: "this was not made at a stop of " + m.words(s.At),
				Expected: m.words(s.At.Sub(most)) + " to " + m.words(s.At.Add(most)), Hint: "measure from the edge that was at the stop"}
		}
	}
	return nil
}
