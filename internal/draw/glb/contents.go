package glb

import (
	"math"
	"slices"

	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// stand is where the contents stand: a corner on the cavity panel and the
// directions of their sizes.
type stand struct{ corner, wide, high, thick fold.Vec }

// contents returns the faces of a box of the contents' size on the inside of
// the cavity panel, nil if a size is unknown or the pattern itself goes into
// something of that size.
func contents(p *pattern.Pattern, m *fold.Model) []face {
	c := &p.Cavity
	if c.Into || c.Width.Sign() <= 0 || c.Height.Sign() <= 0 || c.Thickness.Sign() <= 0 {
		return nil
	}
	var under []int // the plates of the panel, more than one if it bends
	for i := range m.Plates {
		if pl := &m.Plates[i]; pl.Piece == c.Piece && pl.Copy == 0 && pl.Panel == c.Panel && len(pl.Outline) > 2 {
			under = append(under, i)
		}
	}
	if under == nil {
		return nil
	}
	flat, i := fold.Fold(p, 0), under[len(under)/2]
	s := standing(c, m.Plates[i].Outline, flat.Plates[i].Outline)
	lift := m.Caliper / 2 * float64(1+2*layers(p))
	if c.Floats {
		lift = s.middle(m) - c.Thickness.Millimetres()/2
	}
	s.corner = plus(s.corner, by(s.thick, lift))
	if c.Sides > 0 {
		return s.prism(c.Sides, c.Width.Millimetres(), c.Thickness.Millimetres())
	}
	return s.box(c.Width.Millimetres(), c.Height.Millimetres(), c.Thickness.Millimetres())
}

// layers returns 1 if another piece is glued onto the inside of the cavity panel,
// and so lies under the contents.
func layers(p *pattern.Pattern) int {
	for i := range p.Bonds {
		b := &p.Bonds[i]
		if b.B == p.Cavity.Piece && slices.ContainsFunc(b.Glues, func(g pattern.Glue) bool { return g.To == p.Cavity.Panel && g.ToFace == pattern.Inside }) {
			return 1
		}
	}
	return 0
}

// middle returns how far the middle of all plates is from the corner along the
// contents' thickness.
func (s *stand) middle(m *fold.Model) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for i := range m.Plates {
		for _, v := range m.Plates[i].Outline {
			d := dot(minus(v, s.corner), s.thick)
			low, high = min(low, d), max(high, d)
		}
	}
	return (low + high) / 2
}

// standing puts the contents in the middle of the cavity panel, which lies at
// flat on the blank and at folded in space.
func standing(c *pattern.Cavity, folded, flat []fold.Vec) stand {
	x, y, origin := carry(folded, flat)
	sin, cos := math.Sincos(c.Turned * math.Pi / 180)
	s := stand{
		wide: plus(by(x, cos), by(y, sin)),
		high: plus(by(y, cos), by(x, -sin)),
	}
	s.thick = cross(s.wide, s.high)
	low, high, sum := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}, [2]float64{}
	for _, v := range folded {
		for k, way := range [2]fold.Vec{s.wide, s.high} {
			d := dot(minus(v, origin), way)
			low[k], high[k], sum[k] = min(low[k], d), max(high[k], d), sum[k]+d
		}
	}
	middle := [2]float64{(low[0] + high[0]) / 2, (low[1] + high[1]) / 2}
	if c.Sides > 0 {
		middle = [2]float64{sum[0] / float64(len(folded)), sum[1] / float64(len(folded))}
	}
	u, v := middle[0]-c.Width.Millimetres()/2, middle[1]-c.Height.Millimetres()/2
	s.corner = plus(origin, plus(by(s.wide, u), by(s.high, v)))
	return s
}

// carry finds where the blank's x and y directions and its origin go, from a
// panel's corners before and after: by its two edges from the first corner
// that are least alike.
func carry(folded, flat []fold.Vec) (x, y, origin fold.Vec) {
	var best, second int
	most := 0.0
	n := len(flat)
	for i := 1; i < n; i++ {
		for j := 1; j < i; j++ {
			if d := math.Abs(cross(minus(flat[i], flat[0]), minus(flat[j], flat[0]))[2]); d > most {
				best, second, most = i, j, d
			}
		}
	}
	e, f := minus(flat[best], flat[0]), minus(flat[second], flat[0])
	p, q := minus(folded[best], folded[0]), minus(folded[second], folded[0])
	area := e[0]*f[1] - e[1]*f[0]
	x = by(minus(by(p, f[1]), by(q, e[1])), 1/area)
	y = by(minus(by(q, e[0]), by(p, f[0])), 1/area)
	return x, y, minus(folded[0], plus(by(x, flat[0][0]), by(y, flat[0][1])))
}

// box returns the six faces of a box.
func (s *stand) box(w, h, t float64) []face {
	at := func(x, y, z float64) fold.Vec {
		return plus(s.corner, plus(by(s.wide, x*w), plus(by(s.high, y*h), by(s.thick, z*t))))
	}
	side := func(normal fold.Vec, ring ...fold.Vec) face { return face{ring: ring, normal: normal} }
	return []face{
		side(by(s.thick, -1), at(0, 0, 0), at(0, 1, 0), at(1, 1, 0), at(1, 0, 0)),
		side(s.thick, at(0, 0, 1), at(1, 0, 1), at(1, 1, 1), at(0, 1, 1)),
		side(by(s.high, -1), at(0, 0, 0), at(1, 0, 0), at(1, 0, 1), at(0, 0, 1)),
		side(s.high, at(0, 1, 0), at(0, 1, 1), at(1, 1, 1), at(1, 1, 0)),
		side(by(s.wide, -1), at(0, 0, 0), at(0, 0, 1), at(0, 1, 1), at(0, 1, 0)),
		side(s.wide, at(1, 0, 0), at(1, 1, 0), at(1, 1, 1), at(1, 0, 1)),
	}
}

// prism returns the faces of an upright prism with equal sides, so far across
// from side to side and one of them towards the contents' height.
func (s *stand) prism(sides int, across, t float64) []face {
	middle := plus(s.corner, plus(by(s.wide, across/2), by(s.high, across/2)))
	out := func(turned, far float64) fold.Vec {
		sin, cos := math.Sincos(math.Pi/2 + 2*math.Pi*turned/float64(sides))
		return plus(by(s.wide, far*cos), by(s.high, far*sin))
	}
	low, high := face{normal: by(s.thick, -1)}, face{normal: s.thick}
	faces := make([]face, 0, sides+2)
	radius := across / 2 / math.Cos(math.Pi/float64(sides))
	corner := func(k int, z float64) fold.Vec {
		return plus(middle, plus(out(float64(k)-0.5, radius), by(s.thick, z)))
	}
	for k := range sides {
		low.ring, high.ring = append(low.ring, corner(sides-k, 0)), append(high.ring, corner(k, t))
		faces = append(faces, face{ring: []fold.Vec{corner(k, 0), corner(k+1, 0), corner(k+1, t), corner(k, t)}, normal: out(float64(k), 1)})
	}
	return append(faces, low, high)
}
