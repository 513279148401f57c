package draw

import (
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// hatches returns the hatching of the glue areas, rising to the right where
// the glue is on the side that is seen and falling where it is not. Labels
// stay clear.
func (f *figure) hatches() []Line {
	var lines []Line
	for _, face := range [...]pattern.Face{pattern.Inside, pattern.Outside} {
		for i := range f.glues {
			if g := &f.glues[i]; g.Face == face {
				lines = append(lines, f.hatch(g)...)
			}
		}
	}
	return lines
}

func (f *figure) hatch(g *pattern.Glue) []Line {
	layer, along := Pasted, Point{math.Sqrt2 / 2, math.Sqrt2 / 2}
	if g.Face == pattern.Outside {
		layer, along = PastedUnder, Point{math.Sqrt2 / 2, -math.Sqrt2 / 2}
	}
	path := vertices(g.Area)
	lines := []Line{{Layer: layer, Name: f.say("glue") + ": " + f.say(g.Name), Path: path, Closed: true}}
	return f.shade(lines, layer, path, along, 0.9*f.lettering)
}

// shade appends lines along a direction, a gap apart, that fill an area.
func (f *figure) shade(lines []Line, layer Layer, path []Vertex, along Point, gap float64) []Line {
	ring := Flatten(nil, path, true, 0.05)
	texts := f.textsNear(Around(ring))
	across := Point{-along.Y, along.X}
	low, high := extent(ring, across)
	for at := (math.Floor(low/gap) + 0.5) * gap; at < high; at += gap {
		if at > low {
			lines = f.strokes(lines, layer, ring, texts, across.by(at), along)
		}
	}
	return lines
}

// textsNear returns the boxes round the labels that reach into a box, with what
// hatching leaves free.
func (f *figure) textsNear(area Box) (near [][4]Point) {
	for i := range f.fig.Labels {
		if b := f.fig.Labels[i].Box.grow(0.2 * f.lettering); b.Meets(area) {
			near = append(near, b.corners())
		}
	}
	return near
}

// extent returns how far a ring reaches along a direction.
func extent(ring []Point, along Point) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range ring {
		d := p.dot(along)
		low, high = min(low, d), max(high, d)
	}
	return low, high
}

// strokes appends the parts of one line of hatching that lie in the ring and
// in no label.
func (f *figure) strokes(lines []Line, layer Layer, ring []Point, texts [][4]Point, from, along Point) []Line {
	marks := crossings(ring, from, along)
	for i := range texts {
		if hits := crossings(texts[i][:], from, along); len(hits) == 2 {
			marks = without(marks, hits[0], hits[1])
		}
	}
	for i := 1; i < len(marks); i += 2 {
		if marks[i]-marks[i-1] > 0.2*f.lettering {
			a, b := from.add(along.by(marks[i-1])), from.add(along.by(marks[i]))
			lines = append(lines, Line{Layer: layer, Path: []Vertex{{Point: a}, {Point: b}}})
		}
	}
	return lines
}

// crossings are where a line passes the edges of a ring, in its order.
func crossings(ring []Point, from, along Point) (marks []float64) {
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		da, db := along.cross(a.sub(from)), along.cross(b.sub(from))
		if (da > 0) != (db > 0) {
			at := a.add(b.sub(a).by(da / (da - db)))
			marks = append(marks, at.sub(from).dot(along))
		}
	}
	slices.Sort(marks)
	return marks
}

// without takes a stretch out of pairs of marks.
func without(marks []float64, low, high float64) []float64 {
	var rest []float64
	for i := 1; i < len(marks); i += 2 {
		a, b := marks[i-1], marks[i]
		if b <= low || a >= high {
			rest = append(rest, a, b)
			continue
		}
		if a < low {
			rest = append(rest, a, low)
		}
		if b > high {
			rest = append(rest, high, b)
		}
	}
	return rest
}
