package stock

import (
	"slices"

	"creasefit/internal/measure"
)

// row is a stock as its source writes it; grammage is zero where the source
// states none.
type row struct {
	name, title string
	grammage    float64
	caliper     string
}

// group is the stocks of one table with one caliper tolerance.
type group struct {
	source    string
	tolerance string
	rows      []row
}

const jcp = "JCP Paper Specification Standards (US Government Publishing Office, vol. 11, 1999), "

// Where a table states the thickness in millimetres and inches, both rounded,
// the millimetres are used.
var published = []group{
	{jcp + "A55", "0.0005 in", []row{
		{"offset-40", "offset book, 40 lb", 60, "0.075 mm"},
		{"offset-50", "offset book, 50 lb", 75, "0.100 mm"},
		{"offset-60", "offset book, 60 lb", 90, "0.120 mm"},
		{"offset-70", "offset book, 70 lb", 105, "0.140 mm"},
		{"offset-80", "offset book, 80 lb", 120, "0.160 mm"},
	}},
	{jcp + "A70", "0.0005 in", []row{
		{"recycled-offset-40", "recycled offset, 40 lb", 60, "0.075 mm"},
		{"recycled-offset-45", "recycled offset, 45 lb", 67, "0.090 mm"},
		{"recycled-offset-50", "recycled offset, 50 lb", 75, "0.105 mm"},
		{"recycled-offset-60", "recycled offset, 60 lb", 90, "0.130 mm"},
	}},
	{jcp + "A175", "0.0005 in", []row{
		{"gloss-book-38", "gloss coated book, 38 lb", 55, "0.055 mm"},
	}},
	{jcp + "V25", "0.0004 in", []row{
		{"high-bulk-writing-17.5", "high-bulk writing, 17 1/2 lb bond", 66, "0.105 mm"},
		{"high-bulk-writing-21", "high-bulk writing, 21 lb bond", 80, "0.125 mm"},
	}},
	{jcp + "K10", "0.0005 in", []row{
		{"index-90", "index, 90 lb", 165, "0.190 mm"},
		{"index-110", "index, 110 lb", 200, "0.230 mm"},
		{"index-140", "index, 140 lb", 255, "0.290 mm"},
	}},
	{jcp + "K10", "0.0008 in", []row{
		{"index-170", "index, 170 lb", 305, "0.350 mm"},
	}},
	{jcp + "P20", "0.001 in", []row{
		{"folder-105", "high-finish folder, 105 lb tag", 170, "0.20 mm"},
		{"folder-150", "high-finish folder, 150 lb tag", 245, "0.28 mm"},
		{"folder-165", "high-finish folder, 165 lb tag", 270, "0.35 mm"},
		{"folder-250", "high-finish folder, 250 lb tag", 405, "0.45 mm"},
	}},
	{jcp + "L70", "0.0005 in", []row{{"coated-cover-8pt", "cover coated one side, 8 point", 0, "0.008 in"}}},
	{jcp + "L70", "0.0008 in", []row{
		{"coated-cover-10pt", "cover coated one side, 10 point", 0, "0.010 in"},
		{"coated-cover-12pt", "cover coated one side, 12 point", 0, "0.012 in"},
		{"coated-cover-15pt", "cover coated one side, 15 point", 0, "0.015 in"},
	}},
	{jcp + "L70", "0.001 in", []row{{"coated-cover-24pt", "cover coated one side, 24 point", 0, "0.024 in"}}},
	{jcp + "L80", "0.0005 in", []row{{"cast-coated-cover-10pt", "cast coated cover, 10 point", 0, "0.26 mm"}}},
	{jcp + "Q20", "0.001 in", []row{{"display-board-18pt", "display board, 18 point", 0, "0.45 mm"}}},
	{jcp + "Q20", "0.002 in", []row{{"display-board-30pt", "display board, 30 point", 0, "0.76 mm"}}},
	{jcp + "Q20", "0.0025 in", []row{{"display-board-48pt", "display board, 48 point", 0, "1.22 mm"}}},
}

// trade is uncoated cover by its basis weight in pounds. No standard gives its
// thickness; mills hold a caliper to 5 to 7 per cent, but makes differ more.
var trade = []struct {
	name, title string
	pounds      float64
	points      int64 // thousandths of an inch
}{
	{"cover-65", "cover, 65 lb", 65, 8_000},
	{"cover-80", "cover, 80 lb", 80, 9_500},
	{"cover-90", "cover, 90 lb", 90, 10_000},
	{"cover-100", "cover, 100 lb", 100, 11_000},
	{"cover-105", "cover, 105 lb", 105, 13_000},
	{"cover-120", "cover, 120 lb", 120, 15_000},
}

const tradeSource = "common practice: a default from a trade chart, measure your sheet"

var stocks = slices.Concat(publishedStocks(), tradeStocks())

// publishedStocks reads the published tables.
func publishedStocks() []Stock {
	var list []Stock
	for _, g := range published {
		for _, r := range g.rows {
			caliper := measure.MustParse(r.caliper)
			list = append(list, Stock{
				Name: r.name, Title: r.title, Caliper: caliper, CaliperTolerance: measure.MustParse(g.tolerance),
				Low: caliper, High: caliper, Grammage: r.grammage, Source: g.source,
			})
		}
	}
	return list
}

// tradeStocks makes the defaults, with the range that any paper of the
// grammage may measure.
func tradeStocks() []Stock {
	cover, _ := LookupGrade("cover")
	list := make([]Stock, len(trade))
	for i, r := range trade {
		grammage := cover.Grammage(r.pounds)
		caliper, likely := measure.Thousandths(r.points).Over(1000), EstimateCaliper(grammage)
		list[i] = Stock{
			Name: r.name, Title: r.title, Caliper: caliper, CaliperTolerance: caliper.Times(7).Over(100),
			Estimated: true, Low: likely.Low, High: likely.High, Grammage: grammage, Source: tradeSource,
		}
	}
	return list
}
