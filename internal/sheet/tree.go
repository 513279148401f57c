package sheet

import "creasefit/internal/measure"

// realizer turns layouts into cut trees for one order.
type realizer struct {
	order Order
	items func(kind int32) int // names the item of the next piece of a kind
	kinds []kind
	needs map[*layout]extent // of the layouts that were asked for
}

// tree cuts a rectangle into a layout: everything that the layout does not
// need is trimmed off before it is divided.
func (r *realizer) tree(l *layout, have extent) *Node {
	need := r.need(l)
	if a, spare := r.spare(need, have); spare {
		low, _ := r.divide(a, need.along(a), have)
		return &Node{Cut: a, At: need.along(a), Low: r.tree(l, low), High: &Node{Item: Offcut}}
	}
	if l.low == nil {
		return &Node{Item: r.items(l.kind), Turned: l.turned}
	}
	at := r.need(l.low).along(l.axis)
	low, high := r.divide(l.axis, at, have)
	return &Node{Cut: l.axis, At: at, Low: r.tree(l.low, low), High: r.tree(l.high, high)}
}

// need is the least rectangle of a layout. It is asked for at every cut, so
// that of joined layouts is kept.
func (r *realizer) need(l *layout) extent {
	if l.low == nil {
		w, h := r.order.Items[r.kinds[l.kind].items[0]].lying(l.turned)
		return extent{w, h}
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
func (r *realizer) spare(need, have extent) (Axis, bool) {
	wide := need.w.Less(have.w) && r.reaches(have.h)
	high := need.h.Less(have.h) && r.reaches(have.w)
	if wide && high {
		w, h := have.w.Sub(need.w).Millimetres(), have.h.Sub(need.h).Millimetres()
		if w*have.h.Millimetres() < h*have.w.Millimetres() {
			return Height, true
		}
	}
	if wide {
		return Width, true
	}
	return Height, high
}

// reaches reports whether the trimmer makes a cut this long.
func (r *realizer) reaches(l measure.Length) bool {
	return r.order.Trimmer.IsZero() || !r.order.Trimmer.Less(l)
}

// divide returns the two parts of a rectangle.
func (r *realizer) divide(a Axis, at measure.Length, have extent) (low, high extent) {
	rest := measure.Max(measure.Length{}, measure.Sum(have.along(a), at.Neg(), r.order.Kerf.Neg()))
	if a == Width {
		return extent{at, have.h}, extent{rest, have.h}
	}
	return extent{have.w, at}, extent{have.w, rest}
}

// place walks a tree and appends where its blanks and offcuts lie.
func (s *Sheets) place(r *realizer, n *Node, at Rect) {
	if !n.IsCut() {
		s.placeLeaf(n, at)
		return
	}
	low, high := r.divide(n.Cut, n.At, extent{at.Width, at.Height})
	s.place(r, n.Low, Rect{at.X, at.Y, low.w, low.h})
	if n.Cut == Width {
		s.place(r, n.High, Rect{at.X.Add(at.Width).Sub(high.w), at.Y, high.w, high.h})
	} else {
		s.place(r, n.High, Rect{at.X, at.Y.Add(at.Height).Sub(high.h), high.w, high.h})
	}
}

// placeLeaf appends one leaf; an offcut that the kerf took whole is none.
func (s *Sheets) placeLeaf(n *Node, at Rect) {
	if n.Item != Offcut {
		s.Placed = append(s.Placed, Placement{n.Item, n.Turned, at})
	} else if at.Width.Sign() > 0 && at.Height.Sign() > 0 {
		s.Offcuts = append(s.Offcuts, at)
	}
}
