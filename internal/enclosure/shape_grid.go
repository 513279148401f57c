package enclosure

import (
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// grid is the shape of a piece whose panels are cells of a grid: columns from
// the left, rows from the bottom. Cells that hold no panel are cut away. The
// grids of a kind are fixed; only their sizes differ from request to request.
type grid struct {
	piece      string
	across, up edge
	cells      []cell // the panels
	root       int    // the panel that stays still
}

// edge is what lies along one edge of a grid's blank: the names of its sizes
// and the scores between them, one fewer.
type edge struct {
	names  []string
	scores []pattern.Score
}

// cell is a panel: where it lies, and by index the panel that it hangs on, in
// the next column or the next row, -1 for none.
type cell struct {
	name            string
	column, row, on int
}

// valley and mountain make scores; score i of a piece is named by its number.
func valley(number string, angle float64) pattern.Score {
	return pattern.Score{Name: "score " + number, Fold: pattern.Valley, Angle: angle}
}

func mountain(number string, angle float64) pattern.Score {
	return pattern.Score{Name: "score " + number, Fold: pattern.Mountain, Angle: angle}
}

// extents are the sizes along one edge; rounds says for each of its scores how
// thick the thing is that a fold of 180 degrees goes round, nil for no such fold.
type extents struct{ sizes, rounds []measure.Length }

// grid lays a grid out. The panels after the one that stays still, mostly all but
// the first, hang by the crease of the number before theirs.
func (d *draft) grid(g *grid, across, up extents) pattern.Piece {
	n, m := len(g.cells), &d.laid
	strips := m.Strips.Take(2)
	strips[0], strips[1] = g.across.strip(m, pattern.Width, across.sizes), g.up.strip(m, pattern.Height, up.sizes)
	x, y := m.Positions(&strips[0]), m.Positions(&strips[1])
	p := pattern.Piece{
		Name: g.piece, Quantity: 1, Width: x[len(x)-1], Height: y[len(y)-1], Strips: strips,
		Root: g.root, Panels: m.Panels.Take(n), Creases: m.Creases.Take(n - 1)[:0],
	}
	corners := m.Corners.Take(4 * n)
	for i, c := range g.cells {
		outline := corners[4*i : 4*i+4 : 4*i+4]
		pattern.FillRectangle(outline, x[c.column], y[c.row], x[c.column+1], y[c.row+1])
		p.Panels[i] = pattern.Panel{Name: c.name, Outline: outline}
		if i != g.root {
			p.Creases = append(p.Creases, g.crease(i, x, y, across.rounds, up.rounds))
		}
	}
	return p
}

// crease returns the crease that panel i hangs by; x and y are where the
// columns and rows begin.
func (g *grid) crease(i int, x, y, across, up []measure.Length) pattern.Crease {
	c, on := g.cells[i], g.cells[g.cells[i].on]
	crease := pattern.Crease{From: c.on, To: i}
	if on.column == c.column {
		n := max(on.row, c.row)
		crease.A, crease.B = pattern.At(x[c.column], y[n]), pattern.At(x[c.column+1], y[n])
		g.up.scored(&crease, n-1, up)
	} else {
		n := max(on.column, c.column)
		crease.A, crease.B = pattern.At(x[n], y[c.row]), pattern.At(x[n], y[c.row+1])
		g.across.scored(&crease, n-1, across)
	}
	return crease
}

// strip lists the sizes along the edge.
func (e *edge) strip(m *pattern.Memory, axis pattern.Axis, sizes []measure.Length) pattern.Strip {
	cells := m.Cells.Take(len(e.names))
	for i, name := range e.names {
		cells[i] = pattern.Cell{Name: name, Size: sizes[i]}
	}
	return pattern.Strip{Across: axis, Cells: cells, Scores: e.scores}
}

// scored makes a crease one on score i of the edge.
func (e *edge) scored(c *pattern.Crease, i int, rounds []measure.Length) {
	s := e.scores[i]
	c.Name, c.Fold, c.Angle = s.Name, s.Fold, s.Angle
	if rounds != nil {
		c.Round = rounds[i]
	}
}

// taper cuts both ends of panel i back at an angle: by near at the score that
// it hangs by, which becomes shorter, and by far at its free edge.
func (g *grid) taper(p *pattern.Piece, i int, near, far measure.Length) {
	c, on := g.cells[i], g.cells[g.cells[i].on]
	upright := on.column == c.column // it hangs on the panel above or below
	for k := range p.Panels[i].Outline {
		v := &p.Panels[i].Outline[k]
		right, top, by := k == 1 || k == 2, k >= 2, near
		if upright && top == (c.row > on.row) || !upright && right == (c.column > on.column) {
			by = far
		}
		if upright {
			v.X = inward(v.X, right, by)
		} else {
			v.Y = inward(v.Y, top, by)
		}
	}
	crease := &p.Creases[i-1]
	if upright {
		crease.A.X, crease.B.X = inward(crease.A.X, false, near), inward(crease.B.X, true, near)
	} else {
		crease.A.Y, crease.B.Y = inward(crease.A.Y, false, near), inward(crease.B.Y, true, near)
	}
}

// inward moves the low or the high end of a stretch in.
func inward(at measure.Length, high bool, by measure.Length) measure.Length {
	if high {
		return at.Sub(by)
	}
	return at.Add(by)
}

// relief describes what is cut away at a corner of the blank: the blade's path
// between two of its edges, whose corners may fall together, and how much of the left or right edge it takes.
func (d *draft) relief(name, from string, path ...pattern.Point) pattern.Cut {
	path = slices.Compact(path)
	low, high := path[0], path[0]
	for _, p := range path[1:] {
		low = pattern.At(measure.Min(low.X, p.X), measure.Min(low.Y, p.Y))
		high = pattern.At(measure.Max(high.X, p.X), measure.Max(high.Y, p.Y))
	}
	return pattern.Cut{
		Name: name, Kind: pattern.Relief, From: from, At: low.Y.Add(high.Y).Over(2),
		Depth: high.X.Sub(low.X), Width: high.Y.Sub(low.Y), Path: d.laid.Polygon(path...),
	}
}

// sizesOf picks the sizes of some readings.
func (d *draft) sizesOf(readings []int, sizes []measure.Length) []measure.Length {
	picked := d.laid.Lengths.Take(len(readings))
	for i, reading := range readings {
		picked[i] = sizes[reading]
	}
	return picked
}
