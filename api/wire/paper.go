package wire

import (
	"creasefit/internal/measure"
	"creasefit/internal/stock"
)

// Paper is the answer of /v1/stock.
type Paper struct {
	Caliper           Length        `json:"caliper" validate:"required"`
	CaliperEstimated  bool          `json:"caliper_estimated" validate:"required"`
	CaliperRange      [2]Length     `json:"caliper_range" validate:"required,min=2,max=2"`
	Grammage          float64       `json:"grammage" validate:"required" example:"216.33"` // g/m2
	GrammageEstimated bool          `json:"grammage_estimated" validate:"required"`
	GrammageRange     [2]float64    `json:"grammage_range" validate:"required,min=2,max=2"`
	Density           float64       `json:"density" validate:"required" example:"0.8"`       // g/cm3
	Unlikely          bool          `json:"unlikely" validate:"required"`                    // no paper has such a density
	Contradict        []string      `json:"contradict,omitempty" example:"caliper,grammage"` // the names whose figures make it so
	BasisWeights      []BasisWeight `json:"basis_weights" validate:"required"`
	SheetMass         float64       `json:"sheet_mass,omitempty"` // grams
	ReamMass          float64       `json:"ream_mass,omitempty"`  // kilograms of 500 sheets
	Source            string        `json:"source,omitempty"`     // of a named stock
	Links             SelfLink      `json:"links" validate:"required"`
}

// OfPaper is what can be told of a paper; source is that of a named stock.
func OfPaper(d *stock.Description, unit measure.Unit, source string, a *Asked) *Paper {
	finest := measure.Finest(unit)
	p := &Paper{
		Caliper:           exact(finest, d.Caliper),
		CaliperEstimated:  d.CaliperEstimated,
		CaliperRange:      span(finest, d.Low, d.High),
		Grammage:          round(d.Grammage, 2),
		GrammageEstimated: d.GrammageEstimated,
		GrammageRange:     [2]float64{round(d.LowGrammage, 2), round(d.HighGrammage, 2)},
		Density:           round(d.Density, 3),
		Unlikely:          len(d.Contradict) > 0,
		Contradict:        d.Contradict,
		SheetMass:         round(d.SheetMass, 3),
		ReamMass:          round(d.ReamMass, 3),
		Source:            source,
		Links:             SelfLink{a.Self},
	}
	p.BasisWeights = Each(d.Weights, func(w stock.Weight) BasisWeight { return BasisWeight{w.Grade.Name, w.Grade.Basis, round(w.Pounds, 2)} })
	return p
}

// BasisWeight is how heavy the paper is in one grade's terms.
type BasisWeight struct {
	Grade  string  `json:"grade" validate:"required" example:"cover"`
	Basis  string  `json:"basis" validate:"required" example:"500 sheets of 20 x 26 in"`
	Pounds float64 `json:"pounds" validate:"required" example:"80"`
}
