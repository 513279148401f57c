package stock

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// apart is how far two figures of one paper may differ and both be true, as a
// part of the first: caliper and grammage are delivered to 5 to 7 per cent
// (trade terms of mills and printers).
const apart = 0.07

// said is one figure as it was given and what it comes to.
type said struct {
	field string
	value float64
	is    float64     // nothing to go by if something is lacking
	lacks fault.Fault // what it needs beside it, if that is missing
}

// quantity is what figures of one sort come to.
type quantity struct {
	unit            string
	least, greatest float64
	scale           float64 // of a figure for one of the unit
	decimals        float64 // one for each part that is written
}

var masses = quantity{"g/m2", LeastGrammage, GreatestGrammage, 1, 10}

// calipers are told in the caller's unit: inches to a ten-thousandth.
func calipers(in measure.Unit) quantity {
	q := quantity{measure.Millimetre.String(), float64(LeastCaliper().Nanometres()), float64(GreatestCaliper().Nanometres()), 1e6, 1e6}
	if in == measure.Inch {
		q.unit, q.scale, q.decimals = in.String(), float64(measure.Inches(1).Nanometres()), 1e4
	}
	return q
}

// weights are the ways in which the mass was said.
func (k Known) weights() []said {
	return []said{
		{field: k.named("grammage"), value: k.Grammage, is: k.Grammage},
		{field: "basis_weight", value: k.BasisWeight, is: k.Grade.Grammage(k.BasisWeight),
			lacks: missing(k.Grade.area == 0, "grade", "a basis weight needs the grade of paper", "one of "+strings.Join(GradeNames(), ", "))},
		{field: "sheet_mass", value: k.SheetMass, is: k.SheetMass * 1e6 / (k.SheetWidth.Millimetres() * k.SheetHeight.Millimetres()),
			lacks: missing(k.SheetWidth.Sign() <= 0 || k.SheetHeight.Sign() <= 0, "sheet", "the mass of a sheet needs its size", "a size such as 8 1/2 x 11 in")},
	}
}

// thicknesses are the ways in which the caliper was said, in nanometres.
func (k Known) thicknesses() []said {
	caliper, each := float64(k.Caliper.Nanometres()), 0.0
	if k.StackSheets > 0 {
		each = float64(k.Stack.Over(int64(k.StackSheets)).Nanometres())
	}
	return []said{
		{field: k.named("caliper"), value: caliper / calipers(k.Unit).scale, is: caliper},
		{field: "stack", value: float64(k.Stack.Nanometres()) / calipers(k.Unit).scale, is: each,
			lacks: missing(k.StackSheets <= 0, "stack_sheets", "the height of a stack needs the number of its sheets", "how many sheets were measured, such as 50")},
		{field: "points", value: k.Points, is: math.Round(k.Points * float64(measure.Thousandths(1).Nanometres()))},
	}
}

// named returns the field that a figure came from.
func (k Known) named(field string) string {
	if k.Named {
		return "stock"
	}
	return field
}

// missing is the fault of a figure that lacks another one.
func missing(lacking bool, field, detail, expected string) fault.Fault {
	if !lacking {
		return fault.Fault{}
	}
	return fault.Fault{Code: fault.Missing, Field: field, Detail: detail, Expected: expected}
}

// settle returns the first figure that was given, and what is wrong with any.
func (q quantity) settle(ways []said) (first said, faults fault.Faults) {
	for _, s := range ways {
		switch {
		case s.value == 0:
		case s.lacks.Code != "":
			faults = append(faults, s.lacks)
		case !(s.is >= q.least && s.is <= q.greatest):
			faults = append(faults, fault.Fault{Code: fault.OutOfRange, Field: s.field, Value: number(s.value),
				Detail:   fmt.Sprintf("this comes to %s, which is no paper", q.format(s.is)),
				Expected: q.format(q.least) + " to " + q.format(q.greatest)})
		case first.field == "":
			first = s
		case math.Abs(s.is-first.is) > apart*first.is:
			faults = append(faults, fault.Fault{Code: fault.Conflict, Field: s.field, Value: number(s.value),
				Detail:   fmt.Sprintf("%s comes to %s, but %s to %s", s.field, q.format(s.is), first.field, q.format(first.is)),
				Expected: "figures that are at most 7 % apart, or one of them"})
		}
	}
	return first, faults
}

// format writes what a figure comes to.
func (q quantity) format(is float64) string {
	return number(math.Round(is/q.scale*q.decimals)/q.decimals) + " " + q.unit
}

// number writes a figure to six decimals at most.
func number(x float64) string { return strconv.FormatFloat(math.Round(x*1e6)/1e6, 'f', -1, 64) }
