package pattern

import "creasefit/internal/measure"

// Memory is where the lists of patterns lie that are given back together. The zero
// value is ready, and nobody but one may lay out in it at a time.
type Memory struct {
	Pieces  Slab[Piece]
	Strips  Slab[Strip]
	Cells   Slab[Cell]
	Scores  Slab[Score]
	Panels  Slab[Panel]
	Creases Slab[Crease]
	Corners Slab[Vertex]
	Cuts    Slab[Cut]
	Glues   Slab[Glue]
	Seams   Slab[Seam]
	Joints  Slab[Joint]
	Lengths Slab[measure.Length]
}

// GiveBack lets the next patterns lie there: none of those that do may be used any more,
// and nothing is left of them.
func (m *Memory) GiveBack() {
	for _, slab := range [...]interface{ giveBack() }{&m.Pieces, &m.Strips, &m.Cells, &m.Scores, &m.Panels, &m.Creases,
		&m.Corners, &m.Cuts, &m.Glues, &m.Seams, &m.Joints, &m.Lengths} {
		slab.giveBack()
	}
}

// Rectangle returns what the function of that name does.
func (m *Memory) Rectangle(x0, y0, x1, y1 measure.Length) []Vertex {
	outline := m.Corners.Take(4)
	FillRectangle(outline, x0, y0, x1, y1)
	return outline
}

// Polygon returns what the function of that name does.
func (m *Memory) Polygon(points ...Point) []Vertex {
	outline := m.Corners.Take(len(points))
	for i, p := range points {
		outline[i] = Vertex{Point: p}
	}
	return outline
}

// Positions returns those of a strip.
func (m *Memory) Positions(s *Strip) []measure.Length {
	return s.positions(m.Lengths.Take(len(s.Cells) + 1))
}

// Slab is where many short lists of one type lie.
type Slab[T any] struct {
	all  []T // zero from used on
	used int
}

func (s *Slab[T]) giveBack() {
	clear(s.all[:s.used])
	s.used = 0
}

// mostSpare is how many values more than asked for are made room for at the most.
const mostSpare = 512

// Take returns so many zero values, nil for none, where nothing else lies and nothing comes to
// lie by an append.
func (s *Slab[T]) Take(n int) []T {
	if n == 0 {
		return nil
	}
	if s.used+n > len(s.all) {
		s.all, s.used = make([]T, n+min(n+2*len(s.all), mostSpare)), 0
	}
	taken := s.all[s.used : s.used+n : s.used+n]
	s.used += n
	return taken
}
