package measure

import (
	"math"
	"strconv"
	"sync"
)

// String returns the step as it is written on the wire: "1/8 in", "0.5 mm";
// "" for the zero Step.
func (s Step) String() string {
	if s.IsZero() {
		return ""
	}
	return s.Format(s.size)
}

// Format writes a length for this ruler and never rounds: what it writes,
// Parse reads back to the same length if it is not negative. A multiple of
// the step is a reduced fraction or millimetres, "3 5/8 in" or "92.5 mm". Any
// other length is an exact decimal of the step's unit, "0.012 in", or, where
// there is none of six places, exact millimetres.
func (s Step) Format(l Length) string {
	finest := Finest(s.unit)
	if n := l.nm / finest.size.nm; l.nm >= 0 && n < writtenMarks && l.IsMultipleOf(finest) && l.IsMultipleOf(s) {
		return written[s.unit]()[n]
	}
	var space [32]byte
	return string(s.AppendReading(space[:0], l))
}

// written are the readings that nearly all answers have, by the number of finest
// marks: up to 32 in and 1024 mm. An answer has a hundred of them.
var written = [...]func() []string{NoUnit: writeMarks(Millimetre), Inch: writeMarks(Inch), Millimetre: writeMarks(Millimetre)}

const writtenMarks = 2048

func writeMarks(u Unit) func() []string {
	return sync.OnceValue(func() []string {
		marks, finest := make([]string, writtenMarks), Finest(u)
		for n := range marks {
			marks[n] = string(finest.AppendReading(nil, finest.size.Times(int64(n))))
		}
		return marks
	})
}

// FormatURL writes the same without a space, so that it stands in a URL as it
// is: "3-5/8in", "92.5mm".
func (s Step) FormatURL(l Length) string {
	var space [32]byte
	return string(s.AppendURL(space[:0], l))
}

// AppendReading appends what Format returns.
func (s Step) AppendReading(dst []byte, l Length) []byte { return s.append(dst, l, ' ', " ") }

// AppendURL appends what FormatURL returns.
func (s Step) AppendURL(dst []byte, l Length) []byte { return s.append(dst, l, '-', "") }

// append writes a reading with the given joint between whole and fraction and
// the given space before the unit.
func (s Step) append(dst []byte, l Length, joint byte, space string) []byte {
	unit := s.unit
	switch {
	case unit == Inch && l.IsMultipleOf(inchSteps[len(inchSteps)-1]) && l.IsMultipleOf(s):
		dst = appendMixed(dst, l, joint)
	case unit == Inch && l.nm%nmPerInch*1_000_000%nmPerInch == 0:
		dst = AppendDecimal(dst, l, Inch, 6)
	default:
		unit = Millimetre
		dst = AppendDecimal(dst, l, Millimetre, 6)
	}
	return append(append(dst, space...), unit.String()...)
}

// appendMixed writes a whole number of 64ths of an inch as a mixed number.
func appendMixed(dst []byte, l Length, joint byte) []byte {
	if l.nm < 0 {
		dst = append(dst, '-')
	}
	n, d := l.Abs().nm/nmPer64th, int64(64)
	whole, over := n/64, n%64
	if over == 0 {
		return strconv.AppendInt(dst, whole, 10)
	}
	for over%2 == 0 {
		over, d = over/2, d/2
	}
	if whole > 0 {
		dst = append(strconv.AppendInt(dst, whole, 10), joint)
	}
	dst = append(strconv.AppendInt(dst, over, 10), '/')
	return strconv.AppendInt(dst, d, 10)
}

// AppendDecimal appends the number of units in l as a decimal of at most the
// given places (0 to 8), rounded once, halves away from zero, without
// trailing zeros or exponent: "3.625". Millimetres to six places are exact.
func AppendDecimal(dst []byte, l Length, unit Unit, places int) []byte {
	whole, part := decimalParts(l.Abs(), unit, places)
	if l.nm < 0 && (whole != 0 || part != 0) {
		dst = append(dst, '-')
	}
	dst = strconv.AppendInt(dst, whole, 10)
	if part == 0 {
		return dst
	}
	point := len(dst)
	dst = strconv.AppendInt(dst, power10(places)+part, 10)
	dst[point] = '.'
	for dst[len(dst)-1] == '0' {
		dst = dst[:len(dst)-1]
	}
	return dst
}

// Plain writes a length for a sentence: a decimal of the unit to the thousandth of an
// inch or the hundredth of a millimetre, "0.012 in".
func (l Length) Plain(unit Unit) string {
	if unit == Inch {
		return l.Decimal(unit, 3)
	}
	return l.Decimal(unit, 2)
}

// Decimal writes a length as a decimal of at most so many places, and its unit.
func (l Length) Decimal(unit Unit, places int) string {
	var space [32]byte
	return string(append(append(AppendDecimal(space[:0], l, unit, places), ' '), unit.String()...))
}

// decimalParts returns the whole units and the rounded decimals of a length
// that is not negative.
func decimalParts(l Length, unit Unit, places int) (whole, part int64) {
	per, scale := perUnit(unit), power10(places)
	whole = l.nm / per
	part = (l.nm%per*scale + per/2) / per
	if part == scale {
		return whole + 1, 0
	}
	return whole, part
}

// Decimal places of numbers on the wire: a nanometre is 4e-8 in, and a
// hundredth of a hair either way decides nothing.
const (
	inchPlaces       = 6
	millimetrePlaces = 4
)

// Rounded returns the number of units in l rounded once to six places of an
// inch or four of a millimetre: the nearest float64 to that decimal, which
// therefore prints without a tail of digits. It is never negative zero.
func (l Length) Rounded(unit Unit) float64 {
	places := millimetrePlaces
	if unit == Inch {
		places = inchPlaces
	}
	whole, part := decimalParts(l.Abs(), unit, places)
	scale := power10(places)
	tenths := whole*scale + part
	if l.nm < 0 {
		tenths = -tenths
	}
	return float64(tenths) / float64(scale)
}

// power10 returns 10^n for n from 0 to 12.
func power10(n int) int64 { return int64(math.Pow10(n)) }
