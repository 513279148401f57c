package fold

import (
	"math"
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// inside stands the folded pattern in an envelope or a pocket of the cavity's
// size and measures what is left along each bounded axis. It must go in along
// the others too, unless a size there is zero: then nothing is known of it.
func (m *model) inside() (clearances []Clearance, holds bool) {
	c := &m.pattern.Cavity
	size := Vec{c.Width.Millimetres(), c.Height.Millimetres(), c.Thickness.Millimetres()}
	var left [3]measure.Length
	holds = true
	for axis := range size {
		s := m.extent(pattern.Axis(axis), anyPiece)
		left[axis] = length(size[axis] - (s.high - s.low))
		known := size[axis] > 0 || slices.Contains(c.Bounded, pattern.Axis(axis))
		if known && left[axis].Less(measure.Nanometres(-1)) {
			m.find("pattern", pattern.Axis(axis).String(), "is too big for what it goes into", s.high-s.low-size[axis])
			holds = false
		}
	}
	clearances = make([]Clearance, len(c.Bounded))
	for i, axis := range c.Bounded {
		clearances[i] = Clearance{Axis: axis, Clearance: left[axis]}
	}
	return clearances, holds
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
