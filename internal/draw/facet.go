package draw

import (
	"math"

	"creasefit/internal/assembly"
	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// facets returns which plates are parts of a panel that bends: painted edge to edge,
// the ground would shine through between them.
func facets(plates []fold.Plate) []bool {
	type panel struct{ piece, copy, panel int }
	count := map[panel]int{}
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

// tuck moves what bends and has been glued behind its partner, or before it, as it is
// seen: in the model the two lie in one place.
func tuck(p *pattern.Pattern, frame *assembly.Frame, areas []assembly.Area) {
	facet, near := facets(frame.Model.Plates), newViewer().near
	for _, area := range areas {
		g, piece, _ := area.Of(p)
		for k := range frame.Model.Plates {
			pl := &frame.Model.Plates[k]
			if !facet[k] || pl.Piece != piece || pl.Panel != g.Panel {
				continue
			}
			by := near.Times(5 * nearer)
			if (pl.Inside.Dot(near) > 0) == (g.Face == pattern.Inside) {
				by = by.Times(-1)
			}
			pl.Frame.Origin = pl.Frame.Origin.Plus(by)
			for v := range pl.Outline {
				pl.Outline[v] = pl.Outline[v].Plus(by)
			}
		}
	}
}

// glued returns the areas that steps glue.
func glued(steps []assembly.Step) (areas []assembly.Area) {
	for i := range steps {
		areas = append(areas, steps[i].Glues...)
	}
	return areas
}

// ownGlues returns the areas of the pieces that are stuck onto themselves.
func ownGlues(p *pattern.Pattern) (areas []assembly.Area) {
	for i := range p.Pieces {
		for k := range p.Pieces[i].Glues {
			areas = append(areas, assembly.Area{Bond: -1, Piece: i, Glue: k})
		}
	}
	return areas
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
