package contents

import (
	"slices"
	"strings"

	"creasefit/internal/measure"
)

// row is an item as its source writes it.
type row struct{ name, title, size, thickness string }

// group is the items of one source. sizeTolerance and thicknessTolerance
// are what the source allows, if it does.
type group struct {
	source             string
	sizeTolerance      func(longest measure.Length) measure.Length
	thicknessTolerance string
	invented           bool
	rows               []row
}

var groups = []group{
	{source: "ISO/IEC 7810", thicknessTolerance: "0.08 mm", rows: []row{
		{"id-1", "identification or bank card, ID-1", "85.60 x 53.98 mm", "0.76 mm"},
		{"id-2", "identification card, ID-2", "105 x 74 mm", ""},
		{"id-3", "passport booklet, ID-3", "125 x 88 mm", ""},
		{"id-000", "plug-in card, ID-000", "25 x 15 mm", ""},
	}},
	{source: "common practice of European printers", rows: []row{
		{"business-card-eu", "business card, European", "85 x 55 mm", ""},
	}},
	{source: "from memory, trade size", rows: []row{
		{"business-card-us", "business card, American", "3 1/2 x 2 in", ""},
	}},
	{source: "ISO 1008 nominal sizes, from a secondary table", rows: []row{
		{"photo-2r", "photograph 2R (2 1/2 x 3 1/2 in)", "64 x 89 mm", ""},
		{"photo-3r", "photograph 3R (3 1/2 x 5 in)", "89 x 127 mm", ""},
		{"photo-4r", "photograph 4R (4 x 6 in)", "102 x 152 mm", ""},
		{"photo-5r", "photograph 5R (5 x 7 in)", "127 x 178 mm", ""},
		{"photo-6r", "photograph 6R (6 x 8 in)", "152 x 203 mm", ""},
		{"photo-8r", "photograph 8R (8 x 10 in)", "203 x 254 mm", ""},
		{"photo-10r", "photograph 10R (10 x 12 in)", "254 x 305 mm", ""},
	}},
	{source: "ISO 216:2007, with its trimming tolerances", sizeTolerance: trimmed, rows: []row{
		{"sheet-a4", "sheet A4", "210 x 297 mm", ""},
		{"sheet-a5", "sheet A5", "148 x 210 mm", ""},
		{"sheet-a6", "sheet or postcard A6", "105 x 148 mm", ""},
		{"sheet-a7", "sheet or card A7", "74 x 105 mm", ""},
	}},
	{source: "ISO 269 (envelopes)", rows: []row{
		{"envelope-c4", "envelope C4", "229 x 324 mm", ""},
		{"envelope-c5", "envelope C5", "162 x 229 mm", ""},
		{"envelope-c6", "envelope C6", "114 x 162 mm", ""},
		{"envelope-c7", "envelope C7", "81 x 114 mm", ""},
		{"envelope-c6-c5", "envelope C6/C5", "114 x 229 mm", ""},
		{"envelope-c7-c6", "envelope C7/C6", "81 x 162 mm", ""},
		{"envelope-dl", "envelope DL", "110 x 220 mm", ""},
		{"envelope-b4", "envelope B4", "250 x 353 mm", ""},
		{"envelope-b5", "envelope B5", "176 x 250 mm", ""},
		{"envelope-b6", "envelope B6", "125 x 176 mm", ""},
	}},
	{source: "American trade sizes, GNU units 2.22", rows: []row{
		{"envelope-us-a1", "American envelope A1 (4 bar)", "3 5/8 x 5 1/8 in", ""},
		{"envelope-us-a2", "American envelope A2 (5 1/2 bar)", "4 3/8 x 5 3/4 in", ""},
		{"envelope-us-a6", "American envelope A6 (6 bar)", "4 3/4 x 6 1/2 in", ""},
		{"envelope-us-a7", "American envelope A7", "5 1/4 x 7 1/4 in", ""},
		{"envelope-us-a8", "American envelope A8", "5 1/2 x 8 1/8 in", ""},
		{"envelope-us-a9", "American envelope A9", "5 3/4 x 8 3/4 in", ""},
		{"envelope-us-a10", "American envelope A10", "6 x 9 1/2 in", ""},
		{"envelope-us-6-1-4", "American envelope no. 6 1/4", "3 1/2 x 6 in", ""},
		{"envelope-us-6-3-4", "American envelope no. 6 3/4", "3 5/8 x 6 1/2 in", ""},
		{"envelope-us-7", "American envelope no. 7", "3 3/4 x 6 3/4 in", ""},
		{"envelope-us-monarch", "American envelope no. 7 3/4 (Monarch)", "3 7/8 x 7 1/2 in", ""},
		{"envelope-us-8-5-8", "American envelope no. 8 5/8", "3 5/8 x 8 5/8 in", ""},
		{"envelope-us-9", "American envelope no. 9", "3 7/8 x 8 7/8 in", ""},
		{"envelope-us-10", "American envelope no. 10", "4 1/8 x 9 1/2 in", ""},
		{"envelope-us-11", "American envelope no. 11", "4 1/2 x 10 3/8 in", ""},
		{"envelope-us-12", "American envelope no. 12", "4 3/4 x 11 in", ""},
		{"envelope-us-14", "American envelope no. 14", "5 x 11 1/2 in", ""},
		{"envelope-us-16", "American envelope no. 16", "6 x 12 in", ""},
		{"envelope-us-coin-1", "American coin envelope no. 1", "2 1/4 x 3 1/2 in", ""},
		{"envelope-us-coin-3", "American coin envelope no. 3", "2 1/2 x 4 1/4 in", ""},
		{"envelope-us-coin-4", "American coin envelope no. 4", "3 x 4 1/2 in", ""},
		{"envelope-us-coin-5", "American coin envelope no. 5", "2 7/8 x 5 1/4 in", ""},
		{"envelope-us-coin-6", "American coin envelope no. 6", "3 3/8 x 6 in", ""},
		{"envelope-us-coin-7", "American coin envelope no. 7", "3 1/2 x 6 1/2 in", ""},
	}},
	{source: "invented for the Tidewater Tea examples", invented: true, thicknessTolerance: "1/64 in", sizeTolerance: handCut, rows: []row{
		{"tasting-cards", "Tidewater Tea: a set of tasting cards", "3 1/2 x 5 in", "0.09 in"},
		{"tea-sachets", "Tidewater Tea: ten flat tea sachets in a stack", "2 3/4 x 2 3/8 in", "5/8 in"},
		{"tea-tin", "Tidewater Tea: a square tea tin", "76 x 95 mm", "76 mm"},
		{"honey-jar", "Tidewater Tea: a square honey jar", "58 x 78 mm", "58 mm"},
	}},
}

// trimmed returns what ISO 216 allows on a trimmed side: 1.5 mm up to 150 mm,
// 2 mm up to 600 mm, and no sheet here is longer. The longer side decides for
// both.
func trimmed(longest measure.Length) measure.Length {
	if measure.Millimetres(150).Less(longest) {
		return measure.Millimetres(2)
	}
	return measure.Micrometres(1500)
}

// handCut returns the spread of goods that were made by hand.
func handCut(measure.Length) measure.Length { return measure.Sixtyfourths(1) }

var items = slices.Concat(expand(groups)...)

// expand turns the rows into items.
func expand(groups []group) [][]Item {
	lists := make([][]Item, len(groups))
	for i, g := range groups {
		for _, r := range g.rows {
			lists[i] = append(lists[i], g.item(r))
		}
	}
	return lists
}

// item reads one row.
func (g group) item(r row) Item {
	size := measure.MustParseSize(r.size)
	item := Item{
		Name: r.name, Title: r.title, Width: size[0], Height: size[1],
		Unit: measure.Millimetre, Source: g.source, Invented: g.invented,
	}
	if strings.HasSuffix(r.size, " in") {
		item.Unit = measure.Inch
	}
	if g.sizeTolerance != nil {
		item.SizeTolerance = g.sizeTolerance(measure.Max(size[0], size[1]))
	}
	if r.thickness != "" {
		item.Thickness = measure.MustParse(r.thickness)
		if g.thicknessTolerance != "" {
			item.ThicknessTolerance = measure.MustParse(g.thicknessTolerance)
		}
	}
	return item
}
