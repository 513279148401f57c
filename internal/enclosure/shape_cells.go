package enclosure

import (
	"slices"
	"strconv"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// mostCells is how many cells a row has at the most.
const mostCells = 8

// numbered returns a word with each of the numbers from 1 on.
func numbered(word string, n int) []string {
	names := make([]string, n)
	for i := range names {
		names[i] = word + strconv.Itoa(i+1)
	}
	return names
}

// cellWords are what the readings of a row's cells are called, and the parameters for
// how many there are, for all but the last and for each.
type cellWords struct {
	count, all    string
	readings, own []string
}

var (
	columnCells = cellWords{"columns", "column_width", numbered("column ", mostCells), numbered("column_", mostCells)}
	rowCells    = cellWords{"rows", "row_height", numbered("row ", mostCells), numbered("row_", mostCells)}
)

// oneByOne are the parameters of the cells of a row.
func (w *cellWords) oneByOne(extent string) []Param {
	params := make([]Param, mostCells)
	for i := range params {
		params[i] = lengthParam(w.own[i], 5, 1000,
			"How "+extent+" "+w.readings[i]+" is, to the middle of its strips; a share of what is left if not given.").seldom()
	}
	return params
}

// cells adds the readings of a row of cells that together fill a size.
func (d *draft) cells(w *cellWords, size measure.Length) ([]int, error) {
	in := d.in
	c := cellRow{sources: in.cellSources(w), rest: size.Sub(in.middle()),
		least: measure.Sum(in.Beside(), in.Caliper, in.length("play"), in.slotRoom())}
	for _, source := range c.sources {
		if source == "" {
			c.free++
		} else {
			c.rest = c.rest.Sub(in.length(source))
		}
	}
	cells, free := make([]int, len(c.sources)), -1
	for i, source := range c.sources {
		if source != "" {
			cells[i] = d.fixed(w.readings[i], source)
			continue
		}
		share := c.rest.Over(c.free) // of what is left
		c.rest, c.free = c.rest.Sub(share), c.free-1
		cells[i] = d.between(w.readings[i], share, c.least, measure.Largest())
		if free >= 0 { // the cells are alike: the least come first
			d.plan.Problem.Even = append(d.plan.Problem.Even, rounding.Pair{A: free, B: cells[i], Rising: true})
		}
		free = cells[i]
	}
	return cells, fault.Join(in.noSuchCell(w, len(cells)), in.boundCells(&c, w.count, size.Sub(in.Fit.Max)))
}

// cellRow is a row of cells while it is made.
type cellRow struct {
	sources []string // the parameter that fixes each, "" for none
	free    int64    // cells that nothing fixes and that have no reading yet
	rest    measure.Length
	least   measure.Length // that a cell must have, so that enough paper is left beside its slots
}

// cellSources names the parameter that fixes each cell: its own, or the one for
// all but the last.
func (in *Input) cellSources(w *cellWords) []string {
	sources := make([]string, in.count(w.count))
	for i := range sources {
		if in.given(w.own[i]) {
			sources[i] = w.own[i]
		} else if in.given(w.all) && i < len(sources)-1 {
			sources[i] = w.all
		}
	}
	return sources
}

// noSuchCell refuses sizes of cells that there are not.
func (in *Input) noSuchCell(w *cellWords, n int) error {
	var faults fault.Faults
	for _, own := range w.own[n:] {
		if in.given(own) {
			faults = append(faults, fault.Fault{Code: fault.Conflict, Field: own, Detail: "there are only " + strconv.Itoa(n) + " " + w.count,
				Hint: "ask for more " + w.count + ", or leave " + own + " out"})
		}
	}
	return faults.Err()
}

// boundCells refuses sizes that leave too little of the other cells, more cells
// than there is room for, and a row in which no cell can take up what is left.
func (in *Input) boundCells(c *cellRow, count string, most measure.Length) error {
	times, known := map[string]int64{}, measure.Length{}
	for _, source := range c.sources {
		if times[source]++; source == "" {
			known = known.Add(c.least)
		} else {
			known = known.Add(in.length(source))
		}
	}
	n := int64(len(c.sources))
	last := c.sources[n-1]
	switch times[""] {
	case 0:
		return fault.Fault{Code: fault.Conflict, Field: last, Detail: "one of the cells must take up what is left", Hint: "leave " + last + " out"}
	case n:
		return in.roomFor(count, n, most, c.least)
	}
	var errs []error
	for _, source := range slices.Compact(slices.Sorted(slices.Values(c.sources))) {
		if source != "" {
			others := known.Sub(in.length(source).Times(times[source]))
			errs = append(errs, in.bounded(source, Range{Min: c.least, Max: most.Sub(others).Over(times[source])},
				"that leaves too little of the others, or too little paper beside the slots", "choose another size, or fewer of them"))
		}
	}
	return fault.Join(errs...)
}

// roomFor refuses more cells than there is room for.
func (in *Input) roomFor(count string, n int64, size, least measure.Length) error {
	most := size.Nanometres() / least.Nanometres()
	if n <= most {
		return nil
	}
	expected := "at most " + strconv.FormatInt(most, 10)
	if most < 2 {
		expected = "a larger room: there is not enough for two"
	}
	return fault.Fault{Code: fault.Impossible, Field: count, Detail: "so many leave too little paper beside the slots", Expected: expected, Hint: "make fewer cells"}
}
