package foldfile

import (
	"cmp"
	"slices"

	"creasefit/internal/draw"
	"creasefit/internal/pattern"
)

// connected returns the mesh of a piece with everything that floats inside a
// panel tied to the rest.
func connected(p *pattern.Piece) *draw.Mesh {
	var joins []draw.Segment
	for {
		m := draw.NewMesh(p, joins...)
		tie, found := loose(m)
		if !found || slices.Contains(joins, tie) {
			return m
		}
		joins = append(joins, tie)
	}
}

// loose finds something that hangs together with nothing else, and the
// shortest line that ties it to the rest without crossing an edge.
func loose(m *draw.Mesh) (draw.Segment, bool) {
	if len(m.Edges) == 0 {
		return draw.Segment{}, false
	}
	part := parts(m)
	first := part[m.Edges[0].A]
	type tie struct {
		a, b int
		long float64
	}
	var ties []tie
	for a := range m.Vertices {
		for b := range m.Vertices {
			if part[a] == first && part[b] >= 0 && part[b] != first {
				p, q := m.At(a), m.At(b)
				ties = append(ties, tie{a, b, (q.X-p.X)*(q.X-p.X) + (q.Y-p.Y)*(q.Y-p.Y)})
			}
		}
	}
	slices.SortStableFunc(ties, func(a, b tie) int { return cmp.Compare(a.long, b.long) })
	for _, t := range ties {
		if clear(m, t.a, t.b) {
			return draw.Segment{A: m.Vertices[t.a], B: m.Vertices[t.b]}, true
		}
	}
	return draw.Segment{}, false
}

// parts numbers what hangs together: each vertex by the least vertex that it
// is tied to, -1 for vertices without an edge.
func parts(m *draw.Mesh) []int {
	part := make([]int, len(m.Vertices))
	for v := range part {
		part[v] = -1
	}
	for _, e := range m.Edges {
		part[e.A], part[e.B] = e.A, e.B
	}
	for again := true; again; {
		again = false
		for _, e := range m.Edges {
			if low := min(part[e.A], part[e.B]); part[e.A] != low || part[e.B] != low {
				part[e.A], part[e.B], again = low, low, true
			}
		}
	}
	return part
}

// clear reports whether the line between two vertices crosses no edge.
func clear(m *draw.Mesh, a, b int) bool {
	p, q := m.At(a), m.At(b)
	for _, e := range m.Edges {
		path := []draw.Vertex{{Point: m.At(e.A), Bulge: e.Bulge}, {Point: m.At(e.B)}}
		points := draw.Flatten(nil, path, false, chord)
		for i := 1; i < len(points); i++ {
			if _, through := draw.Crossing(p, q, points[i-1], points[i]); through {
				return false
			}
		}
	}
	return true
}
