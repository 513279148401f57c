package fold

import (
	"math"
	"slices"
)

// part is a convex plate: corners at mid-caliper, inside normal, half of its
// thickness, and how far its edges give way.
type part struct {
	corners []Vec
	normal  Vec
	half    float64
	yield   float64
}

// meet reports whether two convex plates have more than a contact in common while
// the first goes a way, nil for none: whether no plane parts the convex body
// that it sweeps from the other, parallel to a face of one, to an edge of each or to
// the way (the theorem of separating axes for convex polyhedra).
func meet(a, b *part, way *Vec) bool {
	return !facesPart(a, b, way) && !sidesPart(a, a, b, way) && !sidesPart(b, a, b, way) && !edgesPart(a, b, way)
}

// facesPart tries the faces of both plates, and the line that these have in
// common. What it parts is apart even if the plates are not convex.
func facesPart(a, b *part, way *Vec) bool {
	return apartAlong(a.across(), b.extent(a.normal), a.normal, way) || apartAlong(a.extent(b.normal), b.across(), b.normal, way) ||
		parted(a, b, a.normal.Cross(b.normal), way) ||
		way != nil && (parted(a, b, way.Cross(a.normal), way) || parted(a, b, way.Cross(b.normal), way))
}

// sidesPart tries the edges of one of two plates with both normals, which are the same
// in parallel planes.
func sidesPart(one, a, b *part, way *Vec) bool {
	level := math.Abs(a.normal.Dot(b.normal)) > 1-1e-12
	for i := range one.corners {
		e := one.edge(i)
		if parted(a, b, a.normal.Cross(e), way) || !level && parted(a, b, b.normal.Cross(e), way) ||
			way != nil && parted(a, b, way.Cross(e), way) {
			return true
		}
	}
	return false
}

// edgesPart tries every edge of a with every edge of b.
func edgesPart(a, b *part, way *Vec) bool {
	for i := range a.corners {
		for j := range b.corners {
			if parted(a, b, a.edge(i).Cross(b.edge(j)), way) {
				return true
			}
		}
	}
	return false
}

// giving is the plate with edges that give way, and faces that give slack.
func (p part) giving(edges, slack float64) part {
	p.yield, p.half = edges, p.half-min(slack/2, p.half/2)
	return p
}

func (p *part) edge(i int) Vec { return p.corners[(i+1)%len(p.corners)].Minus(p.corners[i]) }

// parted reports whether two plates are in contact at most along an axis while the
// first goes a way.
func parted(a, b *part, axis Vec, way *Vec) bool {
	size := axis.Length()
	if size < 1e-9 {
		return false
	}
	axis = axis.Times(1 / size)
	return apartAlong(a.extent(axis), b.extent(axis), axis, way)
}

// apartAlong reports whether two stretches of an axis are in contact at most while the
// first goes a way.
func apartAlong(p, q span, axis Vec, way *Vec) bool {
	if way != nil {
		d := way.Dot(axis)
		p.low, p.high = p.low+min(0, d), p.high+max(0, d)
	}
	return max(p.low-q.high, q.low-p.high) > -touch
}

// across is what the plate takes up of its own normal.
func (p *part) across() span {
	d := p.corners[0].Dot(p.normal)
	return span{d - p.half, d + p.half}
}

// extent is what the plate takes up of an axis, without what its edges and
// faces give way.
func (p *part) extent(axis Vec) span {
	x, y, z := axis[0], axis[1], axis[2] // in registers, which an array is not
	s := span{math.Inf(1), math.Inf(-1)}
	for i := range p.corners {
		c := &p.corners[i]
		d := c[0]*x + c[1]*y + c[2]*z
		if d < s.low {
			s.low = d
		}
		if d > s.high {
			s.high = d
		}
	}
	across := math.Abs(p.normal.Dot(axis))
	more := p.half*across - p.yield*math.Sqrt(max(0, 1-across*across))
	return span{s.low - more, s.high + more}
}

// convex reports whether a ring is convex.
func convex(ring []spot) bool {
	if len(ring) == 0 {
		return true
	}
	p, q := ring[len(ring)-1], ring[0]
	for i := range ring {
		r := next(ring, i)
		if q.Minus(p).Cross(r.Minus(q)) < -1e-9 {
			return false
		}
		p, q = q, r
	}
	return true
}

// shared deals out how far the edges of two plates give way. That of a plate in parts
// is left to the other one, since narrow parts would vanish if they were drawn in; two
// plates in parts do not give way.
func shared(a, b float64, wholeA, wholeB bool) (float64, float64) {
	switch {
	case wholeA && wholeB:
		return a, b
	case wholeA:
		return a + b, 0
	case wholeB:
		return 0, a + b
	}
	return 0, 0
}

// partsOverlap compares two plates, at least one of them not convex, part by part.
func (m *model) partsOverlap(a, b *plate, pa, pb part) bool {
	pa.yield, pb.yield = shared(pa.yield, pb.yield, a.convex, b.convex)
	m.cutUp(a)
	m.cutUp(b)
	for i := range a.parts {
		x := &a.parts[i]
		if apart(&x.box, &b.box) {
			continue
		}
		for j := range b.parts {
			y := &b.parts[j]
			pa.corners, pb.corners = x.corners, y.corners
			if !apart(&x.box, &y.box) && meet(&pa, &pb, nil) {
				return true
			}
		}
	}
	return false
}

// piece is a convex part of a plate, folded, with the box round it.
type piece struct {
	box
	corners []Vec
}

// cutUp cuts a plate into convex parts, once; a convex one is its own part.
func (m *model) cutUp(pl *plate) {
	if pl.parts != nil {
		return
	}
	if pl.convex {
		pl.whole[0] = piece{pl.box, pl.space}
		pl.parts = pl.whole[:]
		return
	}
	first := pl // a copy is cut as the first one is
	if pl.copy > 0 && pl.panel >= 0 {
		first = m.panel(pl.piece, pl.panel)
	}
	if first.cut == nil {
		first.cut = trapezoids(first)
	}
	begin := len(m.pieces)
	for _, ring := range first.cut {
		at := len(m.corners)
		m.corners = pl.lift(m.corners, ring)
		corners := m.corners[at:len(m.corners):len(m.corners)]
		m.pieces = append(m.pieces, piece{boxRound(corners).thicker(pl.move.Z, m.half), corners})
	}
	pl.parts = m.pieces[begin:len(m.pieces):len(m.pieces)]
}

func (pl *plate) lift(to []Vec, ring []spot) []Vec {
	for _, p := range ring {
		to = append(to, pl.move.at(p))
	}
	return to
}

// trapezoids cuts a plate with its hole into trapezoids by lines through all
// corners, along the blank's width.
func trapezoids(pl *plate) [][]spot {
	n := len(pl.flat) + len(pl.hole)
	levels, edges := make([]float64, 0, n), make([]span, 0, n)
	for _, ring := range [...][]spot{pl.flat, pl.hole} {
		for _, p := range ring {
			levels = append(levels, p.y)
		}
	}
	slices.Sort(levels)
	parts := make([][]spot, 0, n)
	for i := 1; i < len(levels); i++ {
		if low, high := levels[i-1], levels[i]; high-low > hair/10 {
			parts = slab(parts, edges, pl, low, high)
		}
	}
	return parts
}

// slab appends the trapezoids between two neighbouring levels: between the
// first and second edge that pass through it, the third and fourth, and so on.
// It notes in edges where each passes the lower and the upper level.
func slab(parts [][]spot, edges []span, pl *plate, low, high float64) [][]spot {
	mid := (low + high) / 2
	for _, ring := range [...][]spot{pl.flat, pl.hole} {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if (a.y > mid) != (b.y > mid) {
				slope := (b.x - a.x) / (b.y - a.y)
				edges = append(edges, span{a.x + (low-a.y)*slope, a.x + (high-a.y)*slope})
			}
		}
	}
	slices.SortFunc(edges, func(a, b span) int {
		if a.low+a.high < b.low+b.high {
			return -1
		}
		return 1
	})
	for i := 1; i < len(edges); i += 2 {
		a, b := edges[i-1], edges[i]
		parts = append(parts, []spot{{a.low, low}, {b.low, low}, {b.high, high}, {a.high, high}})
	}
	return parts
}
