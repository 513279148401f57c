package stock

import (
	"fmt"
	"math"
	"strconv"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// Bounds of what is taken for paper, in g/m2: tissue to thick greyboard.
const (
	LeastGrammage    = 5.0
	GreatestGrammage = 3000.0
)

// LeastCaliper returns the thinnest sheet that is taken for paper: 0.01 mm.
func LeastCaliper() measure.Length { return measure.Micrometres(10) }

// GreatestCaliper returns the thickest: 5 mm.
func GreatestCaliper() measure.Length { return measure.Millimetres(5) }

// Known is what is known of a paper; zero members are not known. How heavy it
// is may be said in one way only: Grammage, BasisWeight of a Grade, or
// SheetMass of a sheet's size.
type Known struct {
	Caliper                 measure.Length
	Grammage                float64 // g/m2
	BasisWeight             float64 // pounds
	Grade                   Grade
	SheetMass               float64 // grams of one sheet
	SheetWidth, SheetHeight measure.Length
}

// Description is all that can be told of a paper.
type Description struct {
	Caliper           measure.Length
	CaliperEstimated  bool           // from the grammage
	Low, High         measure.Length // of the caliper; both Caliper unless estimated
	Grammage          float64        // g/m2
	GrammageEstimated bool           // from the caliper
	LowGrammage       float64        // both Grammage unless estimated
	HighGrammage      float64
	Density           float64  // g/cm3
	Unlikely          bool     // the density is not that of a paper: 0.5 to 1.3
	Weights           []Weight // in every grade
	SheetMass         float64  // grams; zero if no size is known
	ReamMass          float64  // kilograms of 500 sheets; zero if no size is known
}

// Weight is a basis weight.
type Weight struct {
	Grade  Grade
	Pounds float64
}

// Describe works out the rest from what is known. The error is fault.Faults:
// nothing known, the weight said in two ways, or a figure no paper has.
func Describe(k Known) (Description, error) {
	grammage, faults := k.weighed()
	faults = append(faults, k.caliperFault()...)
	if grammage == 0 && k.Caliper.IsZero() && len(faults) == 0 {
		faults = append(faults, fault.Fault{
			Code: fault.Missing, Field: "caliper", Detail: "nothing is known of the paper",
			Expected: "caliper, grammage, basis_weight with grade, or sheet_mass with sheet",
		})
	}
	if err := faults.Err(); err != nil {
		return Description{}, err
	}
	return describe(k, grammage), nil
}

// describe fills in what is missing.
func describe(k Known, grammage float64) Description {
	d := Description{Caliper: k.Caliper, Low: k.Caliper, High: k.Caliper}
	d.Grammage, d.LowGrammage, d.HighGrammage = grammage, grammage, grammage
	switch {
	case k.Caliper.IsZero():
		e := EstimateCaliper(grammage)
		d.CaliperEstimated, d.Caliper, d.Low, d.High = true, e.Caliper, e.Low, e.High
	case grammage == 0:
		micrometres := 1000 * k.Caliper.Millimetres()
		d.GrammageEstimated, d.Grammage = true, micrometres*usualDensity
		d.LowGrammage, d.HighGrammage = micrometres*bulkyDensity, micrometres*glossDensity
	}
	d.Density = Density(d.Grammage, d.Caliper)
	d.Unlikely = d.Density < leastDensity || d.Density > greatestDensity
	for _, g := range grades {
		d.Weights = append(d.Weights, Weight{g, g.BasisWeight(d.Grammage)})
	}
	d.SheetMass = SheetMass(d.Grammage, k.SheetWidth, k.SheetHeight)
	d.ReamMass = d.SheetMass * sheetsPerReam / 1000
	return d
}

// weighed returns the grammage, however it is said; zero if it is not.
func (k Known) weighed() (float64, fault.Faults) {
	var grammage float64
	var field string
	var value float64
	ways := 0
	say := func(name string, given, gsm float64) {
		if given != 0 {
			field, value, grammage = name, given, gsm
			ways++
		}
	}
	say("grammage", k.Grammage, k.Grammage)
	say("basis_weight", k.BasisWeight, k.fromBasis())
	say("sheet_mass", k.SheetMass, k.fromSheet())
	switch {
	case ways > 1:
		return 0, fault.Faults{{
			Code: fault.Conflict, Field: field, Value: number(value), Detail: "the paper's weight is said in two ways",
			Expected: "one of grammage, basis_weight, sheet_mass",
		}}
	case ways == 1:
		return grammage, k.grammageFault(field, value, grammage)
	default:
		return 0, nil
	}
}

// fromBasis returns the g/m2 of the basis weight; zero without a grade.
func (k Known) fromBasis() float64 {
	if k.Grade.area == 0 {
		return 0
	}
	return k.Grade.Grammage(k.BasisWeight)
}

// fromSheet returns the g/m2 of the weighed sheet; zero without its size.
func (k Known) fromSheet() float64 {
	area := k.SheetWidth.Millimetres() * k.SheetHeight.Millimetres()
	if area <= 0 {
		return 0
	}
	return k.SheetMass * 1e6 / area
}

// grammageFault checks what a weight, given as the field, comes to.
func (k Known) grammageFault(field string, value, grammage float64) fault.Faults {
	f := fault.Fault{Field: field, Value: number(value)}
	switch {
	case field == "basis_weight" && k.Grade.area == 0:
		f.Code, f.Field, f.Value = fault.Missing, "grade", ""
		f.Detail, f.Expected = "a basis weight needs the grade of paper", fmt.Sprint(GradeNames())
	case field == "sheet_mass" && (k.SheetWidth.Sign() <= 0 || k.SheetHeight.Sign() <= 0):
		f.Code, f.Field, f.Value = fault.Missing, "sheet", ""
		f.Detail, f.Expected = "the mass of a sheet needs its size", "a size such as 8 1/2 x 11 in"
	case !(grammage >= LeastGrammage && grammage <= GreatestGrammage):
		f.Code, f.Detail = fault.OutOfRange, fmt.Sprintf("this comes to %s g/m2, which is no paper", number(grammage))
		f.Expected = fmt.Sprintf("%s to %s g/m2", number(LeastGrammage), number(GreatestGrammage))
	default:
		return nil
	}
	return fault.Faults{f}
}

// caliperFault checks the caliper.
func (k Known) caliperFault() fault.Faults {
	least, greatest := LeastCaliper(), GreatestCaliper()
	if k.Caliper.IsZero() || !k.Caliper.Less(least) && !greatest.Less(k.Caliper) {
		return nil
	}
	return fault.Faults{{
		Code: fault.OutOfRange, Field: "caliper", Value: millimetres(k.Caliper), Detail: "no paper is as thick as that",
		Expected: millimetres(least) + " to " + millimetres(greatest),
	}}
}

// millimetres writes a caliper.
func millimetres(l measure.Length) string {
	return string(measure.AppendDecimal(nil, l, measure.Millimetre, 6)) + " mm"
}

// number writes a figure to three decimals at most.
func number(x float64) string { return strconv.FormatFloat(math.Round(x*1000)/1000, 'f', -1, 64) }
