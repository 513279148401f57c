package own

import (
	"strconv"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// reliefs lists what is cut away between the panels and the edges of the blank.
func (l *layout) reliefs() {
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
		path := make([]pattern.Point, 0, len(ring))
		for k := range len(ring) {
			a, b := ring[(start+k)%len(ring)].Point, ring[(start+k+1)%len(ring)].Point
			if l.rim(a, b) {
				continue
			}
			if len(path) == 0 {
				path = append(path, a)
			}
			if path = append(path, b); l.piece.OnEdge(b) {
				l.relief(path)
				path = path[:0]
			}
		}
	}
}

// rim reports whether a straight edge lies along a side of the blank.
func (l *layout) rim(a, b pattern.Point) bool {
	p := l.piece
	return a.X == b.X && (a.X.IsZero() || a.X == p.Width) || a.Y == b.Y && (a.Y.IsZero() || a.Y == p.Height)
}

// relief describes one of them: the blade's path, and how much of the left or right
// edge it takes.
func (l *layout) relief(path []pattern.Point) {
	low, high := path[0], path[0]
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
		Depth: high.X.Sub(low.X), Width: high.Y.Sub(low.Y), Path: pattern.Polygon(path...),
	})
}
