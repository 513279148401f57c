package fold

import (
	"cmp"
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// pressOpen opens the slits in a panel whose piece crosses another one in them:
// as wide as the stock, half of it to each side.
func (m *model) pressOpen(piece int, ring []spot) []spot {
	in := func(l pattern.Lock) bool { return !l.Slotted && (l.A == piece || l.B == piece) }
	if !slices.ContainsFunc(m.pattern.Locks, in) {
		return ring
	}
	open := make([]spot, 0, len(ring)+4*len(m.pattern.Pieces[piece].Cuts))
	for i, p := range ring {
		open = m.openEdge(append(open, p), piece, p, ring[(i+1)%len(ring)])
	}
	return open
}

// openEdge appends the corners of the slits that begin on the edge from p to q.
func (m *model) openEdge(ring []spot, piece int, p, q spot) []spot {
	along := q.sub(p)
	long := along.length()
	along = along.by(1 / long)
	var slits [][2]spot
	for i := range m.pattern.Pieces[piece].Cuts {
		c := &m.pattern.Pieces[piece].Cuts[i]
		if c.Kind != pattern.Slit || len(c.Path) < 2 {
			continue
		}
		start := place(c.Path[0].Point)
		if d := start.sub(p); math.Abs(along.cross(d)) < hair && d.dot(along) > 0 && d.dot(along) < long {
			slits = append(slits, [2]spot{start, place(c.Path[len(c.Path)-1].Point)})
		}
	}
	slices.SortFunc(slits, func(a, b [2]spot) int { return cmp.Compare(a[0].sub(p).dot(along), b[0].sub(p).dot(along)) })
	aside := along.by(m.half)
	for _, s := range slits {
		ring = append(ring, s[0].sub(aside), s[1].sub(aside), s[1].add(aside), s[0].add(aside))
	}
	return ring
}
