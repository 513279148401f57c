package draw

import (
	"creasefit/internal/pattern"
)

// The heads of arrows.
type head uint8

const (
	fullHead   head = iota // folded towards the inside
	halfHead               // folded the other way
	hollowHead             // put in, or set on
)

func headOf(f pattern.Fold, back bool) head {
	if (f == pattern.Mountain) != back {
		return halfHead
	}
	return fullHead
}

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
	for _, p := range path[:n-1] {
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
