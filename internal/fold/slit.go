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
	at := len(m.spots)
	for i, p := range ring {
		m.spots = append(m.spots, p)
		m.openEdge(piece, p, ring[(i+1)%len(ring)])
	}
	return m.spots[at:len(m.spots):len(m.spots)]
}

// openEdge keeps the corners of the slits that begin on the edge from p to q.
func (m *model) openEdge(piece int, p, q spot) {
	along := q.Minus(p)
	long := along.Length()
	along = along.Times(1 / long)
	var space [8][2]spot
	slits := space[:0]
	for i := range m.pattern.Pieces[piece].Cuts {
		c := &m.pattern.Pieces[piece].Cuts[i]
		if c.Kind != pattern.Slit || len(c.Path) < 2 {
			continue
		}
		start := place(c.Path[0].Point)
		if d := start.Minus(p); math.Abs(along.Cross(d)) < hair && d.Dot(along) > 0 && d.Dot(along) < long {
			slits = append(slits, [2]spot{start, place(c.Path[len(c.Path)-1].Point)})
		}
	}
	slices.SortFunc(slits, func(a, b [2]spot) int { return cmp.Compare(a[0].Minus(p).Dot(along), b[0].Minus(p).Dot(along)) })
	aside := along.Times(m.half)
	for _, s := range slits {
		m.spots = append(m.spots, s[0].Minus(aside), s[1].Minus(aside), s[1].Plus(aside), s[0].Plus(aside))
	}
}
