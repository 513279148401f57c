package fold

import (
	"math"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// inside stands the folded pattern in an envelope or a pocket of the cavity's
// size and measures what is left along each bounded axis.
func (m *model) inside() (clearances []Clearance, holds bool) {
	c := &m.pattern.Cavity
	size := Vec{c.Width.Millimetres(), c.Height.Millimetres(), c.Thickness.Millimetres()}
	clearances, holds = make([]Clearance, len(c.Bounded)), true
	for i, axis := range c.Bounded {
		s := m.extent(axis, anyPiece)
		left := size[axis] - (s.high - s.low)
		clearances[i] = Clearance{Axis: axis, Clearance: length(left)}
		if clearances[i].Clearance.Less(measure.Nanometres(-1)) {
			m.find("pattern", axis.String(), "is too big for what it goes into", -left)
			holds = false
		}
	}
	return clearances, holds
}

// extent is the stretch of an axis that the plates of a piece together take up.
func (m *model) extent(axis pattern.Axis, piece int) span {
	s := span{math.Inf(1), math.Inf(-1)}
	for i := range m.plates {
		if piece == anyPiece || m.plates[i].piece == piece {
			s.low, s.high = min(s.low, m.plates[i].low[axis]), max(s.high, m.plates[i].high[axis])
		}
	}
	return s
}
