// Package sheet plans how blanks come out of sheets: how many one sheet gives,
// how few sheets an order needs, and in which order to cut on a hand trimmer,
// which only cuts from edge to edge (guillotine cuts, of any number of stages).
//
// Plan answers an Order. A single blank, or a mix without counts, is solved
// exactly by dynamic programming over raster points. An order with counts gets
// the fewest sheets (or the least cost) with a proof where that is possible in
// the time allowed, and otherwise the best plan found with the greatest proven
// lower bound. Verify replays a finished plan and shares no code with the
// planner.
//
// The package sees rectangles only. It does not know enclosures, presets or
// the wire, it does not choose a sheet's grain, and it draws nothing.
package sheet
