package assembly

import (
	"math"
	"slices"

	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// parts moves a piece out of another one, or off it.
func (t *taking) parts() (move, bool) {
	for k := len(t.p.Nests) - 1; k >= 0; k-- {
		if n := &t.p.Nests[k]; !t.nests[k] {
			l := t.shortest(t.mover(n), math.Inf(1))
			if l != nil {
				l.nests = []int{k}
				return move{leaving: l}, true
			}
		}
	}
	for k := range t.p.Locks {
		if !t.locks[k] {
			if l := t.unlock(&t.p.Locks[k]); l != nil {
				l.locks = []int{k}
				return move{leaving: l}, true
			}
		}
	}
	for u := len(t.rig.Units) - 1; u > 0; u-- { // flat pieces that lie on others
		if unit := &t.rig.Units[u]; unit.Piece >= 0 && unit.Body == u && t.group[u] == t.group[0] && !t.nested(unit.Piece) && len(unit.Plates) == 1 {
			if l := t.lifted(u); l != nil {
				return move{leaving: l}, true
			}
		}
	}
	return move{}, false
}

// nested reports whether a piece goes into another one or crosses it.
func (t *taking) nested(piece int) bool {
	return slices.ContainsFunc(t.p.Nests, func(n pattern.Nesting) bool { return n.Inner == piece || n.Outer == piece }) ||
		slices.ContainsFunc(t.p.Locks, func(l pattern.Lock) bool { return l.A == piece || l.B == piece })
}

// unitOf returns the first copy of a piece.
func (t *taking) unitOf(piece int) int {
	return slices.IndexFunc(t.rig.Units, func(u fold.Unit) bool { return u.Piece == piece })
}

// mover returns the units that move where pieces are nested: a lid that is turned
// over comes off, else the inner piece is drawn out with what is in it.
func (t *taking) mover(n *pattern.Nesting) []int {
	if slices.ContainsFunc(t.p.Places, func(at pattern.Place) bool { return at.Piece == n.Outer && at.Lie == pattern.FaceDown }) {
		return t.body(t.unitOf(n.Outer))
	}
	units := t.body(t.unitOf(n.Inner))
	if !t.out && slices.Contains(units, t.unitOf(t.p.Cavity.Piece)) {
		units = append(units, len(t.rig.Units)-1)
	}
	return units
}

// shortest finds the shortest way for units to be clear of all else, shorter than
// least; nil if there is none.
func (t *taking) shortest(units []int, least float64) (best *leaving) {
	plates := t.plates(units)
	f := t.pose.Frame(t.rig.Units[0].Root)
	for _, way := range [...]fold.Vec{f.Z, f.Z.Times(-1), f.Y, f.Y.Times(-1), f.X, f.X.Times(-1)} {
		if by, blockers := t.clears(plates, way); len(blockers) == 0 && by < least-1e-6 {
			least, best = by, &leaving{units: units, way: way, by: by}
		}
	}
	return best
}

// unlock draws the pieces that cross others out of their slots, upwards if both
// ways are as short: what is slit from below comes down on what is slit from above.
func (t *taking) unlock(lock *pattern.Lock) (best *leaving) {
	for _, piece := range [2]int{lock.A, lock.B} {
		units := t.units(func(u *fold.Unit) bool { return u.Piece == piece })
		plates := t.plates(units)
		for _, way := range []fold.Vec{{0, 0, 1}, {0, 0, -1}} {
			by, blockers := t.clears(plates, way)
			better := best == nil || by < best.by-1e-6 || by < best.by+1e-6 && way[2] > best.way[2]
			if len(blockers) == 0 && better {
				best = &leaving{units: units, way: way, by: by, each: true}
			}
		}
	}
	return best
}

// aside is how far in millimetres a piece is lifted at least, so that it is seen apart.
const aside = 10

// lifted takes a flat piece off what it lies on or is glued to; nil if it is in
// the way.
func (t *taking) lifted(unit int) *leaving {
	plates := t.plates([]int{unit})
	f := t.pose.Frame(t.rig.Units[unit].Root)
	var parted []int
	for k := range t.links {
		if _, _, ok := t.links[k].leads(t.rig, unit); ok {
			parted = append(parted, k)
			if math.Abs(t.pose.Frame(t.links[k].own).Z.Dot(f.Z)) < 1-1e-6 || math.Abs(t.pose.Frame(t.links[k].other).Z.Dot(f.Z)) < 1-1e-6 {
				return nil // it would slide
			}
		}
	}
	for _, way := range []fold.Vec{f.Z, f.Z.Times(-1)} {
		if by, blockers := t.clears(plates, way); len(blockers) == 0 {
			return &leaving{units: []int{unit}, way: way, by: max(by, aside), parted: parted}
		}
	}
	return nil
}
