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
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"creasefit/api"
)

// service runs the API and returns its address.
func service(t *testing.T) string {
	s := httptest.NewServer(api.New(api.DefaultConfig(), slog.New(slog.DiscardHandler)).Handler())
	t.Cleanup(s.Close)
	return s.URL
}

// solved asks the service for a product.
func solved(t *testing.T, service string, p product) api.Solution {
	query := url.Values{"width": {p.width}, "height": {p.height}, "thickness": {p.thickness}, "caliper": {p.caliper}, "fit": {p.fit}, "ruler": {p.ruler}}
	response, err := http.Get(service + "/v1/solve/" + p.kind + "?" + query.Encode())
	require.NoError(t, err)
	defer response.Body.Close()
	var s api.Solution
	require.NoError(t, json.NewDecoder(response.Body).Decode(&s))
	require.NotEmpty(t, s.Pieces, p.name)
	return s
}

// TestWorkbookRecalculates opens the workbook in LibreOffice, as .xlsx and as
// .ods, and compares every cell with the API.
func TestWorkbookRecalculates(t *testing.T) {
	folder := t.TempDir()
	o := newOffice(t, folder)
	address := service(t)
	path := filepath.Join(folder, "products.xlsx")
	require.NoError(t, write(path, address))
	for _, document := range []string{path, o.convert(path, "ods")} {
		rows := o.recalculate(document)
		for i, p := range products {
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
	o := newOffice(t, folder)
	path := filepath.Join(folder, "products.xlsx")
	require.NoError(t, write(path, service(t)))
	f, err := excelize.OpenFile(path)
	require.NoError(t, err)
	require.NoError(t, f.SetCellValue(sheet, "C6", "3 5/7 in"))
	require.NoError(t, f.Save())
	row := o.recalculate(path)[firstRow-1]
	for _, cell := range row[8:] {
		assert.True(t, strings.HasPrefix(cell, "! width"), cell)
	}
}

// TestAddressesAreShort keeps the addresses within what cell functions take.
func TestAddressesAreShort(t *testing.T) {
	for _, p := range products {
		query := url.Values{"width": {p.width}, "height": {p.height}, "thickness": {p.thickness}, "caliper": {p.caliper}, "fit": {p.fit}, "ruler": {p.ruler}, "errors": {"cell"}, "format": {"xml"}}
		assert.Less(t, len("http://127.0.0.1:8080/v1/solve/"+p.kind+"?"+query.Encode()), 2000)
	}
}

// TestCommittedWorkbooksAreFresh compares the workbooks beside this file with
// what the program writes.
func TestCommittedWorkbooksAreFresh(t *testing.T) {
	path := filepath.Join(t.TempDir(), "fresh.xlsx")
	require.NoError(t, write(path, "http://127.0.0.1:8080"))
	fresh, err := excelize.OpenFile(path)
	require.NoError(t, err)
	kept, err := excelize.OpenFile("tidewater-tea.xlsx")
	require.NoError(t, err)
	for row := 1; row < firstRow+len(products); row++ {
		for column := 1; column < firstPlain+len(values); column++ {
			cell, err := excelize.CoordinatesToCellName(column, row)
			require.NoError(t, err)
			wantFormula, err := fresh.GetCellFormula(sheet, cell)
			require.NoError(t, err)
			gotFormula, err := kept.GetCellFormula(sheet, cell)
			require.NoError(t, err)
			assert.Equal(t, wantFormula, gotFormula, cell)
			want, err := fresh.GetCellValue(sheet, cell)
			require.NoError(t, err)
			got, err := kept.GetCellValue(sheet, cell)
			require.NoError(t, err)
			if wantFormula == "" {
				assert.Equal(t, want, got, cell)
			}
		}
	}
	assert.Equal(t, len(products), strings.Count(odsContent(t), "COM.MICROSOFT.WEBSERVICE("))
	for _, p := range products {
		assert.Contains(t, odsContent(t), p.name)
	}
}

// TestReadmeShowsTheFormulas keeps what README.md shows what the workbook has.
func TestReadmeShowsTheFormulas(t *testing.T) {
	text, err := os.ReadFile("README.md")
	require.NoError(t, err)
	for _, formula := range []string{fetch(firstRow), `_xlfn.FILTERXML(I6,"` + values[0].path + `")`} {
		assert.Contains(t, string(text), "="+strings.ReplaceAll(formula, "_xlfn.", ""))
	}
}

// odsContent returns the table of the committed .ods.
func odsContent(t *testing.T) string {
	z, err := zip.OpenReader("tidewater-tea.ods")
	require.NoError(t, err)
	defer z.Close()
	file, err := z.Open("content.xml")
	require.NoError(t, err)
	text, err := io.ReadAll(file)
	require.NoError(t, err)
	return string(text)
}

func decimal(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
