package main

import "fmt"

// Where an order stands: its sheet, its items, what it comes to, and the steps of
// its cut plan.
const (
	orderSheetAt = "B4"
	orderRulerAt = "D4"
	firstItem    = 8
	mostItems    = 6
	orderTotals  = firstItem + mostItems + 1
	firstStep    = orderTotals + 5
	mostSteps    = 30
)

// item is a line of an order.
type item struct {
	name, kind, width, height, thickness, stock, fit string
	count                                            int
}

// wanted is an invented order of the stall.
var wanted = []item{
	{"Card bands", "band", "89 mm", "127 mm", "6 mm", "index-110", "snug", 24},
	{"Sachet sleeves", "sleeve", "95 mm", "60 mm", "24 mm", "index-110", "easy", 12},
	{"Voucher envelopes", "envelope", "105 mm", "148 mm", "1 mm", "index-110", "loose", 6},
}

// stepColumns are the columns of the cut plan, with the attributes that they show.
var stepColumns = []value{
	{"Plan", "plan"}, {"Sheets", "sheets"}, {"Step", "step"}, {"Cut across", "across"}, {"From", "from"}, {"Set to", "reading"}, {"Parts", "stack"}, {"Cuts", "cuts"},
}

// order fills a sheet with an order: its items, how many sheets it takes, and how
// they are cut.
func (w *writer) order() {
	w.set("A1", "Tidewater Tea: an order and how to cut it")
	w.set("A2", "Change a size or a count: the cut plan follows. A line without a count is left out.")
	w.set("A4", "Sheet")
	w.set(orderSheetAt, "a3")
	w.set("C4", "Ruler")
	w.set(orderRulerAt, "1 mm")
	w.row(firstItem-1, []string{"Item", "Kind", "Width", "Height", "Thickness", "Paper", "Fit", "Count"})
	for i, it := range wanted {
		w.row(firstItem+i, []string{it.name, it.kind, it.width, it.height, it.thickness, it.stock, it.fit})
		w.set(fmt.Sprintf("H%d", firstItem+i), it.count)
	}
	w.set(fmt.Sprintf("A%d", orderTotals), "Sheets")
	w.formula(fmt.Sprintf("B%d", orderTotals), fetchOrder("pick=/sheets&"))
	w.set(fmt.Sprintf("A%d", orderTotals+1), "Used, per cent")
	w.formula(fmt.Sprintf("B%d", orderTotals+1), fetchOrder("pick=/used_percent&"))
	w.set(fmt.Sprintf("A%d", orderTotals+2), "Cut plan (XML)")
	plan := fmt.Sprintf("B%d", orderTotals+2)
	w.formula(plan, fetchOrder("format=xml&"))
	for i, c := range stepColumns {
		w.set(fmt.Sprintf("%c%d", 'A'+i, firstStep-1), c.title)
		for n := range mostSteps {
			cell := fmt.Sprintf("%c%d", 'A'+i, firstStep+n)
			w.formula(cell, fmt.Sprintf(`IFERROR(_xlfn.FILTERXML($B$%d,"string(//row[%d]/@%s)"),"")`, orderTotals+2, n+1, c.path))
		}
	}
	w.choose(orderSheetAt, "sheet")
	w.choose(orderRulerAt, "ruler")
	for column, list := range map[string]string{"B": "kind", "F": "stock", "G": "fit"} {
		w.choose(fmt.Sprintf("%s%d:%s%d", column, firstItem, column, firstItem+mostItems-1), list)
	}
	w.bold("A1", "A1")
	w.bold(fmt.Sprintf("A%d", firstItem-1), fmt.Sprintf("H%d", firstItem-1))
	w.bold(fmt.Sprintf("A%d", firstStep-1), fmt.Sprintf("H%d", firstStep-1))
	w.wide("A", "B", 20)
	w.wide("C", "H", 12)
}

// fetchOrder is the formula that asks for the cut plan of all lines with a count.
func fetchOrder(query string) string {
	names := []string{"sheet", "ruler"}
	cells := []string{"$B$4", "$D$4"}
	formula := fetch(`"/v1/yield"`, query+"unit=mm&effort_ms=10000&", names, cells)
	formula = formula[:len(formula)-len(`")`)]
	for row := firstItem; row < firstItem+mostItems; row++ {
		object := fmt.Sprintf(`"{""kind"":"""&B%[1]d&""",""width"":"""&C%[1]d&""",""height"":"""&D%[1]d&""",""thickness"":"""&E%[1]d&""",""stock"":"""&F%[1]d&""",""fit"":"""&G%[1]d&""",""count"":"&H%[1]d&"}"`, row)
		formula += fmt.Sprintf(`"&IF(N(H%d)>0,"&items="&_xlfn.ENCODEURL(%s),"")&"`, row, object)
	}
	return formula + `")`
}
