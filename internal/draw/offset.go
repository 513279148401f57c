package draw

import "math"

// offset moves a closed path to the right of its way by a distance, which for
// the contours of a piece is away from the paper. Outer corners become arcs
// about the corner: the way of a round tool that leaves the corner sharp. It
// returns nil and the size of what stands in the way where the path would cross
// itself, as in a slot narrower than twice the distance.
func offset(path []Vertex, by float64) (moved []Vertex, narrow float64) {
	if by <= 0 {
		return path, 0
	}
	n := len(path)
	edges := make([]edgeMoved, n)
	for i, v := range path {
		e, ok := moveEdge(v, path[(i+1)%n].Point, by)
		if !ok {
			return nil, 2 * ArcBetween(v.Point, path[(i+1)%n].Point, v.Bulge).Radius
		}
		edges[i] = e
	}
	for i := range edges {
		next := (i + 1) % n
		if !join(&edges[i], &edges[next], path[next].Point) {
			return nil, path[next].Point.sub(path[i].Point).length()
		}
	}
	for i, e := range edges {
		before := edges[(i+n-1)%n]
		if before.to.sub(e.from).length() > 1e-9 { // an outer corner
			moved = append(moved, Vertex{before.to, cornerBulge(path[i].Point, before.to, e.from)})
		}
		if e.reversed(path[i], path[(i+1)%n].Point) {
			return nil, path[(i+1)%n].Point.sub(path[i].Point).length()
		}
		moved = append(moved, Vertex{e.from, e.bulge()})
	}
	return moved, 0
}

// edgeMoved is an edge of the path moved aside.
type edgeMoved struct {
	from, to Point
	centre   Point
	radius   float64 // 0 for a straight edge
	left     bool    // an arc that turns to the left
}

func moveEdge(v Vertex, to Point, by float64) (edgeMoved, bool) {
	if !v.IsArc() {
		along := to.sub(v.Point)
		right := Point{along.Y, -along.X}.by(by / along.length())
		return edgeMoved{from: v.Point.add(right), to: to.add(right)}, true
	}
	arc := ArcBetween(v.Point, to, v.Bulge)
	e := edgeMoved{centre: arc.Centre, radius: arc.Radius + by, left: v.Bulge > 0}
	if !e.left {
		e.radius = arc.Radius - by
	}
	ratio := e.radius / arc.Radius
	e.from, e.to = arc.Centre.add(v.Point.sub(arc.Centre).by(ratio)), arc.Centre.add(to.sub(arc.Centre).by(ratio))
	return e, e.radius > 1e-6
}

// way is the direction of an edge at its beginning or its end.
func (e *edgeMoved) way(end bool) Point {
	if e.radius <= 0 {
		return e.to.sub(e.from)
	}
	at := e.from
	if end {
		at = e.to
	}
	spoke := at.sub(e.centre)
	if e.left {
		return Point{-spoke.Y, spoke.X}
	}
	return Point{spoke.Y, -spoke.X}
}

// join makes two edges meet at an inner corner, where they have come to cross;
// it reports false if they do not.
func join(a, b *edgeMoved, corner Point) bool {
	in, out := a.way(true), b.way(false)
	turn := in.cross(out) / (in.length() * out.length())
	if math.Abs(turn) < 1e-9 && in.dot(out) > 0 || turn > 0 {
		return true // straight on, or an outer corner
	}
	best, found := Point{}, false
	for _, p := range meets(a, b) {
		if d := p.sub(corner).length(); !found || d < best.sub(corner).length() {
			best, found = p, true
		}
	}
	if found {
		a.to, b.from = best, best
	}
	return found
}

// meets returns where the lines or circles of two edges meet.
func meets(a, b *edgeMoved) []Point {
	switch {
	case a.radius <= 0 && b.radius <= 0:
		u, v := a.to.sub(a.from), b.to.sub(b.from)
		d := u.cross(v)
		if math.Abs(d) < 1e-12 {
			return nil
		}
		return []Point{a.from.add(u.by(b.from.sub(a.from).cross(v) / d))}
	case a.radius <= 0:
		return lineMeets(a, b)
	case b.radius <= 0:
		return lineMeets(b, a)
	default:
		return circlesMeet(a, b)
	}
}

func lineMeets(line, circle *edgeMoved) []Point {
	u := line.to.sub(line.from)
	u = u.by(1 / u.length())
	foot := line.from.add(u.by(circle.centre.sub(line.from).dot(u)))
	rest := circle.radius*circle.radius - foot.sub(circle.centre).dot(foot.sub(circle.centre))
	if rest < 0 {
		return nil
	}
	half := math.Sqrt(rest)
	return []Point{foot.add(u.by(half)), foot.add(u.by(-half))}
}

func circlesMeet(a, b *edgeMoved) []Point {
	between := b.centre.sub(a.centre)
	d := between.length()
	if d < 1e-12 {
		return nil
	}
	along := (d*d + a.radius*a.radius - b.radius*b.radius) / (2 * d)
	rest := a.radius*a.radius - along*along
	if rest < 0 {
		return nil
	}
	u := between.by(1 / d)
	foot, across := a.centre.add(u.by(along)), Point{-u.Y, u.X}.by(math.Sqrt(rest))
	return []Point{foot.add(across), foot.sub(across)}
}

// cornerBulge is that of the arc about a corner to the left of the way.
func cornerBulge(corner, from, to Point) float64 {
	a, b := from.sub(corner), to.sub(corner)
	angle := math.Atan2(a.cross(b), a.dot(b))
	return math.Tan(angle / 4)
}

// reversed reports whether an edge runs the other way than before it was moved.
func (e *edgeMoved) reversed(v Vertex, to Point) bool {
	if e.radius <= 0 {
		return e.to.sub(e.from).dot(to.sub(v.Point)) < 0
	}
	sweep := e.sweep()
	return math.Abs(sweep-4*math.Atan(v.Bulge)) > math.Pi
}

// sweep returns how far an arc turns.
func (e *edgeMoved) sweep() float64 {
	a, b := e.from.sub(e.centre), e.to.sub(e.centre)
	angle := math.Atan2(a.cross(b), a.dot(b))
	switch {
	case e.left && angle < 0:
		angle += 2 * math.Pi
	case !e.left && angle > 0:
		angle -= 2 * math.Pi
	}
	return angle
}

func (e *edgeMoved) bulge() float64 {
	if e.radius <= 0 {
		return 0
	}
	return math.Tan(e.sweep() / 4)
}
