package guide_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

func mm(n int64) measure.Length { return measure.Millimetres(n) }

func at(x, y int64) pattern.Point { return pattern.At(mm(x), mm(y)) }

// stand is a made-up pattern with what the catalogue's kinds seldom have: a
// score that ends inside the blank, a curved outline, slots, a notch, a window,
// a fold by an odd angle, edges that stay apart, and a second, flat piece.
func stand() *solve.Solution {
	card := pattern.Piece{
		Name: "panel 1", Quantity: 2, Width: mm(120), Height: mm(80),
		Panels: []pattern.Panel{
			{Name: "panel 1", Outline: pattern.Polygon(at(40, 0), at(120, 0), at(120, 80), at(0, 80), at(0, 50), at(40, 50))},
			{Name: "panel 2", Outline: []pattern.Vertex{{Point: at(0, 0)}, {Point: at(40, 0)}, {Point: at(40, 50)}, {Point: at(20, 50), Bulge: 0.4}, {Point: at(0, 30)}}},
		},
		Creases: []pattern.Crease{{Name: "score 1", A: at(40, 0), B: at(40, 50), To: 1, Fold: pattern.Mountain, Angle: 60}},
		Cuts: []pattern.Cut{
			{Name: "slot 1", Kind: pattern.Slot, From: "right", At: mm(25), Depth: mm(12), Width: mm(2), Path: pattern.Polygon(at(120, 24), at(108, 24), at(108, 26), at(120, 26))},
			{Name: "slit 1", Kind: pattern.Slit, From: "top", At: mm(70), Depth: mm(9), Path: pattern.Polygon(at(70, 80), at(70, 71))},
			{Name: "notch 1", Kind: pattern.Notch, On: "score 1", From: "bottom", At: mm(40), Depth: mm(5), Width: mm(10), Path: pattern.Polygon(at(35, 0), at(35, 5), at(45, 5), at(45, 0))},
			{Name: "window 1", Kind: pattern.Window, Path: pattern.Polygon(at(80, 10), at(80, 40), at(100, 40), at(100, 10))},
		},
		Seams: []pattern.Seam{{Name: "gap", PanelA: 0, A1: at(0, 80), A2: at(0, 50), PanelB: 1, B1: at(0, 30), B2: at(0, 0), Apart: mm(3)}},
	}
	mat := pattern.Piece{Name: "mat", Quantity: 1, Width: mm(60), Height: mm(40), Panels: []pattern.Panel{{Name: "mat", Outline: pattern.Rectangle(mm(0), mm(0), mm(60), mm(40))}}}
	kind := &enclosure.Kind{Name: "stand", Title: "Stand", Help: "A made-up stand."}
	s := &solve.Solution{
		Request: &solve.Request{Kind: kind, Unit: measure.Millimetre, Caliper: measure.Micrometres(300), Ruler: measure.Marks(measure.Millimetre)[2]},
		Step:    measure.Marks(measure.Millimetre)[2],
		Pattern: pattern.Pattern{
			Caliper: measure.Micrometres(300), Pieces: []pattern.Piece{card, mat}, Cavity: pattern.Cavity{Panel: 0},
			Places: []pattern.Place{{Piece: 1, On: 0, X: mm(50), Y: mm(20), Above: measure.Micrometres(300)}},
		},
		Warnings: []enclosure.Warning{{Code: "made-up", Detail: "A warning without words of its own."}},
	}
	s.Ideal = s.Pattern
	return s
}

func TestWhatKindsSeldomHave(t *testing.T) {
	s := stand()
	eachWay(t, s, func(g guide.Guide) { assertNumbersFound(t, s, g) })
	g, err := guide.Write(s, guide.Options{})
	require.NoError(t, err)
	text := flowed(g.Text())
	for _, want := range []string{
		"Cut 2 blanks, each 120 mm wide and 80 mm high.",
		"40 mm from the left edge, from 0 mm to 50 mm up: score 1.",
		"Slot 1: 2 mm wide and 12 mm deep from the right edge, its middle 25 mm from the bottom edge.",
		"Slit 1: 70 mm from the left edge, 9 mm deep from the top edge.",
		"Notch 1: 10 mm wide and 5 mm deep from the bottom edge, score 1 in its middle.",
		"Window 1: an opening 20 mm wide and 30 mm high, 80 mm from the left edge and 10 mm from the bottom edge.",
		"From the left edge, 50 mm up: across to 20 mm, in an even curve through 6 mm across and 44 mm up, to the left edge, 30 mm up.",
		"From 40 mm across and 50 mm up: across to 20 mm.",
		"Fold panel 2 back by 60°.",
		"Beside panel 2 a gap of 3 mm stays open, at panel 1.",
		"Glue the mat onto panel 1, the pencilled side down, 50 mm from its left edge and 20 mm up from its bottom edge.",
		"A warning without words of its own.",
	} {
		assert.Contains(t, text, want)
	}
	assert.Equal(t, 1, strings.Count(text, "Fold panel 1"))
	german, err := guide.Write(s, guide.Options{Language: "de"})
	require.NoError(t, err)
	assert.Contains(t, flowed(german.Text()), "„mat“ zuschneiden", "a name that the catalogue does not have stands in quotation marks")
}

// A panel may be called by a number alone.
func TestNumbersForNames(t *testing.T) {
	s := stand()
	s.Pattern.Pieces[0].Panels[1].Name = "2"
	for language, want := range map[string][]string{
		"en": {"Fold the 2 back by 60°.", "Paper or card, 0.012 in thick"}, "de": {"Falte „2“ um 60° nach hinten.", "Papier oder Karton, 0,012 Zoll dick"},
	} {
		g, err := guide.Write(s, guide.Options{Language: language, Units: guide.Inches})
		require.NoError(t, err)
		for _, text := range want {
			assert.Contains(t, strings.ReplaceAll(flowed(g.Text()), "\u00a0", " "), text)
		}
	}
}

// A slit that meets no edge is told along the edge beside it, or by its two ends.
func TestSlitsInsideTheBlank(t *testing.T) {
	for _, row := range []struct {
		from   string
		away   int64
		a, b   pattern.Point
		inside string
	}{
		{"right", 15, at(105, 30), at(105, 70), "a slit 40 mm long, 15 mm from the right edge and along it, from 30 mm to 70 mm from the bottom edge"},
		{"top", 10, at(50, 70), at(75, 70), "a slit 25 mm long, 10 mm from the top edge and along it, from 50 mm to 75 mm from the left edge"},
		{"top", 10, at(50, 60), at(75, 70), "a slit inside the blank, from 50 mm across and 60 mm up to 75 mm across and 70 mm up"},
	} {
		s := stand()
		s.Pattern.Pieces[0].Cuts[1] = pattern.Cut{Name: "slit 1", Kind: pattern.Slit, From: row.from, Depth: mm(row.away), Path: pattern.Polygon(row.a, row.b)}
		g, err := guide.Write(s, guide.Options{})
		require.NoError(t, err)
		assert.Contains(t, flowed(g.Text()), "Slit 1: "+row.inside+".")
	}
}

// hemmed is a mat with a flap that is folded over and glued to it, on an area that
// is said from the flap's lower left corner.
func hemmed(area []pattern.Vertex) *solve.Solution {
	s := stand()
	mat := pattern.Piece{Name: "mat", Quantity: 1, Width: mm(60), Height: mm(80), Panels: []pattern.Panel{
		{Name: "base", Outline: pattern.Rectangle(mm(0), mm(30), mm(60), mm(80))},
		{Name: "flap", Outline: pattern.Rectangle(mm(0), mm(0), mm(40), mm(30))},
	}}
	mat.Creases = []pattern.Crease{{Name: "score 1", A: at(0, 30), B: at(40, 30), To: 1, Fold: pattern.Valley, Angle: 180}}
	mat.Glues = []pattern.Glue{{Panel: 1, Face: pattern.Inside, Area: area, ToFace: pattern.Inside}}
	s.Pattern.Pieces, s.Pattern.Places = []pattern.Piece{mat}, nil
	s.Ideal = s.Pattern
	return s
}

// Glue is told by the edge of the panel that it lies along, else by how far in
// it lies.
func TestWhereGlueGoes(t *testing.T) {
	for _, row := range []struct {
		x0, y0, x1, y1 int64
		want           string
	}{
		{0, 0, 40, 30, "Put glue all over the inside of the flap"},
		{0, 0, 8, 30, "Put glue on the inside of the flap, 8 mm wide along the left edge"},
		{32, 0, 40, 30, "Put glue on the inside of the flap, 8 mm wide along the right edge"},
		{0, 22, 40, 30, "Put glue on the inside of the flap, 8 mm wide along the top edge"},
		{0, 0, 40, 8, "Put glue on the inside of the flap, 8 mm wide along the bottom edge"},
		{5, 6, 20, 20, "Put glue on the inside of the flap, 15 mm wide and 14 mm high, 5 mm from its left side and 6 mm up from its lower side"},
		{20, 12, 37, 28, "Put glue on the inside of the flap, 17 mm wide and 16 mm high, 3 mm from its right side and 2 mm down from its upper side"},
		{0, 16, 9, 30, "Put glue on the inside of the flap, 9 mm wide and 14 mm high, right at its left side and up to its upper side"},
	} {
		s := hemmed(pattern.Rectangle(mm(row.x0), mm(row.y0), mm(row.x1), mm(row.y1)))
		g, err := guide.Write(s, guide.Options{})
		require.NoError(t, err)
		assert.Contains(t, flowed(g.Text()), row.want+".")
		assert.Contains(t, flowed(g.Text()), "Fold the flap up and right over and press it down.")
		assertNumbersFound(t, s, g)
	}
}

// What cannot be put together by hand has no guide.
func TestNoGuideWithoutAnOrder(t *testing.T) {
	s := hemmed(pattern.Rectangle(mm(0), mm(0), mm(40), mm(30)))
	s.Pattern.Pieces[0].Glues[0].Panel, s.Pattern.Pieces[0].Glues[0].To = 0, 0 // glued to itself
	s.Ideal = s.Pattern
	for _, language := range guide.Languages() {
		_, err := guide.Write(s, guide.Options{Language: language})
		var f fault.Fault
		require.ErrorAs(t, err, &f)
		assert.Equal(t, fault.NoProof, f.Code)
	}
}

// A lid is turned over, all else slides; what crosses in slots is stood up and
// pushed together, and never glued.
func TestPiecesThatGoIntoOneAnother(t *testing.T) {
	for kind, want := range map[string][]string{
		"lidded-box": {"Turn the lid over and put it over the tray, open side to open side."},
		"drawer-box": {"Slide the tray into the sleeve."},
		"dividers": {"Stand the width strip on edge, its cuts facing up.", "Push the 2 copies of the height strip down across the width strip, one at each of its cuts, until all edges are level",
			"ease each open"},
	} {
		g, err := guide.Write(solved(t, kind, measure.Inch), guide.Options{})
		require.NoError(t, err)
		for _, text := range want {
			assert.Contains(t, flowed(g.Text()), text)
		}
	}
}

// What is between two pieces is named in the words of the language.
func TestFitsBetweenPieces(t *testing.T) {
	for language, want := range map[string][]string{
		"en": {"Lid over tray, along the width, the fit is"},
		"de": {"Bei „Deckel über Kasten“ der Breite nach sitzt es"},
	} {
		g, err := guide.Write(solved(t, "lidded-box", 1), guide.Options{Language: language})
		require.NoError(t, err)
		for _, text := range want {
			assert.Contains(t, flowed(g.Text()), text)
		}
	}
}
