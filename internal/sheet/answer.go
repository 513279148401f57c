package sheet

import (
	"fmt"
	"log/slog"

	"creasefit/internal/measure"
)

// Axis is the direction that a cut divides.
type Axis uint8

// The axes: a cut across Width divides the width, at a distance from the
// left; one across Height divides the height, at a distance from the bottom.
const (
	Width Axis = iota
	Height
)

// String returns "width" or "height".
func (a Axis) String() string { return [...]string{"width", "height"}[a] }

// Other returns the axis that runs along a cut across a.
func (a Axis) Other() Axis { return 1 - a }

// Offcut marks a node of a cut tree that is left over.
const Offcut = -1

// Node is one rectangle of a cut tree: a cut when Low and High are set, else
// a blank or an offcut. The low part of a cut is At long; the high part is
// what remains when the kerf has gone, at least nothing.
type Node struct {
	Cut       Axis
	At        measure.Length
	Low, High *Node
	Item      int  // index of the order's item, or Offcut; only without a cut
	Turned    bool // the blank's width runs along the sheet's height
}

// IsCut reports whether the rectangle is divided.
func (n *Node) IsCut() bool { return n.Low != nil }

// Rect is a rectangle on the usable part of a sheet, from its lower left.
type Rect struct {
	X, Y, Width, Height measure.Length
}

// Placement is where one blank lies.
type Placement struct {
	Item   int
	Turned bool
	Rect
}

// Sheets is one way to cut a sheet, and how many are cut so.
type Sheets struct {
	Times   int
	Stock   int  // index of the order's sheet
	Usable  Rect // the rectangle the tree starts at, from the sheet's lower left
	Tree    *Node
	Placed  []Placement
	Offcuts []Rect
	Steps   []Step
	Parts   []Part // what becomes of every part that the steps leave
}

// Warning is something that the reader of a plan should know.
type Warning struct {
	Code   string
	Detail string
}

// Answer is a planned order.
type Answer struct {
	Sheets     int   // how many sheets are cut, offcuts of the stock among them
	Offcuts    int   // how many of them are such offcuts
	Cost       int64 // the sum of their prices
	Proven     bool  // no plan needs less of what the order keeps small
	LowerBound int64 // no plan needs less: whole sheets or cost, as the order asks
	PerSheet   int   // most blanks one sheet gives, for an order of one item; else zero
	Made       []int // blanks made of each item
	Ready      []int // of each item: all of it is made when so many sheets are cut, in the order of the plans
	Used       float64
	Plans      []Sheets
	Settings   []Setting // of the trimmer over all plans, in order
	Work       Work
	Settled    bool     // more time would change nothing
	Usable     []Usable // offcuts worth keeping, the largest first
	Proof      string   // one plain sentence
	Warnings   []Warning
}

// Unsound is a plan that did not stand verification: a fault of the planner.
type Unsound struct {
	Order Order
	Wrong error // everything that is wrong with the plan
}

// Error says what is wrong.
func (u *Unsound) Error() string { return "sheet: an unsound plan: " + u.Wrong.Error() }

// Unwrap returns what is wrong.
func (u *Unsound) Unwrap() error { return u.Wrong }

// LogValue tells a log what is wrong together with the order.
func (u *Unsound) LogValue() slog.Value {
	return slog.GroupValue(slog.String("wrong", u.Wrong.Error()), slog.String("order", fmt.Sprintf("%+v", u.Order)))
}
