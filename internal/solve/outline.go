package solve

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Corner is a place on a blank as hands set it.
type Corner struct {
	pattern.Vertex
	X, Y pattern.Set // from the left and from the bottom
	// Cross names the two scores that cross there. It is set for a place that lies
	// on no mark: the scores are set, the place is where they meet.
	Cross [2]string
}

// Partial is a score that does not run from edge to edge of the paper.
type Partial struct {
	Crease     int // of the piece
	Begin, End Corner
}

// Outline returns the whole cut edge of a piece, as pattern.Contours has it, with
// what to set for every corner.
func (s *Solution) Outline(piece int) [][]Corner {
	p := &s.Pattern.Pieces[piece]
	rings := p.Contours()
	most := 0
	for _, ring := range rings {
		most += len(ring)
	}
	corners, all := make([][]Corner, len(rings)), make([]Corner, 0, most)
	for i, ring := range rings {
		from := len(all)
		for _, v := range ring {
			all = append(all, s.corner(p, v))
		}
		corners[i] = all[from:len(all):len(all)]
	}
	return corners
}

// Partials returns where the scores of a piece begin and end that do not run from
// edge to edge of the blank, in the order of its creases.
func (s *Solution) Partials(piece int) []Partial {
	p := &s.Pattern.Pieces[piece]
	var partials []Partial
	for i := range p.Creases {
		if c := &p.Creases[i]; !p.OnEdge(c.A) || !p.OnEdge(c.B) {
			partials = append(partials, Partial{i, s.corner(p, pattern.Vertex{Point: c.A, Bulge: c.Bulge}), s.corner(p, pattern.Vertex{Point: c.B})})
		}
	}
	return partials
}

// corner says how a place is set, or which two scores cross there.
func (s *Solution) corner(p *pattern.Piece, v pattern.Vertex) Corner {
	c := Corner{Vertex: v}
	var x, y bool
	c.X, x = s.Set(v.Point.X)
	c.Y, y = s.Set(v.Point.Y)
	if !x || !y {
		c.Cross, _ = p.Crossing(v.Point)
	}
	return c
}

// Set says how a length is set: on a mark of the ruler, or on one of the answer's
// step with so many papers; false if none come to it.
func (s *Solution) Set(l measure.Length) (pattern.Set, bool) {
	return pattern.SetOf(l, s.Pattern.Caliper, s.Step, s.Request.Ruler)
}
