package enclosure

import (
	"math"

	"creasefit/internal/measure"
)

// length returns a length parameter: as given, or its default on this ruler.
func (in *Input) length(name string) measure.Length {
	if v, ok := in.Given[name]; ok {
		return v.Length
	}
	return in.param(name).DefaultLength(in.Unit)
}

// count returns a count parameter: as given, or its default.
func (in *Input) count(name string) int64 {
	if v, ok := in.Given[name]; ok {
		return v.Count
	}
	return in.param(name).DefaultCount
}

// choice returns a choice parameter: as given, or the first choice.
func (in *Input) choice(name string) string {
	if v, ok := in.Given[name]; ok {
		return v.Choice
	}
	return in.param(name).Choices[0]
}

// given reports whether the request names the parameter.
func (in *Input) given(name string) bool {
	_, ok := in.Given[name]
	return ok
}

// param returns the description of one of the kind's parameters. A kind only
// asks for what it declares, which a test checks by planning every kind.
func (in *Input) param(name string) *Param {
	i := 0
	for in.Params[i].Name != name {
		i++
	}
	return &in.Params[i]
}

// scaled multiplies a length, up to 100 m, by an irrational number.
func scaled(l measure.Length, by float64) measure.Length {
	return measure.Nanometres(int64(math.Round(float64(l.Nanometres()) * by)))
}

// ratio returns how often a length goes into another.
func ratio(a, b measure.Length) float64 { return float64(a.Nanometres()) / float64(b.Nanometres()) }

// orElse returns a length parameter as given, or the other length.
func (in *Input) orElse(name string, other measure.Length) measure.Length {
	if v, ok := in.Given[name]; ok {
		return v.Length
	}
	return other
}
