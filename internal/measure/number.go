package measure

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Decimal says how a comma between digits is read. A point is always a
// decimal point.
type Decimal uint8

// How a comma is read. The zero Decimal takes it as a decimal comma only
// where it can be nothing else.
const (
	ClearComma   Decimal = iota // 85,6 is read, 1,234 is ambiguous
	DecimalPoint                // a comma groups thousands: 1,234 is 1234
	DecimalComma                // a comma is the decimal mark: 1,234 is 1.234
)

// number is whole + num/den as it was written.
type number struct {
	whole, num, den int64
	fraction        bool // written with a fraction bar
	places          int  // decimals without trailing zeros; num is not set beyond mostPlaces
	digits          string
}

// What fits the arithmetic: 10^9 of the largest unit stay inside int64, and
// no decimal of more than seven places is a whole number of nanometres.
const (
	mostDigits = 9
	mostPlaces = 7
)

// reader reads one length from text[pos:end], the part before the unit.
type reader struct {
	text     string
	pos, end int
	decimal  Decimal
}

// fail makes the error for the character at the offset.
func (r *reader) fail(reason Reason, at int, detail, hint string) *ParseError {
	return &ParseError{Reason: reason, Text: r.text, At: at, Detail: detail, Hint: hint}
}

// peek returns the next character, or zero at the end.
func (r *reader) peek() rune {
	if r.pos >= r.end {
		return 0
	}
	c, _ := utf8.DecodeRuneInString(r.text[r.pos:r.end])
	return c
}

// take returns the longest run of characters that are all wanted.
func (r *reader) take(wanted func(rune) bool) string {
	from := r.pos
	for c := r.peek(); c != 0 && wanted(c); c = r.peek() {
		r.pos += utf8.RuneLen(c)
	}
	return r.text[from:r.pos]
}

func isDigit(c rune) bool       { return '0' <= c && c <= '9' }
func isNumeral(c rune) bool     { return isDigit(c) || c == '.' || c == ',' }
func isFractionBar(c rune) bool { return c == '/' || c == '⁄' || c == '∕' }

// number reads the whole part before the unit.
func (r *reader) number() (number, *ParseError) {
	r.take(unicode.IsSpace)
	from := r.pos
	first := r.take(isNumeral)
	n, err := r.firstNumeral(first, from)
	if err == nil && r.pos < r.end {
		err = r.leftOver(first)
	}
	return n, err
}

// firstNumeral continues after the first run of digits and decimal marks.
func (r *reader) firstNumeral(first string, from int) (number, *ParseError) {
	if strings.ContainsAny(first, ".,") {
		return r.decimalNumber(first, from)
	}
	if first != "" && r.atBar() {
		return r.fraction(number{}, first, from)
	}
	n, err := r.wholeNumber(first, from)
	if err != nil {
		return n, err
	}
	return r.mixed(n, first)
}

// mixed reads the fraction that may follow a whole number.
func (r *reader) mixed(n number, whole string) (number, *ParseError) {
	before := r.pos
	if whole != "" {
		r.joint()
	}
	at := r.pos
	if over, under, ok := vulgar(r.peek()); ok {
		r.pos += utf8.RuneLen(r.peek())
		return r.rulerFraction(n, over, under, at)
	}
	top := r.take(isDigit)
	switch {
	case top != "" && r.atBar():
		n.digits = whole
		return r.fraction(n, top, at)
	case whole == "":
		return n, r.fail(ReasonSyntax, at, "a length begins with a number", "")
	default:
		r.pos = before
		return n, nil
	}
}

// joint takes what may stand between a whole number and its fraction: white
// space, one hyphen, one plus, or nothing.
func (r *reader) joint() {
	if r.take(unicode.IsSpace) == "" && (r.peek() == '-' || r.peek() == '+') {
		r.pos++
	}
}

// wholeNumber converts digits, none of which counts as zero.
func (r *reader) wholeNumber(digits string, at int) (number, *ParseError) {
	n := number{den: 1, digits: digits}
	significant := strings.TrimLeft(digits, "0")
	if len(significant) > mostDigits {
		return n, r.fail(ReasonTooLarge, at, tooLargeDetail, "")
	}
	n.whole = worth(significant)
	return n, nil
}

// worth is the number that at most mostDigits digits stand for.
func worth(digits string) (n int64) {
	for _, c := range []byte(digits) {
		n = 10*n + int64(c-'0')
	}
	return n
}

// decimalNumber converts digits with one decimal mark at most.
func (r *reader) decimalNumber(numeral string, at int) (number, *ParseError) {
	plain, err := r.pointed(numeral, at)
	if err != nil {
		return number{}, err
	}
	whole, decimals, marked := strings.Cut(plain, ".")
	if marked && decimals == "" {
		return number{}, r.fail(ReasonSyntax, r.pos, "digits are missing after the decimal mark", "")
	}
	n, err := r.wholeNumber(whole, at)
	n.digits = plain
	decimals = strings.TrimRight(decimals, "0")
	n.places = len(decimals)
	if n.places <= mostPlaces {
		n.num = worth(decimals)
		n.den = power10(n.places)
	}
	return n, err
}

// atBar reports whether a fraction bar comes next, and goes to it past white space.
func (r *reader) atBar() bool {
	before := r.pos
	r.take(unicode.IsSpace)
	if isFractionBar(r.peek()) {
		return true
	}
	r.pos = before
	return false
}

// fraction reads the bar and the digits below it.
func (r *reader) fraction(n number, top string, at int) (number, *ParseError) {
	r.pos += utf8.RuneLen(r.peek())
	r.take(unicode.IsSpace)
	belowAt := r.pos
	below := r.take(isDigit)
	if below == "" {
		return n, r.fail(ReasonSyntax, belowAt, "digits are missing below the fraction bar", "")
	}
	over, err := r.wholeNumber(top, at)
	if err != nil {
		return n, err
	}
	under, err := r.wholeNumber(below, belowAt)
	if err != nil {
		return n, r.fail(ReasonDenominator, belowAt, denominatorDetail(below), "")
	}
	return r.rulerFraction(n, over.whole, under.whole, at)
}

// rulerFraction adds over/under, which must be a ruler's, to a whole number.
func (r *reader) rulerFraction(n number, over, under int64, at int) (number, *ParseError) {
	sum := number{whole: n.whole, num: over, den: under, fraction: true}
	switch {
	case under == 0:
		return sum, r.fail(ReasonZeroBelow, r.pos-1, "the denominator is zero", "")
	case n.digits != "" && over >= under:
		return sum, r.fail(ReasonImproper, at, "in a mixed number the numerator is below the denominator", r.nearest(sum))
	case under > 64 && under&(under-1) == 0:
		return sum, r.fail(ReasonTooFine, at, "a ruler's finest mark is 1/64 in", r.nearest(sum))
	case under == 1 || under&(under-1) != 0:
		return sum, r.fail(ReasonDenominator, at, denominatorDetail(strconv.FormatInt(under, 10)), r.nearest(sum))
	default:
		return sum, nil
	}
}

// vulgar returns the parts of a fraction written as one character.
func vulgar(c rune) (over, under int64, ok bool) {
	if c < utf8.RuneSelf {
		return 0, 0, false // most are
	}
	const characters = "½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚⅐⅑⅒"
	parts := [...][2]int64{{1, 2}, {1, 4}, {3, 4}, {1, 8}, {3, 8}, {5, 8}, {7, 8}, {1, 3}, {2, 3},
		{1, 5}, {2, 5}, {3, 5}, {4, 5}, {1, 6}, {5, 6}, {1, 7}, {1, 9}, {1, 10}}
	i := strings.IndexRune(characters, c)
	if i < 0 {
		return 0, 0, false
	}
	p := parts[utf8.RuneCountInString(characters[:i])]
	return p[0], p[1], true
}
