package measure

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
	"unicode"
)

// refuseSign refuses a leading sign; a plus can simply be left out.
func (r *reader) refuseSign(at int, sign rune) *ParseError {
	hint := ""
	if sign == '+' {
		hint = readable(strings.TrimSpace(r.text[at+1:]))
	}
	return r.fail(ReasonSign, at, "a length has no sign", hint)
}

// refuseTail says what is wrong with what follows the number, which is no
// unit that is read.
func (r *reader) refuseTail(tail string, unit unitName, known bool) *ParseError {
	head := strings.TrimSpace(r.text[:r.end])
	isNumber := head != "" && isNumeral(rune(head[len(head)-1]))
	switch {
	case head == "":
		return r.fail(ReasonSyntax, r.end, "a length begins with a number", "")
	case isNumber && isExponent(tail):
		return r.fail(ReasonExponent, r.end, "exponents are not read", scientific(head+tail))
	case head == "0" && (tail[0] == 'x' || tail[0] == 'X'):
		return r.fail(ReasonHex, r.end, "hexadecimal digits are not read", hexadecimal(tail[1:]))
	case known:
		return r.fail(ReasonUnknownUnit, r.end, "only in, mm and cm are read as units", r.converted(head, unit.nm))
	case feetMark(tail) != "":
		return r.fail(ReasonFeet, r.end, "feet are not read", r.feetInInches(head, tail))
	default:
		return r.fail(ReasonUnknownUnit, r.end, "only in, mm and cm are read as units", "")
	}
}

// readable returns the text if it can be read, if need be in a request in
// inches, and "" otherwise: no hint may lead to the next error.
func readable(text string) string {
	m, err := read(text, ClearComma)
	if err != nil {
		return ""
	}
	if _, err := m.length(Inch); err != nil {
		return ""
	}
	return text
}

// either joins the suggestions that can be read.
func either(a, b string) string {
	if a, b = readable(a), readable(b); a == "" || b == "" {
		return a + b
	}
	return a + " or " + b
}

// isExponent reports whether the text begins like the exponent of a number.
func isExponent(tail string) bool {
	digits := strings.TrimLeft(tail[1:], "+-")
	return (tail[0] == 'e' || tail[0] == 'E') && digits != "" && isDigit(rune(digits[0]))
}

// scientific writes a number with an exponent, and its unit, without one. The
// size of the exponent is limited before anything is computed.
func scientific(text string) string {
	letter := strings.IndexAny(text, "eE")
	end := letter + 1
	for end < len(text) && (isDigit(rune(text[end])) || strings.ContainsRune("+-", rune(text[end]))) {
		end++
	}
	exponent, err := strconv.Atoi(text[letter+1 : end])
	value, ok := new(big.Rat).SetString(text[:letter])
	if err != nil || !ok || exponent < -12 || exponent > 12 {
		return ""
	}
	scale := new(big.Rat).SetInt64(power10(max(exponent, -exponent)))
	if exponent < 0 {
		scale.Inv(scale)
	}
	plain := value.Mul(value, scale).FloatString(mostPlaces)
	return readable(strings.TrimRight(strings.TrimRight(plain, "0"), ".") + text[end:])
}

// hexadecimal writes hexadecimal digits, and the unit after them, in decimal.
func hexadecimal(text string) string {
	end := strings.IndexFunc(text, func(c rune) bool { return !unicode.Is(unicode.ASCII_Hex_Digit, c) })
	if end < 0 {
		end = len(text)
	}
	n, err := strconv.ParseUint(text[:end], 16, 32)
	if err != nil {
		return ""
	}
	return readable(strconv.FormatUint(n, 10) + text[end:])
}

// converted writes a number of a unit that is not read in one that is:
// inches if the unit is a part or multiple of them, else millimetres.
func (r *reader) converted(head string, per int64) string {
	m, err := read(head, r.decimal)
	if err != nil {
		return ""
	}
	l, err := m.exact(per, r)
	if err != nil {
		return ""
	}
	if per%(nmPerInch/1000) == 0 {
		return inchSteps[len(inchSteps)-1].Format(l)
	}
	return millimetreSteps[len(millimetreSteps)-1].Format(l)
}

// feetInInches writes feet, and the inches that may follow, as inches.
func (r *reader) feetInInches(head, tail string) string {
	feet, err := read(head, r.decimal)
	if err != nil {
		return ""
	}
	sum, err := feet.exact(12*nmPerInch, r)
	if err != nil {
		return ""
	}
	if rest := strings.Trim(tail[len(feetMark(tail)):], " -"); rest != "" {
		inches, err := read(rest, r.decimal)
		if err != nil || inches.unit.unit == Millimetre {
			return ""
		}
		more, err := inches.length(Inch)
		if err != nil {
			return ""
		}
		sum = sum.Add(more)
	}
	return readable(inchSteps[len(inchSteps)-1].Format(sum))
}

// leftOver says what is wrong with what follows a complete number.
func (r *reader) leftOver(first string) *ParseError {
	rest := r.text[r.pos:r.end]
	joined := strings.Map(func(c rune) rune {
		if unicode.IsSpace(c) || c == '_' {
			return ','
		}
		return c
	}, first+rest)
	if plain, ok := ungroup(joined, ",", "."); ok {
		return r.fail(ReasonThousands, r.pos, thousandsDetail, readable(r.withUnit(plain)))
	}
	return r.fail(ReasonSyntax, r.pos, "this cannot follow a number", "")
}

// asciiDigits rewrites the digits of the scripts most in use, or returns "".
func asciiDigits(text string) string {
	plain := strings.Map(func(c rune) rune {
		for _, zero := range "٠۰०０" {
			if zero <= c && c <= zero+9 {
				return '0' + c - zero
			}
		}
		return c
	}, text)
	if plain == text {
		return ""
	}
	return readable(strings.TrimSpace(plain))
}

// nearest writes a fraction that no ruler has as the nearest that can be
// read: a 64th of an inch, or a thousandth of a millimetre.
func (r *reader) nearest(n number) string {
	unit, _ := unitNamed(strings.TrimSpace(r.text[r.end:]))
	if unit.unit == Millimetre {
		micrometres := (n.num*(unit.nm/1000) + n.den/2) / n.den
		return readable(millimetreSteps[0].Format(Length{n.whole*unit.nm + micrometres*1000}))
	}
	l := Inches(n.whole).Add(Sixtyfourths((128*n.num + n.den) / (2 * n.den)))
	return readable(inchSteps[len(inchSteps)-1].Format(l))
}

// nearestMillimetres writes a decimal as millimetres to the nanometre.
func (n number) nearestMillimetres(per int64) string {
	value, err := strconv.ParseFloat(n.digits, 64)
	nm := math.Round(value * float64(per))
	if err != nil || nm > float64(largest.nm) {
		return ""
	}
	return string(AppendDecimal(nil, Length{int64(nm)}, Millimetre, 6)) + "mm"
}

// bothUnits suggests a bare number with either unit.
func (r *reader) bothUnits() string {
	number := strings.TrimSpace(r.text[:r.end])
	return either(number+"in", number+"mm")
}

// denominatorDetail says which fractions a ruler has.
func denominatorDetail(below string) string {
	return fmt.Sprintf("a ruler has halves, quarters, 8ths, 16ths, 32nds and 64ths, not parts of 1/%s", below)
}
