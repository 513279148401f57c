package main

import (
	"archive/zip"
	"encoding/json"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"creasefit/api"
	"creasefit/api/wire"
)

// service runs the API and returns its address.
func service(t *testing.T) string {
	s := httptest.NewServer(api.New(api.DefaultConfig(), slog.New(slog.DiscardHandler)).Handler())
	t.Cleanup(s.Close)
	return s.URL
}

// The first product is in firstRow.
const firstRow = 6

// product is a line of the stall's list.
type product struct {
	name, kind, width, height, thickness, caliper, fit, ruler string
}

// stall reads the products of the workbook.
func stall(t *testing.T) (all []product) {
	for row := firstRow; ; row++ {
		c := filled(t, "tidewater-tea", row, 8)
		if c == nil {
			require.Len(t, all, 5)
			return all
		}
		all = append(all, product{c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7]})
	}
}

// filled returns the first cells of a row of a workbook beside this file, nil if one is
// empty.
func filled(t *testing.T, name string, row, columns int) (cells []string) {
	f, err := excelize.OpenFile(name + ".xlsx")
	require.NoError(t, err)
	for column := range columns {
		cell, err := excelize.CoordinatesToCellName(1+column, row)
		require.NoError(t, err)
		text, err := f.GetCellValue(sheet, cell)
		require.NoError(t, err)
		if text == "" {
			return nil
		}
		cells = append(cells, text)
	}
	return cells
}

// solved asks the service for a product.
func solved(t *testing.T, service string, p product) wire.Solution {
	query := url.Values{"width": {p.width}, "height": {p.height}, "thickness": {p.thickness}, "caliper": {p.caliper}, "fit": {p.fit}, "ruler": {p.ruler}}
	response, err := http.Get(service + "/v1/solve/" + p.kind + "?" + query.Encode())
	require.NoError(t, err)
	defer response.Body.Close()
	var s wire.Solution
	require.NoError(t, json.NewDecoder(response.Body).Decode(&s))
	require.NotEmpty(t, s.Pieces, p.name)
	return s
}

// TestWorkbookRecalculates opens the workbook in LibreOffice, as .xlsx and as
// .ods, and compares every cell with the API.
func TestWorkbookRecalculates(t *testing.T) {
	folder := t.TempDir()
	o := newOffice(t, folder, "en-US")
	address := service(t)
	path := filepath.Join(folder, "products.xlsx")
	require.NoError(t, write(path, address, "tidewater-tea"))
	for _, document := range []string{path, o.convert(path, "ods")} {
		rows := o.recalculate(document)
		for i, p := range stall(t) {
			row, s := rows[firstRow-1+i], solved(t, address, p)
			piece := s.Pieces[0]
			assert.Equal(t, p.name, row[0])
			assert.Equal(t, decimal(piece.Blank.Width.MM), row[9], "%s in %s", p.name, document)
			assert.Equal(t, decimal(piece.Blank.Height.MM), row[10])
			assert.Equal(t, piece.Blank.Width.Reading, row[11])
			assert.Equal(t, piece.Scores[0].At.Reading, row[12])
			assert.Equal(t, strconv.Itoa(len(piece.Scores)), row[13])
		}
	}
}

// TestWorkbookShowsWhatIsWrong puts a mistake into a cell.
func TestWorkbookShowsWhatIsWrong(t *testing.T) {
	folder := t.TempDir()
	o := newOffice(t, folder, "en-US")
	path := filepath.Join(folder, "products.xlsx")
	require.NoError(t, write(path, service(t), "tidewater-tea"))
	f, err := excelize.OpenFile(path)
	require.NoError(t, err)
	require.NoError(t, f.SetCellValue(sheet, "C6", "3 5/7 in"))
	require.NoError(t, f.Save())
	row := o.recalculate(path)[firstRow-1]
	for _, cell := range row[8:] {
		assert.True(t, strings.HasPrefix(cell, "! width"), cell)
	}
}

// comma writes a number the way that German readers do.
func comma(x float64) string { return strings.Replace(decimal(x), ".", ",", 1) }

// TestWorkbookRecalculatesWithDecimalCommas opens the workbook where numbers
// are written with a comma, with sizes typed so: as texts with a unit, and as
// numbers for the README's formula.
func TestWorkbookRecalculatesWithDecimalCommas(t *testing.T) {
	folder := t.TempDir()
	o := newOffice(t, folder, "de-DE")
	address := service(t)
	path := filepath.Join(folder, "products.xlsx")
	require.NoError(t, write(path, address, "tidewater-tea"))
	f, err := excelize.OpenFile(path)
	require.NoError(t, err)
	postcards, row := stall(t)[2], firstRow+2
	for column, text := range map[string]string{"C": "105,5 mm", "E": "2,75 mm", "F": "0,35 mm"} {
		require.NoError(t, f.SetCellValue(sheet, column+strconv.Itoa(row), text))
	}
	for cell, number := range map[string]float64{"P6": 105.5, "Q6": 2.75, "R6": 0.35} {
		require.NoError(t, f.SetCellValue(sheet, cell, number))
	}
	require.NoError(t, f.SetCellFormula(sheet, "S6", commaFormula(t)))
	require.NoError(t, f.Save())
	postcards.width, postcards.thickness, postcards.caliper = "105.5 mm", "2.75 mm", "0.35 mm"
	for _, document := range []string{path, o.convert(path, "ods")} {
		rows := o.recalculate(document)
		blank := solved(t, address, postcards).Pieces[0].Blank
		assert.Equal(t, []string{comma(blank.Width.MM), comma(blank.Height.MM), blank.Width.Reading}, rows[row-1][9:12], document)
		assert.Equal(t, "105,5", rows[firstRow-1][15], "numbers are shown with a comma here")
		assert.Equal(t, comma(blank.Width.MM), rows[firstRow-1][18], document)
		first := solved(t, address, stall(t)[0]).Pieces[0].Blank
		assert.Equal(t, comma(first.Width.MM), rows[firstRow-1][9], "sizes in inches go on as they are")
	}
}

// commaFormula is the README's formula for decimal commas, as it is stored.
func commaFormula(t *testing.T) string {
	text, err := os.ReadFile("README.md")
	require.NoError(t, err)
	formula := regexp.MustCompile(`(?m)^ *=(VALUE\(.*)$`).FindStringSubmatch(string(text))
	require.NotNil(t, formula)
	return regexp.MustCompile(`(WEBSERVICE|ENCODEURL)\(`).ReplaceAllString(formula[1], "_xlfn.$0")
}

// TestTableWithDecimalCommasIsImported lets LibreOffice read the service's CSV
// where numbers are written with a comma: they come out as the numbers of the
// answer.
func TestTableWithDecimalCommasIsImported(t *testing.T) {
	folder := t.TempDir()
	o := newOffice(t, folder, "de-DE")
	address := service(t)
	response, err := http.Get(address + "/v1/solve/band.csv?decimal=comma&unit=mm&width=105,5&thickness=2,75&caliper=0,35")
	require.NoError(t, err)
	defer response.Body.Close()
	table, err := io.ReadAll(response.Body)
	require.NoError(t, err)
	require.Equal(t, http.StatusOK, response.StatusCode, string(table))
	path := filepath.Join(folder, "band.csv")
	require.NoError(t, os.WriteFile(path, table, 0o644))
	f, err := excelize.OpenFile(o.convert(path, "xlsx", "--infilter=Text - txt - csv (StarCalc):59,34,76,1"))
	require.NoError(t, err)
	rows, err := f.GetRows(f.GetSheetName(0), excelize.Options{RawCellValue: true})
	require.NoError(t, err)
	piece := solved(t, address, product{kind: "band", width: "105.5 mm", height: "50 mm", thickness: "2.75 mm", caliper: "0.35 mm", fit: "easy", ruler: "0.5 mm"}).Pieces[0]
	require.Greater(t, len(rows), 2+len(piece.Scores))
	assert.Equal(t, "mm", rows[0][6])
	kind, err := f.GetCellType(f.GetSheetName(0), "G2")
	require.NoError(t, err)
	assert.Contains(t, []excelize.CellType{excelize.CellTypeNumber, excelize.CellTypeUnset}, kind, "a number, not a text")
	assert.Equal(t, decimal(piece.Blank.Width.MM), rows[1][6])
	for i, score := range piece.Scores {
		assert.Equal(t, decimal(score.At.MM), rows[3+i][6], "%v", rows[3+i])
		assert.Equal(t, score.At.Reading, rows[3+i][4])
	}
}

// TestAddressesAreShort keeps the addresses within what cell functions take.
func TestAddressesAreShort(t *testing.T) {
	for _, p := range stall(t) {
		query := url.Values{"width": {p.width}, "height": {p.height}, "thickness": {p.thickness}, "caliper": {p.caliper}, "fit": {p.fit}, "ruler": {p.ruler}, "errors": {"cell"}, "format": {"xml"}}
		assert.Less(t, len("http://127.0.0.1:8080/v1/solve/"+p.kind+"?"+query.Encode()), 2000)
	}
}

var names = []string{"tidewater-tea", "tidewater-order", "tidewater-kit"}

// TestCommittedWorkbooksAreFresh compares the workbooks beside this file with
// what the program writes.
func TestCommittedWorkbooksAreFresh(t *testing.T) {
	for _, name := range names {
		path := filepath.Join(t.TempDir(), "fresh.xlsx")
		require.NoError(t, write(path, "http://127.0.0.1:8080", name))
		assert.Equal(t, cellsOf(t, path), cellsOf(t, name+".xlsx"), "go run ./deploy/spreadsheet")
		content := odsContent(t, name+".ods")
		assert.Contains(t, content, "COM.MICROSOFT.WEBSERVICE(")
		assert.Contains(t, content, "table:content-validation ", "the drop-downs are there")
	}
	assert.Equal(t, len(stall(t)), strings.Count(odsContent(t, "tidewater-tea.ods"), "COM.MICROSOFT.WEBSERVICE("))
}

// cellsOf lists the cells of a workbook, each as its formula or its value, and what
// its drop-downs offer.
func cellsOf(t *testing.T, path string) map[string]string {
	f, err := excelize.OpenFile(path)
	require.NoError(t, err)
	cells := map[string]string{}
	for _, sheet := range f.GetSheetList() {
		for row := 1; row < 60; row++ {
			for column := 1; column < 16; column++ {
				cell, err := excelize.CoordinatesToCellName(column, row)
				require.NoError(t, err)
				text, err := f.GetCellFormula(sheet, cell)
				require.NoError(t, err)
				if text == "" {
					text, err = f.GetCellValue(sheet, cell)
					require.NoError(t, err)
				}
				if text != "" {
					cells[sheet+"!"+cell] = text
				}
			}
		}
		lists, err := f.GetDataValidations(sheet)
		require.NoError(t, err)
		for _, v := range lists {
			cells[sheet+"!"+v.Sqref+" offers"] = v.Formula1
		}
	}
	return cells
}

// TestReadmeShowsTheFormulas keeps what README.md shows what the workbook has.
func TestReadmeShowsTheFormulas(t *testing.T) {
	text, err := os.ReadFile("README.md")
	require.NoError(t, err)
	cells := cellsOf(t, "tidewater-tea.xlsx")
	fetched := cells[sheet+"!I6"]
	taken, _, _ := strings.Cut(strings.TrimPrefix(cells[sheet+"!J6"], "IFERROR("), ",IF(")
	for _, formula := range []string{fetched, taken} {
		assert.Contains(t, string(text), "="+strings.ReplaceAll(formula, "_xlfn.", ""))
	}
}

// odsContent returns the tables of a committed .ods.
func odsContent(t *testing.T, name string) string {
	z, err := zip.OpenReader(name)
	require.NoError(t, err)
	defer z.Close()
	file, err := z.Open("content.xml")
	require.NoError(t, err)
	text, err := io.ReadAll(file)
	require.NoError(t, err)
	return string(text)
}

func decimal(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
