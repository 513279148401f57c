package pattern_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// A mark of the step with the fewest papers, else a mark of the finer ruler, else the
// nearest one, which is no way to set it.
func TestSetOf(t *testing.T) {
	step, ruler := measure.MustParseStep("1 mm"), measure.MustParseStep("0.5 mm")
	um := func(n int64) measure.Length { return measure.Nanometres(1000 * n) }
	for _, c := range []struct {
		length, mark int64
		papers       int
		ok           bool
	}{
		{90_000, 90_000, 0, true},
		{90_300, 90_000, 1, true},
		{89_700, 90_000, -1, true},
		{90_900, 90_000, 3, true},
		{90_100, 91_000, -3, true},
		{90_500, 90_500, 0, true},
		{91_200, 91_000, 0, false},
		{90_550, 91_000, 0, false},
		{-300, 0, -1, true},
		{-1000, -1000, 0, false},
	} {
		set, ok := pattern.SetOf(um(c.length), um(300), step, ruler)
		assert.Equal(t, c.ok, ok, c.length)
		assert.Equal(t, pattern.Set{Mark: um(c.mark), Papers: c.papers}, set, c.length)
	}
	both, _ := pattern.SetOf(um(90_500), um(500), step, ruler)
	assert.Equal(t, pattern.Set{Mark: um(90_000), Papers: 1}, both, "a paper more goes before a paper less, and both before a finer mark")
}

// Two scores cross, or a cut meets one, where a slanted one is among them.
func TestCrossing(t *testing.T) {
	p := pattern.Piece{
		Creases: []pattern.Crease{{Name: "back", A: at(10, 0), B: at(10, 20)}, {Name: "base", A: at(0, 10), B: at(20, 10)},
			{Name: "corner", A: at(0, 0), B: at(5, 5)}, {Name: "curve", A: at(0, 20), B: at(20, 0), Bulge: 0.1}},
		Cuts: []pattern.Cut{{Name: "relief", Path: []pattern.Vertex{{Point: at(0, 4)}, {Point: at(4, 4)}}}, {Name: "slit", Path: []pattern.Vertex{{Point: at(10, 4)}}}},
	}
	for _, c := range []struct {
		at   pattern.Point
		want [2]string
		ok   bool
	}{
		{at(10, 10), [2]string{"back", "corner"}, true}, // on its line, beyond its end
		{at(4, 4), [2]string{"corner", "relief"}, true},
		{at(10, 4), [2]string{}, false},
		{at(3, 3), [2]string{}, false},
		{at(15, 5), [2]string{}, false},
	} {
		names, ok := p.Crossing(c.at)
		assert.Equal(t, c.ok, ok, "%v", c.at)
		assert.Equal(t, c.want, names, "%v", c.at)
	}
	assert.True(t, p.OnEdge(at(0, 5)))
	p.Width, p.Height = measure.Millimetres(20), measure.Millimetres(30)
	for _, on := range []pattern.Point{at(0, 5), at(20, 5), at(5, 0), at(5, 30)} {
		assert.True(t, p.OnEdge(on), "%v", on)
	}
	assert.False(t, p.OnEdge(at(5, 5)))
}

// A polygon with sides of one length, to a few nanometres: an equilateral triangle of
// 10 mm is 8.660 254 mm high.
func TestRegular(t *testing.T) {
	high := pattern.At(measure.Millimetres(5), measure.Nanometres(8_660_254))
	round := pattern.Polygon(at(0, 0), at(10, 0), at(10, 10), at(0, 10))
	round[3].Bulge = 0.1
	for name, c := range map[string]struct {
		panels []pattern.Panel
		ok     bool
	}{
		"a square":    {[]pattern.Panel{panel(0, 0, 10, 10)}, true},
		"a triangle":  {[]pattern.Panel{{Outline: pattern.Polygon(at(0, 0), at(10, 0), high)}}, true},
		"a rectangle": {[]pattern.Panel{panel(0, 0, 10, 11)}, false},
		"a round one": {[]pattern.Panel{{Outline: round}}, false},
		"a line":      {[]pattern.Panel{{Outline: pattern.Polygon(at(0, 0), at(10, 0))}}, false},
		"folded":      {[]pattern.Panel{panel(0, 0, 10, 10), panel(10, 0, 20, 10)}, false},
	} {
		p := pattern.Piece{Panels: c.panels}
		side, ok := p.Regular()
		assert.Equal(t, c.ok, ok, name)
		assert.Equal(t, map[bool]measure.Length{true: measure.Millimetres(10)}[c.ok], side, name)
	}
}

// A score turns its panels; an arc bends them, and so does the flat line where a roll comes round.
func TestWhatBends(t *testing.T) {
	for _, row := range []struct {
		crease       pattern.Crease
		rolls, bends bool
	}{
		{pattern.Crease{Fold: pattern.Valley, Angle: 90}, false, false},
		{pattern.Crease{Fold: pattern.Mountain, Angle: 90, Bulge: -0.2}, false, true},
		{pattern.Crease{Fold: pattern.Valley, Angle: 90, Bulge: 0.2}, false, true},
		{pattern.Crease{Fold: pattern.Flat}, false, false},
		{pattern.Crease{Fold: pattern.Flat, Angle: 90}, true, true},
	} {
		assert.Equal(t, row.rolls, row.crease.Rolls(), "%+v", row.crease)
		assert.Equal(t, row.bends, row.crease.Bends(), "%+v", row.crease)
	}
}

// What is glued to a piece lies on it or comes with a bond; stock gives way below 0.8 mm,
// unless it is known better.
func TestWhatPiecesHaveInCommon(t *testing.T) {
	own, bonded := pattern.Glue{Name: "lap"}, pattern.Glue{Name: "half lap"}
	p := pattern.Pattern{Pieces: []pattern.Piece{{Glues: []pattern.Glue{own}}, {}}, Bonds: []pattern.Bond{{A: 0, B: 1, Glues: []pattern.Glue{bonded}}}}
	assert.Equal(t, []pattern.Glue{own, bonded}, p.GluesOf(0))
	assert.Empty(t, p.GluesOf(1))
	assert.Len(t, p.Pieces[0].Glues, 1, "the piece is as it was")
	for caliper, stiff := range map[int64]bool{799: false, 800: true} {
		p.Caliper, p.BoardFrom = measure.Micrometres(caliper), measure.Length{}
		assert.Equal(t, stiff, p.Stiff(), caliper)
		p.BoardFrom = measure.Micrometres(caliper + 1)
		assert.False(t, p.Stiff(), caliper)
	}
	s := pattern.Strip{Cells: []pattern.Cell{{Size: measure.Millimetres(3)}, {Size: measure.Millimetres(4)}}}
	assert.Equal(t, []measure.Length{{}, measure.Millimetres(3), measure.Millimetres(7)}, s.Positions())
}
