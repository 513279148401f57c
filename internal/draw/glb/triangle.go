package glb

import (
	"math"

	"creasefit/internal/fold"
)

// triangles cuts a face into triangles, by the numbers of its corners: the
// ring's, then the hole's.
func (f *face) triangles() [][3]uint32 {
	corners := append(f.ring[:len(f.ring):len(f.ring)], f.hole...)
	if len(corners) == 4 && len(f.hole) == 0 && convex(corners, f.normal) {
		return [][3]uint32{{0, 1, 2}, {0, 2, 3}}
	}
	c := clipper{corners: corners, normal: f.normal}
	for i := range f.ring {
		c.ring = append(c.ring, uint32(i))
	}
	if len(f.hole) > 0 {
		c.bridge(len(f.ring))
	}
	return c.clip()
}

func convex(ring []fold.Vec, normal fold.Vec) bool {
	n := len(ring)
	for i := range ring {
		a, b, c := ring[i], ring[(i+1)%n], ring[(i+2)%n]
		if b.Minus(a).Cross(c.Minus(b)).Dot(normal) <= 0 {
			return false
		}
	}
	return true
}

// clipper cuts ears off a ring (Meisters, 1975).
type clipper struct {
	corners []fold.Vec
	normal  fold.Vec
	ring    []uint32
}

// turn is twice the signed area of the triangle of three corners.
func (c *clipper) turn(i, j, k uint32) float64 {
	a := c.corners[i]
	return c.corners[j].Minus(a).Cross(c.corners[k].Minus(a)).Dot(c.normal)
}

// bridge makes ring and hole one ring by the shortest line between two of
// their corners: nothing can lie in its way but further corners on the line.
func (c *clipper) bridge(hole int) {
	ringAt, holeAt, least := 0, hole, math.Inf(1)
	for i := range c.ring {
		for j := hole; j < len(c.corners); j++ {
			d := c.corners[c.ring[i]].Minus(c.corners[j]).Length()
			if d < least && c.sees(c.ring[i], uint32(j), hole) {
				ringAt, holeAt, least = i, j, d
			}
		}
	}
	n := len(c.corners) - hole
	joined := append([]uint32(nil), c.ring[:ringAt+1]...)
	for k := range n + 1 {
		joined = append(joined, uint32(hole+(holeAt-hole+k)%n))
	}
	c.ring = append(joined, c.ring[ringAt:]...)
}

// sees reports whether the line between two corners passes through no edge.
func (c *clipper) sees(a, b uint32, hole int) bool {
	passes := func(p, q uint32) bool {
		return c.turn(a, b, p)*c.turn(a, b, q) < -1e-12 && c.turn(p, q, a)*c.turn(p, q, b) < -1e-12
	}
	for i := range hole {
		if passes(uint32(i), uint32((i+1)%hole)) {
			return false
		}
	}
	n := len(c.corners) - hole
	for i := range n {
		if passes(uint32(hole+i), uint32(hole+(i+1)%n)) {
			return false
		}
	}
	return true
}

// clip cuts off one ear after the other.
func (c *clipper) clip() [][3]uint32 {
	var triangles [][3]uint32
	for len(c.ring) > 3 {
		at := c.ear()
		n := len(c.ring)
		triangles = append(triangles, [3]uint32{c.ring[(at+n-1)%n], c.ring[at], c.ring[(at+1)%n]})
		c.ring = append(c.ring[:at], c.ring[at+1:]...)
	}
	return append(triangles, [3]uint32{c.ring[0], c.ring[1], c.ring[2]})
}

// ear finds a corner whose triangle holds no other; in a ring spoilt by
// rounding, the one with the largest turn.
func (c *clipper) ear() int {
	best, most, n := 0, math.Inf(-1), len(c.ring)
	for i := range c.ring {
		a, b, d := c.ring[(i+n-1)%n], c.ring[i], c.ring[(i+1)%n]
		turn := c.turn(a, b, d)
		if turn > 1e-9 && c.empty(a, b, d) {
			return i
		}
		if turn > most {
			best, most = i, turn
		}
	}
	return best
}

// empty reports whether no corner of the ring lies in a triangle; those at its
// corners do not count.
func (c *clipper) empty(a, b, d uint32) bool {
	for _, p := range c.ring {
		v := c.corners[p]
		if v == c.corners[a] || v == c.corners[b] || v == c.corners[d] {
			continue
		}
		if c.turn(a, b, p) >= 0 && c.turn(b, d, p) >= 0 && c.turn(d, a, p) >= 0 {
			return false
		}
	}
	return true
}
