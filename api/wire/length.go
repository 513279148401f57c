// Package wire holds what answers are: their types, from which JSON, tables,
// texts and the specification come, and how each is made from what was
// computed. Tags named validate say what a caller may rely on.
//
// It writes no format, reads no request and knows no HTTP.
package wire

import (
	"math"
	"strconv"

	"creasefit/internal/measure"
)

// Length is one measure as every answer gives it.
type Length struct {
	Reading string  `json:"reading" validate:"required" example:"3 5/8 in"` // what to set on the ruler
	In      float64 `json:"in" validate:"required" example:"3.625"`         // the same in inches, rounded to a millionth
	MM      float64 `json:"mm" validate:"required" example:"92.075"`        // the same in millimetres, exact
	ExactMM float64 `json:"exact_mm" validate:"required" example:"91.91"`   // on an endlessly fine ruler
	OffMM   float64 `json:"off_mm" validate:"required" example:"0.165"`     // reading minus ideal
	Papers  int     `json:"papers,omitempty" example:"-1"`                  // so many thicknesses of the stock beyond the reading, short of it if negative: in and mm have them in
}

// length is a LENGTH that is set on a ruler in place of the ideal one.
func length(step measure.Step, l, ideal measure.Length) Length {
	return lengthRead(Reading(step, l), l, ideal, 0)
}

// lengthRead is a LENGTH with a reading that was written, so many papers beside it.
func lengthRead(reading string, l, ideal measure.Length, papers int) Length {
	return Length{reading, l.Rounded(measure.Inch), l.Millimetres(), ideal.Millimetres(), l.Sub(ideal).Millimetres(), papers}
}

// exact is a LENGTH that is its own ideal.
func exact(step measure.Step, l measure.Length) Length { return length(step, l, l) }

// exactIn is a LENGTH as it is stated in the unit, never rounded.
func exactIn(unit measure.Unit, l measure.Length) Length {
	return lengthRead(measure.Finest(unit).Format(l), l, l, 0)
}

// known is a LENGTH that may be unknown, which is zero.
func known(unit measure.Unit, l measure.Length) *Length {
	if l.IsZero() {
		return nil
	}
	return new(exactIn(unit, l))
}

// span is a least and a greatest LENGTH.
func span(step measure.Step, least, greatest measure.Length) [2]Length {
	return [2]Length{exact(step, least), exact(step, greatest)}
}

// Reading writes what to set on the ruler. A length that no mark of the step
// shows, such as a clearance, is read off a finer ruler or written as a
// rounded decimal of the step's unit.
func Reading(step measure.Step, l measure.Length) string {
	switch finest := measure.Finest(step.Unit()); {
	case l.IsMultipleOf(step):
		return step.Format(l)
	case l.IsMultipleOf(finest):
		return finest.Format(l)
	}
	return fine(l, step.Unit())
}

// round rounds to so many decimals, never to a negative zero.
func round(x float64, places int) float64 {
	scale := math.Pow10(places)
	return math.Round(x*scale)/scale + 0
}

// number writes a number rounded to so many decimals.
func number(x float64, places int) string {
	return strconv.FormatFloat(round(x, places), 'f', -1, 64)
}

// Count writes a number of things.
func Count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// Each is a list of what every entry of another comes to.
func Each[T, U any](list []T, of func(T) U) []U {
	all := make([]U, len(list))
	for i, entry := range list {
		all[i] = of(entry)
	}
	return all
}
