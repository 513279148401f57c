package wire

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// Corner is a place on a blank as hands set it, from the left and from the bottom.
type Corner struct {
	Ring  int     `json:"ring,omitempty"` // 0 is the outer edge; 1 and on are openings and further parts
	X     Length  `json:"x" validate:"required"`
	Y     Length  `json:"y" validate:"required"`
	Bulge float64 `json:"bulge,omitempty"` // of the edge that leaves it: the tangent of a quarter of its angle, negative to the left; none for a straight one
	// Where says what crosses there, for a place that lies on no mark.
	Where string `json:"where,omitempty" example:"where score 1 and score 2 cross"`
}

// Partial is a score that does not run from edge to edge of the blank.
type Partial struct {
	Name   string `json:"name" validate:"required" example:"score 5"`
	Panel  string `json:"panel" validate:"required" example:"top tuck"` // that is folded there
	Begins Corner `json:"begins" validate:"required"`
	Ends   Corner `json:"ends" validate:"required"`
}

// appendOutline appends the whole cut edge of a piece, ring by ring.
func appendOutline(list []Corner, s *solve.Solution, p *pattern.Piece) []Corner {
	for ring, corners := range p.Contours() {
		for _, v := range corners {
			list = append(list, corner(s, s.Corner(p, v), ring))
		}
	}
	return list
}

// appendPartials appends where the partial scores of a piece begin and end.
func appendPartials(list []Partial, s *solve.Solution, p *pattern.Piece) []Partial {
	for part := range s.Partials(p) {
		c := &p.Creases[part.Crease]
		if c.Fold != pattern.Flat {
			list = append(list, Partial{c.Name, p.Panels[c.To].Name, corner(s, part.Begin, 0), corner(s, part.End, 0)})
		}
	}
	return list
}

func corner(s *solve.Solution, c solve.Corner, ring int) Corner {
	w := Corner{Ring: ring, X: set(s, c.Point.X, c.X), Y: set(s, c.Point.Y, c.Y), Bulge: round(c.Bulge, 6)}
	if c.Cross[0] != "" {
		w.Where = "where " + c.Cross[0] + " and " + c.Cross[1] + " cross"
	}
	return w
}

// set is a length with the mark and the papers that come to it; one that none come
// to is written as it is.
func set(s *solve.Solution, l measure.Length, how pattern.Set) Length {
	if how.Mark.Add(s.Pattern.Caliper.Times(int64(how.Papers))) != l {
		return lengthRead(l.Decimal(measure.Millimetre, 6), l, l, 0)
	}
	step := s.Step
	if !how.Mark.IsMultipleOf(step) {
		step = s.Request.Ruler
	}
	return lengthRead(Reading(step, how.Mark), l, l, how.Papers)
}
