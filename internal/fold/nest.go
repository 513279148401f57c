package fold

import (
	"math"

	"creasefit/internal/pattern"
)

// nests measures the pieces that go into one another: the room that the plates
// of the outer one leave to the box round the inner one.
func (m *model) nests() {
	for i := range m.pattern.Nests {
		n := &m.pattern.Nests[i]
		if m.pattern.Cavity.Sides > 0 {
			m.left(n, pattern.Width, newWell(m).nest(n))
			continue
		}
		var box [3]span
		for axis := range box {
			box[axis] = m.extent(pattern.Axis(axis), n.Inner)
		}
		for _, axis := range n.Axes {
			free, own := m.free(int(axis), &box, n.Outer), box[axis]
			m.left(n, axis, (free.high-free.low)-(own.high-own.low))
		}
	}
}

// left notes what is left of a nesting along an axis.
func (m *model) left(n *pattern.Nesting, axis pattern.Axis, left float64) {
	c := Clearance{Axis: axis, Between: n.Name}
	if math.IsInf(left, 1) {
		m.find("nesting", n.Name, "does not hold on both sides along the "+axis.String(), 0)
	} else if c.Clearance = length(left); c.tight() {
		m.find("nesting", n.Name, "is too tight along the "+axis.String(), -left)
	}
	m.clearances = append(m.clearances, c)
}
