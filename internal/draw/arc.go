package draw

import (
	"math"

	"creasefit/internal/pattern"
)

// Point is a place in millimetres, x to the right and y upwards.
type Point struct{ X, Y float64 }

// Vertex is a corner of a path. Bulge bends the edge that leaves it, as in
// pattern.Vertex; 0 is a straight edge.
type Vertex struct {
	Point
	Bulge float64
}

// straight is the greatest bulge that still counts as a straight edge.
const straight = 1e-9

// IsArc reports whether the edge that leaves the vertex is an arc.
func (v Vertex) IsArc() bool { return math.Abs(v.Bulge) > straight }

func place(p pattern.Point) Point { return Point{p.X.Millimetres(), p.Y.Millimetres()} }

func (p Point) add(q Point) Point     { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) sub(q Point) Point     { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) by(f float64) Point    { return Point{p.X * f, p.Y * f} }
func (p Point) cross(q Point) float64 { return p.X*q.Y - p.Y*q.X }
func (p Point) dot(q Point) float64   { return p.X*q.X + p.Y*q.Y }
func (p Point) length() float64       { return math.Hypot(p.X, p.Y) }
func (p Point) middle(q Point) Point  { return p.add(q).by(0.5) }
func (p Point) along(angle float64, radius float64) Point {
	s, c := math.Sincos(angle)
	return Point{p.X + radius*c, p.Y + radius*s}
}

// Arc is part of a circle: it starts at the angle From (radians,
// counterclockwise from the x axis) and turns by Sweep.
type Arc struct {
	Centre      Point
	Radius      float64
	From, Sweep float64
}

// ArcBetween returns the arc from a to b with the given bulge, which must not
// be zero.
func ArcBetween(a, b Point, bulge float64) Arc {
	chord := b.sub(a)
	left := Point{-chord.Y, chord.X}
	centre := a.middle(b).add(left.by((1 - bulge*bulge) / (4 * bulge)))
	spoke := a.sub(centre)
	return Arc{Centre: centre, Radius: spoke.length(), From: math.Atan2(spoke.Y, spoke.X), Sweep: 4 * math.Atan(bulge)}
}

// At returns the point of the arc at a part of its sweep, 0 to 1.
func (a Arc) At(part float64) Point { return a.Centre.along(a.From+a.Sweep*part, a.Radius) }

// chords returns how many chords stay within an error, in mm, of the arc.
func (a Arc) chords(tolerance float64) int {
	if a.Radius <= tolerance {
		return 2
	}
	n := math.Ceil(math.Abs(a.Sweep) / (2 * math.Acos(1-tolerance/a.Radius)))
	return int(max(2, min(n, 4096)))
}

// Chords appends the points strictly between the ends of the arc from a to b,
// as many as keep its chords within the tolerance in mm.
func Chords(dst []Point, a, b Point, bulge, tolerance float64) []Point {
	arc := ArcBetween(a, b, bulge)
	n := arc.chords(tolerance)
	for i := 1; i < n; i++ {
		dst = append(dst, arc.At(float64(i)/float64(n)))
	}
	return dst
}

// Flatten appends the path with its arcs as chords within the tolerance in mm;
// a closed path does not repeat its first point.
func Flatten(dst []Point, path []Vertex, closed bool, tolerance float64) []Point {
	for i, v := range path {
		dst = append(dst, v.Point)
		if v.IsArc() && (closed || i+1 < len(path)) {
			dst = Chords(dst, v.Point, path[(i+1)%len(path)].Point, v.Bulge, tolerance)
		}
	}
	return dst
}

// vertices turns an outline of the pattern into a path.
func vertices(outline []pattern.Vertex) []Vertex {
	path := make([]Vertex, len(outline))
	for i, v := range outline {
		path[i] = Vertex{place(v.Point), v.Bulge}
	}
	return path
}

// within reports whether a point lies inside a ring, by the even-odd rule.
func within(p Point, ring []Point) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)*(b.X-a.X)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}
