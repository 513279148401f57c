package pattern

import (
	"math"
	"slices"
)

// Contours returns the edges round the paper of a piece, exactly: counterclockwise
// round each part of it, clockwise round holes, each from its lowest corner, the
// leftmost of these. Corners where an edge goes straight on are left out. Slits
// have no width and leave no edge.
func (p *Piece) Contours() [][]Vertex {
	var space [2][64]side                     // most pieces have no more, and need no memory for them
	edges := unmatched(p.sides(space[0][:0])) // most lie on one other, and need not be parted
	if parted := split(space[1][:0], edges); len(parted) > len(edges) {
		edges = unmatched(parted)
	}
	var all [][]Vertex
	for len(edges) > 0 {
		var ring []Vertex
		ring, edges = follow(edges)
		if ring = straightened(ring); len(ring) > 1 {
			beginLowest(ring)
			all = append(all, ring)
		}
	}
	slices.SortStableFunc(all, func(a, b []Vertex) int { return compare(a[0].Point, b[0].Point) })
	return all
}

// WholeBlank reports whether the outline of a piece is that of its blank.
func (p *Piece) WholeBlank() bool {
	rings := p.Contours()
	if len(rings) != 1 || len(rings[0]) != 4 {
		return false
	}
	for _, v := range rings[0] {
		if v.Bulge != 0 || !v.X.IsZero() && v.X != p.Width || !v.Y.IsZero() && v.Y != p.Height {
			return false
		}
	}
	return true
}

// side is one edge of a panel, the panel on its left.
type side struct {
	from  Vertex
	to    Point
	panel int // below 0 for one that lies on another
}

// sides appends the edges of all panels.
func (p *Piece) sides(sides []side) []side {
	for i := range p.Panels {
		for _, ring := range [...][]Vertex{p.Panels[i].Outline, p.Panels[i].Hole} {
			for k, v := range ring {
				if to := ring[(k+1)%len(ring)].Point; to != v.Point || v.Bulge != 0 {
					sides = append(sides, side{v, to, i})
				}
			}
		}
	}
	return sides
}

// unmatched leaves out, in their own memory, the sides that lie on one another: no
// panel lies on the other side of those that are left.
func unmatched(sides []side) []side {
	for i := range sides {
		s := &sides[i]
		for j := range sides[:i] {
			if o := &sides[j]; o.to == s.from.Point && o.from.Point == s.to && o.from.Bulge == -s.from.Bulge && o.panel >= 0 {
				s.panel, o.panel = -1, -1
				break
			}
		}
	}
	return slices.DeleteFunc(sides, func(s side) bool { return s.panel < 0 })
}

// split appends straight sides parted at the corners of other panels that lie on them.
func split(parted, sides []side) []side {
	var space [8]Point
	for k := range sides {
		s := &sides[k]
		at, near := append(space[:0], s.from.Point), s.around()
		for i := range sides {
			if o := &sides[i]; near.has(o.from.Point) && s.from.Bulge == 0 && o.panel != s.panel && between(o.from.Point, s.from.Point, s.to) && !slices.Contains(at, o.from.Point) {
				at = append(at, o.from.Point)
			}
		}
		slices.SortFunc(at[1:], func(a, b Point) int { return along(s.from.Point, s.to, a, b) })
		for i, q := range at {
			to := s.to
			if i+1 < len(at) {
				to = at[i+1]
			}
			parted = append(parted, side{Vertex{q, s.from.Bulge}, to, s.panel})
		}
	}
	return parted
}

// along orders two points on the way from a to b.
func along(a, b, p, q Point) int {
	if a.X != b.X {
		return p.X.Sub(q.X).Sign() * b.X.Sub(a.X).Sign()
	}
	return p.Y.Sub(q.Y).Sign() * b.Y.Sub(a.Y).Sign()
}

// between reports whether a point lies on the straight way from a to b, to the
// nanometre, and is neither end.
func between(p, a, b Point) bool {
	ax, ay := p.X.Sub(a.X).Millimetres(), p.Y.Sub(a.Y).Millimetres()
	bx, by := b.X.Sub(a.X).Millimetres(), b.Y.Sub(a.Y).Millimetres()
	dot, whole, off := ax*bx+ay*by, bx*bx+by*by, ax*by-ay*bx
	const hair = 2e-6
	return dot > 0 && dot < whole && off*off <= hair*hair*whole
}

// around is what lies round a side, in nanometres: nearly all corners do not.
type around struct{ left, right, bottom, top int64 }

func (s *side) around() around {
	x, y, u, v := s.from.X.Nanometres(), s.from.Y.Nanometres(), s.to.X.Nanometres(), s.to.Y.Nanometres()
	const clearly = 10
	return around{min(x, u) - clearly, max(x, u) + clearly, min(y, v) - clearly, max(y, v) + clearly}
}

func (a *around) has(p Point) bool {
	x, y := p.X.Nanometres(), p.Y.Nanometres()
	return x >= a.left && x <= a.right && y >= a.bottom && y <= a.top
}

// follow takes one ring out of the edges: at a corner where several parts of the
// paper touch, it turns as far to the left as it can and so stays on its part.
func follow(edges []side) (ring []Vertex, rest []side) {
	at := edges[0]
	start := at.from.Point
	edges = edges[1:]
	ring = make([]Vertex, 0, len(edges)+1)
	for {
		ring = append(ring, at.from)
		if at.to == start {
			return ring, edges
		}
		best := -1
		for i := range edges {
			if edges[i].from.Point == at.to && (best < 0 || moreLeft(&at, &edges[i], &edges[best])) {
				best = i
			}
		}
		if best < 0 {
			return ring, edges // a panel that is not closed; the proof refuses it
		}
		at = edges[best]
		edges = slices.Delete(edges, best, best+1)
	}
}

// moreLeft reports whether a turns more to the left than b from the edge before.
func moreLeft(before, a, b *side) bool {
	back := heading(before.to, before.from.Point)
	turn := func(s *side) float64 {
		t := heading(s.from.Point, s.to) - back
		if t <= 1e-9 {
			t += 2 * math.Pi
		}
		return t
	}
	return turn(a) > turn(b)
}

// heading is the direction from one point to another, in radians.
func heading(a, b Point) float64 {
	return math.Atan2(b.Y.Sub(a.Y).Millimetres(), b.X.Sub(a.X).Millimetres())
}

// straightened leaves out the corners of a ring where it goes straight on, in its
// own memory.
func straightened(ring []Vertex) []Vertex {
	kept, before, first := ring[:0], ring[len(ring)-1], ring[0].Point
	for i, v := range ring {
		after := first
		if i+1 < len(ring) {
			after = ring[i+1].Point
		}
		if before.Bulge != 0 || v.Bulge != 0 || !between(v.Point, before.Point, after) {
			kept = append(kept, v)
		}
		before = v
	}
	return kept
}

// beginLowest turns a ring so that it begins at its lowest corner.
func beginLowest(ring []Vertex) {
	first := 0
	for i := range ring {
		if compare(ring[i].Point, ring[first].Point) < 0 {
			first = i
		}
	}
	slices.Reverse(ring[:first])
	slices.Reverse(ring[first:])
	slices.Reverse(ring)
}

// compare orders points from the bottom up, and from the left at the same height.
func compare(a, b Point) int {
	if c := a.Y.Sub(b.Y).Sign(); c != 0 {
		return c
	}
	return a.X.Sub(b.X).Sign()
}
