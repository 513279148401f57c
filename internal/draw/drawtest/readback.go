package drawtest

import (
	"cmp"
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// Missing looks for every piece of a pattern among the places that another reader found
// in a file, in mm with y upwards: all ends of its folds and cuts and the corners of its
// paper, moved and turned by quarters together. It returns the names of the pieces
// that are not there within a distance.
func Missing(p *pattern.Pattern, places [][2]float64, within float64) (missing []string) {
	near := func(v float64) int64 { return int64(math.Floor(v / within)) }
	cells := map[[2]int64][][2]float64{}
	for _, q := range places {
		at := [2]int64{near(q[0]), near(q[1])}
		cells[at] = append(cells[at], q)
	}
	there := func(x, y float64) bool {
		for i := near(x) - 1; i <= near(x)+1; i++ {
			for j := near(y) - 1; j <= near(y)+1; j++ {
				if slices.ContainsFunc(cells[[2]int64{i, j}], func(q [2]float64) bool { return math.Hypot(q[0]-x, q[1]-y) < within }) {
					return true
				}
			}
		}
		return false
	}
	for i := range p.Pieces {
		if !placed(Marked(&p.Pieces[i]), places, there) {
			missing = append(missing, p.Pieces[i].Name)
		}
	}
	return missing
}

// placed reports whether all of some points are there, however they are moved and
// turned by quarters together.
func placed(points, places [][2]float64, there func(x, y float64) bool) bool {
	for range 4 {
		for i, p := range points {
			points[i] = [2]float64{-p[1], p[0]}
		}
		for _, q := range places {
			dx, dy := q[0]-points[0][0], q[1]-points[0][1]
			if !slices.ContainsFunc(points, func(p [2]float64) bool { return !there(p[0]+dx, p[1]+dy) }) {
				return true
			}
		}
	}
	return false
}

// Marked are the places of a piece where a line ends for certain: of its folds and cuts,
// and the corners of the convex hull of its paper; and the middles of its arcs.
func Marked(p *pattern.Piece) (all [][2]float64) {
	add := func(to [][2]float64, at pattern.Point) [][2]float64 {
		return append(to, [2]float64{at.X.Millimetres(), at.Y.Millimetres()})
	}
	arcs := func(path []pattern.Vertex, closed bool) {
		for i, v := range path {
			if n := (i + 1) % len(path); (v.Bulge > 0 || v.Bulge < 0) && (n > 0 || closed) {
				ends := add(add(nil, v.Point), path[n].Point)
				all = append(all, Middle(ends[0], ends[1], v.Bulge))
			}
		}
	}
	for _, c := range p.Creases {
		if c.Fold != pattern.Flat {
			all = add(add(all, c.A), c.B)
			arcs([]pattern.Vertex{{Point: c.A, Bulge: c.Bulge}, {Point: c.B}}, false)
		}
	}
	for _, c := range p.Cuts {
		for _, v := range c.Path {
			if c.Kind != pattern.Relief { // its corners may lie where the outline goes straight on
				all = add(all, v.Point)
			}
		}
	}
	var paper [][2]float64
	for i := range p.Panels {
		arcs(p.Panels[i].Outline, true)
		arcs(p.Panels[i].Hole, true)
		for _, v := range p.Panels[i].Outline {
			paper = add(paper, v.Point)
		}
	}
	return append(all, hull(paper)...)
}

// Middle is the middle of an arc, in mm.
func Middle(a, b [2]float64, bulge float64) [2]float64 {
	return [2]float64{(a[0] + b[0] + bulge*(b[1]-a[1])) / 2, (a[1] + b[1] - bulge*(b[0]-a[0])) / 2}
}

// hull returns the corners of the convex hull (Andrew's monotone chain, 1979).
func hull(points [][2]float64) (all [][2]float64) {
	slices.SortFunc(points, func(a, b [2]float64) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	for range 2 {
		var chain [][2]float64
		for _, p := range points {
			for n := len(chain); n > 1; n-- {
				a, b := chain[n-2], chain[n-1]
				if (b[0]-a[0])*(p[1]-a[1])-(b[1]-a[1])*(p[0]-a[0]) > 1e-6 {
					break
				}
				chain = chain[:n-1]
			}
			chain = append(chain, p)
		}
		all = append(all, chain[:len(chain)-1]...)
		slices.Reverse(points)
	}
	return all
}
