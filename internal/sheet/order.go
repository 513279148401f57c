package sheet

import (
	"slices"
	"strings"
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

// String returns the side as it is written on the wire, "" for any.
func (s Side) String() string { return [...]string{"", "width", "height"}[s] }

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

// Stock is one size of sheet of one paper, or an offcut of earlier work.
type Stock struct {
	Width, Height measure.Length
	Paper         string // its name; items of the same are cut from it
	Grain         Side   // where the grain runs; AnySide if it is not known
	Price         int64  // of one sheet, in any unit that all sizes share
	Available     int    // sheets in stock; zero means as many as needed
	Offcut        bool   // used up before whole sheets are; needs Available
}

// Item is one blank that is wanted.
type Item struct {
	Name          string
	Width, Height measure.Length
	Paper         string // that it is cut from
	Count         int    // zero means as many as one sheet gives
	Spares        int    // so many of Count are for trials
	Priority      int    // the least is cut first; zero comes last
	Grain         Side   // the side of the blank that the grain must run along
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
	Effort   time.Duration  // zero means DefaultEffort; without counts, that any way to cut a sheet will do
	// Say says a text of the plan in another language, with its places for values;
	// units and the decimal mark too. Nil for English.
	Say func(string) string
}

// Word says a text of the plan in the order's language; in English without an order.
func (o *Order) Word(text string) string {
	if o == nil || o.Say == nil {
		return text
	}
	return o.Say(text)
}

// Reading writes a reading of the order's ruler in the order's language.
func (o *Order) Reading(text string) string {
	if o == nil || o.Say == nil {
		return text
	}
	unit := o.Ruler.Unit().String()
	number, ok := strings.CutSuffix(text, " "+unit)
	if !ok {
		return text
	}
	return strings.ReplaceAll(number, ".", o.Say(".")) + " " + o.Say(unit)
}

// Counted reports whether the order says how many of each item it wants.
func (o Order) Counted() bool {
	return len(o.Items) > 0 && o.Items[0].Count > 0
}

// Cost returns what one sheet of a size adds to what is kept small: whole sheets or
// their prices, counted in units that are more than all offcuts of the stock, and
// each offcut one such unit.
func (o Order) Cost(stock int) int64 {
	s, whole := o.Sheets[stock], int64(1)
	if o.Minimize == LeastCost {
		whole = s.Price
	}
	if s.Offcut && (o.Minimize == FewestSheets || s.Price == 0) {
		return 1
	}
	return whole * o.Whole()
}

// Whole is how many units of Cost one sheet is, or one unit of price.
func (o Order) Whole() int64 {
	units := int64(1)
	for _, s := range o.Sheets {
		if s.Offcut {
			units += int64(s.Available)
		}
	}
	return units
}

// Papers lists the papers of the items, each once.
func (o Order) Papers() []string {
	var list []string
	for _, it := range o.Items {
		if !slices.Contains(list, it.Paper) {
			list = append(list, it.Paper)
		}
	}
	return list
}

// PlanArea is the area of all sheets that plans cut, in square millimetres.
func (o Order) PlanArea(plans []Sheets) float64 {
	sum := 0.0
	for i := range plans {
		s := o.Sheets[plans[i].Stock]
		sum += float64(plans[i].Times) * s.Width.Millimetres() * s.Height.Millimetres()
	}
	return sum
}

// Usable returns the size of a sheet inside its margins; a side that the
// margins use up is not positive.
func (o Order) Usable(stock int) (width, height measure.Length) {
	both := o.Margin.Times(2)
	return o.Sheets[stock].Width.Sub(both), o.Sheets[stock].Height.Sub(both)
}
