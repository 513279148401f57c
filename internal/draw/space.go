package draw

import (
	"cmp"
	"math"
	"slices"

	"creasefit/internal/fold"
)

// The way from which things in space are seen: from in front, a little from
// the right and from above, without perspective, so that parallel lines stay so.
const (
	turnedBy = 24 * math.Pi / 180
	raisedBy = 38 * math.Pi / 180
)

// viewer projects space onto the drawing: right and up on it, and near, which
// is greater the nearer a place is.
type viewer struct{ right, up, near fold.Vec }

func newViewer() viewer {
	sin, cos := math.Sincos(turnedBy)
	high, low := math.Sincos(raisedBy)
	return viewer{
		right: fold.Vec{cos, sin, 0},
		up:    fold.Vec{-sin * high, cos * high, low},
		near:  fold.Vec{sin * low, -cos * low, high},
	}
}

func (v *viewer) at(p fold.Vec) Point      { return Point{p.Dot(v.right), p.Dot(v.up)} }
func (v *viewer) depth(p fold.Vec) float64 { return p.Dot(v.near) }

func between(a, b fold.Vec, t float64) fold.Vec {
	return a.Plus(b.Minus(a).Times(t))
}

// solid is a flat face in space as it is seen.
type solid struct {
	ring, hole []Point
	low, high  Point
	normal     fold.Vec
	offset     float64 // of its plane along the normal
	facing     float64 // how much of it is turned to the viewer; near 0 on edge
	corners    []fold.Vec
	layer      Layer
	of         int  // what it belongs to: faces of one thing do not hide each other's hatching
	bent       bool // it is a part of something round
}

// newSolid returns a face of a thing.
func (v *viewer) newSolid(ring, hole []fold.Vec, normal fold.Vec, layer Layer, of int, bent bool) solid {
	s := solid{normal: normal, offset: normal.Dot(ring[0]), facing: normal.Dot(v.near), corners: ring, layer: layer, of: of, bent: bent}
	for _, p := range ring {
		s.ring = append(s.ring, v.at(p))
	}
	for _, p := range hole {
		s.hole = append(s.hole, v.at(p))
	}
	b := Around(s.ring)
	s.low, s.high = b.Low, b.High
	return s
}

// edgeOn is how little of a face may be turned to the viewer for it to be a line.
const edgeOn = 1e-4

// depthAt returns how near the face is at a place of the drawing.
func (s *solid) depthAt(v *viewer, p Point) float64 {
	// the plane's point over the place: right*x + up*y + near*d
	rest := s.offset - p.X*s.normal.Dot(v.right) - p.Y*s.normal.Dot(v.up)
	return rest / s.facing
}

// covers reports whether a face is seen at a place.
func (s *solid) covers(p Point) bool {
	if p.X < s.low.X || p.X > s.high.X || p.Y < s.low.Y || p.Y > s.high.Y {
		return false
	}
	return within(p, s.ring) && !within(p, s.hole)
}

// nearer is how much nearer, in mm, a face must be to hide a line: less than a
// sheet of paper.
const nearer = 0.01

// seen returns the parts of a line in space that no face hides, as pairs of
// fractions of its length. Faces of the thing it belongs to do not count if own
// is its number.
func (v *viewer) seen(faces []solid, a, b fold.Vec, own int) []float64 {
	p, q := v.at(a), v.at(b)
	da, db := v.depth(a), v.depth(b)
	free := []float64{0, 1}
	box := Around([]Point{p, q})
	for i := range faces {
		f := &faces[i]
		if f.of == own && own >= 0 || math.Abs(f.facing) < edgeOn || f.high.X < box.Low.X || f.low.X > box.High.X || f.high.Y < box.Low.Y || f.low.Y > box.High.Y {
			continue
		}
		marks := v.marks(f, p, q, da, db)
		for k := 1; k < len(marks); k++ {
			low, high := marks[k-1], marks[k]
			mid := (low + high) / 2
			at := p.add(q.sub(p).by(mid))
			if high-low > 1e-9 && f.covers(at) && f.depthAt(v, at) > da+(db-da)*mid+nearer {
				free = without(free, low, high)
			}
		}
		if len(free) == 0 {
			return nil
		}
	}
	return free
}

// marks returns where a line may begin or end to be hidden by a face: where it
// passes its edges, and where it passes through it.
func (v *viewer) marks(f *solid, p, q Point, da, db float64) []float64 {
	marks := []float64{0, 1}
	along := q.sub(p)
	for _, ring := range [...][]Point{f.ring, f.hole} {
		for i, a := range ring {
			edge := ring[(i+1)%len(ring)].sub(a)
			d := along.cross(edge)
			if math.Abs(d) < 1e-12 {
				continue
			}
			t, u := a.sub(p).cross(edge)/d, a.sub(p).cross(along)/d
			if t > 0 && t < 1 && u >= -1e-9 && u <= 1+1e-9 {
				marks = append(marks, t)
			}
		}
	}
	from, to := f.depthAt(v, p)-da, f.depthAt(v, q)-db
	if (from > nearer) != (to > nearer) {
		marks = append(marks, (from-nearer)/(from-to))
	}
	slices.Sort(marks)
	return marks
}

// painted returns the faces from the farthest to the nearest, as far as they
// overlap: one is behind another if all of it lies on the far side of the
// other's plane, or all of the other on its near side.
func (v *viewer) painted(faces []solid) []int {
	behind := make([][]int, len(faces)) // by face: those that are painted before it
	for i := range faces {
		for j := range i {
			switch v.order(&faces[i], &faces[j]) {
			case 1:
				behind[i] = append(behind[i], j)
			case -1:
				behind[j] = append(behind[j], i)
			}
		}
	}
	var order []int
	done := make([]bool, len(faces))
	var visit func(int)
	visit = func(i int) {
		if done[i] {
			return
		}
		done[i] = true
		for _, j := range behind[i] {
			visit(j)
		}
		order = append(order, i)
	}
	for i := range faces {
		visit(i)
	}
	return order
}

// order returns 1 if a is in front of b, -1 if it is behind, and 0 if they do
// not overlap on the drawing.
func (v *viewer) order(a, b *solid) int {
	if math.Abs(a.facing) < edgeOn || math.Abs(b.facing) < edgeOn ||
		a.high.X <= b.low.X || b.high.X <= a.low.X || a.high.Y <= b.low.Y || b.high.Y <= a.low.Y {
		return 0
	}
	places := common(a, b)
	if len(places) == 0 {
		return 0
	}
	if side := b.side(a); side != 0 {
		return side
	}
	if side := a.side(b); side != 0 {
		return -side
	}
	nearer := 0.0 // a than b, where they are farthest apart
	for _, p := range places {
		if d := a.depthAt(v, p) - b.depthAt(v, p); math.Abs(d) > math.Abs(nearer) {
			nearer = d
		}
	}
	return cmp.Compare(nearer, 0)
}

// side returns 1 if another face is on the viewer's side of this one's plane, -1
// if it is beyond it, and 0 if it is on both.
func (s *solid) side(other *solid) int {
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range other.corners {
		d := s.normal.Dot(p) - s.offset
		if s.facing < 0 {
			d = -d
		}
		low, high = min(low, d), max(high, d)
	}
	switch {
	case low > -1e-4 && high < 1e-4:
		return 0
	case low > -1e-4:
		return 1
	case high < 1e-4:
		return -1
	default:
		return 0
	}
}

// common returns places of the drawing that two faces have in common: where their edges
// pass through one another, and one in each that the other covers.
func common(a, b *solid) (places []Point) {
	for i, p := range a.ring {
		q := a.ring[(i+1)%len(a.ring)]
		for k, r := range b.ring {
			if at, ok := Crossing(p, q, r, b.ring[(k+1)%len(b.ring)]); ok {
				places = append(places, at)
			}
		}
	}
	if at := inward(a.ring); b.covers(at) {
		places = append(places, at)
	}
	if at := inward(b.ring); a.covers(at) {
		places = append(places, at)
	}
	return places
}

// Crossing returns where two lines pass through one another, if they do.
func Crossing(p, q, r, s Point) (Point, bool) {
	side := func(a, b, c Point) float64 { return b.sub(a).cross(c.sub(a)) }
	const touch = 1e-6
	a, b, c, d := side(p, q, r), side(p, q, s), side(r, s, p), side(r, s, q)
	through := (a > touch && b < -touch || a < -touch && b > touch) && (c > touch && d < -touch || c < -touch && d > touch)
	return r.add(s.sub(r).by(a / (a - b))), through
}

// inward returns a place a little inside a ring, beside its first edge.
func inward(ring []Point) Point {
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		along := b.sub(a)
		if along.length() < 1e-6 {
			continue
		}
		left := Point{-along.Y, along.X}.by(1e-3 / along.length())
		for _, p := range [...]Point{a.middle(b).add(left), a.middle(b).sub(left)} {
			if within(p, ring) {
				return p
			}
		}
	}
	return ring[0]
}
