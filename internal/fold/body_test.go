package fold

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// twoStrips are two strips of 40 x 10 mm in stock of 1 mm, one of them a caliper
// above the other and 30 mm to its right, glued where they lap.
func twoStrips() *pattern.Pattern {
	mm := measure.Millimetres
	strip := pattern.Piece{Name: "strip", Quantity: 1, Width: mm(40), Height: mm(10),
		Panels: []pattern.Panel{{Name: "strip", Outline: pattern.Rectangle(mm(0), mm(0), mm(40), mm(10))}}}
	return &pattern.Pattern{
		Caliper: mm(1), Pieces: []pattern.Piece{strip, strip}, Cavity: pattern.Cavity{Width: mm(5), Height: mm(5), Thickness: mm(1)},
		Places: []pattern.Place{{Piece: 1, X: mm(30), Above: mm(1)}},
		Bonds: []pattern.Bond{{Name: "long strip", A: 0, B: 1,
			Glues: []pattern.Glue{{Name: "lap", Face: pattern.Inside, ToFace: pattern.Outside, Area: pattern.Rectangle(mm(30), mm(0), mm(40), mm(10))}},
			Seams: []pattern.Seam{{Name: "end", A1: pattern.At(mm(40), mm(0)), A2: pattern.At(mm(40), mm(10)),
				B1: pattern.At(mm(10), mm(0)), B2: pattern.At(mm(10), mm(10)), Apart: mm(1)}}}},
	}
}

// Pieces that are glued to one another are measured as one piece is: the glued
// area must lie flat on the other piece and within it, the seam must meet.
func TestBondsAreClosures(t *testing.T) {
	assert.True(t, Prove(twoStrips(), measure.Length{}).Closes)
	for name, c := range map[string]struct {
		by     pattern.Place
		gap    measure.Length
		faults int
	}{
		"lifted by 1/4 mm":            {pattern.Place{Above: measure.Micrometres(250)}, measure.Micrometres(250), 2},
		"2 mm to the right":           {pattern.Place{X: measure.Millimetres(2)}, measure.Millimetres(2), 2},
		"3 mm up, past the free edge": {pattern.Place{Y: measure.Millimetres(3)}, measure.Millimetres(3), 2},
	} {
		p := twoStrips()
		place := &p.Places[0]
		place.X, place.Y, place.Above = place.X.Add(c.by.X), place.Y.Add(c.by.Y), place.Above.Add(c.by.Above)
		proof := Prove(p, measure.Length{})
		assert.False(t, proof.Closes, name)
		assert.Equal(t, c.gap, proof.Gap, name)
		assert.Len(t, proof.Faults, c.faults, name)
	}
	p := twoStrips()
	p.Places[0].Above = measure.Length{}
	p.Bonds = nil
	assert.False(t, Prove(p, measure.Length{}).Closes, "pieces that are not glued pass through one another")
}

// What nests a piece nests all that is glued to it.
func TestBondsMakeOneBody(t *testing.T) {
	p := twoStrips()
	m := build(p, 1)
	m.standOn()
	assert.Equal(t, span{0, 70}, m.extent(pattern.Width, 1))
	p.Bonds = nil
	m = build(p, 1)
	m.standOn()
	assert.Equal(t, span{30, 70}, m.extent(pattern.Width, 1))
}

func TestUnsoundBonds(t *testing.T) {
	for name, spoil := range map[string]func(*pattern.Pattern){
		"no such piece": func(p *pattern.Pattern) { p.Bonds[0].B = 2 },
		"no such panel": func(p *pattern.Pattern) { p.Bonds[0].Glues[0].To = 1 },
		"no such seam":  func(p *pattern.Pattern) { p.Bonds[0].Seams[0].PanelA = -1 },
		"a bent piece": func(p *pattern.Pattern) {
			p.Pieces[1].Panels = append(p.Pieces[1].Panels, p.Pieces[1].Panels[0])
			p.Pieces[1].Creases = []pattern.Crease{{Name: "arc", B: pattern.At(measure.Millimetres(40), measure.Length{}), To: 1, Bulge: 0.2}}
		},
	} {
		p := twoStrips()
		spoil(p)
		proof := Prove(p, measure.Length{})
		assert.False(t, proof.Closes, name)
		assert.NotEmpty(t, proof.Faults, name)
		assert.Empty(t, Fold(p, 1).Plates, name)
	}
}

// A bond says of two panels, one of each piece, that they meet or are glued: in whichever order they are
// asked for, and of no two others.
func TestBondsNameTwoPanels(t *testing.T) {
	b := &pattern.Bond{A: 0, B: 1}
	plates := []plate{{piece: 0, panel: 2}, {piece: 0, panel: 3}, {piece: 1, panel: 2}, {piece: 1, panel: 3}, {piece: 2, panel: 2}, {piece: 2, panel: 3}}
	for i := range plates {
		for k := range plates {
			want := i == 0 && k == 3 || i == 3 && k == 0
			assert.Equal(t, want, names(b, 2, 3, &plates[i], &plates[k]), "%d and %d", i, k)
		}
	}
}
