package stock

import (
	"slices"
	"strings"

	"creasefit/internal/measure"
)

// Sheet is a size that paper is sold in.
type Sheet struct {
	Name          string // on the wire
	Title         string
	Width, Height measure.Length
	Unit          measure.Unit // that the source states it in
	Source        string
}

// sheetRow is a sheet as its source writes it.
type sheetRow struct{ name, title, size, source string }

const (
	iso216   = "ISO 216:2007"
	usTrade  = "American trade size, GNU units 2.22"
	asmeY141 = "ANSI/ASME Y14.1"
	craft    = "common practice"
)

var sheets = readSheets([]sheetRow{
	{"letter", "letter", "8 1/2 x 11 in", usTrade},
	{"legal", "legal", "8 1/2 x 14 in", usTrade},
	{"ledger", "ledger, tabloid", "11 x 17 in", usTrade},
	{"craft-12", "craft sheet, 12 x 12 in", "12 x 12 in", craft},
	{"cover-basis", "cover stock, full sheet", "20 x 26 in", "JCP Paper Specification Standards"},
	{"index-basis", "index stock, full sheet", "25 1/2 x 30 1/2 in", "JCP Paper Specification Standards"},
	{"text-basis", "book and text stock, full sheet", "25 x 38 in", "JCP Paper Specification Standards"},
	{"ansi-c", "ANSI C", "17 x 22 in", asmeY141},
	{"ansi-d", "ANSI D", "22 x 34 in", asmeY141},
	{"ansi-e", "ANSI E", "34 x 44 in", asmeY141},
	{"a0", "A0", "841 x 1189 mm", iso216},
	{"a1", "A1", "594 x 841 mm", iso216},
	{"a2", "A2", "420 x 594 mm", iso216},
	{"a3", "A3", "297 x 420 mm", iso216},
	{"a4", "A4", "210 x 297 mm", iso216},
	{"a5", "A5", "148 x 210 mm", iso216},
	{"a6", "A6", "105 x 148 mm", iso216},
	{"b0", "B0", "1000 x 1414 mm", iso216},
	{"b1", "B1", "707 x 1000 mm", iso216},
	{"b2", "B2", "500 x 707 mm", iso216},
	{"b3", "B3", "353 x 500 mm", iso216},
	{"b4", "B4", "250 x 353 mm", iso216},
	{"b5", "B5", "176 x 250 mm", iso216},
})

// readSheets turns the rows into sheets.
func readSheets(rows []sheetRow) []Sheet {
	list := make([]Sheet, len(rows))
	for i, r := range rows {
		size := measure.MustParseSize(r.size)
		list[i] = Sheet{r.name, r.title, size[0], size[1], measure.Millimetre, r.source}
		if strings.HasSuffix(r.size, " in") {
			list[i].Unit = measure.Inch
		}
	}
	return list
}

// Sheets returns the sheet sizes.
func Sheets() []Sheet { return slices.Clone(sheets) }

// LookupSheet returns the sheet of that name, or false if there is none.
func LookupSheet(name string) (Sheet, bool) {
	i := slices.IndexFunc(sheets, func(s Sheet) bool { return s.Name == name })
	if i < 0 {
		return Sheet{}, false
	}
	return sheets[i], true
}
