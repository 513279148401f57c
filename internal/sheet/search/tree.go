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
	eager bool                     // trims all that is spare at once, for larger offcuts and fewer cuts
}

// tree cuts a rectangle into a layout, after a cut along an axis. What the layout
// does not need is left at the end of a run of strips, where it costs no setting
// of its own, unless the strips must be trimmed anyway, or the trimmer is too
// short.
func (r *realizer) tree(l *layout, have sheet.Extent, run sheet.Axis) *sheet.Node {
	if a, spare := r.spare(l, have, run); spare {
		at := r.need(l).Along(a)
		low, _ := r.order.Divide(a, at, have)
		return &sheet.Node{Cut: a, At: at, Low: r.tree(l, low, a), High: &sheet.Node{Item: sheet.Offcut}}
	}
	if l.low == nil {
		return &sheet.Node{Item: r.items(l.kind), Turned: l.turned}
	}
	at := r.need(l.low).Along(l.axis)
	low, high := r.order.Divide(l.axis, at, have)
	return &sheet.Node{Cut: l.axis, At: at, Low: r.tree(l.low, low, l.axis), High: r.tree(l.high, high, l.axis)}
}

// atOnce reports whether what is spare along an axis is cut off a layout before
// it is divided: a piece is always trimmed, strips if one of them is a piece of
// that length. Where stages are counted, it is at the end of a run of such cuts.
func (r *realizer) atOnce(l *layout, need sheet.Extent, a, run sheet.Axis) bool {
	switch {
	case l.low == nil || r.eager:
		return true
	case r.order.Stages > 0:
		return a == run && a != l.axis
	case a == l.axis:
		return false
	}
	for rest := l; ; rest = rest.high {
		strip := rest
		if rest.low != nil && rest.axis == l.axis {
			strip = rest.low
		}
		if strip.low == nil && r.need(strip).Along(a) == need.Along(a) {
			return true
		}
		if strip == rest {
			return false
		}
	}
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

// spare chooses the axis to trim along, if there is anything to trim at once
// that the trimmer can reach: the one that leaves the larger offcut, or where
// stages are counted that of the run. What is longer than the trimmer is trimmed
// before it is cut along that side.
func (r *realizer) spare(l *layout, have sheet.Extent, run sheet.Axis) (sheet.Axis, bool) {
	need, wideReached, highReached := r.need(l), r.reaches(have.Width), r.reaches(have.Height)
	wide := need.Width.Less(have.Width) && highReached && (!wideReached && l.axis != sheet.Width || r.atOnce(l, need, sheet.Width, run))
	high := need.Height.Less(have.Height) && wideReached && (!highReached && l.axis != sheet.Height || r.atOnce(l, need, sheet.Height, run))
	if wide && high && r.order.Stages > 0 {
		return run, true
	}
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
