package main

import (
	"encoding/json"
	"maps"
	"net/http"
	"net/url"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"creasefit/api/wire"
)

// Where an order stands: its items, what it comes to, and the steps of its cut plan.
const (
	firstItem   = 8
	orderTotals = 15
	firstStep   = 20
	mostSteps   = 30
)

// planned asks the service for the order of the workbook.
func planned(t *testing.T, service string) wire.Yield {
	query := url.Values{"unit": {"mm"}, "sheet": {"a3"}, "ruler": {"1 mm"}, "effort_ms": {"10000"}}
	for row := firstItem; row < firstItem+3; row++ {
		c := filled(t, "tidewater-order", row, 8)
		require.NotNil(t, c)
		object, err := json.Marshal(map[string]any{"kind": c[1], "width": c[2], "height": c[3], "thickness": c[4], "stock": c[5], "fit": c[6], "count": c[7]})
		require.NoError(t, err)
		query.Add("items", string(object))
	}
	response, err := http.Get(service + "/v1/yield?" + query.Encode())
	require.NoError(t, err)
	defer response.Body.Close()
	var y wire.Yield
	require.NoError(t, json.NewDecoder(response.Body).Decode(&y))
	require.Positive(t, y.Sheets)
	return y
}

// at is a cell of a recalculated sheet, row from 1 and column from A.
func at(rows [][]string, column byte, row int) string {
	if row > len(rows) || int(column-'A') >= len(rows[row-1]) {
		return ""
	}
	return rows[row-1][column-'A']
}

// TestOrderRecalculates opens the order in LibreOffice as .xlsx and as .ods, and
// compares its totals and the steps of its plan with the service.
func TestOrderRecalculates(t *testing.T) {
	folder := t.TempDir()
	o := newOffice(t, folder, "en-US")
	address := service(t)
	path := filepath.Join(folder, "order.xlsx")
	require.NoError(t, write(path, address, "tidewater-order"))
	want := planned(t, address)
	steps := want.Plans[0].Settings
	for _, document := range []string{path, o.convert(path, "ods")} {
		rows := o.recalculate(document)
		assert.Equal(t, strconv.Itoa(want.Sheets), at(rows, 'B', orderTotals), document)
		assert.Equal(t, decimal(want.UsedPercent), at(rows, 'B', orderTotals+1), document)
		for i := range min(len(steps), mostSteps) {
			assert.Equal(t, steps[i].At.Reading, at(rows, 'F', firstStep+i), "step %d in %s", i+1, document)
			assert.Equal(t, steps[i].Across, at(rows, 'D', firstStep+i))
		}
	}
}

// TestOrderShowsWhatIsWrong puts a mistake into an item.
func TestOrderShowsWhatIsWrong(t *testing.T) {
	folder := t.TempDir()
	o := newOffice(t, folder, "en-US")
	path := filepath.Join(folder, "order.xlsx")
	require.NoError(t, write(path, service(t), "tidewater-order"))
	f, err := excelize.OpenFile(path)
	require.NoError(t, err)
	require.NoError(t, f.SetCellValue(sheet, "C8", "3 5/7 in"))
	require.NoError(t, f.Save())
	rows := o.recalculate(path)
	assert.True(t, strings.HasPrefix(at(rows, 'B', orderTotals), "! items[0].width"), at(rows, 'B', orderTotals))
}

// TestKitRecalculates: what a kit costs is what its lines add up to.
func TestKitRecalculates(t *testing.T) {
	folder := t.TempDir()
	o := newOffice(t, folder, "en-US")
	path := filepath.Join(folder, "kit.xlsx")
	require.NoError(t, write(path, service(t), "tidewater-kit"))
	for _, document := range []string{path, o.convert(path, "ods")} {
		rows := o.recalculate(document)
		value := func(label string) float64 {
			for _, row := range rows {
				if row[0] == label {
					x, err := strconv.ParseFloat(row[1], 64)
					require.NoError(t, err, "%s: %s in %s", label, row[1], document)
					return x
				}
			}
			t.Fatalf("no line %s in %s", label, document)
			return 0
		}
		paper := value("Sheets") * 0.45 / 50
		minutes := (value("Positions of the trimmer")*40 + value("Cuts")*15) / 60 / 50
		assert.InDelta(t, paper, value("Paper of a kit"), 0.006)
		assert.InDelta(t, minutes, value("Minutes of a kit"), 0.006)
		assert.InDelta(t, paper+minutes/60*24+0.03, value("Cost of a kit"), 0.006)
		assert.Greater(t, value("Packed: width, mm"), 114.3)
	}
}

// TestDropDownsOfferThePresets reads them back.
func TestDropDownsOfferThePresets(t *testing.T) {
	for _, name := range names {
		path := filepath.Join(t.TempDir(), name+".xlsx")
		require.NoError(t, write(path, "http://127.0.0.1:8080", name))
		cells := cellsOf(t, path)
		offers := 0
		for cell, text := range cells {
			if strings.HasSuffix(cell, " offers") {
				offers++
				assert.Contains(t, text, listSheet+"!$")
			}
		}
		assert.GreaterOrEqual(t, offers, 3, name)
		assert.Equal(t, "slotted-band", cells[listSheet+"!A2"])
		assert.Equal(t, "stock", cells[listSheet+"!D1"])
		assert.Contains(t, slices.Collect(maps.Values(cells)), "index-110")
	}
}
