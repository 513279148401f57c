package draw

import (
	"cmp"
	"math"
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// near is how far off a line, in nm, a corner may be and still lie on it:
// coordinates are rounded to 1 nm.
const near = 2

// split finds where straight strokes touch or cross. Arcs are not split: what
// meets an arc meets it at one of its ends.
func (b *builder) split() {
	boxes := make([]Box, len(b.strokes))
	for i := range b.strokes {
		boxes[i] = Around([]Point{nanometres(b.strokes[i].a), nanometres(b.strokes[i].b)})
	}
	for i := range b.strokes {
		for j := i + 1; j < len(b.strokes); j++ {
			s, t := &b.strokes[i], &b.strokes[j]
			if apart(&boxes[i], &boxes[j]) {
				continue
			}
			touched := s.take(t.a)
			touched = s.take(t.b) || touched
			touched = t.take(s.a) || touched
			touched = t.take(s.b) || touched
			if !touched {
				s.crossing(t)
			}
		}
	}
	for i := range b.strokes {
		b.strokes[i].sort()
	}
}

// apart reports whether two boxes have nothing in common.
func apart(a, b *Box) bool {
	return a.High.X < b.Low.X || b.High.X < a.Low.X || a.High.Y < b.Low.Y || b.High.Y < a.Low.Y
}

// nanometres returns a place as floats, in nm: exact up to 9 m.
func nanometres(p pattern.Point) Point {
	return Point{float64(p.X.Nanometres()), float64(p.Y.Nanometres())}
}

// take splits the stroke at a place if it lies on it. It reports whether the
// place lies on the stroke or at one of its ends.
func (s *stroke) take(p pattern.Point) bool {
	if p == s.a || p == s.b {
		return true
	}
	if s.bulge != 0 {
		return false
	}
	a := nanometres(s.a)
	along, to := nanometres(s.b).sub(a), nanometres(p).sub(a)
	square, off := along.dot(along), along.cross(to)
	if d := to.dot(along); d <= 0 || d >= square || off*off > near*near*square {
		return false
	}
	s.on = append(s.on, p)
	return true
}

// crossing splits two straight strokes where they cross.
func (s *stroke) crossing(t *stroke) {
	if s.bulge != 0 || t.bulge != 0 {
		return
	}
	a, c := nanometres(s.a), nanometres(t.a)
	u, v := nanometres(s.b).sub(a), nanometres(t.b).sub(c)
	across := u.cross(v)
	if math.Abs(across) < 1 {
		return
	}
	p, q := c.sub(a).cross(v)/across, c.sub(a).cross(u)/across
	if p <= 0 || p >= 1 || q <= 0 || q >= 1 {
		return
	}
	at := a.add(u.by(p))
	point := pattern.At(measure.Nanometres(int64(math.Round(at.X))), measure.Nanometres(int64(math.Round(at.Y))))
	s.on, t.on = append(s.on, point), append(t.on, point)
}

// sort puts the places of a stroke in the order of its way.
func (s *stroke) sort() {
	if len(s.on) < 2 {
		return
	}
	a := nanometres(s.a)
	along := nanometres(s.b).sub(a)
	slices.SortFunc(s.on, func(p, q pattern.Point) int {
		return cmp.Compare(nanometres(p).sub(a).dot(along), nanometres(q).sub(a).dot(along))
	})
	s.on = slices.Compact(s.on)
}
