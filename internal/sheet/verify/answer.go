package verify

import (
	"math"
	"slices"

	"creasefit/internal/sheet"
)

// used checks the share of the paper that became blanks, to a millionth.
func (v *verifier) used(a sheet.Answer) {
	blanks, paper := 0.0, 0.0
	for i, it := range v.order.Items {
		blanks += float64(v.made[i]) * it.Width.Millimetres() * it.Height.Millimetres()
	}
	for i, s := range v.order.Sheets {
		paper += float64(v.cut[i]) * s.Width.Millimetres() * s.Height.Millimetres()
	}
	v.expect(blanks > 0 && math.Abs(blanks/paper-a.Used) <= 1e-6, "%g of the area is used, not %g", blanks/paper, a.Used)
}

// usable checks the offcuts worth keeping, the largest first.
func (v *verifier) usable(a sheet.Answer) {
	left := map[sheet.Extent]int{}
	for _, s := range a.Plans {
		for _, r := range s.Offcuts {
			if r.Width.Compare(v.order.Least) >= 0 && r.Height.Compare(v.order.Least) >= 0 {
				left[sheet.Extent{Width: r.Width, Height: r.Height}] += s.Times
			}
		}
	}
	before := math.Inf(1)
	for _, u := range a.Usable {
		v.expect(left[u.Extent] == u.Times, "%d usable offcuts are %v, not %d", left[u.Extent], u.Extent, u.Times)
		delete(left, u.Extent)
		area := u.Width.Millimetres() * u.Height.Millimetres()
		v.expect(area <= before, "the usable offcuts are not the largest first")
		before = area
	}
	v.expect(len(left) == 0, "usable offcuts of %d sizes are not listed", len(left))
}

// ready checks when all of each item is made, and that what has priority is cut first.
func (v *verifier) ready(a sheet.Answer) {
	sheets, last := make([]int, len(v.order.Items)), 0
	cut := 0
	for i := range a.Plans {
		s := &a.Plans[i]
		cut += s.Times
		for _, p := range s.Placed {
			if p.Item >= 0 && p.Item < len(sheets) {
				sheets[p.Item] = cut
			}
		}
		rank := v.rank(s)
		v.expect(last <= rank, "plan %d has priority over one before it", i+1)
		last = rank
	}
	v.expect(slices.Equal(sheets, a.Ready), "all is made after %v sheets, not %v", sheets, a.Ready)
}

// rank is the least priority of the items on a sheet, those without one last.
func (v *verifier) rank(s *sheet.Sheets) int {
	first := math.MaxInt
	for _, p := range s.Placed {
		if p.Item >= 0 && p.Item < len(v.order.Items) && v.order.Items[p.Item].Priority > 0 {
			first = min(first, v.order.Items[p.Item].Priority)
		}
	}
	return first
}
