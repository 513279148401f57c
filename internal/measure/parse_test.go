package measure_test

import (
	"errors"
	"fmt"
	"math/big"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/norm"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
)

func TestParseAccepts(t *testing.T) {
	const none, in, mm = measure.NoUnit, measure.Inch, measure.Millimetre
	const auto, point, comma = measure.ClearComma, measure.DecimalPoint, measure.DecimalComma
	threeFiveEighths := measure.Sixtyfourths(232)
	for _, c := range []struct {
		text    string
		unit    measure.Unit
		decimal measure.Decimal
		want    measure.Length
	}{
		{"3 5/8 in", none, auto, threeFiveEighths},
		{"3-5/8in", none, auto, threeFiveEighths},
		{`3-5/8"`, none, auto, threeFiveEighths},
		{"3+5/8in", none, auto, threeFiveEighths},
		{"3⅝ in", none, auto, threeFiveEighths},
		{"3 ⅝″", none, auto, threeFiveEighths},
		{"3 5⁄8 in", none, auto, threeFiveEighths},
		{"3 5∕8 in", none, auto, threeFiveEighths},
		{"3 5/8 inches", none, auto, threeFiveEighths},
		{"3 5/8 Zoll", none, auto, threeFiveEighths},
		{"3 5 / 8 Zoll", none, auto, threeFiveEighths},
		{"3 5 /8in", none, auto, threeFiveEighths},
		{"3 5/8 INCH", none, auto, threeFiveEighths},
		{"3 5/8”", none, auto, threeFiveEighths},
		{"  3   5/8   in.  ", none, auto, threeFiveEighths},
		{"3\u00a05/8\u00a0in", none, auto, threeFiveEighths},
		{"29/8 in", none, auto, threeFiveEighths},
		{"3 40/64 in", none, auto, threeFiveEighths},
		{"3.625 in", mm, auto, threeFiveEighths},
		{"3.625", in, auto, threeFiveEighths},
		{"3 5/8", in, auto, threeFiveEighths},
		{"0003.62500000000 in", none, auto, threeFiveEighths},
		{"5/8 in", none, auto, measure.Sixtyfourths(40)},
		{"⅝in", none, auto, measure.Sixtyfourths(40)},
		{"0/8 in", none, auto, measure.Length{}},
		{".09 in", none, auto, measure.Thousandths(90)},
		{"0.012in", none, auto, measure.Thousandths(12)},
		{"0.015625in", none, auto, measure.Sixtyfourths(1)},
		{"92.1 mm", in, auto, measure.Micrometres(92_100)},
		{"9.21cm", none, auto, measure.Micrometres(92_100)},
		{"92.1", mm, auto, measure.Micrometres(92_100)},
		{"92.1 millimetres", none, auto, measure.Micrometres(92_100)},
		{"9.21 centimeters", none, auto, measure.Micrometres(92_100)},
		{"1/2 mm", none, auto, measure.Micrometres(500)},
		{"0.000001 mm", none, auto, measure.Nanometres(1)},
		{"0.0000001 cm", none, auto, measure.Nanometres(1)},
		{"100000 mm", none, auto, measure.Largest()},
		{"0", mm, auto, measure.Length{}},
		{"85,6mm", none, auto, measure.Micrometres(85_600)},
		{",5mm", none, auto, measure.Micrometres(500)},
		{"0,234mm", none, auto, measure.Micrometres(234)},
		{"1234,567mm", none, auto, measure.Micrometres(1_234_567)},
		{"1,2345mm", none, auto, measure.Nanometres(1_234_500)},
		{"1,234mm", none, comma, measure.Micrometres(1_234)},
		{"1.234mm", none, comma, measure.Micrometres(1_234)},
		{"1,234mm", none, point, measure.Millimetres(1_234)},
		{"1,234.5mm", none, point, measure.Micrometres(1_234_500)},
	} {
		got, err := measure.Parse(c.text, c.unit, c.decimal)
		if assert.NoError(t, err, "%q", c.text) {
			assert.Equal(t, c.want, got, "%q", c.text)
		}
	}
}

// refusal is a text that is no length, why, where, and what is suggested.
type refusal struct {
	text   string
	reason measure.Reason
	at     int
	hint   string
}

var refusals = []refusal{
	{"", measure.ReasonEmpty, 0, ""},
	{" \t", measure.ReasonEmpty, 0, ""},
	{"1 " + strings.Repeat(" ", 30) + "in", measure.ReasonTooLong, 32, ""},
	{"½" + strings.Repeat(" ", 30) + "in", measure.ReasonTooLong, 33, ""},
	{"in", measure.ReasonSyntax, 0, ""},
	{"NaN", measure.ReasonSyntax, 0, ""},
	{"Infinity", measure.ReasonSyntax, 0, ""},
	{"wide", measure.ReasonSyntax, 0, ""},
	{"?", measure.ReasonSyntax, 0, ""},
	{"/8in", measure.ReasonSyntax, 0, ""},
	{"3/in", measure.ReasonSyntax, 2, ""},
	{"3.in", measure.ReasonSyntax, 2, ""},
	{".in", measure.ReasonSyntax, 1, ""},
	{"3..5in", measure.ReasonSyntax, 2, ""},
	{"3.5.2in", measure.ReasonSyntax, 3, ""},
	{"3-in", measure.ReasonSyntax, 1, ""},
	{"3 - 5/8in", measure.ReasonSyntax, 1, ""},
	{"3--5/8in", measure.ReasonSyntax, 1, ""},
	{"2-3in", measure.ReasonSyntax, 1, ""},
	{"3 5/8 1in", measure.ReasonSyntax, 5, ""},
	{"3/4/5in", measure.ReasonSyntax, 3, ""},
	{"3.5 5/8in", measure.ReasonSyntax, 3, ""},
	{"1⅝⅝in", measure.ReasonSyntax, 4, ""},
	{"3$in", measure.ReasonSyntax, 1, ""},
	{"3\x00in", measure.ReasonSyntax, 1, ""},
	{"3\xffin", measure.ReasonSyntax, 0, ""},
	{"12", measure.ReasonNoUnit, 2, "12in or 12mm"},
	{"5000", measure.ReasonNoUnit, 4, "5000mm"},
	{"3 5/8 ", measure.ReasonNoUnit, 5, "3 5/8in or 3 5/8mm"},
	{"1,234mm", measure.ReasonAmbiguous, 1, "1.234mm or 1234mm"},
	{"12,345 in", measure.ReasonAmbiguous, 2, "12.345in"},
	{"1,234,567mm", measure.ReasonThousands, 5, ""},
	{"1,234.5mm", measure.ReasonThousands, 5, "1234.5mm"},
	{"1.234,5mm", measure.ReasonThousands, 5, "1234.5mm"},
	{"1.234.567mm", measure.ReasonThousands, 5, ""},
	{"1 234 mm", measure.ReasonThousands, 1, "1234mm"},
	{"1\u202f234 mm", measure.ReasonThousands, 1, "1234mm"},
	{"1_234mm", measure.ReasonThousands, 1, "1234mm"},
	{"1e3mm", measure.ReasonExponent, 1, "1000mm"},
	{"1.5E-2in", measure.ReasonExponent, 3, "0.015in"},
	{"1e99999999999999999999mm", measure.ReasonExponent, 1, ""},
	{"0x1Fmm", measure.ReasonHex, 1, "31mm"},
	{"0xmm", measure.ReasonHex, 1, ""},
	{"+3in", measure.ReasonSign, 0, "3in"},
	{"-3in", measure.ReasonSign, 0, ""},
	{" −3in", measure.ReasonSign, 1, ""},
	{"1'", measure.ReasonFeet, 1, "12 in"},
	{`1' 6 1/2"`, measure.ReasonFeet, 1, "18 1/2 in"},
	{"1′6″", measure.ReasonFeet, 1, "18 in"},
	{"1 ft 3 in", measure.ReasonFeet, 2, "15 in"},
	{"2 feet", measure.ReasonFeet, 2, "24 in"},
	{"1'234mm", measure.ReasonFeet, 1, ""},
	{"٣ in", measure.ReasonDigits, 0, "3 in"},
	{"１２mm", measure.ReasonDigits, 0, "12mm"},
	{"3²in", measure.ReasonDigits, 1, ""},
	{"3 9/8 in", measure.ReasonImproper, 2, "4 1/8 in"},
	{"3 8/8in", measure.ReasonImproper, 2, "4 in"},
	{"1/0in", measure.ReasonZeroBelow, 2, ""},
	{"3 0/0in", measure.ReasonZeroBelow, 4, ""},
	{"1/128 in", measure.ReasonTooFine, 0, "1/64 in"},
	{"3 1/256in", measure.ReasonTooFine, 2, "3 in"},
	{"1/3 in", measure.ReasonDenominator, 0, "21/64 in"},
	{"3 ⅓ in", measure.ReasonDenominator, 2, "3 21/64 in"},
	{"2/5 in", measure.ReasonDenominator, 0, "13/32 in"},
	{"3 5/7 in", measure.ReasonDenominator, 2, "3 23/32 in"},
	{"1/7mm", measure.ReasonDenominator, 0, "0.143 mm"},
	{"2 1/7mm", measure.ReasonDenominator, 2, "2.143 mm"},
	{"2 1/7 cm", measure.ReasonDenominator, 2, "21.429 mm"},
	{"3/1 in", measure.ReasonDenominator, 0, "3 in"},
	{"1/9999999999in", measure.ReasonDenominator, 2, ""},
	{"3.1234567in", measure.ReasonNotWhole, 0, "79.3358mm"},
	{" 3.641732in", measure.ReasonNotWhole, 1, "92.499993mm"},
	{"1.23456789mm", measure.ReasonNotWhole, 0, "1.234568mm"},
	{"0.00000000000000000000001mm", measure.ReasonNotWhole, 0, "0mm"},
	{"100000.1mm", measure.ReasonTooLarge, 0, ""},
	{"3937.01in", measure.ReasonTooLarge, 0, ""},
	{"99999999999999999999999999mm", measure.ReasonTooLarge, 0, ""},
	{"99999999999999999/2in", measure.ReasonTooLarge, 0, ""},
	{"12pt", measure.ReasonUnknownUnit, 2, "0.012 in"},
	{"250µm", measure.ReasonUnknownUnit, 3, "0.25 mm"},
	{"1 m", measure.ReasonUnknownUnit, 2, "1000 mm"},
	{"2 yd", measure.ReasonUnknownUnit, 2, "72 in"},
	{"101 m", measure.ReasonUnknownUnit, 4, ""},
	{"3 5/7 m", measure.ReasonUnknownUnit, 6, ""},
	{"3 5/7 ft", measure.ReasonFeet, 6, ""},
	{"330 ft", measure.ReasonFeet, 4, ""},
	{"1 ft 2000000 in", measure.ReasonFeet, 2, ""},
	{"100000000.00000001mm", measure.ReasonNotWhole, 0, ""},
	{"5 m 3", measure.ReasonUnknownUnit, 2, ""},
	{"3 in 5", measure.ReasonUnknownUnit, 2, ""},
	{"3 furlongs", measure.ReasonUnknownUnit, 2, ""},
}

func TestParseRefuses(t *testing.T) {
	for _, c := range refusals {
		_, err := measure.Parse(c.text, measure.NoUnit, measure.ClearComma)
		e := parseError(t, err, c.text)
		assert.Equal(t, c, refusal{c.text, e.Reason, e.At, e.Hint})
		assert.Equal(t, c.text, e.Text)
		assert.NotEmpty(t, e.Detail)
		for _, hint := range hints(e) {
			_, err := measure.Parse(hint, measure.NoUnit, measure.ClearComma)
			assert.NoError(t, err, "hint %q for %q", hint, c.text)
		}
	}
}

func TestParseRefusesByContext(t *testing.T) {
	for _, c := range []struct {
		text    string
		unit    measure.Unit
		decimal measure.Decimal
		reason  measure.Reason
	}{
		{"3 5/8", measure.Millimetre, measure.ClearComma, measure.ReasonAmbiguous},
		{"85,6mm", measure.NoUnit, measure.DecimalPoint, measure.ReasonDecimalMark},
		{"1.234,5mm", measure.NoUnit, measure.DecimalPoint, measure.ReasonThousands},
		{"1.234,5mm", measure.NoUnit, measure.DecimalComma, measure.ReasonThousands},
		{"1,234,5mm", measure.NoUnit, measure.DecimalComma, measure.ReasonSyntax},
		{"-1", measure.Inch, measure.ClearComma, measure.ReasonSign},
	} {
		_, err := measure.Parse(c.text, c.unit, c.decimal)
		assert.Equal(t, c.reason, parseError(t, err, c.text).Reason, c.text)
	}
}

// The Unicode Character Database takes every fraction of one character apart (UAX 15,
// compatibility decomposition): both ways of writing come to the same.
func TestFractionsOfOneCharacter(t *testing.T) {
	for _, c := range "½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚⅐⅑⅒" {
		apart := norm.NFKD.String(string(c))
		require.Contains(t, apart, "\u2044")
		one, oneErr := measure.Parse("3 "+string(c)+" in", measure.NoUnit, measure.ClearComma)
		two, twoErr := measure.Parse("3 "+apart+" in", measure.NoUnit, measure.ClearComma)
		assert.Equal(t, two, one, string(c))
		var is, want *measure.ParseError
		require.Equal(t, errors.As(twoErr, &want), errors.As(oneErr, &is), string(c))
		if want != nil {
			assert.Equal(t, []string{want.Detail, want.Hint}, []string{is.Detail, is.Hint}, string(c))
		}
	}
}

func TestParseErrorQuotesTheText(t *testing.T) {
	_, err := measure.Parse("3 5/7 in", measure.NoUnit, measure.ClearComma)
	assert.EqualError(t, err, `cannot read "3 5/7 in": a ruler has halves, quarters, 8ths, 16ths, 32nds and 64ths, not parts of 1/7`)
}

// Mixed numbers and decimals against big rationals.
func TestParseEqualsRationals(t *testing.T) {
	per := map[string]int64{"in": 25_400_000, "mm": 1_000_000, "cm": 10_000_000}
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]string{"in", "mm", "cm"}).Draw(t, "unit")
		whole := rapid.Int64Range(0, 3000).Draw(t, "whole")
		den := int64(1) << rapid.IntRange(1, 6).Draw(t, "den")
		num := rapid.Int64Range(0, den-1).Draw(t, "num")
		joint := rapid.SampledFrom([]string{" ", "-", "+", "  "}).Draw(t, "joint")
		want := new(big.Rat).Mul(big.NewRat(whole*den+num, den), big.NewRat(per[unit], 1))
		assertReads(t, fmt.Sprintf("%d%s%d/%d%s", whole, joint, num, den, unit), want)

		places := rapid.IntRange(1, 7).Draw(t, "places")
		digits := rapid.Int64Range(0, pow10(places)-1).Draw(t, "digits")
		value := new(big.Rat).Add(big.NewRat(whole, 1), big.NewRat(digits, pow10(places)))
		assertReads(t, fmt.Sprintf("%d.%0*d %s", whole, places, digits, unit), value.Mul(value, big.NewRat(per[unit], 1)))
	})
}

// assertReads checks the text against nanometres: equal if they are whole,
// refused otherwise.
func assertReads(t *rapid.T, text string, nm *big.Rat) {
	got, err := measure.Parse(text, measure.NoUnit, measure.ClearComma)
	if !nm.IsInt() {
		var e *measure.ParseError
		require.ErrorAs(t, err, &e, text)
		assert.Equal(t, measure.ReasonNotWhole, e.Reason, text)
		return
	}
	require.NoError(t, err, text)
	assert.Equal(t, nm.Num().Int64(), got.Nanometres(), text)
}

func pow10(n int) int64 {
	p := int64(1)
	for range n {
		p *= 10
	}
	return p
}

// parseError requires an error of the right type, about the text, that points
// into it.
func parseError(t testing.TB, err error, text string) *measure.ParseError {
	t.Helper()
	var e *measure.ParseError
	require.True(t, errors.As(err, &e), "%q was read or failed otherwise: %v", text, err)
	require.True(t, 0 <= e.At && e.At <= len(text), "%q at %d", text, e.At)
	require.True(t, !utf8.ValidString(text) || e.At == len(text) || utf8.RuneStart(text[e.At]), "%q at %d", text, e.At)
	return e
}

// hints returns the suggestions of an error.
func hints(e *measure.ParseError) []string {
	if e.Hint == "" {
		return nil
	}
	return strings.Split(e.Hint, " or ")
}

// BenchmarkParse has the standard library reading the same digits as floor.
func BenchmarkParse(b *testing.B) {
	b.Run("fraction", func(b *testing.B) {
		for b.Loop() {
			if _, err := measure.Parse("3 5/8 in", measure.NoUnit, measure.ClearComma); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("floor", func(b *testing.B) {
		for b.Loop() {
			if _, err := strconv.ParseFloat("3.625", 64); err != nil {
				b.Fatal(err)
			}
		}
	})
}
