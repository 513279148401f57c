package draw

import (
	"math"

	"creasefit/internal/assembly"
	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// still is one moment of the work as a line drawing in space.
type still struct {
	*layout
	viewer
	pattern *pattern.Pattern
	frame   assembly.Frame
	shown   []bool // by plate
	faces   []solid
	lines   []Line
	box     Box
	begun   bool
}

// newStill draws what stands on the table at a moment: the plates that are
// shown, and the contents.
func (l *layout) newStill(p *pattern.Pattern, frame assembly.Frame, shown []bool) *still {
	s := &still{layout: l, viewer: newViewer(), pattern: p, frame: frame, shown: shown}
	bent := facets(frame.Model.Plates)
	for i := range frame.Model.Plates {
		if pl := &frame.Model.Plates[i]; shown[i] && len(pl.Outline) > 2 {
			layer := InsideFace
			if pl.Inside.Dot(s.near) < 0 {
				layer = OutsideFace
			}
			s.faces = append(s.faces, s.newSolid(pl.Outline, pl.Hole, pl.Inside, layer, i, bent[i]))
		}
	}
	if b := frame.Contents; b != nil {
		for i, ring := range b.Faces() {
			if normal := NormalOf(ring); normal.Dot(s.near) > edgeOn { // the others are behind these
				s.faces = append(s.faces, s.newSolid(ring, nil, normal, GoodsFace, -2, i >= 2 && len(b.Base) >= roundFrom))
			}
		}
	}
	return s
}

// NormalOf returns the unit direction square to a flat ring.
func NormalOf(ring []fold.Vec) fold.Vec {
	var sum fold.Vec
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		sum[0] += (a[1] - b[1]) * (a[2] + b[2])
		sum[1] += (a[2] - b[2]) * (a[0] + b[0])
		sum[2] += (a[0] - b[0]) * (a[1] + b[1])
	}
	return sum.Times(1 / sum.Length())
}

// draw draws the faces from the back to the front, and then the lines of which
// something is seen.
func (s *still) draw(glues []assembly.Area) {
	for _, i := range s.painted(s.faces) {
		f := &s.faces[i]
		if math.Abs(f.facing) < edgeOn {
			continue
		}
		ring := f.ring
		if f.bent {
			ring = grown(ring, s.hair())
		}
		s.area(f.layer, ring)
		if f.hole != nil {
			s.area(f.layer, f.hole)
		}
	}
	for _, area := range glues {
		s.glue(area)
	}
	s.edges()
}

// area adds a filled area.
func (s *still) area(layer Layer, ring []Point) {
	path := make([]Vertex, len(ring))
	for i, p := range ring {
		path[i] = Vertex{Point: p}
		s.widen(p)
	}
	s.lines = append(s.lines, Line{Layer: layer, Path: path, Closed: true, Fill: true})
}

func (s *still) widen(p Point) {
	if !s.begun {
		s.box, s.begun = Box{p, p}, true
	}
	s.box = s.box.join(Box{p, p})
}

// line adds what is seen of a line in space.
func (s *still) line(layer Layer, a, b fold.Vec, own int) {
	free := s.seen(s.faces, a, b, own)
	for i := 1; i < len(free); i += 2 {
		p, q := s.at(between(a, b, free[i-1])), s.at(between(a, b, free[i]))
		if q.sub(p).length() > 0.05 {
			s.lines = append(s.lines, Line{Layer: layer, Path: []Vertex{{Point: p}, {Point: q}}})
			s.widen(p)
			s.widen(q)
		}
	}
}

// rim is an edge of one plate or of two.
type rim struct {
	a, b   fold.Vec
	plates [2]int // the second is -1 for a free edge
}

// edges draws the edges of the plates, those between two that hang together in
// the manner of a fold that is made or still to be made, and of the contents.
func (s *still) edges() {
	for _, r := range s.rims() {
		switch {
		case r.plates[1] < 0:
			s.line(SolidEdge, r.a, r.b, -1)
		case s.samePanel(r.plates):
			if f, g := s.faceOf(r.plates[0]), s.faceOf(r.plates[1]); f*g < 0 { // a bent panel has a line only where it turns away
				s.line(SolidEdge, r.a, r.b, -1)
			}
		case s.folded(r.plates) || s.cutApart(r.plates):
			s.line(SolidEdge, r.a, r.b, -1)
		default:
			s.line(CreaseEdge, r.a, r.b, -1)
		}
	}
	if b := s.frame.Contents; b != nil {
		faces := b.Faces()
		for _, ring := range faces[:2] {
			for i, p := range ring {
				s.line(GoodsEdge, p, ring[(i+1)%len(ring)], -1)
			}
		}
		for i, side := range faces[2:] {
			before := faces[2+(i+len(b.Base)-1)%len(b.Base)]
			if len(b.Base) < roundFrom || NormalOf(before).Dot(s.near)*NormalOf(side).Dot(s.near) < 0 {
				s.line(GoodsEdge, side[0], side[3], -1)
			}
		}
	}
}

// roundFrom is how many sides the contents have that are round: a line along them is
// only where they turn away.
const roundFrom = 24

// rims returns every edge of the plates once.
func (s *still) rims() []rim {
	type key [6]int64
	round := func(a, b fold.Vec) key {
		var k key
		for i := range 3 {
			k[i], k[i+3] = int64(math.Round(a[i]*1e3)), int64(math.Round(b[i]*1e3))
		}
		return k
	}
	known := make(map[key]int)
	var rims []rim
	for i := range s.frame.Model.Plates {
		pl := &s.frame.Model.Plates[i]
		if !s.shown[i] || len(pl.Outline) < 3 {
			continue
		}
		for _, ring := range [...][]fold.Vec{pl.Outline, pl.Hole} {
			for k, a := range ring {
				b := ring[(k+1)%len(ring)]
				if at, ok := known[round(b, a)]; ok && rims[at].plates[1] < 0 && s.frame.Model.Plates[rims[at].plates[0]].Piece == pl.Piece {
					rims[at].plates[1] = i
					continue
				}
				known[round(a, b)] = len(rims)
				rims = append(rims, rim{a, b, [2]int{i, -1}})
			}
		}
	}
	return rims
}

func (s *still) faceOf(plate int) float64 { return s.frame.Model.Plates[plate].Inside.Dot(s.near) }

// samePanel reports whether two plates are facets of one panel that bends.
func (s *still) samePanel(plates [2]int) bool {
	a, b := &s.frame.Model.Plates[plates[0]], &s.frame.Model.Plates[plates[1]]
	return a.Panel == b.Panel && a.Panel >= 0 && a.Piece == b.Piece
}

// cutApart reports whether two plates are parts of a piece that was cut in two.
func (s *still) cutApart(plates [2]int) bool {
	return s.frame.Model.Plates[plates[0]].Parent < 0 && s.frame.Model.Plates[plates[1]].Parent < 0
}

// folded reports whether two plates do not lie in one plane.
func (s *still) folded(plates [2]int) bool {
	a, b := &s.frame.Model.Plates[plates[0]], &s.frame.Model.Plates[plates[1]]
	return a.Inside.Dot(b.Inside) < 1-1e-6
}

// glue hatches what is seen of a glue area.
func (s *still) glue(area assembly.Area) {
	g, piece, _ := area.Of(s.pattern)
	for i := range s.frame.Model.Plates {
		pl := &s.frame.Model.Plates[i]
		if !s.shown[i] || pl.Piece != piece || pl.Panel != g.Panel {
			continue
		}
		if facing := pl.Inside.Dot(s.near); (facing > 0) != (g.Face == pattern.Inside) {
			continue // the glue is on the side that is not seen
		}
		ring := Flatten(nil, vertices(g.Area), true, 0.2)
		f := &figure{layout: s.layout}
		for _, l := range f.shade(nil, GlueHatch, vertices(g.Area), Point{math.Sqrt2 / 2, math.Sqrt2 / 2}, max(1.2, 0.8*s.lettering)) {
			s.line(GlueHatch, onPlate(pl, l.Path[0].Point), onPlate(pl, l.Path[1].Point), i)
		}
		for k, p := range ring {
			s.line(GlueHatch, onPlate(pl, p), onPlate(pl, ring[(k+1)%len(ring)]), i)
		}
	}
}

// onPlate returns where a place of the blank is in space.
func onPlate(pl *fold.Plate, p Point) fold.Vec {
	return pl.Frame.Origin.Plus(pl.Frame.X.Times(p.X)).Plus(pl.Frame.Y.Times(p.Y))
}

// together returns, by piece, whether it hangs together with one of some pieces
// once all steps up to one are done.
func together(o *assembly.Order, p *pattern.Pattern, step int) []bool {
	shown := make([]bool, len(p.Pieces))
	for _, i := range o.Steps[step].Pieces {
		shown[i] = true
	}
	join := func(a, b int) bool {
		if shown[a] == shown[b] {
			return false
		}
		shown[a], shown[b] = true, true
		return true
	}
	for again := true; again; {
		again = false
		for i := range o.Steps[:step+1] {
			s := &o.Steps[i]
			for _, n := range s.Nests {
				again = join(p.Nests[n].Inner, p.Nests[n].Outer) || again
			}
			for _, n := range s.Locks {
				again = join(p.Locks[n].A, p.Locks[n].B) || again
			}
			for _, g := range s.Glues {
				if g.Bond >= 0 {
					again = join(p.Bonds[g.Bond].A, p.Bonds[g.Bond].B) || again
				}
			}
		}
	}
	return shown
}
