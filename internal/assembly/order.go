// Package assembly finds the order of work of a pattern: what is cut, scored,
// folded, glued, put in, locked and closed, one after another. It takes the closed
// thing apart, what can be reached first first, and tells that backwards
// (assembly by disassembly). Every state is checked for plates that would pass
// through one another, with the thickness of the stock.
//
// It works from the pattern alone and knows no kinds. The search is made on the
// ideal sizes, since rounding hides which layer lies inside; it is then played
// at the actual ones.
//
// The package writes no words, draws nothing and weighs neither friction nor the
// time that glue takes.
package assembly

import (
	"creasefit/internal/fold"
	"creasefit/internal/pattern"
	"slices"
)

// Order is the order of work of one pattern.
type Order struct {
	Steps []Step

	t     *taking // at the actual sizes
	moves []move  // the way apart, at the actual sizes
	from  []state // before each of the moves
	of    []int   // by step: its move, -1 for cutting and scoring

	whole   *pattern.Pattern // with the ornament of the last step; nil without one
	waiting []fold.Plate     // the ornament before it
}

// Do is what is done in a step.
type Do uint8

// What is done. The first three make a blank ready; they move nothing.
const (
	Cut   Do = iota // the blanks of a piece
	Score           // its creases
	Slit            // every cut inside a blank, and its outline
	Fold            // panels are turned
	Glue            // panels are turned, or a piece is laid down, and so glued
	PutIn           // the contents go in
	Join            // a piece goes into another one or over it
	Lock            // cuts are hooked into one another
	Close           // panels are turned with the contents inside
	Dress           // tabs are pressed flat and an ornament is laid on them
)

// String returns what is done as it is written on the wire.
func (d Do) String() string {
	return [...]string{"cut", "score", "slit", "fold", "glue", "put in", "join", "lock", "close", "dress"}[d]
}

// Step is one step. Its indices are those of the pattern.
type Step struct {
	Do      Do
	Pieces  []int    // that it is done to, in the pattern's order
	Turns   []Turn   // of creases
	Glues   []Area   // that come to lie on their partners
	Joints  []Joint  // that lock
	Nests   []int    // of the pattern, that come about
	Locks   []int    // of the pattern, that come about
	Travels []Travel // of whole pieces or of the contents
	Groups  int      // how many like moves are told as one: four at the four corners of a tray
	Flex    float64  // millimetres by which thin stock must give way meanwhile
}

// Turn is a crease that is turned, by fractions of its angle when closed: 0 is
// flat, 1 is closed.
type Turn struct {
	Piece, Copy, Crease int
	Panel               int // that turns: the crease's To, or its From where To is glued to what stays
	From, To            float64
	Path                []float64 // fractions at equal times; nil where it turns evenly
	Group               int       // from 0; what has one number moves together
}

// Area is a glue area: of Bonds[Bond] of the pattern, or of Pieces[Piece] if Bond
// is -1.
type Area struct{ Bond, Piece, Glue int }

// Of returns the area in its pattern, the piece that it is on and the piece that
// it is stuck to.
func (a Area) Of(p *pattern.Pattern) (g *pattern.Glue, own, other int) {
	if a.Bond < 0 {
		return &p.Pieces[a.Piece].Glues[a.Glue], a.Piece, a.Piece
	}
	b := &p.Bonds[a.Bond]
	return &b.Glues[a.Glue], b.A, b.B
}

// Joint is Pieces[Piece].Joints[Joint] of a pattern.
type Joint struct{ Piece, Joint int }

// Travel is the way of a piece that is moved as a whole, with all that is glued to
// it, or of the contents.
type Travel struct {
	Piece, Copy int      // Piece is -1 for the contents
	Way         fold.Vec // unit direction, in the frame of fold.Fold
	By          float64  // mm
	Turned      bool     // its inside faces the other way than that of the first blank
}

// Frame is how everything stands at one moment.
type Frame struct {
	Model    fold.Model // in the order of fold.Fold
	Present  []bool     // by plate: its piece has been cut
	Contents *Block     // nil before they are put in, and where there are none
}

// Block is the contents: an upright prism over an outline.
type Block struct {
	Base []fold.Vec // the outline at the bottom, counterclockwise seen from above
	Up   fold.Vec   // to the outline at the top
}

// Faces returns the faces of the block, each counterclockwise seen from outside: the top,
// the bottom, then the sides from the first edge of the base on, which begin there.
func (b *Block) Faces() [][]fold.Vec {
	n := len(b.Base)
	top, under := make([]fold.Vec, n), slices.Clone(b.Base)
	for i, p := range b.Base {
		top[i] = p.Plus(b.Up)
	}
	slices.Reverse(under)
	faces := [][]fold.Vec{top, under}
	for i, p := range b.Base {
		k := (i + 1) % n
		faces = append(faces, []fold.Vec{p, b.Base[k], top[k], top[i]})
	}
	return faces
}
