package wire

import (
	"fmt"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// CutPlan is one way of cutting a sheet, and how many sheets are cut so.
// Positions are measured from the lower left corner of the usable part, which
// is the sheet without its margins.
type CutPlan struct {
	Times    int         `json:"times" validate:"required,min=1" example:"2"`
	Sheet    SheetSize   `json:"sheet" validate:"required"`
	Usable   SheetPart   `json:"usable" validate:"required"` // where the tree starts, from the sheet's lower left corner
	Tree     CutNode     `json:"tree" validate:"required"`
	Placed   []Placed    `json:"placed" validate:"required"`
	Steps    []string    `json:"steps" validate:"required"`    // what to do, in words
	Settings []Setting   `json:"settings" validate:"required"` // the same steps in numbers
	Parts    []CutPart   `json:"parts" validate:"required"`    // what becomes of each part that the settings leave
	Offcuts  []SheetPart `json:"offcuts" validate:"required"`
}

// size is a size as it is said, never rounded.
func (c cutting) size(width, height measure.Length) string {
	said := func(l measure.Length) string { return c.order.Reading(c.step.Format(l)) }
	return fmt.Sprintf(c.order.Word("%s by %s"), said(width), said(height))
}

func (c cutting) plans() []CutPlan {
	list := make([]CutPlan, len(c.plan.Plans))
	for i := range c.plan.Plans {
		p, l := &c.plan.Plans[i], &list[i]
		stock := c.order.Sheets[p.Stock]
		words := c.size(stock.Width, stock.Height)
		if stock.Paper != "" {
			words += " (" + stock.Paper + ")"
		}
		*l = CutPlan{
			Times:  p.Times,
			Sheet:  SheetSize{exact(c.step, stock.Width), exact(c.step, stock.Height), p.Stock, stock.Paper, stock.Offcut, words},
			Usable: c.part(p.Usable),
			Tree:   *c.node(p.Tree),
		}
		for _, b := range p.Placed {
			l.Placed = append(l.Placed, Placed{c.order.Items[b.Item].Name, b.Item, c.part(b.Rect), b.Turned})
		}
		for n := range p.Steps {
			l.Steps, l.Settings = append(l.Steps, p.Steps[n].Text), append(l.Settings, c.setting(&p.Steps[n]))
		}
		for _, part := range p.Parts {
			l.Parts = append(l.Parts, CutPart{part.ID, c.leaf(part.Item, part.Turned)})
		}
		for _, r := range p.Offcuts {
			l.Offcuts = append(l.Offcuts, c.part(r))
		}
	}
	return list
}

// SheetSize is a size of sheet of the request.
type SheetSize struct {
	Width  Length `json:"width" validate:"required"`
	Height Length `json:"height" validate:"required"`
	Number int    `json:"number" validate:"required" example:"0"` // its place in the request's list, from 0
	Paper  string `json:"paper,omitempty" example:"kraft"`
	Offcut bool   `json:"offcut,omitempty"` // of the stock

	Words string `json:"-"` // the size as it is said, never rounded, and the paper
}

// SheetPart is a rectangle of a sheet.
type SheetPart struct {
	X      Length `json:"x" validate:"required"`
	Y      Length `json:"y" validate:"required"`
	Width  Length `json:"width" validate:"required"`
	Height Length `json:"height" validate:"required"`
}

func (c cutting) part(r sheet.Rect) SheetPart {
	return SheetPart{exact(c.step, r.X), exact(c.step, r.Y), exact(c.step, r.Width), exact(c.step, r.Height)}
}

// CutNode is one rectangle of a tree of cuts: a cut, an item, or an offcut. A
// cut across the width lies at a distance from the left, one across the height
// from the bottom. The kerf comes off the high part.
type CutNode struct {
	Cut  string   `json:"cut,omitempty" validate:"omitempty,oneof=width height"`
	At   *Length  `json:"at,omitempty"`
	Low  *CutNode `json:"low,omitempty"`
	High *CutNode `json:"high,omitempty"`
	Leaf
}

func (c cutting) node(n *sheet.Node) *CutNode {
	if !n.IsCut() {
		return &CutNode{Leaf: c.leaf(n.Item, n.Turned)}
	}
	return &CutNode{Cut: n.Cut.String(), At: new(exact(c.step, n.At)), Low: c.node(n.Low), High: c.node(n.High)}
}

// Leaf is what a part of a sheet is: an item, or an offcut.
type Leaf struct {
	Item   string `json:"item,omitempty" example:"band"`
	Number *int   `json:"number,omitempty" example:"0"` // the item's place in items, from 0
	Turned *bool  `json:"turned,omitempty"`
	Offcut bool   `json:"offcut,omitempty"`
}

func (c cutting) leaf(item int, turned bool) Leaf {
	if item == sheet.Offcut {
		return Leaf{Offcut: true}
	}
	return Leaf{c.order.Items[item].Name, &item, &turned, false}
}

// Placed is where one blank lies.
type Placed struct {
	Item   string `json:"item" validate:"required" example:"band"`
	Number int    `json:"number" validate:"required" example:"0"` // its place in items, from 0
	SheetPart
	Turned bool `json:"turned" validate:"required"` // its width runs along the sheet's height
}

// Setting is one setting of the trimmer with all cuts made at it. Parts are
// numbered: 0 is the sheet, and every cut makes two new ones.
type Setting struct {
	Across string `json:"across" validate:"required,oneof=width height"`
	From   string `json:"from" validate:"required,oneof=left right bottom top"`
	At     Length `json:"at" validate:"required"`
	Length Length `json:"length" validate:"required"` // of each cut
	Trim   bool   `json:"trim" validate:"required"`   // takes a margin off
	Repeat int    `json:"repeat" validate:"required,min=1" example:"3"`
	Parts  []int  `json:"parts" validate:"required"` // cut alike, in one stack if that is not too thick
	Low    []int  `json:"low" validate:"required"`   // what is cut off: all of the first part, then all of the next
	Rest   []int  `json:"rest" validate:"required"`  // what is left of each part
}

// setting is one step in numbers. Its reading is the mark nearest to where the
// cut ought to be.
func (c cutting) setting(s *sheet.Step) Setting {
	return Setting{s.Cut.String(), edge(s), length(c.step, s.Reading, s.At), exact(c.step, s.Length), s.Trim, s.Repeat, s.Parts, s.Low, s.Rest}
}

// edge returns the edge that a step is measured from.
func edge(s *sheet.Step) string {
	names := [...][2]string{sheet.Width: {"left", "right"}, sheet.Height: {"bottom", "top"}}[s.Cut]
	if s.Turned {
		return names[1]
	}
	return names[0]
}

// CutPart is what becomes of one part.
type CutPart struct {
	Part int `json:"part" validate:"required" example:"7"`
	Leaf
}
