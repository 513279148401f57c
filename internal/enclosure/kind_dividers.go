package enclosure

import (
	"slices"
	"strconv"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Dividers are strips that stand in a tray or a tin, cross in half-lap slots
// and make cells: those along the width are slotted from the top, those along
// the height from the bottom, each a little more than half. The width, height
// and thickness are those of the room that they stand in.
//
// A row of cells is even, or as wide as given: all but the last, or one by one;
// what is not given shares what is left.
//
// With W, H and T of the room, t the caliper, c the clearances, m columns and n
// rows, all lengths from edge to edge or to the middle of a slot:
//
//	columns           = (W - c_w) / m each, so that slot k of a strip lies at k / m of it
//	rows              = (H - c_h) / n each
//	strip height      = T - 1/32 to 5/32 in, so that no strip stands out
//	the slots' depths = strip height + 1/32 to 5/32 in together, so that all seat
//	slot width        = t + play, and up to 1/16 in more
//
// In a cross-lap each piece is notched half of its thickness, as wide as the
// other is thick, a deep cut in one met by a shallow one in the other (W. Noyes,
// Handwork in Wood, 1910, joint 14). Stock that is thinner than scissors can
// take out is slit, and pressed open.
func Dividers() *Kind {
	return &Kind{
		Name:  "dividers",
		Title: "Dividers",
		Help:  "Strips that cross in half-lap slots and part a tray or a tin into cells; the sizes are those inside it.",
		Words: german("Fächereinteilung",
			"Streifen, die sich in halb tiefen Schlitzen kreuzen und einen Kasten in Fächer teilen."),
		Needs: []string{"width", "height", "thickness"},
		Params: slices.Concat([]Param{
			{Name: "columns", Type: CountParam,
				Help: "How many cells lie along the width.", DefaultCount: 3, LeastCount: 2, GreatestCount: mostCells},
			{Name: "rows", Type: CountParam, Help: "How many cells lie along the height.", DefaultCount: 2, LeastCount: 2, GreatestCount: mostCells},
			lengthParam("column_width", 5, 1000, "How wide every column but the last is, to the middle of its strip; all the same if not given."),
			lengthParam("row_height", 5, 1000, "How high every row but the last is, to the middle of its strip; all the same if not given."),
			{Name: "slots", Type: ChoiceParam, Advanced: true, Choices: []string{"auto", "slit", "slot"},
				Help: "Slits without a width, or slots; auto slits stock under 1/32 in (0.8 mm)."},
			lengthParam("play", 0, 5, "How much wider than the stock a slot is at the least; none if not given.").seldom(),
		}, columnCells.oneByOne("wide"), rowCells.oneByOne("high")),
		Plan: planDividers,
	}
}

// dividersReadings are the indices of the dividers' readings in their problem.
type dividersReadings struct {
	columns, rows    []int
	height           int // of all strips
	fromTop, fromLow int // depths of the slots
	slot             int // width of the slots, -1 for slits
	before           int // what of a slot lies before its mark
}

// stripInSlot names the clearance between the strips.
const stripInSlot = "strip in slot"

func planDividers(in *Input) (*Plan, error) {
	d, r := newDraft(in), &dividersReadings{slot: -1}
	wide, high := Need{Width: -1}, Need{Height: -1}
	var columns, rows error
	r.columns, columns = d.cells(&columnCells, in.Width)
	r.rows, rows = d.cells(&rowCells, in.Height)
	room := in.seating()
	least := in.Thickness.Sub(room.Max)
	r.height = d.between("strip height", in.Thickness.Sub(middle(room)), measure.Max(least, measure.Nanometres(1)), measure.Largest())
	d.nest("", pattern.Width, in.Fit, wide, all(-1, r.columns)...)
	d.nest("", pattern.Height, in.Fit, high, all(-1, r.rows)...)
	d.nest("", pattern.Thickness, room, Need{Thickness: -1}, times(-1, r.height))
	d.halfLap(r, least)
	d.strips(0, r.columns, []int{r.height})
	d.strips(1, r.rows, []int{r.height})
	d.joined("width", in.Width)
	d.joined("height", in.Height)
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern { return d.layDividers(r, sizes) }
	var slit error
	if in.choice("slots") == "slit" {
		slit = in.noSlit("slots", "leave slots out: board gets slots as wide as it is thick")
	}
	return d.plan, fault.Join(columns, rows, slit,
		in.least("thickness", in.Thickness, measure.Sum(room.Max, in.Beside()).Times(2), "strips that low leave too little beside their slots"))
}

// seating is how much lower than their room strips are, and how much deeper
// than these their slots together: never flush, and some mark of 1/8 in or 3 mm
// always lies within it.
func (in *Input) seating() Range {
	return Range{Min: in.Little().Over(4), Max: in.Little().Times(5).Over(4)}
}

// halfLap adds the readings of the slots; strips are at least as high as said.
func (d *draft) halfLap(r *dividersReadings, least measure.Length) {
	in := d.in
	half := in.Thickness.Over(2) // of strip and seating, in the middle of their windows
	deepest := measure.Max(least.Sub(in.Beside()), measure.Nanometres(1))
	r.fromTop = d.between("slots from the top", half, measure.Nanometres(1), deepest)
	r.fromLow = d.between("slots from the bottom", in.Thickness.Sub(half), measure.Nanometres(1), deepest)
	d.nest(stripInSlot, pattern.Thickness, in.seating(), Need{}, times(1, r.fromTop), times(1, r.fromLow), times(-1, r.height))
	d.even(r.fromTop, r.fromLow)
	play := in.length("play")
	if choice := in.choice("slots"); choice == "slit" || choice == "auto" && in.Caliper.Add(play).Less(thinnestSlot) {
		return
	}
	room := Range{Min: play, Max: play.Add(in.slotRoom())}
	r.slot = d.between("slot width", in.Caliper.Add(middle(room)), in.Caliper.Add(play), measure.Largest())
	d.nest(stripInSlot, pattern.Width, room, Need{HalfCalipers: 2}, times(1, r.slot))
	r.before, _ = d.parted("slot", r.slot, "slot before its mark", "slot after its mark", measure.Length{}, measure.Length{})
}

// joined warns of strips that are longer than the sheet.
func (d *draft) joined(along string, length measure.Length) {
	in, lap := d.in, measure.Sixtyfourths(32)
	long := length.Sub(in.middle())
	if in.Sheet.IsZero() || !in.Sheet.Less(long) || !lap.Less(in.Sheet) {
		return
	}
	each, rest := in.Sheet.Sub(lap).Nanometres(), long.Sub(lap).Nanometres()
	d.warn("strip-join", "The strips along the "+along+" are longer than the sheet: make each of "+strconv.FormatInt((rest+each-1)/each, 10)+
		" parts or more that lap by 1/2 in (13 mm) within a cell, clear of the slots, and glue the laps.")
}

// layDividers lays out a strip of each direction and stands all of them in
// their places.
func (d *draft) layDividers(r *dividersReadings, sizes []measure.Length) pattern.Pattern {
	s := slottedStrip{laid: &d.laid, height: sizes[r.height], slit: r.slot < 0}
	if !s.slit {
		s.before, s.after = sizes[r.before], sizes[r.slot].Sub(sizes[r.before])
	}
	aside := s.after.Sub(s.before).Over(2) // the middle of a slot, from its mark
	across := s.lay("width strip", len(r.rows)-1, d.cellsOf(r.columns, sizes), sizes[r.fromTop], true)
	up := s.lay("height strip", len(r.columns)-1, d.cellsOf(r.rows, sizes), sizes[r.fromLow], false)
	p := d.around(across, up)
	p.Cavity.Into, p.Locks = true, []pattern.Lock{{Name: stripInSlot, A: 0, B: 1, Slotted: r.slot >= 0}}
	x, y := d.laid.Positions(&across.Strips[0]), d.laid.Positions(&up.Strips[0])
	p.Places = make([]pattern.Place, 0, len(x)+len(y))
	for _, at := range y[1 : len(y)-1] {
		p.Places = append(p.Places, pattern.Place{Y: at.Add(aside), Lie: pattern.AlongWidth})
	}
	for _, at := range x[1 : len(x)-1] {
		p.Places = append(p.Places, pattern.Place{Piece: 1, On: 1, X: at.Add(aside), Lie: pattern.AlongHeight})
	}
	return p
}

// cellsOf returns the cells of some readings.
func (d *draft) cellsOf(readings []int, sizes []measure.Length) []pattern.Cell {
	cells := d.laid.Cells.Take(len(readings))
	for i, reading := range readings {
		cells[i] = pattern.Cell{Name: d.plan.Problem.Readings[reading].Name, Size: sizes[reading]}
	}
	return cells
}

// slottedStrip is how strips are made: how high they are, and how much of their
// slots lies before and after their marks unless these are slits.
type slottedStrip struct {
	laid          *pattern.Memory
	height        measure.Length
	before, after measure.Length
	slit          bool
}

// slots are where a strip is slotted; nothing is scored there.
var slots = slotScores()

func slotScores() []pattern.Score {
	scores := make([]pattern.Score, mostCells-1)
	for i, name := range numbered("slot ", len(scores)) {
		scores[i].Name = name
	}
	return scores
}

// lay lays out a strip with a slot between each two of its cells, from the top
// or from the bottom.
func (s *slottedStrip) lay(name string, quantity int, cells []pattern.Cell, depth measure.Length, top bool) pattern.Piece {
	n, strips, high := len(cells)-1, s.laid.Strips.Take(2), s.laid.Cells.Take(1)
	high[0] = pattern.Cell{Name: "strip height", Size: s.height}
	strips[0] = pattern.Strip{Across: pattern.Width, Cells: cells, Scores: slots[:n:n]}
	strips[1] = pattern.Strip{Across: pattern.Height, Cells: high}
	at := s.laid.Positions(&strips[0])
	p := pattern.Piece{Name: name, Quantity: quantity, Width: at[n+1], Height: s.height, Strips: strips,
		Panels: s.laid.Panels.Take(1), Cuts: s.laid.Cuts.Take(n)}
	for i := range p.Cuts {
		p.Cuts[i] = s.cut(slots[i].Name, at[i+1], depth, top)
	}
	p.Panels[0] = pattern.Panel{Name: name, Outline: s.outline(&p, top)}
	return p
}

// outline is that of a strip with its slots; slits leave no trace.
func (s *slottedStrip) outline(p *pattern.Piece, top bool) []pattern.Vertex {
	none, edge, cut := measure.Length{}, 1, 4*len(p.Cuts) // the slots come in after the corner before their edge
	if top {
		edge = 3
	}
	if s.slit {
		cut = 0
	}
	outline := s.laid.Corners.Take(4 + cut)
	for i, corner := range [...]pattern.Point{{X: none, Y: none}, {X: p.Width, Y: none}, {X: p.Width, Y: s.height}, {X: none, Y: s.height}} {
		if i >= edge {
			i += cut
		}
		outline[i] = pattern.Vertex{Point: corner}
	}
	for i := range cut {
		at := edge + i
		if top { // from the right
			at = edge + cut - 1 - i
		}
		outline[at] = p.Cuts[i/4].Path[i%4]
	}
	return outline
}

// cut is a slot as it is made: a slit has no width until a strip is in it.
func (s *slottedStrip) cut(name string, x, depth measure.Length, top bool) pattern.Cut {
	c := pattern.Cut{Name: name, Kind: pattern.Slit, From: "bottom", At: x, Depth: depth}
	y, inner := measure.Length{}, depth
	if top {
		c.From, y, inner = "top", s.height, s.height.Sub(depth)
	}
	if s.slit {
		c.Path = s.laid.Polygon(pattern.At(x, y), pattern.At(x, inner))
		return c
	}
	c.Kind, c.Width, c.Before = pattern.Slot, s.before.Add(s.after), s.before
	left, right := x.Sub(s.before), x.Add(s.after)
	c.Path = s.laid.Polygon(pattern.At(left, y), pattern.At(left, inner), pattern.At(right, inner), pattern.At(right, y))
	return c
}
