package fold

import (
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// inside stands the folded pattern in an envelope or a pocket of the cavity's
// size and measures what is left along each bounded axis. It must go in along
// the others too, unless a size there is zero: then nothing is known of it.
func (m *model) inside() {
	c := &m.pattern.Cavity
	size := Vec{c.Width.Millimetres(), c.Height.Millimetres(), c.Thickness.Millimetres()}
	var left [3]Clearance
	for k := range left {
		axis := pattern.Axis(k)
		s := m.extent(axis, anyPiece)
		left[k] = Clearance{Axis: axis, Clearance: length(size[k] - (s.high - s.low))}
		if known := size[k] > 0 || slices.Contains(c.Bounded, axis); known && left[k].tight() {
			m.find("pattern", axis.String(), "is too big for what it goes into", s.high-s.low-size[k])
		}
	}
	for _, axis := range c.Bounded {
		m.clearances = append(m.clearances, left[axis])
	}
}

// extent is the stretch of an axis that the plates of a body together take up.
func (m *model) extent(axis pattern.Axis, piece int) span {
	s := span{math.Inf(1), math.Inf(-1)}
	for i := range m.plates {
		if m.partOf(&m.plates[i], piece) {
			s.low, s.high = min(s.low, m.plates[i].low[axis]), max(s.high, m.plates[i].high[axis])
		}
	}
	return s
}
