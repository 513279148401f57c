package main

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// sheet is the name of the only sheet; the first product is in firstRow.
const (
	sheet      = "Products"
	serviceAt  = "B3"
	headerRow  = 5
	firstRow   = 6
	fetchedAt  = "I" // the column with the whole answer as XML
	firstPlain = 10  // the first column with a value taken out of it
)

// product is a line of the stall's list.
type product struct {
	name, kind, width, height, thickness, caliper, fit, ruler string
}

// products is the invented list of the stall. Sizes are written as people
// write them, each with its unit.
var products = []product{
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

// write writes the workbook for a service at the address.
func write(path, service string) error {
	f := excelize.NewFile()
	defer f.Close()
	w := writer{f: f}
	w.do(f.SetSheetName("Sheet1", sheet))
	w.set("A1", "Tidewater Tea: what to cut and score")
	w.set("A2", "Change a size: the readings follow. The workbook asks the service at the address below; your program asks you once whether it may.")
	w.set("A3", "Service")
	w.set(serviceAt, service)
	w.table()
	w.style()
	if w.err != nil {
		return w.err
	}
	return f.SaveAs(path)
}

// writer keeps the first error.
type writer struct {
	f   *excelize.File
	err error
}

func (w *writer) do(err error) {
	if w.err == nil {
		w.err = err
	}
}

func (w *writer) set(cell string, value any) { w.do(w.f.SetCellValue(sheet, cell, value)) }

// table writes the header and a row for each product.
func (w *writer) table() {
	header := []string{"Product", "Kind", "Width", "Height", "Thickness", "Paper", "Fit", "Ruler", "Answer (XML)"}
	for _, v := range values {
		header = append(header, v.title)
	}
	w.do(w.f.SetSheetRow(sheet, fmt.Sprintf("A%d", headerRow), &header))
	for i, p := range products {
		row := firstRow + i
		cells := []string{p.name, p.kind, p.width, p.height, p.thickness, p.caliper, p.fit, p.ruler}
		w.do(w.f.SetSheetRow(sheet, fmt.Sprintf("A%d", row), &cells))
		w.do(w.f.SetCellFormula(sheet, fmt.Sprintf("%s%d", fetchedAt, row), fetch(row)))
		for j, v := range values {
			cell, err := excelize.CoordinatesToCellName(firstPlain+j, row)
			w.do(err)
			w.do(w.f.SetCellFormula(sheet, cell, taken(row, v.path)))
		}
	}
}

// fetch is the formula that asks the service for a row: one address, so one
// call a row. errors=cell makes a mistake readable in the cell itself.
func fetch(row int) string {
	address := fmt.Sprintf(`$B$3&"/v1/solve/"&B%d&"?format=xml&errors=cell`, row)
	for i, name := range []string{"width", "height", "thickness", "caliper", "fit", "ruler"} {
		address += fmt.Sprintf(`&%s="&_xlfn.ENCODEURL(%c%d)&"`, name, 'C'+i, row)
	}
	return `_xlfn.WEBSERVICE(` + address + `")`
}

// taken is the formula that takes a value out of the answer, or shows the
// answer where it is a problem.
func taken(row int, path string) string {
	return fmt.Sprintf(`IFERROR(_xlfn.FILTERXML(%s%d,"%s"),%s%d)`, fetchedAt, row, path, fetchedAt, row)
}

// style makes the table readable.
func (w *writer) style() {
	bold, err := w.f.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}})
	w.do(err)
	w.do(w.f.SetCellStyle(sheet, "A1", "A1", bold))
	w.do(w.f.SetCellStyle(sheet, fmt.Sprintf("A%d", headerRow), fmt.Sprintf("Z%d", headerRow), bold))
	w.do(w.f.SetColWidth(sheet, "A", "B", 20))
	w.do(w.f.SetColWidth(sheet, "C", "H", 11))
	w.do(w.f.SetColWidth(sheet, "I", "I", 14))
	w.do(w.f.SetColWidth(sheet, "J", "N", 24))
}
