package draw

import "math"

// facets returns which plates are parts of a panel that bends: painted edge to edge,
// the ground would shine through between them.
func (s *still) facets() []bool {
	type panel struct{ piece, copy, panel int }
	count, plates := map[panel]int{}, s.frame.Model.Plates
	of := func(i int) panel { return panel{plates[i].Piece, plates[i].Copy, plates[i].Panel} }
	for i := range plates {
		count[of(i)]++
	}
	facet := make([]bool, len(plates))
	for i := range plates {
		facet[i] = plates[i].Panel >= 0 && count[of(i)] > 1
	}
	return facet
}

// hair is how far facets are painted over their edges: about half a pixel of a small
// picture, and less than the line round them takes.
func (s *still) hair() float64 {
	box := Box{s.faces[0].low, s.faces[0].high}
	for i := range s.faces {
		box = box.join(Box{s.faces[i].low, s.faces[i].high})
	}
	return max(box.Width(), box.Height()) / 1500
}

// grown moves the edges of a convex ring outwards.
func grown(ring []Point, by float64) []Point {
	twice := 0.0
	for i, p := range ring {
		twice += p.cross(ring[(i+1)%len(ring)])
	}
	by = math.Copysign(by, twice)
	out := func(from, to Point) Point {
		d := to.sub(from)
		return Point{d.Y, -d.X}.by(1 / max(d.length(), 1e-9))
	}
	wider := make([]Point, len(ring))
	for i, p := range ring {
		a, b := out(ring[(i+len(ring)-1)%len(ring)], p), out(p, ring[(i+1)%len(ring)])
		wider[i] = p.add(a.add(b).by(by / max(1+a.dot(b), 0.2)))
	}
	return wider
}
