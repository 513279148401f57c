package main

import "fmt"

// kitLine is a line of the price of a kit: its name in column A, what stands in
// column B, and what it means in column C. A list gives it a drop-down.
type kitLine struct {
	label   string
	value   any
	formula string
	note    string
	list    string
}

// firstKitRow is where the lines begin; the formulas count on it.
const firstKitRow = 5

// kitLines are the price of a kit, in rows from firstKitRow on. Seconds a position
// and a cut are those that the service counts a table of work with.
func kitLines() []kitLine {
	names := []string{"width", "height", "thickness", "stock", "fit", "ruler"}
	cells := []string{"B6", "B7", "B8", "B9", "B10", "B11"}
	item := `"{""kind"":"""&B5&""",""width"":"""&B6&""",""height"":"""&B7&""",""thickness"":"""&B8&""",""stock"":"""&B9&""",""fit"":"""&B10&""",""ruler"":"""&B11&""",""count"":"&B14&"}"`
	plan := func(pointer string) string {
		return fetch(`"/v1/yield"`, "pick="+pointer+"&unit=mm&effort_ms=10000&", []string{"sheet", "items"}, []string{"B12", item})
	}
	outside := func(axis string) string {
		return fetch(`"/v1/solve/"&B5`, "pick=/outside/"+axis+"/mm&", names, cells)
	}
	number := func(formula string) string { return fmt.Sprintf(`IFERROR(VALUE(%[1]s),%[1]s)`, formula) }
	return []kitLine{
		{"Kind", "sleeve", "", "what is made", "kind"},
		{"Width", "114.3 mm", "", "of the contents", ""},
		{"Height", "76.2 mm", "", "", ""},
		{"Thickness", "31.8 mm", "", "", ""},
		{"Paper", "index-110", "", "", "stock"},
		{"Fit", "easy", "", "", "fit"},
		{"Ruler", "1 mm", "", "", "ruler"},
		{"Sheet", "a3", "", "", "sheet"},
		{"Price of a sheet", 0.45, "", "", ""},
		{"Kits cut together", 50, "", "", ""},
		{"Price of an hour", 24, "", "", ""},
		{"Glue of a kit", 0.03, "", "", ""},
		{"Sheets", nil, number(plan("/sheets")), "for all kits of a batch, by the cut plan", ""},
		{"Positions of the trimmer", nil, number(plan("/work/settings")), "40 seconds each", ""},
		{"Cuts", nil, number(plan("/work/cuts")), "15 seconds each", ""},
		{"Paper of a kit", nil, "IFERROR(B17*B13/B14,B17)", "", ""},
		{"Minutes of a kit", nil, "IFERROR((B18*40+B19*15)/60/B14,B18)", "", ""},
		{"Cost of a kit", nil, "IFERROR(B20+B21/60*B15+B16,B20)", "paper, minutes and glue", ""},
		{"Packed: width, mm", nil, number(outside("width")), "", ""},
		{"Packed: height, mm", nil, number(outside("height")), "", ""},
		{"Packed: thickness, mm", nil, number(outside("thickness")), "", ""},
	}
}

// kit fills a sheet with the price of a kit.
func (w *writer) kit() {
	w.set("A1", "Tidewater Tea: what a kit costs")
	w.set("A2", "Change a line above Sheets: what is below follows.")
	for i, l := range kitLines() {
		row := firstKitRow + i
		w.set(fmt.Sprintf("A%d", row), l.label)
		w.set(fmt.Sprintf("C%d", row), l.note)
		cell := fmt.Sprintf("B%d", row)
		if l.formula != "" {
			w.formula(cell, l.formula)
		} else {
			w.set(cell, l.value)
		}
		if l.list != "" {
			w.choose(cell, l.list)
		}
	}
	w.bold("A1", "A1")
	w.wide("A", "A", 26)
	w.wide("B", "C", 24)
}
