package main

import (
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"

	"creasefit/api/ask"
	"creasefit/api/wire"
	"creasefit/internal/repertoire"
)

// The sheet that is worked on, the one with the lists for its drop-downs, and
// where the address of the service stands.
const (
	sheet     = "Products"
	listSheet = "Lists"
	serviceAt = "B3"
)

// lists are the columns of the sheet of lists, by their headings.
var listColumns = []string{"kind", "fit", "ruler", "stock", "sheet"}

// words are the entries of the drop-downs: the presets that the service lists.
func words(list string) []string {
	var all []string
	switch list {
	case "kind":
		for _, k := range repertoire.Kinds() {
			all = append(all, k.Name)
		}
	case "fit":
		return []string{"snug", "easy", "loose"}
	case "ruler":
		return []string{"1/8 in", "1/16 in", "1/32 in", "1/64 in", "1 mm", "0.5 mm"}
	case "stock":
		for _, p := range wire.Stocks().Stocks {
			all = append(all, p.Name)
		}
	case "sheet":
		for _, p := range wire.Sheets(&ask.Near{}).Sheets {
			all = append(all, p.Name)
		}
	}
	return all
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

func (w *writer) formula(cell, formula string) { w.do(w.f.SetCellFormula(sheet, cell, formula)) }

// row writes texts from the first column on.
func (w *writer) row(row int, cells []string) {
	w.do(w.f.SetSheetRow(sheet, fmt.Sprintf("A%d", row), &cells))
}

// lists writes the sheet of lists.
func (w *writer) lists() {
	_, err := w.f.NewSheet(listSheet)
	w.do(err)
	for i, list := range listColumns {
		column := append([]string{list}, words(list)...)
		w.do(w.f.SetSheetCol(listSheet, fmt.Sprintf("%c1", 'A'+i), &column))
	}
}

// choose gives cells a drop-down with the words of a list. Other texts may be
// typed: a ruler or a sheet of one's own.
func (w *writer) choose(cells, list string) {
	for i, name := range listColumns {
		if name != list {
			continue
		}
		v := excelize.NewDataValidation(true)
		v.Sqref = cells
		v.SetSqrefDropList(fmt.Sprintf("%s!$%c$2:$%c$%d", listSheet, 'A'+i, 'A'+i, 1+len(words(list))))
		v.ShowErrorMessage = false
		w.do(w.f.AddDataValidation(sheet, v))
	}
}

// bold makes cells headings, and columns wide.
func (w *writer) bold(from, to string) {
	style, err := w.f.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}})
	w.do(err)
	w.do(w.f.SetCellStyle(sheet, from, to, style))
}

func (w *writer) wide(from, to string, width float64) { w.do(w.f.SetColWidth(sheet, from, to, width)) }

// fetch is a formula that asks the service once: names from cells behind a fixed
// query. errors=cell makes a mistake readable in the cell itself.
func fetch(address, query string, names []string, cells []string) string {
	var b strings.Builder
	fmt.Fprintf(&b, `_xlfn.WEBSERVICE($B$3&%s&"?%serrors=cell`, address, query)
	for i, name := range names {
		fmt.Fprintf(&b, `&%s="&_xlfn.ENCODEURL(%s)&"`, name, cells[i])
	}
	return b.String() + `")`
}

// taken is a formula that takes a value out of an answer in XML by XPath 1.0, or
// shows the answer where it is a problem; other is what it shows where there is
// no such value.
func taken(cell, path, other string) string {
	return fmt.Sprintf(`IFERROR(_xlfn.FILTERXML(%s,"%s"),IF(LEFT(%s,1)="!",%s,%s))`, cell, path, cell, cell, other)
}
