package fold

import (
	"math"
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// locks measures the pieces that cross in slots: how far their slots together
// reach past their height, and, if they have a width, how much wider than the
// stock they are. The least of all crossings counts.
func (m *model) locks() (clearances []Clearance, holds bool) {
	holds = true
	for i := range m.pattern.Locks {
		l := &m.pattern.Locks[i]
		deep, wide := m.lock(l)
		if math.IsInf(deep, 1) {
			m.find("lock", l.Name, "has pieces that do not cross", 0)
			holds = false
		}
		clearances = append(clearances, Clearance{Between: l.Name, Axis: pattern.Thickness, Clearance: length(deep)})
		if l.Slotted {
			clearances = append(clearances, Clearance{Between: l.Name, Axis: pattern.Width, Clearance: length(wide)})
		}
	}
	for _, c := range clearances {
		if c.Clearance.Less(measure.Nanometres(-1)) {
			m.find("lock", c.Between, "is too tight along the "+c.Axis.String(), -c.Clearance.Millimetres())
			holds = false
		}
	}
	return clearances, holds
}

// lock measures all crossings of two pieces.
func (m *model) lock(l *pattern.Lock) (deep, wide float64) {
	deep, wide = math.Inf(1), math.Inf(1)
	for i := range m.plates {
		for j := range m.plates {
			a, b := &m.plates[i], &m.plates[j]
			if a.piece != l.A || b.piece != l.B {
				continue
			}
			if d, w, ok := m.cross(a, b); ok {
				deep, wide = min(deep, d), min(wide, w)
			}
		}
	}
	return deep, wide
}

// cross measures the crossing of two plates along the line that their planes
// have in common; false if there is none, or only one of them reaches there.
func (m *model) cross(a, b *plate) (deep, wide float64, ok bool) {
	along := a.move.z.cross(b.move.z)
	if along.length() < 0.5 {
		return 0, 0, false
	}
	along = along.unit()
	p := common(&a.move, &b.move)
	pa, pb := a.paper(p, along), b.paper(p, along)
	if len(pa) == 0 || len(pb) == 0 {
		return 0, 0, false
	}
	deep, wide = math.Inf(1), math.Inf(1)
	for _, s := range pa {
		wide = min(wide, b.slot(p, along, s))
		for _, q := range pb {
			deep = min(deep, max(s.low, q.low)-min(s.high, q.high))
		}
	}
	for _, q := range pb {
		wide = min(wide, a.slot(p, along, q))
	}
	return deep, wide - 2*m.half, true
}

// common returns a point on the planes of two plates.
func common(a, b *motion) Vec {
	n := a.z.cross(b.z)
	p := b.z.cross(n).by(a.z.dot(a.o)).add(n.cross(a.z).by(b.z.dot(b.o)))
	return p.by(1 / n.dot(n))
}

// paper returns the stretches of a line in the plate's plane that lie on paper.
func (pl *plate) paper(p, along Vec) []span {
	at := pl.passed(p, along)
	slices.Sort(at)
	stretches := make([]span, 0, len(at)/2)
	for i := 1; i < len(at); i += 2 {
		stretches = append(stretches, span{at[i-1], at[i]})
	}
	return stretches
}

// slot returns how wide the plate is cut open across the middle of a stretch of
// a line in its plane.
func (pl *plate) slot(p, along Vec, s span) float64 {
	low, high := math.Inf(-1), math.Inf(1)
	middle := p.add(along.by((s.low + s.high) / 2))
	for _, d := range pl.passed(middle, pl.move.z.cross(along)) {
		if d < 0 {
			low = max(low, d)
		} else {
			high = min(high, d)
		}
	}
	return high - low
}

// passed returns where a line in the plate's plane passes its edges.
func (pl *plate) passed(p, along Vec) (at []float64) {
	home := pl.move.back()
	o, d := home.turn(p).add(home.o), home.turn(along)
	from, way := spot{o[0], o[1]}, spot{d[0], d[1]}
	for _, ring := range [...][]spot{pl.flat, pl.hole} {
		for i, u := range ring {
			v := ring[(i+1)%len(ring)]
			cu, cv := way.cross(u.sub(from)), way.cross(v.sub(from))
			if (cu > 0) != (cv > 0) {
				at = append(at, u.add(v.sub(u).by(cu/(cu-cv))).sub(from).dot(way))
			}
		}
	}
	return at
}
