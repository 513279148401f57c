package drawtest

import "math"

// Vec is a place or a direction in space, mm.
type Vec = [3]float64

func sub(a, b Vec) Vec { return Vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

func cross(a, b Vec) Vec {
	return Vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func dot(a, b Vec) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// Turn turns a place about the line through a in a unit direction, by an angle
// in degrees (Rodrigues, 1840).
func Turn(p, a, axis Vec, degrees float64) Vec {
	s, c := math.Sincos(degrees * math.Pi / 180)
	r := sub(p, a)
	x, along := cross(axis, r), dot(axis, r)*(1-c)
	return Vec{a[0] + r[0]*c + x[0]*s + axis[0]*along, a[1] + r[1]*c + x[1]*s + axis[1]*along, a[2] + r[2]*c + x[2]*s + axis[2]*along}
}

// Room returns what is left along an axis: for contents between the polygons,
// or for all polygons in something of the given size.
func Room(polygons [][]Vec, middle, size Vec, axis int, half float64, into bool) float64 {
	low, high := Free(polygons, middle, size, axis, half)
	if !into {
		return high - low - size[axis]
	}
	low, high = math.Inf(1), math.Inf(-1)
	for _, ring := range polygons {
		reach := half * math.Abs(normal(ring)[axis])
		for _, v := range ring {
			low, high = min(low, v[axis]-reach), max(high, v[axis]+reach)
		}
	}
	return size[axis] - (high - low)
}

// Free casts rays from the cross-section of a box, along an axis in both
// directions, at flat polygons that stand square to the axis, and returns the
// nearest places that they meet, less half a thickness each.
func Free(polygons [][]Vec, middle, size Vec, axis int, half float64) (low, high float64) {
	low, high = math.Inf(-1), math.Inf(1)
	u, v := (axis+1)%3, (axis+2)%3
	for _, ring := range polygons {
		n := normal(ring)
		if math.Abs(n[axis]) < 0.999 {
			continue
		}
		at := ring[0][axis]
		if !shades(ring, middle, size, u, v) {
			continue
		}
		if at < middle[axis] {
			low = max(low, at+half)
		} else {
			high = min(high, at-half)
		}
	}
	return low, high
}

// shades reports whether one of many rays of the cross-section meets the ring.
func shades(ring []Vec, middle, size Vec, u, v int) bool {
	const n = 40
	for i := range n {
		for j := range n {
			x := middle[u] + size[u]*((float64(i)+0.5)/n-0.5)
			y := middle[v] + size[v]*((float64(j)+0.5)/n-0.5)
			if inside(ring, x, y, u, v) {
				return true
			}
		}
	}
	return false
}

// inside is the even-odd rule in the plane of two axes.
func inside(ring []Vec, x, y float64, u, v int) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a[v] > y) != (b[v] > y) && x < a[u]+(y-a[v])*(b[u]-a[u])/(b[v]-a[v]) {
			in = !in
		}
	}
	return in
}

// normal returns the unit normal of a ring (Newell's sum).
func normal(ring []Vec) Vec {
	var n Vec
	for i, a := range ring {
		x := cross(sub(a, ring[0]), sub(ring[(i+1)%len(ring)], ring[0]))
		n = Vec{n[0] + x[0], n[1] + x[1], n[2] + x[2]}
	}
	long := math.Sqrt(dot(n, n))
	return Vec{n[0] / long, n[1] / long, n[2] / long}
}
