package fold

import (
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// closures measures the seams and glue areas of every piece and every bond.
func (m *model) closures(tolerance float64) (gap float64) {
	for i := range m.pattern.Pieces {
		p := &m.pattern.Pieces[i]
		for j := range p.Seams {
			gap = max(gap, m.seam(i, i, &p.Seams[j], tolerance))
		}
		for j := range p.Glues {
			gap = max(gap, m.glue(i, i, &p.Glues[j], tolerance))
		}
	}
	for i := range m.pattern.Bonds {
		b := &m.pattern.Bonds[i]
		for j := range b.Seams {
			gap = max(gap, m.seam(b.A, b.B, &b.Seams[j], tolerance))
		}
		for j := range b.Glues {
			gap = max(gap, m.glue(b.A, b.B, &b.Glues[j], tolerance))
		}
	}
	return gap
}

// seam returns how far the ends of two edges, of a panel of each piece, are from
// where they should meet.
func (m *model) seam(first, second int, s *pattern.Seam, tolerance float64) float64 {
	a, b := &m.panel(first, s.PanelA).move, &m.panel(second, s.PanelB).move
	apart := s.Apart.Millimetres()
	gap := math.Abs(a.at(place(s.A1)).Minus(b.at(place(s.B1))).Length() - apart)
	gap = max(gap, math.Abs(a.at(place(s.A2)).Minus(b.at(place(s.B2))).Length()-apart))
	if gap > tolerance {
		m.find("seam", s.Name, "does not meet", gap)
	}
	return gap
}

// glue returns how far a glue area of one piece is from lying flat on its
// partner in the other, one caliper from it, and how far it hangs over an edge.
func (m *model) glue(piece, other int, g *pattern.Glue, tolerance float64) float64 {
	own, partner := m.panel(piece, g.Panel), m.panel(other, g.To)
	flat := m.ring(g.Area)
	side, toSide := facing(g.Face), facing(g.ToFace)
	if side*toSide*own.move.Z.Dot(partner.move.Z) > 0 {
		m.find("glue", g.Name, "has its two faces looking the same way", 0)
	}
	at := len(m.spots)
	lift := 0.0
	for _, p := range flat {
		q := own.move.at(p)
		lift = max(lift, m.lift(piece, q.Minus(partner.move.Origin).Dot(partner.move.Z)*toSide))
		m.spots = append(m.spots, partner.move.spot(q))
	}
	if lift > tolerance {
		m.find("glue", g.Name, "does not lie on "+m.name(partner), lift)
	}
	landed := m.spots[at:]
	over := m.overhang(g.Name, flat, own, tolerance)
	return max(lift, over, m.overhang(g.Name, landed, partner, tolerance))
}

// lift returns how far two glued panels that lie so far apart are from where
// they should be: one caliper, or up to that where they bend.
func (m *model) lift(piece int, apart float64) float64 {
	if m.facets[piece] != nil && apart > -hair {
		return max(0, apart-2*m.half)
	}
	return math.Abs(apart - 2*m.half)
}

// facing is the direction that a face looks, along the panel's inside normal.
func facing(f pattern.Face) float64 {
	if f == pattern.Inside {
		return 1
	}
	return -1
}

// overhang returns how far a glue area reaches out of a plate.
func (m *model) overhang(glue string, area []spot, pl *plate, tolerance float64) float64 {
	over := 0.0
	if pl.holds(area) {
		return over
	}
	for _, p := range area {
		if !within(p, pl.flat) {
			over = max(over, off(p, pl.flat))
		} else if len(pl.hole) > 0 && within(p, pl.hole) {
			over = max(over, off(p, pl.hole))
		}
	}
	if !pl.convex || over > dust { // else no line of the plate runs into the area
		over = max(over, intrusion(pl.flat, area), intrusion(pl.hole, area))
	}
	if over > tolerance {
		m.find("glue", glue, "reaches out of "+m.name(pl), over)
	}
	return over
}

// holds reports whether a plate is convex and all of an area lies on it, to a
// thousandth of a nanometre for an edge of a millimetre.
func (pl *plate) holds(area []spot) bool {
	for i, a := range pl.flat {
		e := next(pl.flat, i).Minus(a)
		for _, p := range area {
			if e.Cross(p.Minus(a)) < -1e-9 {
				return false
			}
		}
	}
	return pl.convex
}

// intrusion returns how deep the line of a ring runs into an area: it bites
// into the area even where the area's own corners are all on paper. Each edge
// is split where it crosses the area's, and its parts judged at their middles
// and ends.
func intrusion(ring, area []spot) float64 {
	low, high := bounds(area)
	deepest := 0.0
	var buffer [8]float64
	for i, a := range ring {
		b := next(ring, i)
		if max(a.x, b.x) < low.x+hair || min(a.x, b.x) > high.x-hair ||
			max(a.y, b.y) < low.y+hair || min(a.y, b.y) > high.y-hair {
			continue
		}
		at := crossings(append(buffer[:0], 0, 1), a, b, area)
		slices.Sort(at)
		for k := 1; k < len(at); k++ {
			for _, t := range [...]float64{at[k-1], (at[k-1] + at[k]) / 2, at[k]} {
				if p := a.Plus(b.Minus(a).Times(t)); within(p, area) {
					deepest = max(deepest, off(p, area))
				}
			}
		}
	}
	return deepest
}

// crossings appends where along a to b, from 0 to 1, the ring is crossed.
func crossings(at []float64, a, b spot, ring []spot) []float64 {
	e := b.Minus(a)
	for i, p := range ring {
		f := next(ring, i).Minus(p)
		across := e.Cross(f)
		if math.Abs(across) < 1e-12 {
			continue
		}
		t, u := p.Minus(a).Cross(f)/across, p.Minus(a).Cross(e)/across
		if t > 0 && t < 1 && u >= 0 && u <= 1 {
			at = append(at, t)
		}
	}
	return at
}

// bounds returns the corners of the rectangle round a ring.
func bounds(ring []spot) (low, high spot) {
	low, high = ring[0], ring[0]
	for _, p := range ring[1:] {
		low = spot{min(low.x, p.x), min(low.y, p.y)}
		high = spot{max(high.x, p.x), max(high.y, p.y)}
	}
	return low, high
}
