package draw

import (
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// Role says what an edge of a mesh is.
type Role uint8

// The roles. An edge with paper of two panels on its sides and no score on it
// is cut: a Slit. A Flat edge joins two panels without a score. A Join lies
// inside one panel and is neither cut nor scored.
const (
	Border Role = iota
	Slit
	Valley
	Mountain
	Flat
	Join
)

// Mesh is a piece as a planar graph: its panels share their vertices, and its
// edges are split wherever they touch or cross one another.
type Mesh struct {
	Vertices []pattern.Point
	Edges    []Edge
	Faces    []Face
}

// Edge runs from vertex A to vertex B. Its bulge is that of pattern.Vertex.
type Edge struct {
	A, B        int
	Bulge       float64
	Role        Role
	Crease, Cut int // of the piece; -1 for none
	Left, Right int // the panels on its sides; -1 for no paper
}

// Face is a ring of edges with paper on its left: counterclockwise round a
// panel, clockwise round a hole in it.
type Face struct {
	Panel int
	Hole  bool
	Half  []Half
}

// Half is an edge walked in one direction: twice its number, and one more
// when it is walked from B to A.
type Half int

// Edge returns the number of the edge.
func (h Half) Edge() int { return int(h) >> 1 }

// Back reports whether the edge is walked from B to A.
func (h Half) Back() bool { return h&1 == 1 }

// Start and End return the vertices of a half edge.
func (m *Mesh) Start(h Half) int {
	if h.Back() {
		return m.Edges[h.Edge()].B
	}
	return m.Edges[h.Edge()].A
}

// End returns the vertex that a half edge leads to.
func (m *Mesh) End(h Half) int { return m.Start(h ^ 1) }

// Bulge returns the bulge of an edge in the direction it is walked in.
func (m *Mesh) Bulge(h Half) float64 {
	if h.Back() {
		return -m.Edges[h.Edge()].Bulge
	}
	return m.Edges[h.Edge()].Bulge
}

// At returns where a vertex is.
func (m *Mesh) At(vertex int) Point { return place(m.Vertices[vertex]) }

// Segment is a straight line between two places of a blank.
type Segment struct{ A, B pattern.Point }

// NewMesh builds the mesh of a piece. The joins are further lines that divide
// its panels without being cut or scored, such as those that tie a hole to the
// outline.
func NewMesh(p *pattern.Piece, joins ...Segment) *Mesh {
	b := builder{piece: p}
	b.gather(joins)
	b.split()
	b.connect()
	b.walk()
	b.judge()
	return &b.mesh
}

// stroke is a line of the piece before it is split.
type stroke struct {
	a, b        pattern.Point
	bulge       float64
	crease, cut int
	on          []pattern.Point // places between its ends where it is split
}

// builder turns a piece into a mesh.
type builder struct {
	piece   *pattern.Piece
	strokes []stroke
	mesh    Mesh
	known   map[pattern.Point]int
	out     [][]Half // the half edges that leave each vertex, counterclockwise
}

// gather lists all lines of the piece.
func (b *builder) gather(joins []Segment) {
	n := len(joins) + len(b.piece.Creases)
	for i := range b.piece.Panels {
		n += len(b.piece.Panels[i].Outline) + len(b.piece.Panels[i].Hole)
	}
	for i := range b.piece.Cuts {
		n += len(b.piece.Cuts[i].Path)
	}
	b.strokes = make([]stroke, 0, n)
	for i := range b.piece.Panels {
		b.ring(b.piece.Panels[i].Outline, -1, true)
		b.ring(b.piece.Panels[i].Hole, -1, true)
	}
	for i := range b.piece.Creases {
		c := &b.piece.Creases[i]
		b.stroke(stroke{a: c.A, b: c.B, bulge: c.Bulge, crease: i, cut: -1})
	}
	for i := range b.piece.Cuts {
		c := &b.piece.Cuts[i]
		b.ring(c.Path, i, c.Kind == pattern.Window)
	}
	for _, j := range joins {
		b.stroke(stroke{a: j.A, b: j.B, crease: -1, cut: -1})
	}
}

// ring adds the lines of an outline or of a blade's path.
func (b *builder) ring(path []pattern.Vertex, cut int, closed bool) {
	for i, v := range path {
		if i+1 < len(path) || closed {
			b.stroke(stroke{a: v.Point, b: path[(i+1)%len(path)].Point, bulge: v.Bulge, crease: -1, cut: cut})
		}
	}
}

func (b *builder) stroke(s stroke) {
	if s.a == s.b {
		return
	}
	if math.Abs(s.bulge) <= straight {
		s.bulge = 0
	}
	b.strokes = append(b.strokes, s)
}

// connect makes vertices and edges out of the split strokes; strokes that
// cover one another become one edge.
func (b *builder) connect() {
	b.known = make(map[pattern.Point]int, len(b.strokes))
	b.mesh.Edges = make([]Edge, 0, len(b.strokes))
	for i := range b.strokes {
		s := &b.strokes[i]
		from := b.vertex(s.a)
		for _, p := range s.on {
			to := b.vertex(p)
			b.edge(from, to, s)
			from = to
		}
		b.edge(from, b.vertex(s.b), s)
	}
}

func (b *builder) vertex(p pattern.Point) int {
	if v, ok := b.known[p]; ok {
		return v
	}
	v := len(b.mesh.Vertices)
	b.known[p] = v
	b.mesh.Vertices = append(b.mesh.Vertices, p)
	return v
}

// edge adds an edge, or what is new about one that is already there.
func (b *builder) edge(from, to int, s *stroke) {
	if from == to {
		return
	}
	at := slices.IndexFunc(b.mesh.Edges, func(e Edge) bool {
		return e.A == from && e.B == to && sameBulge(e.Bulge, s.bulge) || e.A == to && e.B == from && sameBulge(e.Bulge, -s.bulge)
	})
	if at < 0 {
		at = len(b.mesh.Edges)
		b.mesh.Edges = append(b.mesh.Edges, Edge{A: from, B: to, Bulge: s.bulge, Crease: -1, Cut: -1})
	}
	e := &b.mesh.Edges[at]
	e.Crease, e.Cut = max(e.Crease, s.crease), max(e.Cut, s.cut)
}

func sameBulge(a, b float64) bool { return math.Abs(a-b) < 1e-6 }
