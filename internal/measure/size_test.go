package measure_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
)

func TestParseSize(t *testing.T) {
	mm, in := measure.Millimetres, measure.Inches
	for _, c := range []struct {
		text   string
		unit   measure.Unit
		counts []int
		want   []measure.Length
	}{
		{"8 1/2 x 11 in", measure.NoUnit, nil, []measure.Length{measure.Sixtyfourths(544), in(11)}},
		{"8-1/2x11in", measure.NoUnit, nil, []measure.Length{measure.Sixtyfourths(544), in(11)}},
		{`8½" × 11"`, measure.NoUnit, nil, []measure.Length{measure.Sixtyfourths(544), in(11)}},
		{" 210 X 297 mm ", measure.NoUnit, nil, []measure.Length{mm(210), mm(297)}},
		{"21*29,7cm", measure.NoUnit, nil, []measure.Length{mm(210), mm(297)}},
		{"12 x 12", measure.Inch, nil, []measure.Length{in(12), in(12)}},
		{"1 in x 2 mm", measure.NoUnit, nil, []measure.Length{in(1), mm(2)}},
		{"1 in x 2", measure.Millimetre, nil, []measure.Length{in(1), mm(2)}},
		{"76 x 95 x 76 mm", measure.NoUnit, []int{2, 3}, []measure.Length{mm(76), mm(95), mm(76)}},
	} {
		got, err := measure.ParseSize(c.text, c.unit, measure.ClearComma, c.counts...)
		if assert.NoError(t, err, c.text) {
			assert.Equal(t, c.want, got, c.text)
		}
	}
}

func TestParseSizeRefuses(t *testing.T) {
	for _, c := range []refusal{
		{"", measure.ReasonEmpty, 0, ""},
		{"8 in", measure.ReasonCount, 0, ""},
		{"1x2x3in", measure.ReasonCount, 4, ""},
		{"x", measure.ReasonEmpty, 0, ""},
		{"3 x", measure.ReasonEmpty, 3, ""},
		{"3 by 4 in", measure.ReasonCount, 0, ""},
		{"3 x 4", measure.ReasonNoUnit, 5, "3 x 4in or 3 x 4mm"},
		{"3 5/7 x 11 in", measure.ReasonDenominator, 2, "3 23/32 in x 11 in"},
		{"11 × 3 5/7 in", measure.ReasonDenominator, 8, "11 × 3 23/32 in"},
		{"2 x 1,234 mm", measure.ReasonAmbiguous, 5, "2 x 1.234mm or 2 x 1234mm"},
		{"2 x -4 mm", measure.ReasonSign, 4, ""},
		{"1 x " + strings.Repeat("0", 33) + "in", measure.ReasonTooLong, 36, ""},
		{strings.Repeat("1x", 1000), measure.ReasonTooLong, 0, ""},
	} {
		_, err := measure.ParseSize(c.text, measure.NoUnit, measure.ClearComma)
		e := parseError(t, err, c.text)
		assert.Equal(t, c, refusal{c.text, e.Reason, e.At, e.Hint})
		for _, hint := range hints(e) {
			_, err := measure.ParseSize(hint, measure.NoUnit, measure.ClearComma)
			assert.NoError(t, err, "hint %q for %q", hint, c.text)
		}
	}
}

func TestParseStep(t *testing.T) {
	for text, want := range map[string]string{
		"1/8 in": "1/8 in", "1/8": "1/8 in", "1/8in": "1/8 in", "⅛″": "1/8 in", "2/16 in": "1/8 in", "0.125 in": "1/8 in",
		"1/64 in": "1/64 in", "1 in": "1 in", "1/2": "1/2 in", "0.5 mm": "0.5 mm", "0,5mm": "0.5 mm", "1/2 mm": "0.5 mm",
		"1mm": "1 mm", "5 mm": "5 mm", "1 cm": "10 mm",
	} {
		assert.Equal(t, want, mustStep(t, text).String(), text)
	}
	for _, s := range everyStep() {
		assert.Equal(t, s, mustStep(t, s.String()))
		assert.Equal(t, s, mustStep(t, s.FormatURL(s.Size())))
	}
}

func TestParseStepRefuses(t *testing.T) {
	for _, c := range []refusal{
		{"", measure.ReasonEmpty, 0, ""},
		{"1/128 in", measure.ReasonTooFine, 0, "1/64 in"},
		{"0.1 mm", measure.ReasonTooFine, 0, "0.5 mm"},
		{"0 in", measure.ReasonTooFine, 0, "1/64 in"},
		{"0.3 in", measure.ReasonNotAMark, 0, "1/4 in"},
		{"2 in", measure.ReasonNotAMark, 0, "1 in"},
		{"3 mm", measure.ReasonNotAMark, 0, "5 mm"},
		{"1/3 in", measure.ReasonDenominator, 0, ""},
		{"0.5", measure.ReasonNoUnit, 3, "0.5in or 0.5mm"},
		{"1", measure.ReasonNoUnit, 1, "1in or 1mm"},
		{"fine", measure.ReasonSyntax, 0, ""},
	} {
		_, err := measure.ParseStep(c.text)
		e := parseError(t, err, c.text)
		assert.Equal(t, c, refusal{c.text, e.Reason, e.At, e.Hint})
		for _, hint := range hints(e) {
			_, err := measure.ParseStep(hint)
			assert.NoError(t, err, "hint %q for %q", hint, c.text)
		}
	}
}

func TestMustPanicsOnBadTables(t *testing.T) {
	assert.Equal(t, measure.Inches(2), measure.MustParse("2 in"))
	assert.Panics(t, func() { measure.MustParse("2") })
	assert.Equal(t, []measure.Length{measure.Inches(2), measure.Inches(3)}, measure.MustParseSize("2 x 3 in"))
	assert.Panics(t, func() { measure.MustParseSize("2 in") })
}
