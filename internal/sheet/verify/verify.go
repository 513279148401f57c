// Package verify replays finished cut plans. It knows what an order and a plan
// say and nothing of how plans are found: no code that searches or writes plans
// is used here.
package verify

import (
	"errors"
	"fmt"
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// Plan replays a finished plan from its trees and again from its steps, and
// returns everything that is wrong with it: sizes that are not exact, demand
// not met, grain not kept, kerf or margin wrong, a cut longer than the trimmer,
// blanks or offcuts that overlap, totals that do not add up, what has priority not first.
func Plan(o sheet.Order, a sheet.Answer) error {
	v := &verifier{order: o, made: make([]int, len(o.Items)), cut: make([]int, len(o.Sheets))}
	for i, s := range a.Plans {
		v.at = fmt.Sprintf("plan %d", i+1)
		v.plan(s)
	}
	v.at = "answer"
	v.totals(a)
	v.used(a)
	v.usable(a)
	v.ready(a)
	v.work(a)
	return errors.Join(v.wrong...)
}

// verifier gathers what is wrong.
type verifier struct {
	order sheet.Order
	at    string // where the replay is
	made  []int  // blanks of each item
	cut   []int  // sheets of each size
	turns int    // of parts between two cuts, over all sheets
	wrong []error
}

// expect notes a fault unless ok.
func (v *verifier) expect(ok bool, format string, args ...any) {
	if !ok {
		v.wrong = append(v.wrong, fmt.Errorf("%s: %s", v.at, fmt.Sprintf(format, args...)))
	}
}

// plan checks one way to cut a sheet.
func (v *verifier) plan(s sheet.Sheets) {
	v.expect(s.Times > 0, "it is cut %d times", s.Times)
	if s.Stock < 0 || s.Stock >= len(v.order.Sheets) {
		v.expect(false, "there is no sheet %d", s.Stock)
		return
	}
	v.cut[s.Stock] += s.Times
	stock, m := v.order.Sheets[s.Stock], v.order.Margin
	inside := sheet.Rect{X: m, Y: m, Width: stock.Width.Sub(m).Sub(m), Height: stock.Height.Sub(m).Sub(m)}
	v.expect(s.Usable == inside, "the tree starts at %v, not inside the margins", s.Usable)
	if s.Tree == nil {
		v.expect(false, "it has no tree")
		return
	}
	found := map[sheet.Placement]bool{}
	v.tree(s, s.Tree, sheet.Rect{Width: inside.Width, Height: inside.Height}, found)
	v.placements(s, found)
	v.steps(s, found)
	for _, p := range s.Placed {
		if p.Item >= 0 && p.Item < len(v.made) { // else it was told of
			v.made[p.Item] += s.Times
		}
	}
}

// tree replays one node and notes its blanks and offcuts.
func (v *verifier) tree(s sheet.Sheets, n *sheet.Node, r sheet.Rect, found map[sheet.Placement]bool) {
	if n.Low == nil || n.High == nil {
		v.expect(n.Low == nil && n.High == nil, "a cut has only one part")
		if n.Item != sheet.Offcut {
			v.blank(s, n.Item, n.Turned, r)
		}
		if n.Item != sheet.Offcut || !empty(r) { // else the kerf took it whole
			found[sheet.Placement{Item: n.Item, Turned: n.Turned, Rect: r}] = true
		}
		return
	}
	length := r.Height
	if n.Cut == sheet.Height {
		length = r.Width
	}
	v.short(length)
	low, high, kept := v.split(r, n.Cut, n.At)
	v.expect(kept || n.High.Low == nil && n.High.Item == sheet.Offcut, "the kerf takes away a part that is used")
	v.tree(s, n.Low, low, found)
	v.tree(s, n.High, high, found)
}

// short checks that the trimmer makes a cut this long.
func (v *verifier) short(length measure.Length) {
	v.expect(v.order.Trimmer.IsZero() || length.Compare(v.order.Trimmer) <= 0, "a cut of %v is longer than the trimmer", length)
}

// split cuts a rectangle; kept is false if the kerf leaves nothing above.
func (v *verifier) split(r sheet.Rect, cut sheet.Axis, at measure.Length) (low, high sheet.Rect, kept bool) {
	low, high = r, r
	size, start := &high.Width, &high.X
	if cut == sheet.Height {
		size, start = &high.Height, &high.Y
		low.Height = at
	} else {
		low.Width = at
	}
	v.expect(at.Sign() > 0 && at.Compare(*size) <= 0, "a cut at %v is outside of %v", at, *size)
	end := start.Add(*size)
	*size = size.Sub(at).Sub(v.order.Kerf)
	kept = size.Sign() > 0
	if !kept {
		*size = measure.Length{}
	}
	*start = end.Sub(*size)
	return low, high, kept
}

// blank checks that a rectangle is an item, lying as its grain allows.
func (v *verifier) blank(s sheet.Sheets, item int, turned bool, r sheet.Rect) {
	if item < 0 || item >= len(v.order.Items) {
		v.expect(false, "there is no item %d", item)
		return
	}
	it, along := v.order.Items[item], v.order.Sheets[s.Stock].Grain
	v.expect(it.Paper == v.order.Sheets[s.Stock].Paper, "item %d is cut from another paper", item)
	w, h := it.Width, it.Height
	if turned {
		w, h = h, w
	}
	v.expect(r.Width == w && r.Height == h, "item %d is %v by %v, not %v by %v", item, r.Width, r.Height, w, h)
	switch {
	case it.Grain == sheet.AnySide:
	case turned:
		v.expect(along == sheet.AlongWidth && it.Grain == sheet.AlongHeight || along == sheet.AlongHeight && it.Grain == sheet.AlongWidth, "item %d lies across its grain", item)
	default:
		v.expect(along == it.Grain, "item %d lies across its grain", item)
	}
}

// placements compares the listed blanks and offcuts with those of the tree and
// checks that they lie on the usable part without overlap.
func (v *verifier) placements(s sheet.Sheets, found map[sheet.Placement]bool) {
	listed := slices.Clone(s.Placed)
	for _, r := range s.Offcuts {
		listed = append(listed, sheet.Placement{Item: sheet.Offcut, Rect: r})
	}
	v.expect(len(listed) == len(found), "%d blanks and offcuts are listed, the tree has %d", len(listed), len(found))
	for _, p := range listed {
		v.expect(found[p], "item %d at %v, %v is not in the tree", p.Item, p.X, p.Y)
		v.expect(p.X.Sign() >= 0 && p.Y.Sign() >= 0 && p.X.Add(p.Width).Compare(s.Usable.Width) <= 0 &&
			p.Y.Add(p.Height).Compare(s.Usable.Height) <= 0, "item %d lies outside of the sheet", p.Item)
	}
	v.apart(listed)
}

// counted reports whether the order says how many it wants.
func (v *verifier) counted() bool {
	return !slices.ContainsFunc(v.order.Items, func(it sheet.Item) bool { return it.Count == 0 })
}

// totals checks demand, stock and the figures of the answer.
func (v *verifier) totals(a sheet.Answer) {
	sheets, offcuts, cost := 0, 0, int64(0)
	for i, n := range v.cut {
		sheets += n
		if v.order.Sheets[i].Offcut {
			offcuts += n
		}
		cost += int64(n) * v.order.Sheets[i].Price
		v.expect(v.order.Sheets[i].Available == 0 || n <= v.order.Sheets[i].Available, "%d sheets of size %d are cut, more than there are", n, i)
	}
	v.expect(sheets == a.Sheets, "%d sheets are cut, not %d", sheets, a.Sheets)
	v.expect(offcuts == a.Offcuts, "%d of them are offcuts, not %d", offcuts, a.Offcuts)
	v.expect(cost == a.Cost, "the sheets cost %d, not %d", cost, a.Cost)
	for i, it := range v.order.Items {
		v.expect(it.Count == 0 || v.made[i] == it.Count, "item %d: %d are made, %d wanted", i, v.made[i], it.Count)
	}
	v.expect(slices.Equal(a.Made, v.made), "%v are made, not %v", v.made, a.Made)
	goal := int64(sheets - offcuts)
	if v.order.Minimize == sheet.LeastCost {
		goal = cost
	}
	v.expect(a.LowerBound <= goal, "the lower bound %d is above the plan's %d", a.LowerBound, goal)
	v.expect(!a.Proven || a.LowerBound == goal, "a plan of %d is called proven with a lower bound of %d", goal, a.LowerBound)
	v.expect(a.Proven || a.LowerBound < goal || !v.counted(), "a plan of %d is at its lower bound but not called proven", goal)
	v.expect(a.PerSheet == 0 || len(v.made) == 1 && a.PerSheet == v.made[0], "one sheet gives %v, not %d", v.made, a.PerSheet)
}
