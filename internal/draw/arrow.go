package draw

// The heads of arrows.
type head uint8

const (
	fullHead   head = iota // folded towards the inside
	halfHead               // folded the other way
	hollowHead             // put in, or set on
)

// arrow draws a path with a head at its end, on top of everything.
func (s *still) arrow(path []Point, h head) {
	n := len(path)
	long := 0.0
	for i := 1; i < n; i++ {
		long += path[i].sub(path[i-1]).length()
	}
	if long < 1 {
		return
	}
	size := min(max(0.12*long, 2), max(6, 0.05*long))
	end := path[n-1]
	back := end
	for i := n - 2; i >= 0 && end.sub(back).length() < size; i-- {
		back = path[i]
	}
	way := end.sub(back)
	way = way.by(1 / way.length())
	side := Point{-way.Y, way.X}.by(0.4 * size)
	foot := end.sub(way.by(size))
	line := make([]Vertex, 0, n)
	for _, p := range rounded(path) {
		if end.sub(p).length() > size {
			line = append(line, Vertex{Point: p})
		}
	}
	line = append(line, Vertex{Point: foot})
	s.lines = append(s.lines, Line{Layer: MotionPath, Path: line})
	tip := []Vertex{{Point: end}, {Point: foot.add(side)}, {Point: foot.sub(side)}}
	if h == halfHead {
		tip[2] = Vertex{Point: foot}
	}
	s.lines = append(s.lines, Line{Layer: MotionPath, Path: tip, Closed: true, Fill: h != halfHead && h != hollowHead})
	for _, p := range append(path, tip[1].Point, tip[2].Point) {
		s.widen(p)
	}
}

// rounded puts places between those of a path, on a smooth curve through all of them
// (Catmull and Rom, 1974).
func rounded(path []Point) []Point {
	if len(path) < 4 {
		return path
	}
	const parts = 4
	at := func(i int) Point { return path[max(0, min(i, len(path)-1))] }
	var smooth []Point
	for i := range len(path) - 1 {
		a, b, c, d := at(i-1), at(i), at(i+1), at(i+2)
		for k := range parts {
			t := float64(k) / parts
			bend := c.sub(a).add(a.by(2).sub(b.by(5)).add(c.by(4)).sub(d).by(t)).add(b.by(3).sub(a).sub(c.by(3)).add(d).by(t * t))
			smooth = append(smooth, b.add(bend.by(t/2)))
		}
	}
	return append(smooth, path[len(path)-1])
}
