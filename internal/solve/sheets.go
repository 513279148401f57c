package solve

import (
	"math/bits"
	"slices"

	"creasefit/internal/measure"
)

// mostBoxed is how many blanks are put together in every way that there is.
const mostBoxed = 6

// SheetsForOne is how many sheets of the request one enclosure takes, cut from edge
// to edge and its blanks turned as it comes; 0 if none is named or a blank is
// larger. Of more than six blanks those alike are counted in rows and columns, so
// that a plan of the order may need fewer.
func (s *Solution) SheetsForOne() int {
	width, height := s.Request.SheetWidth, s.Request.SheetHeight
	if width.IsZero() {
		return 0
	}
	var boxes []box
	rows := 0
	for i := range s.Pattern.Pieces {
		p := &s.Pattern.Pieces[i]
		blank := box{p.Width, p.Height}
		most := max(blank.inRows(width, height), blank.inRows(height, width))
		if most == 0 {
			return 0
		}
		rows += (p.Quantity + most - 1) / most
		for range p.Quantity {
			boxes = append(boxes, blank)
		}
	}
	if len(boxes) > mostBoxed {
		return rows
	}
	return fewest(boxes, box{width, height})
}

// box is a rectangle.
type box struct{ width, height measure.Length }

// inRows is how many boxes lie side by side in rows on a sheet.
func (b box) inRows(width, height measure.Length) int {
	return int(width.Nanometres()/b.width.Nanometres()) * int(height.Nanometres()/b.height.Nanometres())
}

// within reports whether a box lies in another as they stand.
func (b box) within(o box) bool { return within(b.width, b.height, o.width, o.height) }

// fewest is the least number of sheets that give all boxes: every set of boxes
// is on one sheet, or parted over two and more. Of a set all boxes around it are
// known that a cut from edge to edge parts into those of its halves, which are
// all that such cuts give.
func fewest(boxes []box, sheet box) int {
	around, sheets := make([][]box, 1<<len(boxes)), make([]int, 1<<len(boxes))
	for set := 1; set < len(around); set++ {
		if set&(set-1) == 0 {
			one := boxes[bits.TrailingZeros(uint(set))]
			around[set] = []box{one, {one.height, one.width}}
		}
		sheets[set] = len(boxes)
		for part := (set - 1) & set; part > set/2; part = (part - 1) & set {
			rest := set &^ part
			around[set] = joined(around[set], around[part], around[rest], sheet)
			sheets[set] = min(sheets[set], sheets[part]+sheets[rest])
		}
		if slices.ContainsFunc(around[set], func(b box) bool { return b.within(sheet) }) {
			sheets[set] = 1
		}
	}
	return sheets[len(sheets)-1]
}

// joined adds the boxes that lie around two side by side or one above the other,
// as far as they lie in the sheet and no smaller one is known.
func joined(list, a, b []box, sheet box) []box {
	for _, one := range a {
		for _, two := range b {
			beside := box{one.width.Add(two.width), measure.Max(one.height, two.height)}
			above := box{measure.Max(one.width, two.width), one.height.Add(two.height)}
			for _, both := range [...]box{beside, above} {
				if both.within(sheet) && !slices.ContainsFunc(list, func(known box) bool { return known.within(both) }) {
					list = append(list, both)
				}
			}
		}
	}
	return list
}
