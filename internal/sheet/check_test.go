package sheet_test

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/sheettest"
)

func TestFaultyOrders(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(o *sheet.Order)
		code  fault.Code
		field string
	}{
		"no sheet":  {func(o *sheet.Order) { o.Sheets = nil }, fault.Missing, "sheet"},
		"no items":  {func(o *sheet.Order) { o.Items = nil }, fault.Missing, "items"},
		"no ruler":  {func(o *sheet.Order) { o.Ruler = measure.Step{} }, fault.Missing, "ruler"},
		"too large": {func(o *sheet.Order) { o.Items[1].Width = sheettest.Inches(t, "13") }, fault.OutOfRange, "items[1].blank"},
		"too large turned": {func(o *sheet.Order) {
			o.Sheets[0].Height = sheettest.Inches(t, "9")
			o.Sheets[0].Width = sheettest.Inches(t, "12")
			o.Items[1].Grain = sheet.AlongWidth
		}, fault.OutOfRange, "items[1].blank"},
		"no size":         {func(o *sheet.Order) { o.Items[0].Height = measure.Length{} }, fault.OutOfRange, "items[0].blank"},
		"one count short": {func(o *sheet.Order) { o.Items[2].Count = 0 }, fault.Conflict, "items[2].count"},
		"one count alone": {func(o *sheet.Order) { o.Items[0].Count, o.Items[1].Count = 0, 0 }, fault.Conflict, "items[0].count"},
		"negative count":  {func(o *sheet.Order) { o.Items[2].Count = -1 }, fault.OutOfRange, "items[2].count"},
		"too many pieces": {func(o *sheet.Order) { o.Items[0].Count, o.Items[1].Count = sheet.MostPieces, 1 }, fault.TooMany, "items"},
		"too many items":  {func(o *sheet.Order) { o.Items = make([]sheet.Item, sheet.MostItems+1) }, fault.TooMany, "items"},
		"grain not known": {func(o *sheet.Order) { o.Sheets[0].Grain = sheet.AnySide }, fault.Missing, "sheet_grain"},
		"margin too wide": {func(o *sheet.Order) { o.Margin = sheettest.Inches(t, "6") }, fault.OutOfRange, "margin"},
		"negative kerf":   {func(o *sheet.Order) { o.Kerf = sheettest.Inches(t, "1").Neg() }, fault.OutOfRange, "kerf"},
		"short trimmer":   {func(o *sheet.Order) { o.Trimmer = sheettest.Inches(t, "9") }, fault.NoPlan, "trimmer_length"},
		"too much effort": {func(o *sheet.Order) { o.Effort = time.Minute }, fault.OutOfRange, "effort_ms"},
		"no price":        {func(o *sheet.Order) { o.Minimize = sheet.LeastCost }, fault.Missing, "sheet[0].price"},
		"negative stock":  {func(o *sheet.Order) { o.Sheets[0].Available = -1 }, fault.OutOfRange, "sheet[0].available"},
		"too costly":      {func(o *sheet.Order) { o.Sheets[0].Price = 1_000_000_001 }, fault.OutOfRange, "sheet[0].price"},
		"negative price":  {func(o *sheet.Order) { o.Sheets[0].Price = -1 }, fault.OutOfRange, "sheet[0].price"},
		"no sheet size":   {func(o *sheet.Order) { o.Sheets[0].Height = measure.Length{} }, fault.OutOfRange, "sheet[0]"},
		"negative effort": {func(o *sheet.Order) { o.Effort = -1 }, fault.OutOfRange, "effort_ms"},
		"too many sizes":  {func(o *sheet.Order) { o.Sheets = slices.Repeat(o.Sheets, sheet.MostSizes+1) }, fault.TooMany, "sheet"},
		"uncounted scrap": {func(o *sheet.Order) { o.Sheets[0].Offcut = true }, fault.Missing, "sheet[0].available"},
		"much scrap":      {func(o *sheet.Order) { o.Sheets[0].Offcut, o.Sheets[0].Available = true, sheet.MostOffcuts+1 }, fault.TooMany, "sheet"},
		"no paper named":  {func(o *sheet.Order) { o.Sheets[0].Paper = "kraft" }, fault.Missing, "items[0].paper"},
		"unknown paper":   {func(o *sheet.Order) { o.Items[1].Paper = "kraft" }, fault.Unknown, "items[1].paper"},
		"two papers at once": {func(o *sheet.Order) {
			o.Items[1].Paper = "kraft"
			for i := range o.Items {
				o.Items[i].Count = 0
			}
		}, fault.Conflict, "items"},
		"a speck": {func(o *sheet.Order) {
			o.Items = o.Items[:1]
			o.Items[0].Width, o.Items[0].Height, o.Items[0].Count = sheettest.Inches(t, "1/32"), sheettest.Inches(t, "1/32"), 0
		}, fault.OverBudget, "items[0].blank"},
	} {
		t.Run(name, func(t *testing.T) {
			o := sheettest.TeaOrder(t)
			c.spoil(&o)
			err := o.Check()
			var faults fault.Faults
			require.NoError(t, faults.Add(err))
			require.NotEmpty(t, faults)
			assert.Equal(t, c.code, faults[0].Code, faults.Error())
			assert.Equal(t, c.field, faults[0].Field)
			assert.NotEmpty(t, faults[0].Detail)
		})
	}
}

// What is just within every bound is no fault.
func TestBoundsAreIncluded(t *testing.T) {
	for name, stretch := range map[string]func(o *sheet.Order){
		"effort": func(o *sheet.Order) { o.Effort = sheet.MostEffort },
		"items":  func(o *sheet.Order) { o.Items = slices.Repeat(o.Items[:1], sheet.MostItems) },
		"pieces": func(o *sheet.Order) { o.Items = o.Items[:1]; o.Items[0].Count = sheet.MostPieces },
		"sizes":  func(o *sheet.Order) { o.Sheets = slices.Repeat(o.Sheets, sheet.MostSizes) },
		"price":  func(o *sheet.Order) { o.Sheets[0].Price = 1_000_000_000 },
		"scrap":  func(o *sheet.Order) { o.Sheets[0].Offcut, o.Sheets[0].Available = true, sheet.MostOffcuts },
		"blank": func(o *sheet.Order) {
			o.Items[0].Width, o.Items[0].Height = sheettest.Inches(t, "12"), sheettest.Inches(t, "12")
		},
		"trimmer": func(o *sheet.Order) { o.Trimmer = sheettest.Inches(t, "12") },
		"largest": func(o *sheet.Order) { o.Sheets[0].Width, o.Kerf = measure.Largest(), measure.Largest() },
	} {
		o := sheettest.TeaOrder(t)
		stretch(&o)
		assert.NoError(t, o.Check(), name)
	}
}

// A fault says what was given, what is expected and, where it can, what to do.
func TestFaultsHelp(t *testing.T) {
	o := sheettest.TeaOrder(t)
	o.Sheets = append(o.Sheets, o.Sheets[0], o.Sheets[0])
	o.Sheets[0].Paper, o.Sheets[1].Paper, o.Sheets[2].Paper = "kraft", "ivory", "kraft"
	o.Items[0].Paper, o.Items[1].Paper, o.Items[2].Paper = "kraft", "ivroy", ""
	var faults fault.Faults
	require.ErrorAs(t, o.Check(), &faults)
	require.Len(t, faults, 2)
	assert.Equal(t, fault.Fault{Code: fault.Unknown, Field: "items[1].paper", Value: "ivroy", Detail: `"tin wrap" is of a paper that there is no sheet of.`,
		Expected: "one of kraft, ivory", Hint: "did you mean ivory?"}, faults[0])
	assert.Equal(t, "one of kraft, ivory", faults[1].Expected)

	o = sheettest.TeaOrder(t)
	o.Items = o.Items[:1]
	o.Items[0].Width, o.Items[0].Height, o.Items[0].Count = sheettest.Inches(t, "1/8"), sheettest.Inches(t, "1/16"), 0
	require.ErrorAs(t, o.Check(), &faults)
	assert.Equal(t, `"sachet band" may come out of a sheet 18432 times, and a plan would list each.`, faults[len(faults)-1].Detail)
	hinted := faults[len(faults)-1].Hint
	assert.Equal(t, "a blank of 1/4 in x 1/8 in is within it", hinted)
	o.Items[0].Width, o.Items[0].Height = sheettest.Inches(t, "1/4"), sheettest.Inches(t, "1/8")
	assert.NoError(t, o.Check())
}

func TestAllFaultsAreNamed(t *testing.T) {
	o := sheettest.TeaOrder(t)
	o.Items[0].Width, o.Items[2].Height = sheettest.Inches(t, "14"), sheettest.Inches(t, "20")
	err := o.Check()
	var faults fault.Faults
	require.ErrorAs(t, err, &faults)
	require.Len(t, faults, 2)
	assert.Equal(t, "items[0].blank", faults[0].Field)
	assert.Contains(t, faults[0].Detail, "sachet band")
	assert.Equal(t, "items[2].blank", faults[1].Field)
}

// A trimmer that crosses no sheet is one fault, whatever is to be cut, and one that is too
// short for a blank is said of that; the length that is named does, a mark less does not.
func TestTheTrimmerThatIsNamedDoes(t *testing.T) {
	in := func(text string) measure.Length { return sheettest.Inches(t, text) }
	for _, c := range []struct {
		width, trimmer, said, least string
	}{
		{"8 1/4", "11", "Nothing can be cut: even the shortest first cut across a sheet is 12 in long, longer than the trimmer.", "12"},
		{"14", "11", "Nothing can be cut: even the shortest first cut across a sheet is 12 in long, longer than the trimmer.", "14"},
		{"14", "12", `"sachet band" cannot be cut out: the cut along its side is 14 in long, longer than the trimmer.`, "14"},
		{"17 1/2", "12", `"sachet band" cannot be cut out: the cut along its side is 17 1/2 in long, longer than the trimmer.`, "17 1/2"},
	} {
		o := sheettest.TeaOrder(t)
		o.Sheets[0].Height, o.Margin, o.Trimmer = in("18"), in("1/4"), in(c.trimmer)
		o.Items[0].Width = in(c.width)
		var faults fault.Faults
		require.NoError(t, faults.Add(o.Check()))
		require.Len(t, faults, 1, "%+v", c)
		assert.Equal(t, c.said, faults[0].Detail)
		assert.Equal(t, "at least "+c.least+" in", faults[0].Expected)
		assert.Equal(t, in(c.least).Nanometres(), faults[0].Least)
		o.Trimmer = in(c.least)
		require.NoError(t, o.Check(), "%+v", c)
		o.Trimmer = o.Trimmer.Sub(in("1/16"))
		assert.Error(t, o.Check(), "%+v", c)
	}
}

// Whatever the sheets, margins and blanks: the trimmer that a fault names cuts each of them
// out, and one a millimetre shorter would not.
func TestRandomTrimmersThatAreNamedDo(t *testing.T) {
	ruler, tried := sheettest.Step(t, "1 mm"), 0
	rapid.Check(t, func(t *rapid.T) {
		mm := func(low, high int64, name string) measure.Length {
			return measure.Millimetres(rapid.Int64Range(low, high).Draw(t, name))
		}
		o := sheet.Order{Ruler: ruler, Margin: mm(0, 3, "margin"), Trimmer: mm(10, 40, "trimmer")}
		for range rapid.IntRange(1, 2).Draw(t, "sizes") {
			o.Sheets = append(o.Sheets, sheet.Stock{Width: mm(10, 60, "W"), Height: mm(10, 60, "H")})
		}
		for range rapid.IntRange(1, 3).Draw(t, "items") {
			o.Items = append(o.Items, sheet.Item{Width: mm(2, 50, "w"), Height: mm(2, 50, "h"), Count: 1})
		}
		var faults fault.Faults
		require.NoError(t, faults.Add(o.Check()))
		longest := measure.Length{}
		for _, f := range faults {
			if f.Field != "trimmer_length" {
				return // a blank that no trimmer cuts out
			}
			longest = measure.Max(longest, measure.Nanometres(f.Least))
		}
		if len(faults) == 0 {
			return
		}
		tried++
		o.Trimmer = longest
		require.NoError(t, o.Check())
		o.Trimmer = longest.Sub(measure.Millimetres(1))
		require.Error(t, o.Check())
	})
	assert.Positive(t, tried)
}
