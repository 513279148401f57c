package tell

import (
	"strings"

	"creasefit/api/wire"
)

// matchTable has one row a pair, the best first. The room of each axis is that
// with the least if there are several.
func matchTable(a *wire.Matches) table {
	t := table{header: MatchColumns}
	for i := range a.Ranked {
		r := &a.Ranked[i]
		t.rows = append(t.rows, []any{r.ID, yesNo(r.Fits), r.Verdict, r.Chance, leastRoom(a, r, "width"), leastRoom(a, r, "height"), leastRoom(a, r, "thickness"), strings.Join(r.Why, "; ")})
	}
	return t
}

// leastRoom is the least room along an axis in the unit of the answer, empty if none
// is known.
func leastRoom(a *wire.Matches, r *wire.Ranked, axis string) any {
	var least *wire.Length
	for i := range r.Room {
		if room := &r.Room[i]; room.Axis == axis && (least == nil || room.Left.MM < least.MM) {
			least = &room.Left
		}
	}
	switch {
	case least == nil:
		return ""
	case a.Unit == "in":
		return least.In
	default:
		return least.MM
	}
}
