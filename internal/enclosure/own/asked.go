package own

import (
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
)

// lengths are the exact lengths of a request that forms are made of. The unknowns have
// none yet.
func (v *derivation) lengths(in *enclosure.Input) []measure.Length {
	l := make([]measure.Length, v.first+len(v.unknowns))
	allowed := in.Allowance()
	copy(l, []measure.Length{caliper: in.Caliper, width: in.Width, height: in.Height, thickness: in.Thickness, one: measure.Nanometres(1),
		little: in.Little(), beside: in.Beside(), more: allowed.Max.Sub(allowed.Min), middle: middleIn(in.Fit), loosest: in.Fit.Max})
	for i, f := range enclosure.NamedFits() {
		l[named+i] = middleIn(f.Range(in.Unit))
	}
	for i := range v.Sizes {
		l[firstSize+i] = v.Sizes[i].length(in)
	}
	return l
}

// middleIn is the middle of a range.
func middleIn(r enclosure.Range) measure.Length { return r.Min.Add(r.Max).Over(2) }

// length is how long a size is in a request.
func (s *Size) length(in *enclosure.Input) measure.Length {
	if given, ok := in.Given[s.Name]; ok {
		return given.Length
	}
	if in.Unit == measure.Millimetre {
		return s.Millimetre
	}
	return s.Inch
}

// values are lengths as numbers, in nanometres.
func values(exact []measure.Length) []float64 {
	values := make([]float64, len(exact))
	for i, l := range exact {
		values[i] = float64(l.Nanometres())
	}
	return values
}
