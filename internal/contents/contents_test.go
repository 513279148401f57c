package contents_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/contents"
	"creasefit/internal/measure"
)

func lookup(t *testing.T, name string) contents.Item {
	t.Helper()
	item, ok := contents.Lookup(name)
	require.True(t, ok, name)
	return item
}

// Sizes in the words of their standards.
func TestPublishedSizes(t *testing.T) {
	for _, c := range []struct{ name, size, source string }{
		{"id-1", "85.60 x 53.98 mm", "ISO/IEC 7810"},
		{"id-2", "105 x 74 mm", "ISO/IEC 7810: A7"},
		{"id-3", "125 x 88 mm", "ISO/IEC 7810: B7"},
		{"sheet-a4", "210 x 297 mm", "ISO 216"},
		{"sheet-a7", "74 x 105 mm", "ISO 216"},
		{"envelope-c6", "114 x 162 mm", "PWG 5101.1, iso_c6_114x162mm"},
		{"envelope-c5", "162 x 229 mm", "PWG 5101.1, iso_c5_162x229mm"},
		{"envelope-dl", "110 x 220 mm", "PWG 5101.1, iso_dl_110x220mm"},
		{"envelope-us-a2", "4.375 x 5.75 in", "PWG 5101.1, na_a2_4.375x5.75in"},
		{"envelope-us-9", "3.875 x 8.875 in", "PWG 5101.1, na_number-9_3.875x8.875in"},
		{"envelope-us-10", "4.125 x 9.5 in", "PWG 5101.1, na_number-10_4.125x9.5in"},
		{"envelope-us-11", "4.5 x 10.375 in", "PWG 5101.1, na_number-11_4.5x10.375in"},
		{"envelope-us-12", "4.75 x 11 in", "PWG 5101.1, na_number-12_4.75x11in"},
		{"envelope-us-14", "5 x 11.5 in", "PWG 5101.1, na_number-14_5x11.5in"},
		{"envelope-us-monarch", "3.875 x 7.5 in", "PWG 5101.1, na_monarch_3.875x7.5in"},
		{"envelope-us-6-3-4", "3.625 x 6.5 in", "PWG 5101.1, na_personal_3.625x6.5in"},
	} {
		item, size := lookup(t, c.name), measure.MustParseSize(c.size)
		assert.Equal(t, size, []measure.Length{item.Width, item.Height}, "%s: %s", c.name, c.source)
	}
}

// A size is told in the unit that its source states it in.
func TestSizesAreToldInTheirUnit(t *testing.T) {
	for name, want := range map[string]measure.Unit{"envelope-us-a2": measure.Inch, "tasting-cards": measure.Inch, "id-1": measure.Millimetre, "envelope-c6": measure.Millimetre, "tea-tin": measure.Millimetre} {
		assert.Equal(t, want, lookup(t, name).Unit, name)
	}
}

// ISO/IEC 7810: a card is 0.68 to 0.84 mm thick.
func TestCardThickness(t *testing.T) {
	card := lookup(t, "id-1")
	assert.Equal(t, measure.Micrometres(680), card.Thickness.Sub(card.ThicknessTolerance))
	assert.Equal(t, measure.Micrometres(840), card.Thickness.Add(card.ThicknessTolerance))
}

// ISO 216: each size is the next larger one cut in half across its long side.
func TestSheetsHalve(t *testing.T) {
	for n := 4; n < 7; n++ {
		larger, smaller := lookup(t, fmt.Sprintf("sheet-a%d", n)), lookup(t, fmt.Sprintf("sheet-a%d", n+1))
		half := measure.Millimetres(larger.Height.Nanometres() / 2_000_000)
		assert.Equal(t, half, smaller.Width, smaller.Name)
		assert.Equal(t, larger.Width, smaller.Height, smaller.Name)
	}
}

// ISO 216: a trimmed side may be off by 1.5 mm up to 150 mm and by 2 mm up to
// 600 mm.
func TestTrimmingTolerance(t *testing.T) {
	for name, want := range map[string]string{"sheet-a4": "2 mm", "sheet-a5": "2 mm", "sheet-a6": "1.5 mm", "sheet-a7": "1.5 mm"} {
		assert.Equal(t, measure.MustParse(want), lookup(t, name).SizeTolerance, name)
	}
}

// Goods of the invented stall were cut and packed by hand: sides within 1/64 in.
func TestGoodsOfTheStallVary(t *testing.T) {
	cards := lookup(t, "tasting-cards")
	assert.Equal(t, [2]measure.Length{measure.MustParse("1/64 in"), measure.MustParse("1/64 in")}, [2]measure.Length{cards.SizeTolerance, cards.ThicknessTolerance})
}

// ISO 269: a sheet goes into the envelope of the same number with the play
// that the two standards leave.
func TestSheetsGoIntoTheirEnvelopes(t *testing.T) {
	for _, c := range []struct{ sheet, envelope, play string }{
		{"sheet-a6", "envelope-c6", "9 x 14 mm"},
		{"sheet-a5", "envelope-c5", "14 x 19 mm"},
		{"sheet-a4", "envelope-c4", "19 x 27 mm"},
	} {
		in, out := lookup(t, c.sheet), lookup(t, c.envelope)
		assert.Equal(t, measure.MustParseSize(c.play), []measure.Length{out.Width.Sub(in.Width), out.Height.Sub(in.Height)}, c.sheet)
	}
}

// The names of photographs are inches; the nominal millimetres are theirs to
// the nearest one.
func TestPhotographsAreNamedByInches(t *testing.T) {
	for name, inches := range map[string]string{
		"photo-2r": "2.5 x 3.5 in", "photo-3r": "3.5 x 5 in", "photo-4r": "4 x 6 in", "photo-5r": "5 x 7 in",
		"photo-6r": "6 x 8 in", "photo-8r": "8 x 10 in", "photo-10r": "10 x 12 in",
	} {
		mm, err := measure.ParseStep("1 mm")
		require.NoError(t, err)
		photo, size := lookup(t, name), measure.MustParseSize(inches)
		assert.Equal(t, mm.Nearest(size[0]), photo.Width, name)
		assert.Equal(t, mm.Nearest(size[1]), photo.Height, name)
	}
}

func TestItemsAreComplete(t *testing.T) {
	plain := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	for i, item := range contents.All() {
		assert.Equal(t, contents.Names()[i], item.Name)
		assert.Regexp(t, plain, item.Name)
		assert.NotEmpty(t, item.Title, item.Name)
		assert.NotEmpty(t, item.Source, item.Name)
		assert.True(t, item.Width.Sign() > 0 && item.Height.Sign() > 0, item.Name)
		assert.NotEqual(t, measure.NoUnit, item.Unit, item.Name)
		assert.Equal(t, item.Invented, strings.Contains(item.Source, "invented") && strings.Contains(item.Title, "Tidewater Tea"), item.Name)
		assert.False(t, item.Invented && item.Thickness.IsZero(), "%s has all three sizes", item.Name)
		assert.False(t, item.Thickness.IsZero() && !item.ThicknessTolerance.IsZero(), item.Name)
		assert.Equal(t, item, lookup(t, item.Name), "names are not used twice")
	}
	_, ok := contents.Lookup("ID-1")
	assert.False(t, ok, "names are case-exact")
}

func TestAllIsACopy(t *testing.T) {
	contents.All()[0].Width = measure.Inches(1)
	assert.NotEqual(t, measure.Inches(1), lookup(t, contents.Names()[0]).Width)
}

func ExampleLookup() {
	item, _ := contents.Lookup("tasting-cards")
	step, _ := measure.ParseStep("1/64")
	fmt.Println(item.Title)
	fmt.Println(step.Format(item.Width), "x", step.Format(item.Height), "x", step.Format(item.Thickness))
	// Output:
	// Tidewater Tea: a set of tasting cards
	// 3 1/2 in x 5 in x 0.09 in
}
