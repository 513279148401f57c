package search

import "creasefit/internal/sheet"

// pattern is one way to fill a board: how many pieces of each kind it gives,
// and where its layout comes from.
type pattern struct {
	board  *board
	counts []int32
	draw   func() *layout
}

// gain is the value of the pieces of a pattern that are still wanted.
func (pt *pattern) gain(value []int64, left []int32) int64 {
	sum := int64(0)
	for k, n := range pt.counts {
		sum += int64(min(n, left[k])) * value[k]
	}
	return sum
}

// tally counts the pieces of a layout.
func tally(l *layout, counts []int32) {
	switch {
	case l == nil:
	case l.low == nil:
		counts[l.kind]++
	default:
		tally(l.low, counts)
		tally(l.high, counts)
	}
}

// only keeps the pieces of a layout that are in counts, which it uses up; the
// others become waste.
func only(l *layout, counts []int32) *layout {
	if l == nil {
		return nil
	}
	if l.low == nil {
		if counts[l.kind] == 0 {
			return nil
		}
		counts[l.kind]--
		return l
	}
	return beside(l.axis, only(l.low, counts), only(l.high, counts))
}

// beside joins two layouts, either of which may be empty.
func beside(a sheet.Axis, low, high *layout) *layout {
	switch {
	case low == nil:
		return high
	case high == nil:
		return low
	default:
		return &layout{axis: a, low: low, high: high}
	}
}

// drawn is a pattern of a finished layout.
func drawn(b *board, l *layout, kinds int) pattern {
	pt := pattern{board: b, counts: make([]int32, kinds), draw: func() *layout { return l }}
	tally(l, pt.counts)
	return pt
}
