package enclosure

import "creasefit/internal/measure"

// How much room the trade leaves, and how much a size may differ so that a plain
// ruler has a mark for it.

// glueMargin is left free beside the meeting line, so that no glue gets into a
// slit or under the other half (common practice).
var glueMargin = measure.Sixtyfourths(4)

// leastGlue is the narrowest strip of glue that holds (common practice).
var leastGlue = measure.Sixtyfourths(8)

// onRuler is so many 64ths of an inch on a ruler of inches, or so many millimetres.
func (in *Input) onRuler(sixtyfourths, millimetres int64) measure.Length {
	if in.Unit == measure.Millimetre {
		return measure.Millimetres(millimetres)
	}
	return measure.Sixtyfourths(sixtyfourths)
}

// Beside is what a notch, a slit or a slot leaves of a face at the least: 1/4
// in and three calipers (common practice).
func (in *Input) Beside() measure.Length {
	return measure.Max(measure.Sixtyfourths(16), in.Caliper.Times(3))
}

// Little is by how much a free edge may miss its place: some mark of 1/4 in or
// 5 mm always lies within it to both sides.
func (in *Input) Little() measure.Length {
	return in.onRuler(8, 3)
}

// Allowance is what a carton may allow for its caliper: at least that, and at
// most so much more that a plain ruler has a mark for it.
func (in *Input) Allowance() Range {
	return Range{Min: in.Caliper, Max: in.Caliper.Add(in.onRuler(8, 1))}
}

// slotRoom is how much wider than it must be a slot may be: some mark of 1/16
// in or 1 mm always lies within it.
func (in *Input) slotRoom() measure.Length {
	return in.onRuler(4, 1)
}

// pageMargin is the most that the page reaches over the contents if its height
// is not given: some mark of the coarsest step lies within it.
var pageMargin = Range{Max: measure.Sixtyfourths(32)}

// thinnestSlot is the narrowest slot that is cut out (common practice).
var thinnestSlot = measure.Sixtyfourths(2)
