package enclosure

import (
	"slices"
	"strconv"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
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

// oneByOne are the parameters of the cells of a row.
func oneByOne(name, extent string) []Param {
	params := make([]Param, mostCells)
	for i := range params {
		number := strconv.Itoa(i + 1)
		params[i] = lengthParam(name+"_"+number, 5, 1000,
			"How "+extent+" "+name+" "+number+" is, to the middle of its strips; a share of what is left if not given.").seldom()
	}
	return params
}

// cells adds the readings of a row of cells that together fill a size.
func (d *draft) cells(name, count, given string, size measure.Length) ([]int, error) {
	in := d.in
	c := cellRow{sources: in.cellSources(name, given, in.count(count)), rest: size.Sub(in.middle()),
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
		label := name + " " + strconv.Itoa(i+1)
		if source != "" {
			cells[i] = d.fixed(label, source)
			continue
		}
		share := c.rest.Over(c.free) // of what is left
		c.rest, c.free = c.rest.Sub(share), c.free-1
		cells[i] = d.between(label, share, c.least, measure.Largest())
		if free >= 0 {
			d.even(free, cells[i])
		}
		free = cells[i]
	}
	return cells, fault.Join(in.noSuchCell(name, len(cells)), in.boundCells(&c, count, size.Sub(in.Fit.Max)))
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
func (in *Input) cellSources(name, all string, n int64) []string {
	sources := make([]string, n)
	for i := range sources {
		if own := name + "_" + strconv.Itoa(i+1); in.given(own) {
			sources[i] = own
		} else if in.given(all) && i < len(sources)-1 {
			sources[i] = all
		}
	}
	return sources
}

// noSuchCell refuses sizes of cells that there are not.
func (in *Input) noSuchCell(name string, n int) error {
	var faults fault.Faults
	for i := n; i < mostCells; i++ {
		if own := name + "_" + strconv.Itoa(i+1); in.given(own) {
			faults = append(faults, fault.Fault{Code: fault.Conflict, Field: own, Detail: "there are only " + strconv.Itoa(n) + " " + name + "s",
				Hint: "ask for more " + name + "s, or leave " + own + " out"})
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
