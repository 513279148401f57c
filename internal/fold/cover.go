package fold

import "math"

// hole is the width in mm from which an opening over the contents is one: what
// reliefs at the corners leave is narrower.
const hole = 4

// covered finds where plates on both sides together do not cover the whole face of the
// contents, along the axes that the cavity must be covered along.
func (r *room) covered() {
	for _, axis := range r.m.pattern.Cavity.Covered {
		for _, up := range [...]bool{false, true} {
			if width := r.open(int(axis), up); width > hole {
				r.m.find("contents", axis.String(), "are not covered: there is a hole as wide as", width)
			}
		}
	}
}

// open returns the width of the widest opening over one face of the contents:
// the face less all plates that lie beyond it, square to the axis.
func (r *room) open(axis int, up bool) float64 {
	i, j := (axis+1)%3, (axis+2)%3
	a, b := r.at[i], r.at[j]
	left, next := append(r.m.uncovered[0][:0], []spot{{a.low, b.low}, {a.high, b.low}, {a.high, b.high}, {a.low, b.high}}), r.m.uncovered[1]
	for k := range r.m.plates {
		pl := &r.m.plates[k]
		beyond := pl.low[axis] >= r.at[axis].high-touch
		if !up {
			beyond = pl.high[axis] <= r.at[axis].low+touch
		}
		if !beyond || math.Abs(pl.move.Z[axis]) < 1-1e-9 {
			continue
		}
		r.m.cutUp(pl)
		for p := range pl.parts {
			next = r.m.rest(next[:0], left, r.m.flattened(pl.parts[p].corners, i, j))
			left, next = next, left
		}
	}
	r.m.uncovered = [...][][]spot{left, next}
	widest := 0.0
	for _, ring := range left {
		widest = max(widest, width(ring))
	}
	return widest
}

// flattened is a ring of corners seen along the third axis, counterclockwise.
func (m *model) flattened(corners []Vec, i, j int) []spot {
	at := len(m.spots)
	for _, c := range corners {
		m.spots = append(m.spots, spot{c[i], c[j]})
	}
	ring := m.spots[at:len(m.spots):len(m.spots)]
	if area(ring) < 0 {
		for k := range len(ring) / 2 {
			ring[k], ring[len(ring)-1-k] = ring[len(ring)-1-k], ring[k]
		}
	}
	return ring
}

// rest appends what convex rings have outside a convex one, in convex parts.
func (m *model) rest(left, rings [][]spot, taken []spot) [][]spot {
	for _, ring := range rings {
		for k, p := range taken {
			e := taken[(k+1)%len(taken)].Minus(p)
			if e.Length() < hair || len(ring) < 3 {
				continue
			}
			out := spot{e.y, -e.x} // away from the taken ring, which runs counterclockwise
			if outside := m.cut(ring, p, out.Times(-1)); len(outside) > 2 && area(outside) > hair {
				left = append(left, outside)
			}
			ring = m.cut(ring, p, out)
		}
	}
	return left
}

// width is how wide a convex ring is at its narrowest.
func width(ring []spot) float64 {
	least := math.Inf(1)
	for k, p := range ring {
		e := ring[(k+1)%len(ring)].Minus(p)
		if e.Length() < hair {
			continue
		}
		far := 0.0
		for _, q := range ring {
			far = max(far, math.Abs(e.Cross(q.Minus(p)))/e.Length())
		}
		least = min(least, far)
	}
	return least
}
