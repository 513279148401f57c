// Command spreadsheet writes the example workbooks of the Tidewater Tea stall: a
// table of products with their readings, an order with its cut plan, and the price
// of a kit.
//
//	go run ./deploy/spreadsheet
//
// writes three .xlsx files beside itself; LibreOffice turns them into .ods (the
// command is in README.md there). The workbooks compute no size: every answer is
// fetched by a cell function. Seconds a position and a cut are those that the service
// counts a table of work with.
package main

import (
	"bytes"
	"embed"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"text/template"

	"github.com/xuri/excelize/v2"

	"creasefit/api/ask"
	"creasefit/api/wire"
	"creasefit/internal/repertoire"
)

// Each workbook is a text: a line for the cells to the right of one, or for what some
// cells look like and offer, parted by tabs. errors=cell makes a mistake readable in the
// cell itself.
//
//go:embed *.tmpl
var texts embed.FS

var workbooks = template.Must(template.New("").Funcs(template.FuncMap{
	"names": func(names ...string) []string { return names },
	"inc":   func(i int) int { return i + 1 },
	"rows": func(from, to int) (rows []int) {
		for row := from; row <= to; row++ {
			rows = append(rows, row)
		}
		return rows
	},
}).ParseFS(texts, "*.tmpl"))

func main() {
	for _, name := range []string{"tidewater-tea", "tidewater-order", "tidewater-kit"} {
		if err := write(filepath.Join("deploy", "spreadsheet", name+".xlsx"), "http://127.0.0.1:8080", name); err != nil {
			fmt.Fprintln(os.Stderr, "spreadsheet:", err)
			os.Exit(1)
		}
	}
}

// The sheet that is worked on, and the one with the lists for its drop-downs.
const (
	sheet     = "Products"
	listSheet = "Lists"
)

// write writes a workbook for a service at the address.
func write(path, service, name string) error {
	var text bytes.Buffer
	if err := workbooks.ExecuteTemplate(&text, name+".tmpl", nil); err != nil {
		return err
	}
	f := excelize.NewFile()
	defer f.Close()
	w := &writer{f: f}
	w.do(f.SetSheetName("Sheet1", sheet))
	w.lists()
	w.row("A3", []string{"Service", service})
	for line := range strings.Lines(text.String()) {
		w.line(strings.Split(strings.TrimSuffix(line, "\n"), "\t"))
	}
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

// line does what a line of a workbook's text says.
func (w *writer) line(words []string) {
	switch words[0] {
	case "wide":
		width, err := strconv.ParseFloat(words[3], 64)
		w.do(err)
		w.do(w.f.SetColWidth(sheet, words[1], words[2], width))
	case "bold":
		style, err := w.f.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}})
		w.do(err)
		w.do(w.f.SetCellStyle(sheet, words[1], words[2], style))
	case "choose":
		w.choose(words[1], words[2])
	default:
		w.row(words[0], words[1:])
	}
}

// newer are the functions that a file names with a prefix, since the first edition of
// its format lacks them.
var newer = regexp.MustCompile(`(WEBSERVICE|ENCODEURL|FILTERXML)\(`)

// row writes formulas, numbers and texts into the cells from one on to the right.
func (w *writer) row(first string, cells []string) {
	column, row, err := excelize.CellNameToCoordinates(first)
	w.do(err)
	for i, text := range cells {
		cell, err := excelize.CoordinatesToCellName(column+i, row)
		w.do(err)
		if formula, ok := strings.CutPrefix(text, "="); ok {
			w.do(w.f.SetCellFormula(sheet, cell, newer.ReplaceAllString(formula, "_xlfn.$0")))
		} else if number, err := strconv.ParseFloat(text, 64); err == nil {
			w.do(w.f.SetCellValue(sheet, cell, number))
		} else {
			w.do(w.f.SetCellValue(sheet, cell, text))
		}
	}
}

// offers are the lists of the drop-downs, each below its name: the presets that the
// service lists.
func offers() [][]string {
	kinds, stocks, sheets := []string{"kind"}, []string{"stock"}, []string{"sheet"}
	for _, k := range repertoire.Kinds() {
		kinds = append(kinds, k.Name)
	}
	for _, p := range wire.Stocks().Stocks {
		stocks = append(stocks, p.Name)
	}
	for _, p := range wire.Sheets(&ask.Near{}).Sheets {
		sheets = append(sheets, p.Name)
	}
	return [][]string{kinds, {"fit", "snug", "easy", "loose"}, {"ruler", "1/8 in", "1/16 in", "1/32 in", "1/64 in", "1 mm", "0.5 mm"}, stocks, sheets}
}

// lists writes the sheet of lists.
func (w *writer) lists() {
	_, err := w.f.NewSheet(listSheet)
	w.do(err)
	for i, list := range offers() {
		w.do(w.f.SetSheetCol(listSheet, fmt.Sprintf("%c1", 'A'+i), &list))
	}
}

// choose gives cells a drop-down with the words of a list. Other texts may be
// typed: a ruler or a sheet of one's own.
func (w *writer) choose(cells, name string) {
	for i, list := range offers() {
		if list[0] == name {
			v := excelize.NewDataValidation(true)
			v.Sqref = cells
			v.SetSqrefDropList(fmt.Sprintf("%s!$%c$2:$%c$%d", listSheet, 'A'+i, 'A'+i, len(list)))
			v.ShowErrorMessage = false
			w.do(w.f.AddDataValidation(sheet, v))
		}
	}
}
