package pattern

import "creasefit/internal/measure"

// Rectangle returns the counterclockwise outline of the rectangle with the
// given lower left and upper right corners.
func Rectangle(x0, y0, x1, y1 measure.Length) []Vertex {
	outline := make([]Vertex, 4)
	FillRectangle(outline, x0, y0, x1, y1)
	return outline
}

// FillRectangle writes what Rectangle returns into an outline of four corners,
// for pieces that keep the corners of all their panels in one array.
func FillRectangle(outline []Vertex, x0, y0, x1, y1 measure.Length) {
	outline[0], outline[1] = Vertex{Point: At(x0, y0)}, Vertex{Point: At(x1, y0)}
	outline[2], outline[3] = Vertex{Point: At(x1, y1)}, Vertex{Point: At(x0, y1)}
}

// Polygon returns the straight-edged outline through the points.
func Polygon(points ...Point) []Vertex {
	outline := make([]Vertex, len(points))
	for i, p := range points {
		outline[i] = Vertex{Point: p}
	}
	return outline
}

// Positions returns the places of the boundaries of a strip, from its start
// (zero) to its end (the length of the edge): one more than cells.
func (s *Strip) Positions() []measure.Length {
	return s.positions(make([]measure.Length, len(s.Cells)+1))
}

func (s *Strip) positions(at []measure.Length) []measure.Length {
	at[0] = measure.Length{}
	for i := range s.Cells {
		at[i+1] = at[i].Add(s.Cells[i].Size)
	}
	return at
}
