package enclosure

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// box is an open box of a plan: a base with four walls, each scored along it.
// The bottom and the top wall end in tabs that are glued to the side walls,
// inside or outside them. The score of a tab lies one caliper inside the
// corner of the base, or outside it (common practice: a scrap of the stock is
// the spacer), and so does not come off the ruler.
//
// Rolled walls fold over their rim once more and come down to the base inside,
// shorter by an allowance; those at the sides cover tabs that are inside.
type box struct {
	shape           *grid
	rolled, outside bool           // rolled walls; tabs outside
	across, up      []int          // the readings, from the left and from the bottom
	tab             int            // the reading of the tabs' length, -1 for tabs as long as the walls are high
	allowance       int            // the reading of what rolled walls are shorter by, -1 without
	play            measure.Length // from a side wall to what goes in, at most
	halves          *boxHalves     // nil for a box in one piece
}

// Parameters that the boxes share.
var (
	cornerTabs = Param{Name: "corners", Type: ChoiceParam, Choices: []string{"inside", "outside"},
		Help: "Whether the corner tabs are glued inside or outside the side walls."}
	cornerTab = lengthParam("tab", 5, 500, "How long the corner tabs are; as long as the walls are high, if there is room, if not "+
		"given.").seldom()
)

// The panels of a box; the tabs and the rolled walls are four each, for the
// lower left, lower right, upper left and upper right corner, and for the
// bottom, top, left and right wall.
const (
	boxBase = iota
	boxBottom
	boxTop
	boxLeft
	boxRight
	boxTabs
	boxInner = boxTabs + 4
)

// boxGrid is the shape of a box with single walls.
func boxGrid(piece string) grid {
	return grid{
		piece:  piece,
		across: edge{[]string{"left wall", "base width", "right wall"}, []pattern.Score{valley("1", 90), valley("2", 90)}},
		up:     edge{[]string{"bottom wall", "base height", "top wall"}, []pattern.Score{valley("3", 90), valley("4", 90)}},
		cells:  boxCells(0),
	}
}

// boxCells are the panels of a box whose walls lie in columns and rows k and k + 2.
func boxCells(k int) []cell {
	return []cell{
		boxBase: {"base", k + 1, k + 1, -1}, boxBottom: {"bottom wall", k + 1, k, boxBase}, boxTop: {"top wall", k + 1, k + 2, boxBase},
		boxLeft: {"left wall", k, k + 1, boxBase}, boxRight: {"right wall", k + 2, k + 1, boxBase},
		boxTabs: {tabNames[0], k, k, boxBottom}, boxTabs + 1: {tabNames[1], k + 2, k, boxBottom},
		boxTabs + 2: {tabNames[2], k, k + 2, boxTop}, boxTabs + 3: {tabNames[3], k + 2, k + 2, boxTop},
	}
}

// insides returns how many half calipers the base is wider and higher than the
// room inside: walls centred on its scores, tabs and rolled walls inside them.
func (b *box) insides() (width, height int64) {
	width, height = 2, 2
	if !b.outside {
		width += 4
	}
	if b.rolled {
		width, height = width+4, height+4
	}
	return width, height
}

// outsides returns how many half calipers the box is wider and higher outside
// than its base.
func (b *box) outsides() (width, height int64) {
	if b.outside {
		return 6, 2
	}
	return 2, 2
}

// newBox begins a box of single walls; play is how far what goes in may stand
// from a side wall.
func (in *Input) newBox(shape *grid, play measure.Length) *box {
	return &box{shape: shape, outside: in.choice("corners") == "outside", tab: -1, allowance: -1, play: play}
}

// addBox adds the readings of a box: its base and its walls, which wall adds;
// prefix tells the names of several boxes apart.
func (d *draft) addBox(b *box, piece int, prefix string, width, height measure.Length, wall func(name string) int) {
	left, right := wall(prefix+"left wall"), wall(prefix+"right wall")
	bottom, top := wall(prefix+"bottom wall"), wall(prefix+"top wall")
	for _, other := range [...]int{right, bottom, top} { // unless one parameter fixes all
		if !d.plan.Problem.Readings[other].Fixed {
			d.equal(prefix+"walls", measure.Length{}, times(1, left), times(-1, other))
		}
	}
	b.across = append(append([]int{left}, d.baseWidths(b, prefix, width)...), right)
	b.up = []int{bottom, d.reading(prefix+"base height", height), top}
	if b.rolled {
		d.roll(b)
	}
	if b.halves != nil {
		d.addHalves(b, piece, prefix)
		return
	}
	d.strips(piece, b.across, b.up)
}

// trayBase adds the readings of a tray for the contents, piece 0 of several,
// with their fits, and says how long its side walls may be.
func (d *draft) trayBase(b *box, wall func(name string) int) (long Range) {
	w, h := b.insides()
	wide, high := Need{Width: 1, HalfCalipers: w}, Need{Height: 1, HalfCalipers: h}
	d.addBox(b, 0, "", d.ideal(wide), d.ideal(high), wall)
	d.fit(pattern.Width, wide, all(1, b.widths())...)
	d.fit(pattern.Height, high, times(1, b.height()))
	return high.span(d.in)
}

// beyond returns how many readings of an edge lie outside the walls.
func (b *box) beyond() int {
	if b.rolled {
		return 1
	}
	return 0
}

// widths returns the readings that make up the width of the base.
func (b *box) widths() []int { return b.across[b.beyond()+1 : len(b.across)-b.beyond()-1] }

// height returns the reading of the base's height.
func (b *box) height() int { return b.up[len(b.up)/2] }

// wall returns the reading of the left wall, as high as all.
func (b *box) wall() int { return b.across[b.beyond()] }

// inset is how far inside the corners of the base the tabs' scores lie.
func (b *box) inset(caliper measure.Length) measure.Length {
	if b.outside {
		return caliper.Neg()
	}
	return caliper
}

// addTab settles how long the tabs of a box are, whose walls are as high and
// whose side walls are as long as the ranges say.
func (d *draft) addTab(b *box, name string, high, long Range) error {
	in := d.in
	room := Range{Min: leastGlue.Add(b.play), Max: measure.Min(long.Min.Over(2), high.Min.Add(b.inset(in.Caliper)))}
	switch {
	case in.given("tab"):
		b.tab = d.fixed(name, "tab")
		return in.bounded("tab", room, "the corner tabs leave no room for glue, reach out of the corner or lie on one another", "choose another length, or leave it out")
	case !long.Min.Less(high.Max.Add(in.Caliper).Times(2)):
		b.tab = -1
	default:
		b.tab = d.anyOf(name, room)
	}
	return in.least("height", long.Min, room.Min.Times(2), "the corner tabs would lie on one another")
}

// lowest is how high walls must be at the least, so that there is room for glue
// and what goes in meets the tabs.
func (b *box) lowest(in *Input) measure.Length {
	least := measure.Sum(leastGlue, b.play, in.Caliper.Times(5))
	if b.rolled {
		least = least.Add(in.Allowance().Max)
	}
	return least
}

// thinnest is how thick contents must be at the least, so that the tabs and
// the rolled walls come down to them.
func (b *box) thinnest(in *Input) measure.Length {
	if b.rolled {
		return in.Allowance().Max.Add(in.Caliper.Times(2))
	}
	return in.Caliper.Times(2)
}
