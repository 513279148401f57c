package fold

import (
	"cmp"

	"creasefit/internal/pattern"
)

// Model is a pattern folded up in space.
type Model struct {
	Caliper float64 // mm; half of it lies on each side of every plate
	Plates  []Plate
}

// Plate is one flat plate of the stock: a panel, or the spine of a crease of
// 180 degrees.
type Plate struct {
	Name    string
	Piece   int
	Copy    int   // of the piece, from 0
	Panel   int   // of the piece; -1 for the spine of a crease. A bent panel has many plates
	Crease  int   // of the piece, by which the plate hangs; -1 for a root and for what bends
	Outline []Vec // at mid-caliper; counterclockwise seen from the inside
	Hole    []Vec // the window in it; usually none
	Inside  Vec   // the unit direction in which its inside faces
	Frame   Frame
	Caliper float64 // mm, of a stock of its own; 0 for that of the model
	Parent  int     // the plate that it hangs on; -1 for a root
	Hung    Vec     // a place of the blank, flat, on the line that it turns about; the blank's corner for a root
}

// CaliperOf is how thick a plate is, in mm.
func (m *Model) CaliperOf(plate int) float64 { return cmp.Or(m.Plates[plate].Caliper, m.Caliper) }

// Fold turns every crease by a part of its final angle: closed is 0 for the
// flat blank and 1 for the finished enclosure. The root of the first piece
// stays where it lies on the blank. A pattern whose indices point nowhere
// gives a model without plates.
func Fold(p *pattern.Pattern, closed float64) Model {
	model := Model{Caliper: p.Caliper.Millimetres()}
	if len(unsound(p)) > 0 {
		return model
	}
	m := build(p, closed)
	defer m.done()
	model.Plates = make([]Plate, len(m.plates))
	for i := range m.plates {
		model.Plates[i] = m.plate(&m.plates[i])
	}
	return model
}

// plate is a plate as others see it.
func (m *model) plate(pl *plate) Plate {
	var hung Vec
	if pl.parent >= 0 {
		t := m.turningOf(pl)
		hung = Vec{t.a.x, t.a.y, 0}
	}
	return Plate{
		Parent: pl.parent, Hung: hung,
		Name: m.name(pl), Piece: pl.piece, Copy: pl.copy, Panel: m.whole(pl), Crease: m.hinge(pl),
		Outline: pl.lift(nil, pl.flat), Hole: pl.lift(nil, pl.hole), Inside: pl.move.Z, Frame: pl.move,
	}
}

// hinge returns the crease that a plate hangs by.
func (m *model) hinge(pl *plate) int {
	if m.facets[pl.piece] != nil {
		return -1
	}
	return pl.crease
}

// whole returns the panel that a plate is, or is a facet of.
func (m *model) whole(pl *plate) int {
	if facets := m.facets[pl.piece]; facets != nil && pl.panel >= 0 {
		return facets[pl.panel]
	}
	return pl.panel
}
