// Package sheettest holds what the tests of cut plans share.
package sheettest

import (
	"testing"

	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// Inches reads a length in inches.
func Inches(t testing.TB, text string) measure.Length {
	t.Helper()
	l, err := measure.Parse(text, measure.Inch, measure.ClearComma)
	require.NoError(t, err)
	return l
}

// Step reads the finest mark of a ruler.
func Step(t testing.TB, text string) measure.Step {
	t.Helper()
	s, err := measure.ParseStep(text)
	require.NoError(t, err)
	return s
}

// TeaOrder is a sound order: sachets and tins of a market stall. Its plan is settled long
// before its effort is used up.
func TeaOrder(t testing.TB) sheet.Order {
	in := func(text string) measure.Length { return Inches(t, text) }
	return sheet.Order{
		Sheets: []sheet.Stock{{Width: in("12"), Height: in("12"), Grain: sheet.AlongHeight}},
		Ruler:  Step(t, "1/16 in"),
		Effort: sheet.MostEffort,
		Items: []sheet.Item{
			{Name: "sachet band", Width: in("8 1/4"), Height: in("1 3/4"), Count: 25},
			{Name: "tin wrap", Width: in("9 1/2"), Height: in("3"), Count: 6, Grain: sheet.AlongHeight},
			{Name: "tasting card", Width: in("5 1/2"), Height: in("4 1/4"), Count: 8},
		},
	}
}
