package wire

import (
	"slices"

	"creasefit/internal/measure"
)

// Ruler is the answer of /v1/ruler.
type Ruler struct {
	Unit    string        `json:"unit" validate:"required,oneof=in mm" example:"mm"`
	Lengths []RulerLength `json:"lengths" validate:"required"`
	Links   SelfLink      `json:"links" validate:"required"`
}

// OfRuler is the nearest mark of every ruler to lengths, each with its text as
// given.
func OfRuler(unit measure.Unit, lengths []measure.Length, texts []string, a *Asked) *Ruler {
	answer := &Ruler{Unit: unit.String(), Links: SelfLink{a.Self}}
	for i, l := range lengths {
		r := RulerLength{Text: texts[i], MM: l.Millimetres(), In: l.Rounded(measure.Inch)}
		for _, step := range slices.Concat(measure.Marks(measure.Inch), measure.Marks(measure.Millimetre)) {
			r.Readings = append(r.Readings, RulerReading{step.String(), length(step, step.Nearest(l), l)})
		}
		answer.Lengths = append(answer.Lengths, r)
	}
	return answer
}

// RulerLength is one length on every ruler.
type RulerLength struct {
	Text     string         `json:"text" validate:"required" example:"92.1 mm"` // as given
	MM       float64        `json:"mm" validate:"required" example:"92.1"`
	In       float64        `json:"in" validate:"required" example:"3.625984"`
	Readings []RulerReading `json:"readings" validate:"required"`
}

// RulerReading is the nearest mark of one ruler.
type RulerReading struct {
	Step string `json:"step" validate:"required" example:"1/8 in"`
	At   Length `json:"at" validate:"required"`
}
