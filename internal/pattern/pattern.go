// Package pattern is the flat geometry that every kind yields: pieces, panels,
// creases, cuts, glue areas and what each of them meets when it is folded.
// The fold proof, the drawings and the guides see this and nothing else.
//
// A blank lies with the side that will be inside facing up, its lower left
// corner at the origin. A valley fold brings its two panels together above
// the sheet, towards the viewer; a mountain fold below it.
//
// The package does no folding, rounding or drawing, and knows no kinds.
package pattern

import (
	"slices"

	"creasefit/internal/measure"
)

// Pattern is everything that is cut, scored and folded for one enclosure.
type Pattern struct {
	Caliper   measure.Length // thickness of the stock, the same for all pieces
	BoardFrom measure.Length // caliper from which it does not give way; zero for Board
	Pieces    []Piece
	Cavity    Cavity
	Places    []Place   // how further pieces stand to the first; empty for one piece
	Nests     []Nesting // which pieces go into one another
	Locks     []Lock    // which pieces cross in slots
	Bonds     []Bond    // which pieces are glued to one another
}

// Piece is one part of an enclosure, cut from one rectangular blank.
type Piece struct {
	Name     string
	Quantity int
	Width    measure.Length // of the blank, left to right
	Height   measure.Length // of the blank, bottom to top
	Caliper  measure.Length // of a stock of its own; zero for that of the pattern
	Strips   []Strip        // how its sizes follow one another along the edges
	Root     int            // the panel that stays still while the others are folded
	Panels   []Panel
	Creases  []Crease
	Cuts     []Cut
	Glues    []Glue
	Seams    []Seam
	Joints   []Joint
}

// Axis is a direction on the blank, or of the contents.
type Axis uint8

// The axes. On a blank only Width and Height occur; Diagonal runs along a
// side of a square blank whose scores lie at 45 degrees to it.
const (
	Width Axis = iota
	Height
	Thickness
	Diagonal
)

// String returns the axis as it is written on the wire.
func (a Axis) String() string {
	return [...]string{"width", "height", "thickness", "diagonal"}[a]
}

// Fold is the direction of a crease, seen from the inside of the blank.
type Fold uint8

// The fold directions; Flat marks a boundary between two sizes that is not
// scored.
const (
	Flat Fold = iota
	Valley
	Mountain
)

// String returns the direction as it is written on the wire.
func (f Fold) String() string { return [...]string{"flat", "valley", "mountain"}[f] }

// Strip is a row of sizes that follow one another along one edge of the
// blank: from the left across the width, from the bottom across the height.
type Strip struct {
	Across Axis
	Cells  []Cell
	Scores []Score // between neighbouring cells: one fewer than cells
}

// Cell is one size in a strip.
type Cell struct {
	Name string
	Size measure.Length
}

// Score says what is done at the boundary of two cells.
type Score struct {
	Name  string
	Fold  Fold
	Angle float64 // degrees between the flat sheet and the folded panel, 0 to 180
	// Beside is how far beyond the boundary it is made, whole thicknesses of the stock on a ruler.
	Beside measure.Length
}

// Point is a place on the blank, from its lower left corner.
type Point struct{ X, Y measure.Length }

// At returns the point at x, y.
func At(x, y measure.Length) Point { return Point{x, y} }

// Vertex is a corner of an outline. Bulge bends the edge that leaves it into
// an arc: the tangent of a quarter of the arc's angle, positive when the arc
// bends to the right of the way to the next vertex (counterclockwise travel),
// as in the polylines of common CAD exchange files; 0 is a straight edge.
type Vertex struct {
	Point
	Bulge float64
}

// Panel is an area between creases, its outline counterclockwise, seen with
// the inside up.
type Panel struct {
	Name    string
	Outline []Vertex
	Hole    []Vertex // a window cut out of the panel, clockwise; usually none
}

// Crease is a score between two panels.
type Crease struct {
	Name  string
	A, B  Point // its ends
	From  int   // the panel on the root's side
	To    int   // the panel that is turned about it
	Fold  Fold
	Angle float64 // degrees turned when closed
	// Round is the thickness of what a fold of 180 degrees goes round: zero for
	// paper on paper. The fold then takes up a spine of Round plus one caliper,
	// half on each side of the crease.
	Round measure.Length
	// Bulge bends the crease into an arc from A to B, as in Vertex; 0 is straight.
	// Both panels of a curved crease, whose ends lie side by side on the blank,
	// bend along straight lines that run up the blank, and Angle is between
	// these: 90 for panels that stand square to one another.
	Bulge float64
}

// Rolls reports whether a crease is no score but the line where a roll comes round:
// flat, with the angle that From bends by from its far side to here, towards its
// inside, about lines that run up the blank. To bends on with it.
func (c *Crease) Rolls() bool { return c.Fold == Flat && c.Angle > 0 }

// Bends reports whether the panels of a crease bend, and do not only turn.
func (c *Crease) Bends() bool { return c.Bulge < 0 || c.Bulge > 0 || c.Rolls() }

// Scored reports whether anything of a piece is scored.
func (p *Piece) Scored() bool {
	return slices.ContainsFunc(p.Creases, func(c Crease) bool { return !c.Rolls() })
}

// CutKind names a cut inside the blank's outline.
type CutKind uint8

// The kinds of cut.
const (
	Slit   CutKind = iota // a cut of no width
	Slot                  // a cut with a width, cut in from an edge
	Notch                 // a shaped bite out of an edge
	Window                // a closed opening inside a panel
	Relief                // a straight or angled cut that frees a corner
)

// String returns the kind of cut as it is written on the wire.
func (k CutKind) String() string {
	return [...]string{"slit", "slot", "notch", "window", "relief"}[k]
}

// Cut is a cut inside the blank's rectangle. Depth is measured from the edge
// named by From; At is where it is marked along that edge, from the left or the
// bottom: its middle, unless Before says how much of it lies before the mark.
type Cut struct {
	Name   string
	Kind   CutKind
	On     string         // the score that it lies on, "" for none
	From   string         // "top", "bottom", "left" or "right"
	At     measure.Length // along that edge; what On says holds if On is set
	Depth  measure.Length // how far in from the edge
	Width  measure.Length // zero for a slit
	Before measure.Length // of a slot, how much of Width lies before At; zero for half of it
	Path   []Vertex       // the line the blade follows
}

// Face is a side of a panel.
type Face uint8

// The faces of a panel.
const (
	Inside Face = iota
	Outside
)

// String returns "inside" or "outside".
func (f Face) String() string { return [...]string{"inside", "outside"}[f] }

// Glue is an area of a panel that is stuck onto a face of another panel: of the
// same piece, or in a bond of another one.
type Glue struct {
	Name   string
	Panel  int
	Face   Face
	Area   []Vertex // on the flat blank
	To     int
	ToFace Face
}

// Seam is a pair of edges that must come to lie on one another: A1 on B1 and
// A2 on B2, each pair at a distance of Apart (zero unless a layer of stock or
// a wanted gap lies between).
type Seam struct {
	Name   string
	PanelA int
	A1, A2 Point
	PanelB int
	B1, B2 Point
	Apart  measure.Length
}

// Joint is a pair of cuts of one piece, by index, that lock into each other:
// when folded they must lie on the same line and together reach across.
type Joint struct {
	Name string
	A, B int // indices into Cuts
	// PanelA and PanelB are the panels that each cut is made in.
	PanelA, PanelB int
}

// Cavity is where the contents stand: on the inside face of one panel, with
// their width along the blank's width and their height along its height.
type Cavity struct {
	Piece, Panel int
	Width        measure.Length
	Height       measure.Length
	Thickness    measure.Length
	// Bounded lists the axes along which plates hold the contents on both sides.
	Bounded []Axis
	// Covered lists the axes along which plates must cover the whole of the contents
	// on both sides; along others they may be seen.
	Covered []Axis
	// Sides is the number of equal sides of an upright prism that stands over the
	// middle of the panel, one of them towards the top of the blank: contents that
	// are Width from each side to the middle and as far again. Pieces that nest are
	// measured square to as many sides then. It is 0 for a box.
	Sides int
	// Turned is the angle in degrees, counterclockwise on the blank, from the
	// blank's width to the contents' width; 45 for a square blank whose scores
	// run at that angle to its sides.
	Turned float64
	// Floats is true if the contents stand in the middle of the thickness, held
	// by panels that bend round them, instead of lying on the cavity's panel.
	Floats bool
	// Round is true for contents that are round, Width across, their axis along the
	// blank's height: they are held by what is rolled round them.
	Round bool
	// Into is true if the sizes are not those of contents but of an envelope or
	// a pocket, inside, that the folded pattern goes into.
	Into bool
}
