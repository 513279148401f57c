package verify

import (
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// steps replays a plan's steps on a whole sheet and compares what comes out
// with the blanks of the tree.
func (v *verifier) steps(s sheet.Sheets, found map[sheet.Placement]bool) {
	stock := v.order.Sheets[s.Stock]
	parts := map[int]sheet.Rect{0: {Width: stock.Width, Height: stock.Height}}
	for i, st := range s.Steps {
		v.step(i, st, parts)
	}
	blanks := 0
	for _, end := range s.Parts {
		r, there := parts[end.ID]
		v.expect(there, "part %d is not left by the steps", end.ID)
		delete(parts, end.ID)
		if end.Item == sheet.Offcut {
			continue
		}
		v.blank(s, end.Item, end.Turned, r)
		r.X, r.Y = r.X.Sub(v.order.Margin), r.Y.Sub(v.order.Margin)
		v.expect(found[sheet.Placement{Item: end.Item, Turned: end.Turned, Rect: r}], "the steps put item %d elsewhere than the tree", end.Item)
		blanks++
	}
	v.expect(blanks == len(found), "the steps make %d blanks, the tree %d", blanks, len(found))
	v.expect(len(parts) == 0, "the steps leave %d parts that nothing is said of", len(parts))
}

// step replays one setting.
func (v *verifier) step(i int, st sheet.Step, parts map[int]sheet.Rect) {
	off := st.At.Sub(st.Reading).Abs().Times(2)
	v.expect(st.Reading.IsMultipleOf(v.order.Ruler) && off.Compare(v.order.Ruler.Size()) <= 0, "step %d: the reading is not the nearest mark", i+1)
	v.expect(st.OnMark == (st.Reading == st.At), "step %d: wrong about the mark", i+1)
	v.expect(st.Text != "", "step %d has no words", i+1)
	if st.Repeat < 1 || len(st.Low) != st.Repeat*len(st.Parts) || len(st.Rest) != len(st.Parts) {
		v.expect(false, "step %d makes the wrong number of parts", i+1)
		return
	}
	first := parts[st.Parts[0]]
	for n, id := range st.Parts {
		r, there := parts[id]
		v.expect(there, "step %d cuts part %d, which is not there", i+1, id)
		v.expect(r.Width == first.Width && r.Height == first.Height, "step %d stacks parts of different sizes", i+1)
		delete(parts, id)
		v.cuts(i, st, r, st.Low[n*st.Repeat:(n+1)*st.Repeat], st.Rest[n], parts)
	}
}

// cuts replays all cuts in one part.
func (v *verifier) cuts(i int, st sheet.Step, r sheet.Rect, low []int, rest int, parts map[int]sheet.Rect) {
	length := r.Height
	if st.Cut == sheet.Height {
		length = r.Width
	}
	v.expect(length == st.Length, "step %d: the cut is %v long, not %v", i+1, length, st.Length)
	v.short(length)
	for _, id := range low {
		var part sheet.Rect
		part, r, _ = v.split(r, st.Cut, st.At)
		if st.Turned {
			part, r = exchanged(part, r, st.Cut)
		}
		v.fresh(parts, id, part)
	}
	v.fresh(parts, rest, r)
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

// fresh adds a part under a number that is not taken.
func (v *verifier) fresh(parts map[int]sheet.Rect, id int, r sheet.Rect) {
	_, taken := parts[id]
	v.expect(!taken, "two parts have the number %d", id)
	parts[id] = r
}
