package stock

import "creasefit/internal/measure"

// Bounds of what is taken for paper, in g/m2: tissue to thick greyboard.
const (
	LeastGrammage    = 5.0
	GreatestGrammage = 3000.0
)

// LeastCaliper returns the thinnest sheet that is taken for paper: 0.01 mm.
func LeastCaliper() measure.Length { return measure.Micrometres(10) }

// GreatestCaliper returns the thickest: 5 mm.
func GreatestCaliper() measure.Length { return measure.Millimetres(5) }

// Known is what is known of a paper; zero members are not known. Caliper, Stack
// and Points each say how thick it is; Grammage, BasisWeight of a Grade and
// SheetMass of a sheet's size how heavy. What is said in several ways has to
// agree, and the first of them is taken.
type Known struct {
	Unit                    measure.Unit // that calipers are told in; NoUnit is millimetres
	Named                   bool         // Caliper and Grammage are those of a named stock
	Caliper                 measure.Length
	Stack                   measure.Length // height of StackSheets, pressed together
	StackSheets             int
	Points                  float64 // thousandths of an inch
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
	Contradict        []string // the fields that no paper has both of: its density would not be 0.5 to 1.3
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
// nothing known, two figures that contradict each other, or one no paper has.
func Describe(k Known) (Description, error) {
	heavy, faults := masses.settle(k.weights())
	thick, more := calipers(k.Unit).settle(k.thicknesses())
	faults = append(faults, more...)
	if k.StackSheets > 0 && k.Stack.IsZero() {
		faults = append(faults, missing(true, "stack", "a number of sheets needs the height of their stack", "a height such as 1/2 in"))
	}
	if heavy.field == "" && thick.field == "" && len(faults) == 0 {
		faults = append(faults, missing(true, "caliper", "nothing is known of the paper",
			"caliper, points, stack with stack_sheets, grammage, basis_weight with grade, or sheet_mass with sheet"))
	}
	if err := faults.Err(); err != nil {
		return Description{}, err
	}
	return describe(k, thick, heavy), nil
}

// describe fills in what is missing.
func describe(k Known, thick, heavy said) Description {
	caliper := measure.Nanometres(int64(thick.is))
	d := Description{Caliper: caliper, Low: caliper, High: caliper, Grammage: heavy.is, LowGrammage: heavy.is, HighGrammage: heavy.is}
	switch {
	case thick.field == "":
		e := EstimateCaliper(heavy.is)
		d.CaliperEstimated, d.Caliper, d.Low, d.High = true, e.Caliper, e.Low, e.High
	case heavy.field == "":
		micrometres := 1000 * caliper.Millimetres()
		d.GrammageEstimated, d.Grammage = true, micrometres*usualDensity
		d.LowGrammage, d.HighGrammage = micrometres*bulkyDensity, micrometres*glossDensity
	}
	d.Density = Density(d.Grammage, d.Caliper)
	if d.Density < leastDensity || d.Density > greatestDensity {
		d.Contradict = []string{thick.field, heavy.field}
	}
	for _, g := range grades {
		d.Weights = append(d.Weights, Weight{g, g.BasisWeight(d.Grammage)})
	}
	d.SheetMass = SheetMass(d.Grammage, k.SheetWidth, k.SheetHeight)
	d.ReamMass = d.SheetMass * sheetsPerReam / 1000
	return d
}
