package fold

import (
	"math"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// nests measures the pieces that go into one another: the room that the plates
// of the outer one leave to the box round the inner one.
func (m *model) nests() (clearances []Clearance, holds bool) {
	holds = true
	for i := range m.pattern.Nests {
		n := &m.pattern.Nests[i]
		if m.pattern.Cavity.Sides > 0 {
			c, fits := m.left(n, pattern.Width, newWell(m).nest(n))
			clearances, holds = append(clearances, c), holds && fits
			continue
		}
		var box [3]span
		for axis := range box {
			box[axis] = m.extent(pattern.Axis(axis), n.Inner)
		}
		for _, axis := range n.Axes {
			c, fits := m.nest(n, axis, &box)
			clearances, holds = append(clearances, c), holds && fits
		}
	}
	return clearances, holds
}

// nest measures one axis of a nesting.
func (m *model) nest(n *pattern.Nesting, axis pattern.Axis, box *[3]span) (Clearance, bool) {
	free := m.free(int(axis), box, n.Outer)
	return m.left(n, axis, (free.high-free.low)-(box[axis].high-box[axis].low))
}

// left says what is left of a nesting along an axis.
func (m *model) left(n *pattern.Nesting, axis pattern.Axis, left float64) (Clearance, bool) {
	c := Clearance{Axis: axis, Between: n.Name}
	if math.IsInf(left, 1) {
		m.find("nesting", n.Name, "does not hold on both sides along the "+axis.String(), 0)
		return c, false
	}
	if c.Clearance = length(left); c.Clearance.Less(measure.Nanometres(-1)) {
		m.find("nesting", n.Name, "is too tight along the "+axis.String(), -left)
		return c, false
	}
	return c, true
}
