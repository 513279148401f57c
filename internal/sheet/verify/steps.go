package verify

import (
	"strings"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// table is where the steps of one sheet are replayed.
type table struct {
	*verifier
	usable sheet.Rect
	parts  map[int]part
}

// part is what lies on the table under a number.
type part struct {
	sheet.Rect
	cut   bool       // else it is the sheet
	along sheet.Axis // that its last cut divided
}

// steps replays a plan's steps on a whole sheet and compares what comes out
// with the blanks and offcuts of the tree. An offcut may keep margins at its sides.
func (v *verifier) steps(s sheet.Sheets, found map[sheet.Placement]bool) {
	stock, turns := v.order.Sheets[s.Stock], v.turns
	t := table{v, s.Usable, map[int]part{0: {Rect: sheet.Rect{Width: stock.Width, Height: stock.Height}}}}
	for i, st := range s.Steps {
		t.step(i, st)
	}
	v.turns = turns + s.Times*(v.turns-turns)
	ends := 0
	for _, end := range s.Parts {
		r, there := t.parts[end.ID]
		v.expect(there, "part %d is not left by the steps", end.ID)
		delete(t.parts, end.ID)
		if end.Item != sheet.Offcut {
			v.blank(s, end.Item, end.Turned, r.Rect)
		}
		p := sheet.Placement{Item: end.Item, Turned: end.Turned, Rect: within(s.Usable, r.Rect)}
		if end.Item == sheet.Offcut && !end.Turned && empty(p.Rect) { // a margin, or what the kerf took whole
			continue
		}
		v.expect(found[p], "the steps put item %d elsewhere than the tree", end.Item)
		ends++
	}
	v.expect(ends == len(found), "the steps make %d blanks and offcuts, the tree %d", ends, len(found))
	v.expect(len(t.parts) == 0, "the steps leave %d parts that nothing is said of", len(t.parts))
}

// step replays one setting.
func (t table) step(i int, st sheet.Step) {
	ruler := t.order.Ruler
	off := st.At.Sub(st.Reading).Abs().Times(2)
	t.expect(st.Reading.IsMultipleOf(ruler) && off.Compare(ruler.Size()) <= 0, "step %d: the reading is not the nearest mark", i+1)
	t.expect(st.OnMark == (st.Reading == st.At), "step %d: wrong about the mark", i+1)
	t.expect(strings.Contains(st.Text, t.order.Reading(ruler.Format(st.Reading))), "the words of step %d do not say where to set the trimmer", i+1)
	if len(st.Parts) == 0 || st.Repeat < 1 || len(st.Low) != st.Repeat*len(st.Parts) || len(st.Rest) != len(st.Parts) {
		t.expect(false, "step %d makes the wrong number of parts", i+1)
		return
	}
	first := t.parts[st.Parts[0]]
	for n, id := range st.Parts {
		p, there := t.parts[id]
		t.expect(there, "step %d cuts part %d, which is not there", i+1, id)
		t.expect(p.Width == first.Width && p.Height == first.Height, "step %d stacks parts of different sizes", i+1)
		t.expect(st.Trim == t.margin(p.Rect, st), "step %d: wrong about the margin", i+1)
		if st.Turned || p.cut && p.along != st.Cut {
			t.turns++
		}
		delete(t.parts, id)
		t.cuts(i, st, p.Rect, st.Low[n*st.Repeat:(n+1)*st.Repeat], st.Rest[n])
	}
}

// margin reports whether a part has a margin yet where a step cuts something off it.
func (t table) margin(r sheet.Rect, st sheet.Step) bool {
	start, end, from, to := r.X, r.X.Add(r.Width), t.usable.X, t.usable.X.Add(t.usable.Width)
	if st.Cut == sheet.Height {
		start, end, from, to = r.Y, r.Y.Add(r.Height), t.usable.Y, t.usable.Y.Add(t.usable.Height)
	}
	if st.Turned {
		return start.Less(from)
	}
	return to.Less(end)
}

// cuts replays all cuts in one part.
func (t table) cuts(i int, st sheet.Step, r sheet.Rect, low []int, rest int) {
	length := r.Height
	if st.Cut == sheet.Height {
		length = r.Width
	}
	t.expect(length == st.Length, "step %d: the cut is %v long, not %v", i+1, length, st.Length)
	t.short(length)
	for _, id := range low {
		var cut sheet.Rect
		cut, r, _ = t.split(r, st.Cut, st.At)
		if st.Turned {
			cut, r = exchanged(cut, r, st.Cut)
		}
		t.fresh(id, cut, st.Cut)
	}
	t.fresh(rest, r, st.Cut)
}

// exchanged mirrors the two parts of a cut: the low part lies at the far end.
func exchanged(low, high sheet.Rect, cut sheet.Axis) (sheet.Rect, sheet.Rect) {
	var start, end measure.Length
	if cut == sheet.Width {
		start, end = low.X, high.X.Add(high.Width)
		low.X, high.X = end.Sub(low.Width), start
	} else {
		start, end = low.Y, high.Y.Add(high.Height)
		low.Y, high.Y = end.Sub(low.Height), start
	}
	return low, high
}

// fresh lays a part on the table under a number that is not taken.
func (t table) fresh(id int, r sheet.Rect, along sheet.Axis) {
	_, taken := t.parts[id]
	t.expect(!taken, "two parts have the number %d", id)
	t.parts[id] = part{r, true, along}
}

// within is what lies of a rectangle in another one, from the corner of that.
func within(frame, r sheet.Rect) sheet.Rect {
	x, width := overlap(frame.X, frame.Width, r.X, r.Width)
	y, height := overlap(frame.Y, frame.Height, r.Y, r.Height)
	return sheet.Rect{X: x, Y: y, Width: width, Height: height}
}

// overlap is where a stretch begins in a frame, and how long it is there.
func overlap(frame, size, start, length measure.Length) (from, long measure.Length) {
	first := measure.Max(frame, start)
	return first.Sub(frame), measure.Min(frame.Add(size), start.Add(length)).Sub(first)
}

// empty reports whether a rectangle has no area.
func empty(r sheet.Rect) bool { return r.Width.Sign() <= 0 || r.Height.Sign() <= 0 }
