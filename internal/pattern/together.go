package pattern

import "creasefit/internal/measure"

// Place lays a further piece on an earlier one: the lower left corner of its
// blank at X, Y of the other's blank, the mid-caliper plane of a blank that lies
// flat Above that of the other; of one that stands, its lower edge. A piece of
// which there are several copies has a place for each. A piece that is placed
// on itself stands on the floor under all, where the first blank would lie.
type Place struct {
	Piece, On int
	X, Y      measure.Length
	Above     measure.Length
	Lie       Lie
}

// Lie is how a placed piece lies, seen with the inside of the other up.
type Lie uint8

// The ways to lie.
const (
	FaceUp      Lie = iota // inside up, its width along the other's width
	FaceDown               // turned over about its left edge: its width runs to the left
	AlongWidth             // on its lower edge, its width along the other's width
	AlongHeight            // on its lower edge, its width along the other's height
)

// Nesting says that one piece goes into another, whose plates hold it on both
// sides along the axes, which are those of the contents.
type Nesting struct {
	Name         string // such as "lid over tray"
	Inner, Outer int    // pieces
	Axes         []Axis
}

// Bond says that two pieces are glued to one another and folded up as one body.
// The panel that a glue area or a seam names first belongs to A, the other to B.
type Bond struct {
	Name  string // of what the pieces make together, such as "sleeve"
	A, B  int    // pieces
	Glues []Glue
	Seams []Seam
}

// GluesOf returns the areas of a piece that are stuck onto it itself or onto
// another piece.
func (p *Pattern) GluesOf(piece int) []Glue {
	glues := p.Pieces[piece].Glues
	for i := range p.Bonds {
		if b := &p.Bonds[i]; b.A == piece {
			glues = append(glues[:len(glues):len(glues)], b.Glues...)
		}
	}
	return glues
}

// Lock says that the copies of two pieces cross in half-lap slots: each is
// slotted as far as the other one's paper reaches there.
type Lock struct {
	Name string // such as "strip in slot"
	A, B int    // pieces
	// Slotted is true if the slots have a width of their own. Slits are pressed
	// open by the other piece, as far as it is thick.
	Slotted bool
}
