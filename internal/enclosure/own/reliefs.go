package own

import (
	"cmp"
	"slices"
	"strconv"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// cutting is what is cut away round a blank, by the corners of its panels. It is the same
// whenever those follow one another alike across and up.
type cutting struct {
	order [2][]int  // the corners from the left and from the bottom, nil where that says too little
	same  [2][]bool // as far as the one before
	paths [][]int   // of the blade
}

// reliefs lists what is cut away between the panels and the edges of the blank.
func (l *layout) reliefs(index int) {
	known := &l.stated.cuttings[index]
	c := known.Load()
	if c == nil || !c.holds(l.corners) {
		if c = l.cutting(); l.blanks[index].square {
			c.put(l.corners)
			known.Store(c)
		}
	}
	for _, corners := range c.paths {
		path := l.laid.Corners.Take(len(corners))
		for i, k := range corners {
			path[i] = pattern.Vertex{Point: l.corners[k].Point}
		}
		l.relief(path)
	}
}

// cutting follows the contours of a piece.
func (l *layout) cutting() *cutting {
	c := &cutting{}
	for _, ring := range l.piece.Contours() {
		start := -1
		for i, v := range ring {
			if l.rim(v.Point, ring[(i+len(ring)-1)%len(ring)].Point) {
				start = i
				break
			}
		}
		if start < 0 {
			continue
		}
		var path []int
		for k := range len(ring) {
			a, b := ring[(start+k)%len(ring)].Point, ring[(start+k+1)%len(ring)].Point
			if l.rim(a, b) {
				continue
			}
			if len(path) == 0 {
				path = append(path, l.cornerAt(a))
			}
			if path = append(path, l.cornerAt(b)); l.piece.OnEdge(b) {
				c.paths = append(c.paths, path)
				path = nil
			}
		}
	}
	return c
}

// cornerAt is the corner of a panel at a place.
func (l *layout) cornerAt(p pattern.Point) int {
	return slices.IndexFunc(l.corners, func(v pattern.Vertex) bool { return v.Point == p })
}

// near is how far apart two corners are, in nanometres, that are hardly told apart.
const near = 10

// put notes how corners follow one another, unless some are hardly told apart.
func (c *cutting) put(corners []pattern.Vertex) {
	for axis := range c.order {
		order := make([]int, len(corners))
		for i := range order {
			order[i] = i
		}
		slices.SortFunc(order, func(i, j int) int { return cmp.Compare(along(corners, axis, i), along(corners, axis, j)) })
		same := make([]bool, len(order))
		for i := 1; i < len(order); i++ {
			by := along(corners, axis, order[i]) - along(corners, axis, order[i-1])
			if same[i] = by == 0; by > 0 && by <= near {
				c.order[0] = nil
				return
			}
		}
		c.order[axis], c.same[axis] = order, same
	}
}

// holds reports whether corners follow one another like those of a cutting.
func (c *cutting) holds(corners []pattern.Vertex) bool {
	for axis, order := range c.order {
		for i := 1; i < len(order); i++ {
			if by := along(corners, axis, order[i]) - along(corners, axis, order[i-1]); c.same[axis][i] != (by == 0) || by < 0 || by > 0 && by <= near {
				return false
			}
		}
	}
	return c.order[0] != nil
}

// along is how far a corner lies across or up.
func along(corners []pattern.Vertex, axis, i int) int64 {
	if axis == 0 {
		return corners[i].X.Nanometres()
	}
	return corners[i].Y.Nanometres()
}

// rim reports whether a straight edge lies along a side of the blank.
func (l *layout) rim(a, b pattern.Point) bool {
	p := l.piece
	return a.X == b.X && (a.X.IsZero() || a.X == p.Width) || a.Y == b.Y && (a.Y.IsZero() || a.Y == p.Height)
}

// relief describes one of them: the blade's path, and how much of the left or right
// edge it takes.
func (l *layout) relief(path []pattern.Vertex) {
	low, high := path[0].Point, path[0].Point
	for _, p := range path[1:] {
		low = pattern.At(measure.Min(low.X, p.X), measure.Min(low.Y, p.Y))
		high = pattern.At(measure.Max(high.X, p.X), measure.Max(high.Y, p.Y))
	}
	from := "left"
	if !low.X.IsZero() {
		from = "right"
	}
	l.piece.Cuts = append(l.piece.Cuts, pattern.Cut{
		Name: "corner " + strconv.Itoa(len(l.piece.Cuts)+1), Kind: pattern.Relief, From: from, At: low.Y.Add(high.Y).Over(2),
		Depth: high.X.Sub(low.X), Width: high.Y.Sub(low.Y), Path: path,
	})
}
