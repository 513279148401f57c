package fold

import "math"

// Vec is a point or a direction in space, in millimetres. In a Model, X and Y
// run along the first blank's width and height and Z points to the viewer.
type Vec [3]float64

func (a Vec) add(b Vec) Vec     { return Vec{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }
func (a Vec) sub(b Vec) Vec     { return Vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func (a Vec) by(f float64) Vec  { return Vec{a[0] * f, a[1] * f, a[2] * f} }
func (a Vec) dot(b Vec) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func (a Vec) length() float64   { return math.Sqrt(a.dot(a)) }
func (a Vec) to(b Vec) float64  { return b.sub(a).length() }
func (a Vec) unit() Vec         { return a.by(1 / a.length()) }
func (a Vec) cross(b Vec) Vec {
	return Vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// box is what lies from low to high along the three axes.
type box struct{ low, high Vec }

// boxRound returns the box round points; without any it is empty.
func boxRound(points []Vec) box {
	b := noBox()
	for i := range points {
		b.take(&points[i])
	}
	return b
}

// noBox is round no point.
func noBox() box {
	most := math.Inf(1)
	return box{Vec{most, most, most}, Vec{-most, -most, -most}}
}

// take grows the box so that a point is in it.
func (b *box) take(p *Vec) {
	for k, d := range p {
		if d < b.low[k] {
			b.low[k] = d
		}
		if d > b.high[k] {
			b.high[k] = d
		}
	}
}

// ahead is how far the box reaches in a direction.
func (b *box) ahead(d Vec) (far float64) {
	for k, c := range d {
		far += max(c*b.low[k], c*b.high[k])
	}
	return far
}

// thicker returns the box round a plate with half of its thickness on each
// side of it.
func (b box) thicker(normal Vec, half float64) box {
	for k, n := range normal {
		b.low[k] -= half * math.Abs(n)
		b.high[k] += half * math.Abs(n)
	}
	return b
}

// motion is a rigid motion from the flat blank into space: where the blank's
// x, y and z directions and its origin go.
type motion struct{ x, y, z, o Vec }

// frame is the motion as others see it.
func (m *motion) frame() Frame { return Frame{m.x, m.y, m.z, m.o} }

// still moves nothing.
func still() motion {
	return motion{x: Vec{1, 0, 0}, y: Vec{0, 1, 0}, z: Vec{0, 0, 1}}
}

// at returns where a spot of the blank goes.
func (m *motion) at(p spot) Vec {
	return Vec{
		m.o[0] + p.x*m.x[0] + p.y*m.y[0],
		m.o[1] + p.x*m.x[1] + p.y*m.y[1],
		m.o[2] + p.x*m.x[2] + p.y*m.y[2],
	}
}

// turn returns where a direction goes.
func (m *motion) turn(v Vec) Vec {
	return Vec{
		m.x[0]*v[0] + m.y[0]*v[1] + m.z[0]*v[2],
		m.x[1]*v[0] + m.y[1]*v[1] + m.z[1]*v[2],
		m.x[2]*v[0] + m.y[2]*v[1] + m.z[2]*v[2],
	}
}

// spot returns the spot of the blank that goes to a point, or to its foot.
func (m *motion) spot(p Vec) spot {
	p = p.sub(m.o)
	return spot{p.dot(m.x), p.dot(m.y)}
}

// after returns the motion that does k first and then m.
func (m *motion) after(k *motion) motion {
	return motion{x: m.turn(k.x), y: m.turn(k.y), z: m.turn(k.z), o: m.o.add(m.turn(k.o))}
}

// back returns the inverse motion.
func (m *motion) back() motion {
	b := motion{
		x: Vec{m.x[0], m.y[0], m.z[0]},
		y: Vec{m.x[1], m.y[1], m.z[1]},
		z: Vec{m.x[2], m.y[2], m.z[2]},
	}
	b.o = b.turn(m.o).by(-1)
	return b
}

// hinge is the turn by an angle in degrees about the line of the blank
// through a that is square to the unit direction n: positive angles lift the
// side that n points to.
func hinge(a, n spot, degrees float64) motion {
	s, c := sincos(degrees)
	m := motion{
		x: Vec{n.y*n.y + c*n.x*n.x, (c - 1) * n.x * n.y, s * n.x},
		y: Vec{(c - 1) * n.x * n.y, n.x*n.x + c*n.y*n.y, s * n.y},
		z: Vec{-s * n.x, -s * n.y, c},
	}
	m.o = Vec{a.x, a.y, 0}.sub(m.at(a))
	return m
}

// sincos is exact at multiples of a quarter turn, where almost all creases
// end: math.Sincos leaves about 1e-16 there, which snapping removes.
func sincos(degrees float64) (s, c float64) {
	s, c = math.Sincos(degrees * math.Pi / 180)
	return snap(s), snap(c)
}

// snap takes rounding dust off a sine or cosine.
func snap(v float64) float64 {
	if r := math.Round(v); math.Abs(v-r) < 1e-15 {
		return r
	}
	return v
}
