package fold

import (
	"math"
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// bound works out the box round a plate with its thickness.
func (pl *plate) bound(half float64) { pl.box = boxRound(pl.space).thicker(pl.move.Z, half) }

// shapes works out which plates are convex, and which fill the boxes round them.
func (m *model) shapes() {
	for i := range m.plates {
		m.plates[i].shape()
	}
}

func (pl *plate) shape() {
	across, full := -1, 1.0
	for k, n := range pl.move.Z {
		if math.Abs(n) > 1-1e-12 {
			across = k
		} else {
			full *= pl.high[k] - pl.low[k]
		}
	}
	paper := area(pl.flat)
	pl.filled = across >= 0 && len(pl.hole) == 0 && math.Abs(full-paper) <= 1e-9*paper
	pl.convex = len(pl.hole) == 0 && convex(pl.flat)
}

// standing is the motion of the cavity panel, turned as the contents are.
func (m *model) standing() Frame {
	c := &m.pattern.Cavity
	s, co := sincos(c.Turned)
	turned := Frame{X: Vec{co, s, 0}, Y: Vec{-s, co, 0}, Z: Vec{0, 0, 1}}
	return m.panel(c.Piece, c.Panel).move.after(&turned)
}

// lies reports whether the folded pattern stands on the cavity panel already.
func (m *model) lies() bool {
	c := &m.pattern.Cavity
	return c.Piece == 0 && c.Panel == m.pattern.Pieces[0].Root && math.Abs(c.Turned) < 1e-12
}

// standOn turns the folded pattern so that the cavity panel lies at the
// bottom, its contents' width, height and thickness along the three axes, and works
// out where all plates come to lie.
func (m *model) standOn() {
	corners, frame, lies := 0, m.standing(), m.lies()
	home := frame.back()
	for i := range m.plates {
		corners += len(m.plates[i].flat)
	}
	m.corners = slices.Grow(m.corners, corners)
	for i := range m.plates {
		pl := &m.plates[i]
		if !lies {
			pl.move = home.after(&pl.move)
		}
		at := len(m.corners)
		m.corners = pl.lift(m.corners, pl.flat)
		pl.space = m.corners[at:len(m.corners):len(m.corners)]
		pl.bound(m.half)
	}
}

// room is the search for the place of the contents in the cavity.
type room struct {
	m    *model
	size Vec
	free [3]span // between the plates along each axis
	at   [3]span // what the contents take up there
}

// contents stands a box of the contents' size in the cavity.
func (m *model) contents() {
	r := m.search()
	var left Vec
	for axis, free := range r.free {
		left[axis] = free.high - free.low - r.size[axis]
	}
	m.bounded(left)
	if r.untouched() {
		r.covered()
	}
}

// search finds the room of the contents. It looks along one axis after the
// other, first from the middle of the cavity panel, then twice more with the
// cross-section that the box has between the plates found.
func (m *model) search() *room {
	c := &m.pattern.Cavity
	r := &m.room
	*r = room{m: m, size: Vec{c.Width.Millimetres(), c.Height.Millimetres(), c.Thickness.Millimetres()}}
	r.begin(m.panel(c.Piece, c.Panel))
	for axis := range r.free {
		r.free[axis] = m.free(axis, &r.at, anyPiece)
	}
	for axis := range r.free {
		r.settle(axis)
	}
	for range 2 {
		before := r.at
		for axis := range r.free {
			r.free[axis] = m.free(axis, &r.at, anyPiece)
			r.settle(axis)
		}
		if r.rests(&before) { // it would find the same again
			break
		}
	}
	return r
}

// rests reports whether the contents stand where they did.
func (r *room) rests(before *[3]span) bool {
	for axis, at := range r.at {
		if was := before[axis]; math.Abs(at.low-was.low) > dust || math.Abs(at.high-was.high) > dust {
			return false
		}
	}
	return true
}

// bounded notes the clearances along the bounded axes, of what is left along
// all of them.
func (m *model) bounded(left Vec) {
	for _, axis := range m.pattern.Cavity.Bounded {
		c := Clearance{Axis: axis}
		if math.IsInf(left[axis], 1) {
			m.find("contents", axis.String(), "is not held on both sides", 0)
		} else if c.Clearance = length(left[axis]); c.tight() {
			m.find("contents", axis.String(), "is too big for the cavity", -left[axis])
		}
		m.clearances = append(m.clearances, c)
	}
}

// tight reports whether there is less than no room, but for the arithmetic.
func (c *Clearance) tight() bool { return c.Clearance.Less(measure.Nanometres(-1)) }

// begin starts from a point in the middle above the cavity panel.
func (r *room) begin(floor *plate) {
	for k := range r.at {
		mid := (floor.low[k] + floor.high[k]) / 2
		if k == int(pattern.Thickness) {
			mid += r.m.half + r.size[k]/2
		}
		r.at[k] = span{mid, mid}
	}
}

// anyPiece stands for the plates of all pieces.
const anyPiece = -1

// free finds the stretch of an axis between the plates of a body that is free
// for a box: from its middle, as far as its cross-section goes.
func (m *model) free(axis int, box *[3]span, piece int) span {
	mid := (box[axis].low + box[axis].high) / 2
	free := span{math.Inf(-1), math.Inf(1)}
	for i := range m.plates {
		pl := &m.plates[i]
		if !m.partOf(pl, piece) || pl.high[axis] <= free.low || pl.low[axis] >= free.high {
			continue // of another piece, or behind a nearer plate
		}
		s, ok := m.shadow(pl, axis, box)
		switch {
		case !ok:
		case s.low+s.high < 2*mid:
			free.low = max(free.low, s.high)
		default:
			free.high = min(free.high, s.low)
		}
	}
	return free
}

// settle puts the box in the middle of the free interval of an axis, or on
// the floor. What does not fit between the plates is cut off, so that it does
// not get in the way of the other axes.
func (r *room) settle(axis int) {
	free, size := r.free[axis], r.size[axis]
	low := (r.at[axis].low + r.at[axis].high - size) / 2
	switch {
	case axis == int(pattern.Thickness) && !r.m.pattern.Cavity.Floats && !math.IsInf(free.low, -1):
		low = free.low
	case !math.IsInf(free.high-free.low, 1):
		low = (free.low + free.high - size) / 2
	case !math.IsInf(free.low, -1):
		low = max(low, free.low)
	case !math.IsInf(free.high, 1):
		low = min(low, free.high-size)
	}
	at := span{max(low, free.low), min(low+size, free.high)}
	if at.low > at.high {
		mid := (at.low + at.high) / 2
		at = span{mid, mid}
	}
	r.at[axis] = at
}

// untouched reports whether no plate reaches into the box where it stands,
// and finds those that do. A sheet without a thickness touches nothing.
func (r *room) untouched() bool {
	free := true
	for i := range r.m.plates {
		pl := &r.m.plates[i]
		if pl.high[0] <= r.at[0].low || pl.low[0] >= r.at[0].high {
			continue
		}
		s, ok := r.m.shadow(pl, 0, &r.at)
		depth := min(s.high, r.at[0].high) - max(s.low, r.at[0].low)
		if ok && depth > hair {
			r.m.find("contents", r.m.name(pl), "is in their way", depth)
			free = false
		}
	}
	return free
}
