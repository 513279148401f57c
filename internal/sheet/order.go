package sheet

import (
	"time"

	"creasefit/internal/measure"
)

// Side says along which side of a rectangle the paper's grain runs.
type Side uint8

// The sides. For an item AnySide means that the blank may be turned; for a
// sheet it means that its grain is not known.
const (
	AnySide Side = iota
	AlongWidth
	AlongHeight
)

// Goal is what an order keeps as small as possible.
type Goal uint8

// The goals: the number of sheets, or the sum of their prices.
const (
	FewestSheets Goal = iota
	LeastCost
)

// Preference says which of the plans of the same cost is taken.
type Preference uint8

// The preferences: the fewest settings of the trimmer, the largest usable
// offcut, or the fewest stages; each time the others follow.
const (
	FewSettings Preference = iota
	LargeOffcuts
	FewStages
)

// Bounds of an order. The pieces are the counts of all items together; the
// listed ones are those of one sheet in an order without counts.
const (
	MostItems  = 200
	MostPieces = 100_000
	MostListed = 6_000
	MostSizes  = 20
)

// DefaultEffort and MostEffort bound the time spent on one order.
const (
	DefaultEffort = 500 * time.Millisecond
	MostEffort    = 10 * time.Second
)

// Stock is one size of sheet.
type Stock struct {
	Width, Height measure.Length
	Grain         Side  // where the grain runs; AnySide if it is not known
	Price         int64 // of one sheet, in any unit that all sizes share
	Available     int   // sheets in stock; zero means as many as needed
}

// Item is one blank that is wanted.
type Item struct {
	Name          string
	Width, Height measure.Length
	Count         int  // zero means as many as one sheet gives
	Grain         Side // the side of the blank that the grain must run along
}

// Order is what to plan: the sheets there are and the blanks wanted of them.
// Either every item has a count or none has.
type Order struct {
	Sheets   []Stock
	Margin   measure.Length // trimmed off every side of a sheet first
	Kerf     measure.Length // what a cut takes away, off its high part
	Trimmer  measure.Length // the longest cut; zero means no bound
	Ruler    measure.Step   // the marks that a cut is set to
	Minimize Goal
	Items    []Item
	Prefer   Preference
	Stages   int            // most of a plan: two, three, or zero for any number
	Least    measure.Length // both sides of a usable offcut are at least as long
	Effort   time.Duration  // zero means DefaultEffort
}

// Counted reports whether the order says how many of each item it wants.
func (o Order) Counted() bool {
	return len(o.Items) > 0 && o.Items[0].Count > 0
}

// Cost returns what one sheet of a size adds to what is kept small.
func (o Order) Cost(stock int) int64 {
	if o.Minimize == LeastCost {
		return o.Sheets[stock].Price
	}
	return 1
}

// Usable returns the size of a sheet inside its margins; a side that the
// margins use up is not positive.
func (o Order) Usable(stock int) (width, height measure.Length) {
	both := o.Margin.Times(2)
	return o.Sheets[stock].Width.Sub(both), o.Sheets[stock].Height.Sub(both)
}
