// Command spreadsheet writes the example workbook of the Tidewater Tea stall:
// a table of products, each with the readings that the service answers.
//
//	go run ./deploy/spreadsheet
//
// writes tidewater-tea.xlsx beside itself; LibreOffice turns it into
// tidewater-tea.ods (the command is in README.md there). The workbook computes
// nothing itself: every answer is fetched by a cell function.
package main

import (
	"fmt"
	"os"
	"path/filepath"
)

func main() {
	path := filepath.Join("deploy", "spreadsheet", "tidewater-tea.xlsx")
	if err := write(path, "http://127.0.0.1:8080"); err != nil {
		fmt.Fprintln(os.Stderr, "spreadsheet:", err)
		os.Exit(1)
	}
}
