package measure_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
)

// FuzzParse: whatever is read is written back and read again to the same
// length; whatever is refused is refused with its place, a sentence, and hints
// that can be read.
func FuzzParse(f *testing.F) {
	for _, c := range refusals {
		f.Add(c.text, uint8(0), uint8(0))
	}
	f.Fuzz(func(t *testing.T, text string, unit, decimal uint8) {
		u, d := measure.Unit(unit%3), measure.Decimal(decimal%3)
		l, err := measure.Parse(text, u, d)
		if err == nil {
			require.True(t, l.Sign() >= 0 && !measure.Largest().Less(l))
			for _, s := range everyStep() {
				assertReadsBack(t, s, l)
			}
			return
		}
		e := parseError(t, err, text)
		require.NotEmpty(t, e.Reason)
		require.NotEmpty(t, e.Detail)
		for _, hint := range hints(e) {
			_, err := measure.Parse(hint, measure.Inch, measure.ClearComma)
			require.NoError(t, err, "hint %q for %q", hint, text)
		}
	})
}

// FuzzParseSize: a size has as many lengths as were asked for, and errors
// point into the whole text.
func FuzzParseSize(f *testing.F) {
	for _, text := range []string{"8 1/2 x 11 in", "1x2x3mm", "3 5/7 × 1,234 mm", "x*X"} {
		f.Add(text, uint8(0))
	}
	f.Fuzz(func(t *testing.T, text string, unit uint8) {
		lengths, err := measure.ParseSize(text, measure.Unit(unit%3), measure.ClearComma, 2, 3)
		if err != nil {
			require.NotEmpty(t, parseError(t, err, text).Detail)
			return
		}
		require.Contains(t, []int{2, 3}, len(lengths))
	})
}

// FuzzParseStep: a step that is read is a mark and its name reads back.
func FuzzParseStep(f *testing.F) {
	for _, text := range []string{"1/8 in", "1/16", "0.5 mm", "1/128", "1/3", "3 mm"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := measure.ParseStep(text)
		if err != nil {
			require.NotEmpty(t, parseError(t, err, text).Detail)
			return
		}
		require.Contains(t, measure.Marks(s.Unit()), s)
		require.Equal(t, s, mustStep(t, s.String()))
	})
}
