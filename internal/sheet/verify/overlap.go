package verify

import (
	"slices"

	"creasefit/internal/sheet"
)

// apart checks that no two blanks share any area: a line sweeps over the sheet
// from left to right and keeps the blanks that it crosses in order of their
// height, each of which must end before the next begins.
func (v *verifier) apart(placed []sheet.Placement) {
	begin, end := slices.Clone(placed), slices.Clone(placed)
	slices.SortFunc(begin, func(p, q sheet.Placement) int { return p.X.Compare(q.X) })
	slices.SortFunc(end, func(p, q sheet.Placement) int { return p.X.Add(p.Width).Compare(q.X.Add(q.Width)) })
	var crossed []sheet.Placement
	for _, p := range begin {
		for len(end) > 0 && end[0].X.Add(end[0].Width).Compare(p.X) <= 0 {
			if at, there := slices.BinarySearchFunc(crossed, end[0], lower); there {
				crossed = slices.Delete(crossed, at, at+1)
			}
			end = end[1:]
		}
		at, _ := slices.BinarySearchFunc(crossed, p, lower)
		v.expect(at == len(crossed) || p.Y.Add(p.Height).Compare(crossed[at].Y) <= 0, "item %d overlaps another at %v, %v", p.Item, p.X, p.Y)
		v.expect(at == 0 || crossed[at-1].Y.Add(crossed[at-1].Height).Compare(p.Y) <= 0, "item %d overlaps another at %v, %v", p.Item, p.X, p.Y)
		crossed = slices.Insert(crossed, at, p)
	}
}

// lower orders blanks that one line crosses.
func lower(p, q sheet.Placement) int { return p.Y.Compare(q.Y) }
