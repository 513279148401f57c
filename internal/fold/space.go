package fold

import "math"

// Vec is a point or a direction in space, in millimetres. In a Model, X and Y
// run along the first blank's width and height and Z points to the viewer.
type Vec [3]float64

// Plus returns a + b.
func (a Vec) Plus(b Vec) Vec { return Vec{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }

// Minus returns a - b.
func (a Vec) Minus(b Vec) Vec { return Vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

// Times returns a, f times as long.
func (a Vec) Times(f float64) Vec { return Vec{a[0] * f, a[1] * f, a[2] * f} }

// Dot returns the inner product.
func (a Vec) Dot(b Vec) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// Cross returns the cross product.
func (a Vec) Cross(b Vec) Vec {
	return Vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// Length returns the length of a.
func (a Vec) Length() float64 { return math.Sqrt(a.Dot(a)) }

func (a Vec) unit() Vec { return a.Times(1 / a.Length()) }

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

// Frame is where a rigid motion takes the blank: its directions to the right,
// up and towards the viewer, and its lower left corner.
type Frame struct{ X, Y, Z, Origin Vec }

// Shifted is the motion followed by a shift.
func (m Frame) Shifted(by Vec) Frame {
	m.Origin = m.Origin.Plus(by)
	return m
}

// Carried is the motion of what is carried along by a plate, from where that was
// before to where it is now.
func (m Frame) Carried(before, now Frame) Frame {
	home := before.back()
	by := now.after(&home)
	return by.after(&m)
}

// still moves nothing.
func still() Frame {
	return Frame{X: Vec{1, 0, 0}, Y: Vec{0, 1, 0}, Z: Vec{0, 0, 1}}
}

// at returns where a spot of the blank goes.
func (m *Frame) at(p spot) Vec {
	return Vec{
		m.Origin[0] + p.x*m.X[0] + p.y*m.Y[0],
		m.Origin[1] + p.x*m.X[1] + p.y*m.Y[1],
		m.Origin[2] + p.x*m.X[2] + p.y*m.Y[2],
	}
}

// turn returns where a direction goes.
func (m *Frame) turn(v Vec) Vec {
	return Vec{
		m.X[0]*v[0] + m.Y[0]*v[1] + m.Z[0]*v[2],
		m.X[1]*v[0] + m.Y[1]*v[1] + m.Z[1]*v[2],
		m.X[2]*v[0] + m.Y[2]*v[1] + m.Z[2]*v[2],
	}
}

// spot returns the spot of the blank that goes to a point, or to its foot.
func (m *Frame) spot(p Vec) spot {
	p = p.Minus(m.Origin)
	return spot{p.Dot(m.X), p.Dot(m.Y)}
}

// after returns the motion that does k first and then m.
func (m *Frame) after(k *Frame) Frame {
	return Frame{X: m.turn(k.X), Y: m.turn(k.Y), Z: m.turn(k.Z), Origin: m.Origin.Plus(m.turn(k.Origin))}
}

// back returns the inverse motion.
func (m *Frame) back() Frame {
	b := Frame{
		X: Vec{m.X[0], m.Y[0], m.Z[0]},
		Y: Vec{m.X[1], m.Y[1], m.Z[1]},
		Z: Vec{m.X[2], m.Y[2], m.Z[2]},
	}
	b.Origin = b.turn(m.Origin).Times(-1)
	return b
}

// hinge is the turn by an angle in degrees about the line of the blank
// through a that is square to the unit direction n: positive angles lift the
// side that n points to.
func hinge(a, n spot, degrees float64) Frame {
	s, c := sincos(degrees)
	m := Frame{
		X: Vec{n.y*n.y + c*n.x*n.x, (c - 1) * n.x * n.y, s * n.x},
		Y: Vec{(c - 1) * n.x * n.y, n.x*n.x + c*n.y*n.y, s * n.y},
		Z: Vec{-s * n.x, -s * n.y, c},
	}
	m.Origin = Vec{a.x, a.y, 0}.Minus(m.at(a))
	return m
}

// sincos is exact at multiples of a quarter turn, where almost all creases
// end: math.Sincos leaves about 1e-16 there, which snapping removes.
func sincos(degrees float64) (s, c float64) {
	if math.Abs(degrees) == 90 {
		return math.Copysign(1, degrees), 0
	}
	switch degrees { // what snap makes of the usual ones
	case 90:
		return 1, 0
	case -90:
		return -1, 0
	}
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
