package measure

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// mostCharacters is the longest text of one length.
const mostCharacters = 32

// Parse reads a length as people write it: a decimal, a fraction or a mixed
// number of a ruler's fractions, with a unit or, in a request that names one,
// without:
//
//	3 5/8 in   3-5/8in   3+5/8in   3-5/8"   3⅝ in   5/8 inch   3 5 / 8 Zoll   .09 in
//	92.1 mm    9.21cm    85,6mm
//
// A bare fraction is not read as millimetres. Any error is a *ParseError.
func Parse(text string, unit Unit, decimal Decimal) (Length, error) {
	l, err := part{text: text}.length(unit, &unitName{}, decimal)
	if err != nil {
		return Length{}, err
	}
	return l, nil
}

// measurement is a number and its unit as written; NoUnit if it has none.
type measurement struct {
	number
	unit unitName
	r    reader
}

// read takes a text apart.
func read(text string, decimal Decimal) (measurement, *ParseError) {
	r := reader{text: text, decimal: decimal}
	r.end = len(text)
	if err := r.checkCharacters(); err != nil {
		return measurement{}, err
	}
	if at := strings.IndexFunc(text, beginsUnit); at >= 0 {
		r.end = at
	}
	tail := strings.TrimSpace(text[r.end:])
	unit, known := unitNamed(tail)
	if tail != "" && unit.unit == NoUnit {
		return measurement{}, r.refuseTail(tail, unit, known)
	}
	r.end = len(strings.TrimRightFunc(text[:r.end], unicode.IsSpace))
	n, err := r.number()
	return measurement{n, unit, r}, err
}

// beginsUnit reports whether the character ends the number.
func beginsUnit(c rune) bool {
	return unicode.IsLetter(c) || strings.ContainsRune(`"″”'′’`, c)
}

// checkCharacters refuses what no length can hold.
func (r *reader) checkCharacters() *ParseError {
	if !utf8.ValidString(r.text) {
		return r.fail(ReasonSyntax, 0, "the text is not UTF-8", "")
	}
	trimmed := strings.TrimLeftFunc(r.text, unicode.IsSpace)
	if trimmed == "" {
		return r.fail(ReasonEmpty, 0, "no length is given; is the cell blank?", "")
	}
	if utf8.RuneCountInString(r.text) > mostCharacters {
		return r.fail(ReasonTooLong, len(string([]rune(r.text)[:mostCharacters])), "a length has at most 32 characters", "")
	}
	at := len(r.text) - len(trimmed)
	if c, _ := utf8.DecodeRuneInString(trimmed); strings.ContainsRune("+-−", c) {
		return r.refuseSign(at, c)
	}
	for i, c := range r.text {
		if c > unicode.MaxASCII && unicode.IsNumber(c) {
			if _, _, ok := vulgar(c); !ok {
				return r.fail(ReasonDigits, i, "only the digits 0 to 9 are read", asciiDigits(r.text))
			}
		}
	}
	return nil
}

// length returns the exact length; unit is the one of bare numbers.
func (m measurement) length(unit Unit) (Length, *ParseError) {
	r, per := &m.r, m.unit.nm
	if m.unit.unit == NoUnit {
		switch {
		case unit == NoUnit:
			return Length{}, r.fail(ReasonNoUnit, r.end, "a bare number needs a unit", r.bothUnits())
		case unit == Millimetre && m.fraction:
			return Length{}, r.fail(ReasonAmbiguous, r.end, "a bare fraction is not read as millimetres", r.bothUnits())
		}
		per = perUnit(unit)
	}
	return m.exact(per, r)
}

// exact multiplies out, refusing what is no whole number of nanometres.
func (n number) exact(per int64, r *reader) (Length, *ParseError) {
	from := len(r.text) - len(strings.TrimLeftFunc(r.text, unicode.IsSpace))
	if n.places > mostPlaces || n.num*per%n.den != 0 {
		return Length{}, r.fail(ReasonNotWhole, from, notWholeDetail, n.nearestMillimetres(per))
	}
	l := Length{n.whole*per + n.num*per/n.den}
	if largest.Less(l) {
		return Length{}, r.fail(ReasonTooLarge, from, tooLargeDetail, "")
	}
	return l, nil
}

const (
	tooLargeDetail = "a length is at most 100 m"
	notWholeDetail = "a length is a whole number of nanometres: millimetres take 6 decimals, inches 5 or those of a 64th"
)

// perUnit returns the nanometres in one of a known unit.
func perUnit(u Unit) int64 {
	if u == Inch {
		return nmPerInch
	}
	return nmPerMillimetre
}
