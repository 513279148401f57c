package search

import "creasefit/internal/sheet"

// draft is one sheet of a plan in the making: a tree of joined pieces in which
// every rectangle knows how large it may become, so that a piece can be tried
// beside or above any of them at once.
type draft struct {
	board *board
	knots []knot
	root  int16
	free  int64  // area without pieces
	old   []knot // memory of compact
}

// knot is a piece, or the join of two knots along an axis.
type knot struct {
	need, room    corner // its least rectangle, and the largest it may have
	up, low, high int16
	face          int16 // of a piece, else none
	axis          sheet.Axis
}

// none is the number of no knot and of no face.
const none = -1

// newDraft is an empty sheet.
func newDraft(b *board) draft {
	return draft{board: b, root: none, free: int64(b.w) * int64(b.h)}
}

// copyFrom makes a draft equal to another, in memory of its own.
func (t *draft) copyFrom(o *draft) {
	t.board, t.root, t.free = o.board, o.root, o.free
	t.knots = append(t.knots[:0], o.knots...)
}

// insert joins a piece to a knot; on an empty draft the knot is none.
func (t *draft) insert(p place) {
	f := &t.board.faces[p.face]
	t.free -= int64(f.w) * int64(f.h)
	leaf := int16(len(t.knots))
	t.knots = append(t.knots, knot{need: corner{f.w, f.h}, face: p.face, up: none})
	if p.knot == none {
		t.root = leaf
	} else {
		t.knots = append(t.knots, knot{up: t.knots[p.knot].up, low: p.knot, high: leaf, face: none, axis: p.axis})
		t.hang(p.knot, leaf+1)
		t.knots[p.knot].up, t.knots[leaf].up = leaf+1, leaf+1
		t.grow(leaf + 1)
	}
	t.spread(t.root, corner{t.board.w, t.board.h})
}

// hang puts a knot in the place of another under that one's join.
func (t *draft) hang(old, fresh int16) {
	switch up := t.knots[old].up; {
	case up == none:
		t.root = fresh
	case t.knots[up].low == old:
		t.knots[up].low = fresh
	default:
		t.knots[up].high = fresh
	}
}

// grow renews the least rectangles from a join upwards.
func (t *draft) grow(at int16) {
	for ; at != none; at = t.knots[at].up {
		n := &t.knots[at]
		p, q := t.knots[n.low].need, t.knots[n.high].need
		if n.axis == sheet.Width {
			n.need = corner{p.w + q.w, max(p.h, q.h)}
		} else {
			n.need = corner{max(p.w, q.w), p.h + q.h}
		}
	}
}

// spread gives a knot room and renews that of all below it.
func (t *draft) spread(at int16, room corner) {
	n := &t.knots[at]
	n.room = room
	if n.face != none {
		return
	}
	p, q := t.knots[n.low].need, t.knots[n.high].need
	if n.axis == sheet.Width {
		h := min(room.h, t.board.limit)
		t.spread(n.low, corner{room.w - q.w, h})
		t.spread(n.high, corner{room.w - p.w, h})
	} else {
		w := min(room.w, t.board.limit)
		t.spread(n.low, corner{w, room.h - q.h})
		t.spread(n.high, corner{w, room.h - p.h})
	}
}

// remove takes a knot and all below it out and appends its faces to out.
func (t *draft) remove(at int16, out []int16) []int16 {
	from := len(out)
	out = t.pieces(at, out)
	for _, f := range out[from:] {
		t.free += int64(t.board.faces[f].w) * int64(t.board.faces[f].h)
	}
	up := t.knots[at].up
	if up == none {
		t.root, t.knots = none, t.knots[:0]
		return out
	}
	sister := t.knots[up].low + t.knots[up].high - at
	t.knots[sister].up = t.knots[up].up
	t.hang(up, sister)
	t.grow(t.knots[sister].up)
	t.compact()
	t.spread(t.root, corner{t.board.w, t.board.h})
	return out
}

// pieces appends the faces below a knot.
func (t *draft) pieces(at int16, out []int16) []int16 {
	n := &t.knots[at]
	if n.face != none {
		return append(out, n.face)
	}
	return t.pieces(n.high, t.pieces(n.low, out))
}

// compact renumbers the knots that hang on the root.
func (t *draft) compact() {
	t.knots, t.old = t.old[:0], t.knots
	t.root = t.adopt(t.old, t.root, none)
}

// adopt appends a knot of an old list, and all below it.
func (t *draft) adopt(old []knot, at, up int16) int16 {
	here := int16(len(t.knots))
	t.knots = append(t.knots, old[at])
	t.knots[here].up = up
	if old[at].face == none {
		low := t.adopt(old, old[at].low, here)
		high := t.adopt(old, old[at].high, here)
		t.knots[here].low, t.knots[here].high = low, high
	}
	return here
}

// layout is how the pieces below a knot are joined.
func (t *draft) layout(at int16) *layout {
	if at == none {
		return nil
	}
	n := &t.knots[at]
	if n.face != none {
		f := t.board.faces[n.face]
		return &layout{kind: f.kind, turned: f.turned}
	}
	return &layout{axis: n.axis, low: t.layout(n.low), high: t.layout(n.high)}
}

// place is where a piece may be joined: along an axis to a knot of a draft.
type place struct {
	draft, knot int16
	face        int16
	axis        sheet.Axis
}
