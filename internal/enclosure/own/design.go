// Package own makes a kind of a design: an enclosure that a caller describes
// instead of choosing one. A design says which panels there are, where they fold,
// how far they reach and what meets what. The derivation folds them in forms of
// the readings, the caliper and the contents, and reads every closure, layer, fit
// and creep off the folded plates; no design states a caliper.
//
// Folds turn by 90 or 180 degrees, so that every plate stays parallel to the axes.
// Curved creases, slanted folds and leaning walls are out of its reach.
//
// The package rounds nothing and proves nothing: what it makes is a Kind like
// those of the catalogue.
package own

import (
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Limits of a design.
const (
	MostBytes  = 64 << 10
	MostPieces = 8
	MostPanels = 64 // of all pieces
	MostJoins  = 64 // statements about what meets, cuts included
	MostSizes  = 32
	mostDepth  = 8   // of brackets within brackets
	mostName   = 40  // bytes
	mostHelp   = 200 // bytes
)

// Design is a described enclosure.
type Design struct {
	Title, Help string
	Words       map[string]enclosure.Words // in further languages
	Options     []Option
	Ways        map[int]*Design // by the number of what is chosen
	Pieces      []Piece
	Joins       []Join
	Limits      []Limit
	Ornament    [2]string // the sizes of the tabs that one can be glued over, and of their height; "" for none
	Order       []string  // of the readings; those that are not named follow as the panels do
	Needs       []string  // the contents' sizes that it cannot do without; what anything follows from if empty
	Holds       string    // the panel that the contents lie on, or by which it goes into something; the first root if empty
	Open        [3]bool   // by axis: it is meant to be open there
	Into        [3]bool   // by axis: it goes into something of that size; all false for what goes round its contents
	Turned      bool      // it goes in on its side: the height of that runs across its root
}

// Piece is one part, cut from one blank. A piece that goes over another one, or round
// it, has a clearance of its own to it.
type Piece struct {
	Name   string
	High   string // what the height of its root is called, "" for that of the root
	Panels []Panel
	Over   string // the piece that it goes over as a lid, "" for none
	Round  string // the piece that it goes round, which lies on its root, "" for none
	Fit    string // a named fit of the clearance between the two
	place  string
}

// rolled is the panel of a piece that is the lap of a roll, -1 for none.
func (p *Piece) rolled() int {
	for i := range p.Panels {
		if p.Panels[i].Rolled {
			return i
		}
	}
	return -1
}

// holds is the piece that goes into another one, "" for none.
func (p *Piece) holds() string { return p.Over + p.Round }

// goesInto reports whether a design goes into something, and holds nothing.
func (d *Design) goesInto() bool { return d.Into != [3]bool{} }

// Panel is a rectangle between folds. The first of a piece is its root, which has
// two extents; each other one hangs on an edge of its parent and reaches out from
// there.
type Panel struct {
	Name       string
	On         string // its parent, "" for a root
	Edge       Edge   // of the parent
	Fold       pattern.Fold
	Angle      int  // 90 or 180, 0 for flat
	Rolled     bool // it is no panel but a lap over the begin of a roll, which its parent is
	Reach      Reach
	Least      []form // how far it reaches at the least, in place of what is usual
	Across, Up Reach  // of a root
	Narrower   Amount // by how much it begins inside each corner of its parent
	Clear      bool   // its sides end half a paper before what stands beside them instead
	Taper      Amount // by how much more each side runs in towards its free edge
	Window     *Window
	place      string
}

// Window is an opening: how far its sides lie inside those of its panel.
type Window struct{ Left, Right, Bottom, Top Amount }

// Edge is a side of a panel on the flat blank, its inside up.
type Edge uint8

// The edges.
const (
	Left Edge = iota
	Right
	Bottom
	Top
)

var edgeNames = [...]string{"left", "right", "bottom", "top"}

// axis is which coordinate of the blank an edge looks along, 0 for x.
func (e Edge) axis() int { return int(e / 2) }

// side is where an edge looks along that: 0 towards the lower ones, 1 towards the greater.
func (e Edge) side() int { return int(e % 2) }

// outward is the sign of the way to a side, 0 for the lower one and 1 for the greater.
func outward(side int) int64 { return int64(2*side - 1) }

// cornersAt are the corners at the ends of each edge of a panel, the lower or left one first.
var cornersAt = [...][2]int{Left: {0, 3}, Right: {1, 2}, Bottom: {0, 1}, Top: {3, 2}}

// opposite is the edge that lies on an edge of a neighbour.
func (e Edge) opposite() Edge { return e ^ 1 }

// ends are the ends of an edge of an outline.
func (e Edge) ends(o []pattern.Vertex) [2]pattern.Point {
	return [...]pattern.Point{o[cornersAt[e][0]].Point, o[cornersAt[e][1]].Point}
}

// move moves a point so far towards an edge.
func (e Edge) move(p pattern.Point, by measure.Length) pattern.Point {
	at := coordinate(&p, e.axis())
	*at = at.Add(by.Times(outward(e.side())))
	return p
}

// coordinate is how far across or up a point of a blank lies.
func coordinate(p *pattern.Point, axis int) *measure.Length {
	if axis == 0 {
		return &p.X
	}
	return &p.Y
}

// Reach says how far a panel goes. The zero Reach is free: what is stated about
// its edges decides.
type Reach struct {
	Fixed  Amount // a named size or a length
	Like   string // as far as another panel
	Covers string // the contents' size of that name, but for a little
	Stands string // over the contents' size of that name, up to two littles
	Less   Amount // taken from what is covered
	Down   bool   // of a wall of a lid: to the table, but for a little
	Of     string // a share of how far another panel reaches, within a little
	Share  [2]int64
}

// Amount is a length: a named size, a length, a little or two, or "an allowance" for the
// caliper, which is one for all of a design. The zero Amount is none.
type Amount struct {
	Size      string
	Length    measure.Length
	Little    int64 // how many littles
	Allowance bool
	given     bool
}

// JoinType says what a join states.
type JoinType uint8

// What joins state.
const (
	Glue  JoinType = iota // a panel is stuck onto a face of another one
	Meet                  // two lines come to lie on one another
	Even                  // two panels reach as far, if they can
	Slits                 // the folds of two panels are slit and locked into one another
	Level                 // two panels come to lie in one plane
	Lies                  // a panel lies on a face of another one, without glue: a paper away and up to a carton's allowance more
	Clear                 // a panel ends before the inside of what a fold goes round, half a paper clear of it: the creep
)

// Join is a statement about two panels.
type Join struct {
	Type  JoinType
	A, B  Line
	Face  pattern.Face // of B, of a glue
	Short Amount       // by how much A ends before B
	Past  Amount       // by how much A reaches past B
	Play  Amount       // of slits
	Name  string       // of what it holds together, "" for the panel's or the line's
	Sum   string       // what it is called where its parts do not add up, "" for its words
	Loose bool         // of lines that meet: nobody looks whether they do, since a lap or a lock holds as well beside
	Cuts  [2]string    // the names of slits, "" for those of their panels
	place string
}

// Line is an edge or a fold that something meets: by the panel that it belongs to.
type Line struct {
	Panel string
	Of    LineType
	Side  Edge // of a side
}

// LineType says which line of a panel is meant.
type LineType uint8

// The lines of a panel: its free edge, the fold that it hangs by, the outer or the inner
// face of what that fold goes round, and any side.
const (
	FreeEdge LineType = iota
	Crease
	OutsideFold
	InsideFold
	SideEdge
)
