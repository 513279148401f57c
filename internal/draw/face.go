package draw

import (
	"cmp"
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// walk finds the rings: at the end of every half edge the next one is the
// first to the right of turning back, so that a ring keeps one face on its left.
func (b *builder) walk() {
	b.turn()
	seen := make([]bool, 2*len(b.mesh.Edges))
	for start := range seen {
		if seen[start] {
			continue
		}
		f := Face{}
		for h := Half(start); !seen[h]; h = b.next(h) {
			seen[h] = true
			f.Half = append(f.Half, h)
		}
		b.mesh.Faces = append(b.mesh.Faces, f)
	}
}

// turn sorts the half edges that leave each vertex by their direction.
func (b *builder) turn() {
	b.out = make([][]Half, len(b.mesh.Vertices))
	directions := make([]float64, 2*len(b.mesh.Edges))
	for i := range directions {
		h := Half(i)
		from := b.mesh.Start(h)
		b.out[from] = append(b.out[from], h)
		directions[i] = b.mesh.direction(h)
	}
	for _, out := range b.out {
		slices.SortFunc(out, func(g, h Half) int { return cmp.Compare(directions[g], directions[h]) })
	}
}

// direction returns the angle at which a half edge leaves its start.
func (m *Mesh) direction(h Half) float64 {
	d := m.At(m.End(h)).sub(m.At(m.Start(h)))
	angle := math.Atan2(d.Y, d.X) - 2*math.Atan(m.Bulge(h))
	if angle > math.Pi {
		angle -= 2 * math.Pi
	}
	if angle <= -math.Pi {
		angle += 2 * math.Pi
	}
	return angle
}

// next returns the half edge that follows in its ring.
func (b *builder) next(h Half) Half {
	out := b.out[b.mesh.End(h)]
	i := slices.Index(out, h^1)
	return out[(i+len(out)-1)%len(out)]
}

// judge finds what lies on the left of every ring, keeps those with paper and
// gives every edge its role.
func (b *builder) judge() {
	for i := range b.mesh.Edges {
		b.mesh.Edges[i].Left, b.mesh.Edges[i].Right = -1, -1
	}
	kept := b.mesh.Faces[:0]
	for _, f := range b.mesh.Faces {
		if f.Panel = b.paper(&f); f.Panel < 0 {
			continue
		}
		f.Hole = b.mesh.area(&f) < 0
		for _, h := range f.Half {
			if e := &b.mesh.Edges[h.Edge()]; h.Back() {
				e.Right = f.Panel
			} else {
				e.Left = f.Panel
			}
		}
		kept = append(kept, f)
	}
	b.mesh.Faces = kept
	b.drop()
}

// drop removes the edges without paper and gives the others their roles.
func (b *builder) drop() {
	m, number := &b.mesh, make([]int, len(b.mesh.Edges))
	kept := m.Edges[:0]
	for i, e := range m.Edges {
		if number[i] = len(kept); e.Left >= 0 || e.Right >= 0 {
			e.Role = b.role(&e)
			kept = append(kept, e)
		}
	}
	m.Edges = kept
	for _, f := range m.Faces {
		for k, h := range f.Half {
			f.Half[k] = Half(2*number[h.Edge()]) | h&1
		}
	}
}

// role says what an edge with paper on at least one side is.
func (b *builder) role(e *Edge) Role {
	switch {
	case e.Left < 0 || e.Right < 0:
		return Border
	case e.Cut >= 0:
		return Slit
	case e.Crease >= 0:
		return [...]Role{Flat, Valley, Mountain}[b.piece.Creases[e.Crease].Fold]
	case e.Left == e.Right:
		return Join
	default:
		return Slit
	}
}

// hair is how far from an edge, in mm, the ring's side is looked at.
const hair = 1e-3

// paper returns the panel on the left of a ring, -1 where there is no paper.
func (b *builder) paper(f *Face) int {
	p := b.mesh.leftOf(f)
	for i := range b.piece.Panels {
		panel := &b.piece.Panels[i]
		if encloses(panel.Outline, p) && !encloses(panel.Hole, p) {
			return i
		}
	}
	return -1
}

// leftOf returns a place just to the left of a ring's longest edge.
func (m *Mesh) leftOf(f *Face) Point {
	longest, at := -1.0, Point{}
	for _, h := range f.Half {
		a, b := m.At(m.Start(h)), m.At(m.End(h))
		along := b.sub(a)
		length := along.length()
		if length <= longest {
			continue
		}
		longest = length
		left, mid := Point{-along.Y, along.X}.by(1/length), a.middle(b)
		if bulge := m.Bulge(h); bulge != 0 {
			mid = ArcBetween(a, b, bulge).At(0.5)
		}
		at = mid.add(left.by(hair))
	}
	return at
}

// encloses reports whether a ring of the pattern goes round a place.
func encloses(ring []pattern.Vertex, p Point) bool {
	in := false
	for i, v := range ring {
		a, b := place(v.Point), place(ring[(i+1)%len(ring)].Point)
		in = in != passes(a, b, p)
		if math.Abs(v.Bulge) > straight && inSegment(a, b, v.Bulge, p) {
			in = !in
		}
	}
	return in
}

// passes reports whether a ray to the right of p passes the edge.
func passes(a, b, p Point) bool {
	return (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)*(b.X-a.X)/(b.Y-a.Y)
}

// inSegment reports whether p lies between an arc and its chord.
func inSegment(a, b Point, bulge float64, p Point) bool {
	arc := ArcBetween(a, b, bulge)
	right := b.sub(a).cross(p.sub(a)) < 0
	return right == (bulge > 0) && p.sub(arc.Centre).length() < arc.Radius
}

// area returns the signed area within a ring.
func (m *Mesh) area(f *Face) float64 {
	sum, origin := 0.0, m.At(m.Start(f.Half[0]))
	for _, h := range f.Half {
		a, b := m.At(m.Start(h)), m.At(m.End(h))
		sum += a.sub(origin).cross(b.sub(origin)) / 2
		if bulge := m.Bulge(h); bulge != 0 {
			arc := ArcBetween(a, b, bulge)
			sum += arc.Radius * arc.Radius * (arc.Sweep - math.Sin(arc.Sweep)) / 2
		}
	}
	return sum
}
