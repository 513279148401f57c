package draw

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// panels writes each panel's name into it where it fits without touching an
// edge, a cut or another text, and otherwise a letter for it that the key below
// the title explains: no line leads across the paper to a name.
func (f *figure) panels() {
	for i := range f.piece.Panels {
		name := f.say(f.piece.Panels[i].Name)
		spot := f.room(i)
		if l, ok := spot.inscribe(name, f.lettering); ok {
			f.label(l)
			continue
		}
		letter := f.key(name)
		if l, ok := spot.inscribe(letter, f.lettering); ok {
			f.label(l)
		} else {
			f.sides[above].add(tag{at: spot.inner().X, thing: f.h, lines: []string{letter}})
			f.hurdles = nil
		}
	}
}

// key returns the letter that stands for a name in small panels: a to z, then
// two of them.
func (f *figure) key(name string) string {
	n := len(f.keys)
	letter := string(rune('a' + n%26))
	if n >= 26 {
		letter = string(rune('a'+n/26-1)) + letter
	}
	f.keys = append(f.keys, letter+":"+noBreak+strings.ReplaceAll(name, " ", noBreak))
	return letter
}

// room is the inside of a panel that is to be named.
type room struct {
	*figure
	ring, hole []Point
}

// hurdles are what names keep clear of if they can, and always.
type hurdles struct{ glues, cuts []hurdle }

// inWayOfNames returns the hurdles, which are found once for all panels.
func (f *figure) inWayOfNames() *hurdles {
	if f.hurdles == nil {
		f.hurdles = &hurdles{f.glueEdges(), f.cutEdges()}
	}
	return f.hurdles
}

// hurdle is a path that names keep clear of.
type hurdle struct {
	points []Point
	closed bool
	box    Box
}

func newHurdle(points []Point, closed bool) hurdle { return hurdle{points, closed, Around(points)} }

// inWay reports whether one of the paths has a point in a box.
func inWay(b Box, paths []hurdle) bool {
	return slices.ContainsFunc(paths, func(h hurdle) bool { return h.box.Meets(b) && touches(b, h.points, h.closed) })
}

// glueEdges returns the edges of glue areas.
func (f *figure) glueEdges() (edges []hurdle) {
	for _, g := range f.glues {
		edges = append(edges, newHurdle(Flatten(nil, vertices(g.Area), true, 0.1), true))
	}
	return edges
}

// cutEdges returns the cuts inside the outline and the lines that lead to readings.
func (f *figure) cutEdges() (edges []hurdle) {
	for i := range f.fig.Lines {
		if l := &f.fig.Lines[i]; l.Layer == SlitCut {
			edges = append(edges, newHurdle(Flatten(nil, l.Path, l.Closed, 0.1), l.Closed))
		}
	}
	for i := range f.sides {
		s := &f.sides[i]
		for _, t := range s.tags {
			edges = append(edges, newHurdle([]Point{s.base(t.at, t.thing), s.base(t.at, s.start)}, false))
		}
	}
	return edges
}

func (f *figure) room(panel int) *room {
	p := &f.piece.Panels[panel]
	return &room{f, Flatten(nil, vertices(p.Outline), true, 0.1), Flatten(nil, vertices(p.Hole), true, 0.1)}
}

// inscribe finds a place for a name: level before upright, large before
// small, few lines before many, the middle before elsewhere.
func (r *room) inscribe(name string, sizes ...float64) (Label, bool) {
	box := Around(r.ring)
	for _, size := range sizes {
		for _, upright := range [...]bool{false, true} {
			long := box.Width()
			if upright {
				long = box.Height()
			}
			lines := Wrap(name, size, long-size)
			w, h := Block(lines, size)
			if upright {
				w, h = h, w
			}
			if at, ok := r.find(box, w, h, 0.35*size); ok {
				return Label{Lines: lines, Size: size, Align: Middle, Upright: upright, Box: at}, true
			}
		}
	}
	return Label{}, false
}

// find looks for a free place for a box of the given size, off the edges of glue areas if
// there is one.
func (r *room) find(in Box, w, h, margin float64) (Box, bool) {
	freeX, freeY := in.Width()-w-2*margin, in.Height()-h-2*margin
	if freeX < 0 || freeY < 0 {
		return Box{}, false
	}
	var first Box
	found := false
	for _, s := range spots {
		left := in.Low.X + margin + freeX*s.X
		top := in.High.Y - margin - freeY*s.Y
		at := boxAt(left, top, w, h)
		if wide := at.grow(margin * 0.98); (!found || !inWay(wide, r.inWayOfNames().glues)) && r.free(wide) {
			if !inWay(wide, r.inWayOfNames().glues) {
				return at, true
			}
			first, found = at, true
		}
	}
	return first, found
}

// spots are the places to try, as parts of the free way, the middle first.
var spots = func() []Point {
	const n = 8
	var grid []Point
	for x := 0; x <= n; x++ {
		for y := 0; y <= n; y++ {
			grid = append(grid, Point{float64(x) / n, float64(y) / n})
		}
	}
	mid := Point{0.5, 0.5}
	slices.SortStableFunc(grid, func(a, b Point) int {
		return cmp.Compare(a.sub(mid).length(), b.sub(mid).length())
	})
	return grid
}()

// free reports whether a box lies in the panel clear of everything.
func (r *room) free(b Box) bool {
	for _, c := range b.corners() {
		if !within(c, r.ring) || within(c, r.hole) {
			return false
		}
	}
	if touches(b, r.ring, true) || touches(b, r.hole, true) {
		return false
	}
	return !r.fig.Texts(b) && !inWay(b, r.inWayOfNames().cuts)
}

// touches reports whether an edge of a path has a point in a box.
func touches(b Box, path []Point, closed bool) bool {
	for i, p := range path {
		if i+1 == len(path) && !closed {
			break
		}
		if b.Crosses(p, path[(i+1)%len(path)]) {
			return true
		}
	}
	return false
}

// Crosses reports whether a straight line has a point in the box.
func (b Box) Crosses(p, q Point) bool {
	_, _, ok := b.clip(p, q)
	return ok
}

// clip returns from which part to which a straight line lies in the box, if it has a
// point in it (Liang and Barsky, 1984).
func (b Box) clip(p, q Point) (low, high float64, ok bool) {
	d, low, high := q.sub(p), 0.0, 1.0
	for _, side := range [...][2]float64{
		{-d.X, p.X - b.Low.X}, {d.X, b.High.X - p.X}, {-d.Y, p.Y - b.Low.Y}, {d.Y, b.High.Y - p.Y},
	} {
		way, room := side[0], side[1]
		switch {
		case math.Abs(way) < 1e-12:
			if room < 0 {
				return 0, 0, false
			}
		case way < 0:
			low = max(low, room/way)
		default:
			high = min(high, room/way)
		}
	}
	return low, high, low <= high
}

// Around returns the box round some points.
func Around(points []Point) Box {
	b := Box{points[0], points[0]}
	for _, p := range points[1:] {
		b = b.join(Box{p, p})
	}
	return b
}

// inner returns a place well inside the panel: the middle of the widest
// stretch of a level line through half of its height.
func (r *room) inner() Point {
	box := Around(r.ring)
	level := Point{0, (box.Low.Y + box.High.Y) / 2}
	marks := crossings(r.ring, level, Point{1, 0})
	if holes := crossings(r.hole, level, Point{1, 0}); len(holes) == 2 {
		marks = without(marks, holes[0], holes[1])
	}
	best, widest := Point{(box.Low.X + box.High.X) / 2, level.Y}, 0.0
	for i := 1; i < len(marks); i += 2 {
		if w := marks[i] - marks[i-1]; w > widest {
			best, widest = Point{(marks[i] + marks[i-1]) / 2, level.Y}, w
		}
	}
	return best
}
