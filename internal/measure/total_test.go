package measure_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
)

// Worked by hand: counts times lengths, added up.
func TestParseTotal(t *testing.T) {
	const none, in, mm = measure.NoUnit, measure.Inch, measure.Millimetre
	for text, want := range map[string]measure.Total{
		"60 mm":                        {Length: measure.Millimetres(60), Unit: mm},
		"3 5/8 in":                     {Length: measure.Sixtyfourths(232), Unit: in},
		"3 of 60 mm":                   {Length: measure.Millimetres(180), Unit: mm},
		"3 OF 60mm":                    {Length: measure.Millimetres(180), Unit: mm},
		"12*1.5 mm":                    {Length: measure.Millimetres(18), Unit: mm},
		"12 mal 1,5 mm":                {Length: measure.Millimetres(18), Unit: mm},
		"12 of 1.5 mm + 2 of 0.5 mm":   {Length: measure.Millimetres(19), Unit: mm},
		"3 of 2 3/4 + 1/2 in":          {Length: measure.Sixtyfourths(3*176 + 32), Unit: in},
		"2 of 3+5/8 in and 1 mm":       {Length: measure.Sixtyfourths(464).Add(measure.Millimetres(1)), Unit: mm},
		"3 of them":                    {Them: 3},
		"3 davon und 2 mal 1 mm":       {Length: measure.Millimetres(2), Them: 3, Unit: mm},
		"them + 6 mm":                  {Length: measure.Millimetres(6), Them: 1, Unit: mm},
		"2 of them + 3 of them + 0 mm": {Them: 5, Unit: mm},
	} {
		got, err := measure.ParseTotal(text, none, measure.ClearComma)
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, got, text)
		}
	}
	got, err := measure.ParseTotal("3 of 2 3/4", in, measure.ClearComma)
	require.NoError(t, err)
	assert.Equal(t, measure.Sixtyfourths(3*176), got.Length, "bare numbers are in the unit of the request")
}

// What is wrong is told of the whole text, and the hint is one that is read.
func TestParseTotalRefuses(t *testing.T) {
	for text, want := range map[string]struct {
		reason measure.Reason
		at     int
		hint   string
	}{
		"9 x 5 in":               {measure.ReasonUnknownUnit, 2, ""},
		"3 of":                   {measure.ReasonEmpty, 4, ""},
		"3 of 60":                {measure.ReasonNoUnit, 7, "3 of 60in or 3 of 60mm"},
		"0 of 60 mm":             {measure.ReasonUnknownUnit, 2, ""},
		"60 mm + ":               {measure.ReasonEmpty, 8, ""},
		"3 of 1,234mm":           {measure.ReasonAmbiguous, 6, "3 of 1.234mm or 3 of 1234mm"},
		"2 of 60 mm + 1/3 in":    {measure.ReasonDenominator, 13, "2 of 60 mm + 21/64 in"},
		"9000 of 60 mm":          {measure.ReasonTooLarge, 0, ""},
		"9000 of them + 9 of in": {measure.ReasonSyntax, 20, ""},
		"99999 of them":          {measure.ReasonUnknownUnit, 6, ""},
	} {
		_, err := measure.ParseTotal(text, measure.NoUnit, measure.ClearComma)
		e := parseError(t, err, text)
		assert.Equal(t, want.reason, e.Reason, text)
		assert.Equal(t, want.at, e.At, text)
		assert.Equal(t, want.hint, e.Hint, text)
		for _, hint := range hints(e) {
			_, err := measure.ParseTotal(hint, measure.NoUnit, measure.ClearComma)
			assert.NoError(t, err, "hint %q for %q", hint, text)
		}
	}
}

func FuzzParseTotal(f *testing.F) {
	for _, text := range []string{"3 of 60 mm + 2 of 1 mm", "12 davon", "1 of ", "* + and"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		sum, err := measure.ParseTotal(text, measure.Millimetre, measure.ClearComma)
		if err == nil {
			assert.False(t, sum.Sign() < 0 || sum.Them < 0, text)
		}
	})
}
