package stock

import (
	"math"

	"creasefit/internal/measure"
)

// Densities of paper in g/cm3: high-bulk uncoated papers are about 0.65, gloss
// coated ones about 1.0 (from the JCP Paper Specification Standards, whose
// papers lie between 0.64 and 0.98), and GNU units 2.22 takes 0.8.
const (
	bulkyDensity = 0.65
	usualDensity = 0.80
	glossDensity = 1.00
)

// Densities of what may still be called paper.
const (
	leastDensity    = 0.5
	greatestDensity = 1.3
)

// Estimate is a caliper that was worked out, not measured.
type Estimate struct {
	Caliper   measure.Length // at the usual density
	Low, High measure.Length // as gloss coated, as high-bulk paper
}

// EstimateCaliper returns what paper of that many g/m2 is likely to measure:
// caliper = grammage / density (ISO 534).
func EstimateCaliper(grammage float64) Estimate {
	return Estimate{
		Caliper: thickness(grammage, usualDensity),
		Low:     thickness(grammage, glossDensity),
		High:    thickness(grammage, bulkyDensity),
	}
}

// Tolerance returns the greater distance from the estimate to its range.
func (e Estimate) Tolerance() measure.Length {
	return measure.Max(e.High.Sub(e.Caliper), e.Caliper.Sub(e.Low))
}

// thickness returns the caliper for a grammage and a density, to the
// micrometre: one g/m2 at one g/cm3 is one micrometre.
func thickness(grammage, density float64) measure.Length {
	return measure.Micrometres(int64(math.Round(grammage / density)))
}

// Density returns g/cm3.
func Density(grammage float64, caliper measure.Length) float64 {
	return grammage / caliper.Millimetres() / 1000
}

// SheetMass returns the grams of one sheet.
func SheetMass(grammage float64, width, height measure.Length) float64 {
	return grammage * width.Millimetres() * height.Millimetres() / 1e6
}
