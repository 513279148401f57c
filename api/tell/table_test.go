package tell

import (
	"encoding/csv"
	"encoding/xml"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/api/wire"
)

// TestCellsAreReadByTheStandardReader: any texts come back, with an apostrophe
// before those that a spreadsheet would compute and before no other.
func TestCellsAreReadByTheStandardReader(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune(" =+-@\t\n\",;.0aß")), 0, 6, -1)
		cells := rapid.SliceOfN(text, 2, 4).Draw(t, "cells")
		s := Style{Separator: rapid.SampledFrom([]rune{0, ';', '\t', '|'}).Draw(t, "separator"), Comma: rapid.Bool().Draw(t, "comma")}
		r := csv.NewReader(strings.NewReader(string(s.AppendRow(nil, cells...))))
		r.Comma = s.separator()
		read, err := r.ReadAll()
		require.NoError(t, err)
		require.Len(t, read, 1)
		for i, cell := range cells {
			want := cell
			if isFormula(cell) {
				want = "'" + cell
			}
			assert.Equal(t, want, read[0][i])
		}
	})
	for cell, is := range map[string]bool{"=1+1": true, " =A1": true, "\t=1": true, "\tx": true, "@SUM(A1)": true, "-x": true, "+49 30": true, "-1.5": false, "-1,5": false, "+2": false, "a=b": false, "": false, "1/4": false} {
		assert.Equal(t, is, isFormula(cell), "%q", cell)
	}
}

// solution is an answer with everything that rows are made of.
func solution() *wire.Solution {
	at := func(reading string, mm float64) wire.Length {
		return wire.Length{Reading: reading, In: mm / 25.4, MM: mm}
	}
	corner := func(x, y float64, ring int, bulge float64) wire.Corner {
		return wire.Corner{X: at("x", x), Y: at("y", y), Ring: ring, Bulge: bulge}
	}
	score := at("1/2 in", 12.7)
	score.Papers = -2
	return &wire.Solution{Pieces: []wire.Piece{{
		Name: "band", Blank: wire.Blank{Width: at("8 in", 203.2), Height: at("1 in", 25.4)},
		Scores:  []wire.Score{{Name: "score 1", At: score, From: "left"}},
		Panels:  []wire.Panel{{Name: `tab & "flap"`, Size: at("1/4 in", 6.35)}},
		Cuts:    []wire.Cut{{Name: "left slit", Kind: "slit", From: "top", Depth: at("1 in", 25.4)}, {Name: "slot", Kind: "slot", Depth: at("1 in", 25.4), Width: at("1/16 in", 1.5875)}},
		Outline: []wire.Corner{corner(0, 0, 0, 0), corner(100, 25.4, 1, 0.5)},
	}}}
}

// A slit inside a blank is told by its length and its place, and a layer by what shows
// beside it, in CSV and in text.
func TestInnerSlitsAndRevealsAreRows(t *testing.T) {
	at := func(reading string, mm float64) wire.Length {
		return wire.Length{Reading: reading, In: mm / 25.4, MM: mm}
	}
	a := solution()
	long, middle := at("12 mm", 12), at("94 mm", 94)
	a.Pieces[0].Cuts = []wire.Cut{{Name: "ribbon slit", Kind: "slit", From: "top", At: &middle, Depth: at("16 mm", 16), Long: &long}}
	a.Pieces[0].Reveal = &wire.Reveal{On: "layer 1", X: at("3 mm", 3), Y: at("4 mm", 4)}
	csv, text := string(Append(nil, CSV, a, Style{})), string(Append(nil, Text, a, Style{}))
	for _, want := range []string{"band,slit,ribbon slit length,,12 mm", "band,slit,ribbon slit middle,left,94 mm", "band,slit,ribbon slit lies,top,16 mm", "band,reveal,reveal on layer 1,left,3 mm"} {
		assert.Contains(t, csv, want)
	}
	for _, want := range []string{"ribbon slit length: 12 mm\n", "ribbon slit middle: 94 mm from the left", "ribbon slit lies: 16 mm from the top", "reveal on layer 1: 3 mm"} {
		assert.Contains(t, text, want)
	}
}

// TestMeasurementsAreToldAlike in each format, read back by other readers.
func TestMeasurementsAreToldAlike(t *testing.T) {
	a := solution()
	assert.Equal(t, `band, blank width: 8 in
band, blank height: 1 in
band, score 1: 1/2 in less 2 papers (0.5 in) from the left
band, tab & "flap": 1/4 in
band, left slit: 1 in from the top
band, slot: 1 in
band, slot width: 1/16 in
band, outline corner 1: x from the left, y from the bottom
band, outline corner 2 of ring 2, bulge 0.5: x from the left, y from the bottom
`, string(Append(nil, Text, a, Style{})))
	table, err := csv.NewReader(strings.NewReader(string(Append(nil, CSV, a, Style{})))).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, MeasurementColumns, table[0])
	assert.Equal(t, []string{"band", "score", "score 1", "left", "1/2 in less 2 papers", "0.5", "12.7"}, table[3])
	assert.Equal(t, []string{"band", "panel", `tab & "flap"`, "", "1/4 in", "0.25", "6.35"}, table[4])
	assert.Equal(t, []string{"band", "outline", "corner 2 of ring 2, bulge 0.5", "bottom", "y", "1", "25.4"}, table[11])
	var elements struct {
		Panels []struct {
			Name string  `xml:"name,attr"`
			In   float64 `xml:"in,attr"`
		} `xml:"panel"`
		Outline []struct {
			From string `xml:"from,attr"`
		} `xml:"outline"`
	}
	document := strings.Replace(string(Append(nil, XML, a, Style{})), `encoding="US-ASCII"`, "", 1) // which is UTF-8 as well
	require.NoError(t, xml.Unmarshal([]byte(document), &elements))
	assert.Equal(t, `tab & "flap"`, elements.Panels[0].Name)
	assert.Equal(t, 0.25, elements.Panels[0].In)
	assert.Len(t, elements.Outline, 4)
	comma := string(Append(nil, CSV, a, Style{Comma: true, Bare: true, Lead: "x;"}))
	assert.Contains(t, comma, "x;band;score;score 1;left;1/2 in less 2 papers;0,5;12,7\r\n")
	assert.NotContains(t, comma, "piece")
	a.Pieces[0].Outline = []wire.Corner{{}, {X: a.Pieces[0].Blank.Width}, {X: a.Pieces[0].Blank.Width, Y: a.Pieces[0].Blank.Height}}
	assert.NotContains(t, string(Append(nil, CSV, a, Style{})), "outline", "the blank is told already")
}

// TestPiecesOfLayersAreToldApart: by their layer, and by their name where the
// layer has several.
func TestPiecesOfLayersAreToldApart(t *testing.T) {
	pieces := []wire.Piece{{Name: "tray", Layer: "1 lidded-box"}, {Name: "lid", Layer: "1 lidded-box"}, {Name: "sleeve", Layer: "2 sleeve"}, {Name: "band"}}
	var names []string
	for i := range pieces {
		names = append(names, pieceName(&pieces[i], pieces))
	}
	assert.Equal(t, []string{"1 lidded-box tray", "1 lidded-box lid", "2 sleeve", "band"}, names)
}

// TestAnyDocumentIsATable: rows of what it lists, or of its members.
func TestAnyDocumentIsATable(t *testing.T) {
	for document, want := range map[string]string{
		`[{"a":1,"b":{"c":"x"}},{"b":{"d":true}},{"a":[1,"y"]}]`: "a,b_c,b_d\r\n1,x,\r\n,,true\r\n1; y,,\r\n",
		`{"kinds":[{"name":"band"},{"name":"tray"}],"more":3}`:   "name\r\nband\r\ntray\r\n",
		`{"a":1.50,"b":{"c":"x, y"},"d":[[1],[2]]}`:              "name,value\r\n/a,1.50\r\n/b/c,\"x, y\"\r\n/d/0,1\r\n/d/1,2\r\n",
		`[1,2]`: "value\r\n1\r\n2\r\n", `"text"`: "value\r\ntext\r\n", `[]`: "\r\n",
	} {
		assert.Equal(t, want, string(AppendPicked(nil, CSV, []byte(document), Style{})), document)
	}
	assert.Equal(t, "<?xml version=\"1.0\" encoding=\"US-ASCII\"?>\n<table>\n  <row value=\"1\"/>\n</table>\n", string(AppendPicked(nil, XML, []byte("[1]"), Style{})))
	for value, want := range map[string]string{`1.5`: "1,5", `"a;b"`: `"a;b"`, `[1,2]`: `"1; 2"`, `[{"a":1}]`: `"[{""a"":1}]"`, `true`: "true", `"=1"`: "'=1"} {
		assert.Equal(t, want, string(AppendCell(nil, []byte(value), Style{Comma: true})), value)
	}
}
