package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// lidOverTray names the clearance between the two pieces.
const lidOverTray = "lid over tray"

// lidWall says how the readings of a lid's walls are added: as the depth says,
// or a little less than what comes down to the table.
func (d *draft) lidWall(full measure.Length) func(name string) int {
	if d.in.given("lid_depth") {
		return func(name string) int { return d.fixed(name, "lid_depth") }
	}
	return func(name string) int { return d.reading(name, full.Sub(d.in.Caliper)) }
}

// grip states that the walls of a lid whose depth is not given come down almost
// to the table, which is so far below the ends of walls as high as the tray's,
// and that they are as high as these if they can be: one stop then scores both
// pieces (common practice).
func (d *draft) grip(tray, lid int, below measure.Length) {
	if d.in.given("lid_depth") {
		return
	}
	d.anywhere("height of the lid's walls", Range{Max: d.in.Little()}, d.form(below, times(1, tray), times(-1, lid)))
	d.even(tray, lid)
}

// checkLid refuses walls that have no room for glue, and a lid that does not come
// down on the tray: both have a least height, and full ones of the lid a range.
func (in *Input) checkLid(tray, lid measure.Length, full Range) error {
	const low = "walls that low leave no room for glue"
	if in.given("lid_depth") {
		return fault.Join(
			in.bounded("lid_depth", Range{Min: lid, Max: full.Min},
				"the lid's walls leave no room for glue, or reach the table before the lid rests on the tray", "leave it out for a lid as deep as the box"),
			in.least("thickness", in.Thickness, tray, low))
	}
	return in.least("thickness", in.Thickness, measure.Max(tray, lid.Add(in.Little())), low)
}

// over returns how many half calipers the base of a box is wider and higher
// than that of a box inside it.
func (b *box) over(inner *box) (width, height int64) {
	w, h := b.insides()
	ow, oh := inner.outsides()
	return w + ow, h + oh
}
