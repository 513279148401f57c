package solve

import (
	"iter"

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

// Partials are where the scores of a piece begin and end that do not run from
// edge to edge of the blank, in the order of its creases.
func (s *Solution) Partials(p *pattern.Piece) iter.Seq[Partial] {
	return func(yield func(Partial) bool) {
		for i := range p.Creases {
			c := &p.Creases[i]
			partial := !p.OnEdge(c.A) || !p.OnEdge(c.B)
			if partial && !yield(Partial{i, s.Corner(p, pattern.Vertex{Point: c.A, Bulge: c.Bulge}), s.Corner(p, pattern.Vertex{Point: c.B})}) {
				return
			}
		}
	}
}

// Corner says how a place on a piece is set, or which two scores cross there.
func (s *Solution) Corner(p *pattern.Piece, v pattern.Vertex) Corner {
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
