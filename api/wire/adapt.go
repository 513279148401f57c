package wire

import (
	"creasefit/internal/solve"
)

// Adapted is the answer of /v1/adapt/{kind}: a pattern made anew in the same
// character, and the one that it was made from.
type Adapted struct {
	Words string       `json:"words" validate:"required" example:"Made for the new thing at 1/8 in, as the old one: width snug. 3 of 6 sizes change."`
	Style []StyleRead  `json:"style" validate:"required"` // choices that were read off the measurements
	Sizes []SizeBeside `json:"sizes" validate:"required"` // every size, before and after
	Was   *Check       `json:"was" validate:"required"`   // the measured pattern with what it was made for
	Now   *Solution    `json:"now" validate:"required"`
}

// StyleRead is a choice that the measurements speak for.
type StyleRead struct {
	Name   string `json:"name" validate:"required" example:"scores"`
	Choice string `json:"choice" validate:"required" example:"two"`
}

// SizeBeside is one size of both patterns.
type SizeBeside struct {
	Name string `json:"name" validate:"required" example:"back"`
	Was  Length `json:"was" validate:"required"`
	Now  Length `json:"now" validate:"required"`
}

// OfAdapted is the answer to a pattern that was adapted.
func OfAdapted(a *solve.Adapted, asked *Asked) *Adapted {
	step := a.After.Step
	w := &Adapted{Was: OfCheck(a.Before, asked), Now: OfSolution(a.After, asked)}
	changed := 0
	for _, c := range a.Sizes {
		w.Sizes = append(w.Sizes, SizeBeside{c.Name, exactIn(step.Unit(), c.From), exact(step, c.To)})
		if c.From != c.To {
			changed++
		}
	}
	for _, c := range a.Style {
		w.Style = append(w.Style, StyleRead{c.Name, c.Word})
	}
	fits := ""
	for _, f := range a.After.Fits {
		if f.Between == "" {
			fits += ", " + f.Axis.String() + " " + f.Verdict
		}
	}
	w.Words = "Made for the new thing at " + step.String() + fits + ". " + number(float64(changed), 0) + " of " + Count(len(a.Sizes), "size changes.", "sizes change.")
	return w
}
