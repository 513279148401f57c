package api

// Yield is the answer of /v1/yield.
type Yield struct {
	Unit       string      `json:"unit" validate:"required,oneof=in mm" example:"in"`
	Ruler      string      `json:"ruler" validate:"required" example:"1/16 in"` // that cuts are set to
	Sheets     int         `json:"sheets" validate:"required" example:"6"`      // how many are cut
	Proven     bool        `json:"proven" validate:"required"`                  // no plan needs less, or gives more
	LowerBound float64     `json:"lower_bound" validate:"required" example:"6"` // nothing needs less: sheets, or cost if that is kept small
	PerSheet   *int        `json:"per_sheet,omitempty" example:"8"`             // blanks that one sheet gives at most, of a single blank
	Cost       *float64    `json:"cost,omitempty" example:"4.2"`                // of all sheets that are cut, if they have prices
	Used       float64     `json:"used" validate:"required,min=0,max=1" example:"0.93"`
	Items      []YieldItem `json:"items" validate:"required"`
	Plans      []CutPlan   `json:"plans" validate:"required"`
	Proof      string      `json:"proof" validate:"required"`
	Warnings   []Warning   `json:"warnings" validate:"required"`
	Links      YieldLinks  `json:"links" validate:"required"`
}

// YieldItem is one blank as it was understood, and how many are made of it.
type YieldItem struct {
	Name   string `json:"name" validate:"required" example:"band"`
	Width  Length `json:"width" validate:"required"`
	Height Length `json:"height" validate:"required"`
	Grain  string `json:"grain" validate:"required,oneof=any width height"`
	Wanted int    `json:"wanted,omitempty" example:"25"` // absent: as many as one sheet gives
	Made   int    `json:"made" validate:"required" example:"25"`
}

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

// SheetSize is a size of sheet of the request.
type SheetSize struct {
	Width  Length `json:"width" validate:"required"`
	Height Length `json:"height" validate:"required"`
	Number int    `json:"number" validate:"required" example:"0"` // its place in the request's list, from 0
}

// SheetPart is a rectangle of a sheet.
type SheetPart struct {
	X      Length `json:"x" validate:"required"`
	Y      Length `json:"y" validate:"required"`
	Width  Length `json:"width" validate:"required"`
	Height Length `json:"height" validate:"required"`
}

// CutNode is one rectangle of a tree of cuts: a cut, an item, or an offcut. A
// cut across the width lies at a distance from the left, one across the height
// from the bottom. The kerf comes off the high part.
type CutNode struct {
	Cut    string   `json:"cut,omitempty" validate:"omitempty,oneof=width height"`
	At     *Length  `json:"at,omitempty"`
	Low    *CutNode `json:"low,omitempty"`
	High   *CutNode `json:"high,omitempty"`
	Item   string   `json:"item,omitempty" example:"band"`
	Number *int     `json:"number,omitempty" example:"0"` // the item's place in items, from 0
	Turned *bool    `json:"turned,omitempty"`
	Offcut bool     `json:"offcut,omitempty"`
}

// Placed is where one blank lies.
type Placed struct {
	Item   string `json:"item" validate:"required" example:"band"`
	Number int    `json:"number" validate:"required" example:"0"` // its place in items, from 0
	X      Length `json:"x" validate:"required"`
	Y      Length `json:"y" validate:"required"`
	Width  Length `json:"width" validate:"required"`
	Height Length `json:"height" validate:"required"`
	Turned bool   `json:"turned" validate:"required"` // its width runs along the sheet's height
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

// CutPart is what becomes of one part: an item, or an offcut.
type CutPart struct {
	Part   int    `json:"part" validate:"required" example:"7"`
	Item   string `json:"item,omitempty" example:"band"`
	Number *int   `json:"number,omitempty" example:"0"`
	Turned *bool  `json:"turned,omitempty"`
	Offcut bool   `json:"offcut,omitempty"`
}

// YieldLinks lead on from a plan.
type YieldLinks struct {
	Self    string `json:"self" validate:"required" example:"/v1/yield?unit=in"`
	Picture string `json:"picture" validate:"required" example:"/v1/yield?unit=in&format=svg"`
}
