package fold

import (
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// locks measures the pieces that cross in slots: how far their slots together
// reach past their height, and, if they have a width, how much wider than the
// stock they are. The least of all crossings counts.
func (m *model) locks() {
	for i := range m.pattern.Locks {
		l := &m.pattern.Locks[i]
		deep, wide := m.lock(l)
		if math.IsInf(deep, 1) {
			m.find("lock", l.Name, "has pieces that do not cross", 0)
		}
		m.crossed(l, pattern.Thickness, deep)
		if l.Slotted {
			m.crossed(l, pattern.Width, wide)
		}
	}
}

// crossed notes what is left of a lock along an axis.
func (m *model) crossed(l *pattern.Lock, axis pattern.Axis, left float64) {
	c := Clearance{Between: l.Name, Axis: axis, Clearance: length(left)}
	if c.tight() {
		m.find("lock", l.Name, "is too tight along the "+axis.String(), -c.Clearance.Millimetres())
	}
	m.clearances = append(m.clearances, c)
}

// lock measures all crossings of two pieces.
func (m *model) lock(l *pattern.Lock) (deep, wide float64) {
	deep, wide = math.Inf(1), math.Inf(1)
	for i := range m.plates {
		a := &m.plates[i]
		if a.piece != l.A {
			continue
		}
		for j := range m.plates {
			if b := &m.plates[j]; b.piece == l.B {
				d, w := m.cross(a, b)
				deep, wide = min(deep, d), min(wide, w)
			}
		}
	}
	return deep, wide
}

// cross measures the crossing of two plates along the line that their planes
// have in common: endless room if there is none, or only one of them reaches
// there.
func (m *model) cross(a, b *plate) (deep, wide float64) {
	deep, wide = math.Inf(1), math.Inf(1)
	along := a.move.Z.Cross(b.move.Z)
	if along.Length() < 0.5 {
		return deep, wide
	}
	along = along.unit()
	p := common(&a.move, &b.move)
	var spaceA, spaceB [8]float64
	pa, pb := a.passed(spaceA[:0], p, along), b.passed(spaceB[:0], p, along)
	if len(pa) == 0 || len(pb) == 0 {
		return deep, wide
	}
	slices.Sort(pa)
	slices.Sort(pb)
	for s := range stretches(pa) {
		wide = min(wide, b.slot(p, along, s))
		for q := range stretches(pb) {
			deep = min(deep, max(s.low, q.low)-min(s.high, q.high))
		}
	}
	for q := range stretches(pb) {
		wide = min(wide, a.slot(p, along, q))
	}
	return deep, wide - 2*m.half
}

// common returns a point on the planes of two plates.
func common(a, b *Frame) Vec {
	n := a.Z.Cross(b.Z)
	p := b.Z.Cross(n).Times(a.Z.Dot(a.Origin)).Plus(n.Cross(a.Z).Times(b.Z.Dot(b.Origin)))
	return p.Times(1 / n.Dot(n))
}

// stretches yields what lies between each entry and the next exit.
func stretches(at []float64) func(yield func(span) bool) {
	return func(yield func(span) bool) {
		for i := 1; i < len(at) && yield(span{at[i-1], at[i]}); i += 2 {
		}
	}
}

// slot returns how wide the plate is cut open across the middle of a stretch of
// a line in its plane.
func (pl *plate) slot(p, along Vec, s span) float64 {
	low, high := math.Inf(-1), math.Inf(1)
	middle := p.Plus(along.Times((s.low + s.high) / 2))
	var space [32]float64
	for _, d := range pl.passed(space[:0], middle, pl.move.Z.Cross(along)) {
		if d < 0 {
			low = max(low, d)
		} else {
			high = min(high, d)
		}
	}
	return high - low
}

// passed appends where a line in the plate's plane enters its paper and leaves it, in
// any order.
func (pl *plate) passed(at []float64, p, along Vec) []float64 {
	from, way := pl.move.spot(p), spot{along.Dot(pl.move.X), along.Dot(pl.move.Y)}
	for _, ring := range [...][]spot{pl.flat, pl.hole} {
		if len(ring) == 0 {
			continue
		}
		u := ring[len(ring)-1]
		cu := way.Cross(u.Minus(from))
		for _, v := range ring {
			cv := way.Cross(v.Minus(from))
			if (cu > 0) != (cv > 0) {
				at = append(at, u.Plus(v.Minus(u).Times(cu/(cu-cv))).Minus(from).Dot(way))
			}
			u, cu = v, cv
		}
	}
	return at
}
