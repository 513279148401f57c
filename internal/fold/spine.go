package fold

import "math"

// spines gives the spines of a piece their outlines, once all panels have
// lost what their folds take: as long as both panels' edges there reach. The
// tips beyond that are crushed where two folds meet in a corner.
func (m *model) spines(index int) {
	for k := m.first[index] + len(m.pattern.Pieces[index].Panels); k < len(m.plates); k++ {
		pl := &m.plates[k]
		c := &m.pattern.Pieces[index].Creases[pl.crease]
		to := m.panel(index, c.To)
		a, b := place(c.A), place(c.B)
		along := b.Minus(a)
		along = along.Times(1 / along.Length())
		n := m.turning(c, to.flat).n
		if n.Cross(along) < 0 { // run so that the outline is counterclockwise
			a, b, along = b, a, along.Times(-1)
		}
		width := b.Minus(a).Length()
		near, far := a.Minus(n.Times(pl.spine/2)), a.Plus(n.Times(pl.spine/2))
		nearLow, nearHigh := reach(m.plates[pl.parent].flat, near, along, width)
		farLow, farHigh := reach(to.flat, far, along, width)
		at := len(m.spots)
		low, high := along.Times(max(nearLow, farLow)), along.Times(min(nearHigh, farHigh))
		m.spots = append(m.spots, near.Plus(high), near.Plus(low), far.Plus(low), far.Plus(high))
		pl.flat = m.spots[at:len(m.spots):len(m.spots)]
	}
}

// reach returns how far the ring's edge on the line through a runs along it,
// at most from 0 to width.
func reach(ring []spot, a, along spot, width float64) (low, high float64) {
	low, high = width, 0
	for _, p := range ring {
		if math.Abs(along.Cross(p.Minus(a))) < hair {
			d := p.Minus(a).Dot(along)
			low, high = min(low, d), max(high, d)
		}
	}
	if low > high {
		return 0, width
	}
	return max(low, 0), min(high, width)
}
