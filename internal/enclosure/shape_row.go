package enclosure

import (
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// row is the shape of a piece that is one row of full-height panels: names,
// scores between them, and which panel stays still. The rows of a kind are
// fixed; only their sizes differ from request to request.
type row struct {
	piece  string
	panels []string
	scores []pattern.Score
	root   int
	height string // the name of the size across the height
}

// usualPanels is how many panels most rows have at the most.
const usualPanels = 7

// rowMemory is what most rows are laid out in, so that each is one piece of memory.
type rowMemory struct {
	cells   [usualPanels + 1]pattern.Cell
	panels  [usualPanels]pattern.Panel
	creases [usualPanels - 1]pattern.Crease
	corners [4 * usualPanels]pattern.Vertex
	strips  [2]pattern.Strip
}

// lay lays the row out with the given widths and height; rounds says how thick
// the thing is that each fold of 180 degrees goes round, nil for paper on paper.
func (r *row) lay(widths []measure.Length, height measure.Length, rounds []measure.Length) pattern.Piece {
	n, m := len(r.panels), new(rowMemory)
	cells, panels := slices.Grow(m.cells[:0], n+1)[:n+1], slices.Grow(m.panels[:0], n)[:n:n]
	creases, corners := slices.Grow(m.creases[:0], n-1)[:n-1:n-1], slices.Grow(m.corners[:0], 4*n)[:4*n]
	var x measure.Length
	for i, name := range r.panels {
		next := x.Add(widths[i])
		cells[i] = pattern.Cell{Name: name, Size: widths[i]}
		outline := corners[4*i : 4*i+4 : 4*i+4]
		pattern.FillRectangle(outline, x, measure.Length{}, next, height)
		panels[i] = pattern.Panel{Name: name, Outline: outline}
		if i > 0 {
			creases[i-1] = r.crease(i-1, x, height)
		}
		if i > 0 && rounds != nil {
			creases[i-1].Round = rounds[i-1]
		}
		x = next
	}
	cells[n] = pattern.Cell{Name: r.height, Size: height}
	m.strips = [...]pattern.Strip{
		{Across: pattern.Width, Cells: cells[:n:n], Scores: r.scores},
		{Across: pattern.Height, Cells: cells[n:]},
	}
	return pattern.Piece{
		Name: r.piece, Quantity: 1, Width: x, Height: height, Strips: m.strips[:],
		Root: r.root, Panels: panels, Creases: creases,
	}
}

// crease returns the crease of score i, which lies at x.
func (r *row) crease(i int, x, height measure.Length) pattern.Crease {
	s := r.scores[i]
	c := pattern.Crease{
		Name: s.Name, A: pattern.At(x, measure.Length{}), B: pattern.At(x, height),
		From: i, To: i + 1, Fold: s.Fold, Angle: s.Angle,
	}
	if i < r.root {
		c.From, c.To = i+1, i
	}
	return c
}

// valley and mountain make scores; score i of a piece is named by its number.
func valley(number string, angle float64) pattern.Score {
	return pattern.Score{Name: "score " + number, Fold: pattern.Valley, Angle: angle}
}

func mountain(number string, angle float64) pattern.Score {
	return pattern.Score{Name: "score " + number, Fold: pattern.Mountain, Angle: angle}
}
