// Command spreadsheet writes the example workbooks of the Tidewater Tea stall: a
// table of products with their readings, an order with its cut plan, and the price
// of a kit.
//
//	go run ./deploy/spreadsheet
//
// writes three .xlsx files beside itself; LibreOffice turns them into .ods (the
// command is in README.md there). The workbooks compute no size: every answer is
// fetched by a cell function.
package main

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/xuri/excelize/v2"
)

// workbooks are the files by name.
var workbooks = map[string]func(w *writer){
	"tidewater-tea":   (*writer).products,
	"tidewater-order": (*writer).order,
	"tidewater-kit":   (*writer).kit,
}

func main() {
	for name, fill := range workbooks {
		if err := write(filepath.Join("deploy", "spreadsheet", name+".xlsx"), "http://127.0.0.1:8080", fill); err != nil {
			fmt.Fprintln(os.Stderr, "spreadsheet:", err)
			os.Exit(1)
		}
	}
}

// write writes a workbook for a service at the address.
func write(path, service string, fill func(*writer)) error {
	f := excelize.NewFile()
	defer f.Close()
	w := &writer{f: f}
	w.do(f.SetSheetName("Sheet1", sheet))
	w.lists()
	w.set("A3", "Service")
	w.set(serviceAt, service)
	fill(w)
	if w.err != nil {
		return w.err
	}
	return f.SaveAs(path)
}
