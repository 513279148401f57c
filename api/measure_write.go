package api

import "creasefit/internal/measure"

// appendLength appends a LENGTH: what to set on the ruler, the same as
// decimals, the unrounded ideal, and reading minus ideal. Millimetres are
// exact, inches are rounded once to a millionth.
func appendLength(dst []byte, step measure.Step, l, ideal measure.Length) []byte {
	dst = append(dst, `{"reading":"`...)
	dst = appendReading(dst, step, l)
	dst = append(dst, `","in":`...)
	dst = measure.AppendDecimal(dst, l, measure.Inch, 6)
	dst = append(dst, `,"mm":`...)
	from := len(dst)
	dst = measure.AppendDecimal(dst, l, measure.Millimetre, 6)
	if l == ideal {
		dst = append(append(dst, `,"exact_mm":`...), dst[from:]...)
		return append(dst, `,"off_mm":0}`...)
	}
	dst = append(dst, `,"exact_mm":`...)
	dst = measure.AppendDecimal(dst, ideal, measure.Millimetre, 6)
	dst = append(dst, `,"off_mm":`...)
	dst = measure.AppendDecimal(dst, l.Sub(ideal), measure.Millimetre, 6)
	return append(dst, '}')
}

// appendReading appends what to set on the ruler. A length that no mark of
// the step shows, such as a clearance, is read off a finer ruler or written as
// a rounded decimal of the step's unit; in, mm and exact_mm say it exactly.
func appendReading(dst []byte, step measure.Step, l measure.Length) []byte {
	unit := step.Unit()
	finest := measure.Finest(unit)
	switch {
	case l.IsMultipleOf(step):
		return step.AppendReading(dst, l)
	case l.IsMultipleOf(finest):
		return finest.AppendReading(dst, l)
	case unit == measure.Inch:
		dst = measure.AppendDecimal(dst, l, unit, 4)
	default:
		dst = measure.AppendDecimal(dst, l, unit, 3)
	}
	return append(append(dst, ' '), unit.String()...)
}

// appendExact appends a LENGTH that is its own ideal.
func appendExact(dst []byte, step measure.Step, l measure.Length) []byte {
	return appendLength(dst, step, l, l)
}

// appendRange appends a least and a greatest LENGTH.
func appendRange(dst []byte, step measure.Step, least, greatest measure.Length) []byte {
	dst = appendExact(append(dst, '['), step, least)
	dst = appendExact(append(dst, ','), step, greatest)
	return append(dst, ']')
}
