package main

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// The first product is in firstRow.
const (
	headerRow  = 5
	firstRow   = 6
	fetchedAt  = "I" // the column with the whole answer as XML
	firstPlain = 10  // the first column with a value taken out of it
)

// product is a line of the stall's list.
type product struct {
	name, kind, width, height, thickness, caliper, fit, ruler string
}

// stall is the invented list of the stall. Sizes are written as people write them,
// each with its unit.
var stall = []product{
	{"Tasting cards", "slotted-band", "3 1/2 in", "5 in", "0.09 in", "0.012 in", "snug", "1/16 in"},
	{"Tea sachets, ten", "band", "2 3/4 in", "3 in", "7/8 in", "0.010 in", "easy", "1/16 in"},
	{"Postcard set", "band", "105 mm", "148 mm", "3 mm", "0.3 mm", "easy", "0.5 mm"},
	{"Gift voucher", "envelope", "105 mm", "148 mm", "1 mm", "0.15 mm", "loose", "0.5 mm"},
	{"Brewing notes", "diagonal-envelope", "4 1/4 in", "5 1/2 in", "1/16 in", "0.006 in", "loose", "1/16 in"},
}

// value is one answer that a column takes out of the XML, by XPath 1.0.
type value struct{ title, path string }

var values = []value{
	{"Blank width, mm", "number(//blank[@name='width']/@mm)"},
	{"Blank height, mm", "number(//blank[@name='height']/@mm)"},
	{"Blank width, on the ruler", "string(//blank[@name='width']/@reading)"},
	{"First score, on the ruler", "string(//score[1]/@reading)"},
	{"Scores", "count(//score)"},
}

// products fills a sheet with a row for each product: one call a row.
func (w *writer) products() {
	w.set("A1", "Tidewater Tea: what to cut and score")
	w.set("A2", "Change a size: the readings follow. The workbook asks the service at the address below; your program asks you once whether it may.")
	header := []string{"Product", "Kind", "Width", "Height", "Thickness", "Paper", "Fit", "Ruler", "Answer (XML)"}
	for _, v := range values {
		header = append(header, v.title)
	}
	w.row(headerRow, header)
	for i, p := range stall {
		row := firstRow + i
		w.row(row, []string{p.name, p.kind, p.width, p.height, p.thickness, p.caliper, p.fit, p.ruler})
		w.formula(fmt.Sprintf("%s%d", fetchedAt, row), fetchProduct(row))
		for j, v := range values {
			cell, err := excelize.CoordinatesToCellName(firstPlain+j, row)
			w.do(err)
			w.formula(cell, taken(fmt.Sprintf("%s%d", fetchedAt, row), v.path, `""`))
		}
	}
	for column, list := range map[string]string{"B": "kind", "G": "fit", "H": "ruler"} {
		w.choose(fmt.Sprintf("%s%d:%s%d", column, firstRow, column, firstRow+199), list)
	}
	w.bold("A1", "A1")
	w.bold(fmt.Sprintf("A%d", headerRow), fmt.Sprintf("Z%d", headerRow))
	w.wide("A", "B", 20)
	w.wide("C", "H", 11)
	w.wide("I", "I", 14)
	w.wide("J", "N", 24)
}

// fetchProduct is the formula that asks the service for a row.
func fetchProduct(row int) string {
	var cells []string
	names := []string{"width", "height", "thickness", "caliper", "fit", "ruler"}
	for i := range names {
		cells = append(cells, fmt.Sprintf("%c%d", 'C'+i, row))
	}
	return fetch(fmt.Sprintf(`"/v1/solve/"&B%d`, row), "format=xml&", names, cells)
}
