package search

import (
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// realizer turns layouts into cut trees for one order.
type realizer struct {
	order sheet.Order
	items func(kind int32) int // names the item of the next piece of a kind
	kinds []kind
	needs map[*layout]sheet.Extent // of the layouts that were asked for
}

// tree cuts a rectangle into a layout: everything that the layout does not
// need is trimmed off before it is divided.
func (r *realizer) tree(l *layout, have sheet.Extent) *sheet.Node {
	need := r.need(l)
	if a, spare := r.spare(need, have); spare {
		low, _ := r.order.Divide(a, need.Along(a), have)
		return &sheet.Node{Cut: a, At: need.Along(a), Low: r.tree(l, low), High: &sheet.Node{Item: sheet.Offcut}}
	}
	if l.low == nil {
		return &sheet.Node{Item: r.items(l.kind), Turned: l.turned}
	}
	at := r.need(l.low).Along(l.axis)
	low, high := r.order.Divide(l.axis, at, have)
	return &sheet.Node{Cut: l.axis, At: at, Low: r.tree(l.low, low), High: r.tree(l.high, high)}
}

// need is the least rectangle of a layout. It is asked for at every cut, so
// that of joined layouts is kept.
func (r *realizer) need(l *layout) sheet.Extent {
	if l.low == nil {
		w, h := r.order.Items[r.kinds[l.kind].items[0]].Lying(l.turned)
		return sheet.Extent{Width: w, Height: h}
	}
	known, ok := r.needs[l]
	if !ok {
		known = join(l.axis, r.need(l.low), r.need(l.high), r.order.Kerf)
		r.needs[l] = known
	}
	return known
}

// spare chooses the axis to trim along, if there is anything to trim that the
// trimmer can reach: the one that leaves the larger offcut.
func (r *realizer) spare(need, have sheet.Extent) (sheet.Axis, bool) {
	wide := need.Width.Less(have.Width) && r.reaches(have.Height)
	high := need.Height.Less(have.Height) && r.reaches(have.Width)
	if wide && high {
		w, h := have.Width.Sub(need.Width).Millimetres(), have.Height.Sub(need.Height).Millimetres()
		if w*have.Height.Millimetres() < h*have.Width.Millimetres() {
			return sheet.Height, true
		}
	}
	if wide {
		return sheet.Width, true
	}
	return sheet.Height, high
}

// reaches reports whether the trimmer makes a cut this long.
func (r *realizer) reaches(l measure.Length) bool {
	return r.order.Trimmer.IsZero() || !r.order.Trimmer.Less(l)
}
