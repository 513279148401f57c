package draw

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/measure"
)

// detail is a corner that is too small to be dimensioned where it is: it is drawn
// larger beside the figures, with the lengths from its own lower left (ISO 128-3,
// from memory, has such details with a letter and their scale).
type detail struct {
	letter string
	shape  string // what it looks like, however it is turned over
	times  int
	zoom   float64
	figure Figure
}

// What is drawn as a detail, and how.
const (
	smallEdge   = 2.5  // an edge shorter than so many sizes of letters: 8 mm in the usual ones
	mostEdges   = 5    // in a row; more are a curve
	detailSize  = 12.0 // a detail is at most so many sizes of letters large
	detailRim   = 2.5  // and shows so much round its corners
	mostDetails = 8
)

// zooms are the scales of enlargements (ISO 5455, from memory).
var zooms = [...]float64{20, 10, 5, 2}

// details draws the small corners that no reading tells of, and marks where they are.
func (f *figure) details() {
	for _, c := range f.contours {
		for _, run := range f.runs(c) {
			f.detail(run)
		}
	}
}

// corner is one of a run of corners.
type corner struct {
	Point
	convex bool
}

// runs returns the corners between the long edges of a contour where all edges are
// short and straight.
func (f *figure) runs(c []Vertex) (runs [][]corner) {
	n := len(c)
	at := func(i int) Point { return c[(i+n)%n].Point }
	short := func(i int) bool { return at(i+1).sub(at(i)).length() < smallEdge*f.lettering }
	for first := range n {
		if short(first-1+n) || !short(first) {
			continue
		}
		var run []corner
		straightOnly := true
		for i := first; i < first+n; i++ {
			run = append(run, corner{at(i), at(i).sub(at(i-1)).cross(at(i+1).sub(at(i))) > 0})
			if !short(i) {
				break
			}
			straightOnly = straightOnly && math.Abs(c[i%n].Bulge) <= straight
		}
		if straightOnly && len(run)-1 <= mostEdges {
			runs = append(runs, run)
		}
	}
	return runs
}

// detail draws a run of corners larger, unless readings tell where all of them are, and
// marks it with the letter of the first that looks the same.
func (f *figure) detail(run []corner) {
	if !slices.ContainsFunc(run, func(c corner) bool {
		return !f.dimensioned(c.X, below, above) || !f.dimensioned(c.Y, leftOf, rightOf)
	}) {
		return
	}
	zoom, shape := f.zoom(run), shapeOf(run)
	at := slices.IndexFunc(f.found, func(d *detail) bool { return d.shape == shape })
	if zoom == 0 || at < 0 && len(f.found) == mostDetails {
		return
	}
	letter := string(rune('A' + len(f.found)))
	if at >= 0 {
		letter = f.found[at].letter
	}
	if !f.ring(run, letter) {
		return
	}
	if at < 0 {
		at, f.found = len(f.found), append(f.found, &detail{letter: letter, shape: shape, zoom: zoom, figure: f.enlarged(run, zoom)})
	}
	f.found[at].times += max(1, f.piece.Quantity)
}

// dimensioned reports whether a reading on one of two sides tells of a place along them.
func (f *figure) dimensioned(at float64, sides ...edge) bool {
	return at < hair || slices.ContainsFunc(sides, func(e edge) bool {
		s := &f.sides[e]
		return math.Abs(at-s.size) < hair || slices.ContainsFunc(s.tags, func(t tag) bool { return t.from != unmeasured && math.Abs(t.at-at) < hair })
	})
}

// zoom is the greatest scale at which a run has room, 0 if it is too large for any.
func (f *figure) zoom(run []corner) float64 {
	box := boxOf(run)
	for _, zoom := range zooms {
		if zoom*max(box.Width(), box.Height()) <= detailSize*f.lettering {
			return zoom
		}
	}
	return 0
}

func boxOf(run []corner) Box {
	b := Box{run[0].Point, run[0].Point}
	for _, c := range run[1:] {
		b = b.join(Box{c.Point, c.Point})
	}
	return b
}

// shapeOf tells runs apart that are not the same or mirror images.
func shapeOf(run []corner) string {
	forth, back := make([]string, 0, 2*len(run)), []string{}
	for i, c := range run {
		if i > 0 {
			d := c.sub(run[i-1].Point)
			forth = append(forth, fmt.Sprintf("%.3f %.3f", math.Abs(d.X), math.Abs(d.Y)))
		}
		forth = append(forth, strconv.FormatBool(c.convex))
	}
	back = append(back, forth...)
	slices.Reverse(back)
	return min(strings.Join(forth, "; "), strings.Join(back, "; "))
}

// ring draws a circle round a run and its letter beside it, where no text is.
func (f *figure) ring(run []corner, letter string) bool {
	box := boxOf(run)
	mid := box.Low.middle(box.High)
	radius := box.High.sub(box.Low).length()/2 + 0.6*f.lettering
	w, h := Block([]string{letter}, f.lettering)
	const ways = 16
	for _, further := range [...]float64{0.4, 1.4, 2.6} {
		for k := range ways {
			away := Point{}.along(math.Pi/4+2*math.Pi*float64(k)/ways, radius+further*f.lettering)
			by := Point{w / 2, h / 2}
			at := mid.add(away).add(Point{math.Copysign(by.X, away.X), math.Copysign(by.Y, away.Y)})
			if place := (Box{at.sub(by), at.add(by)}); f.vacant(place.grow(0.15 * f.lettering)) {
				f.circle(mid, radius)
				f.fig.Box = f.fig.Box.join(Box{mid.sub(Point{radius, radius}), mid.add(Point{radius, radius})})
				f.label(Label{Lines: []string{letter}, Size: f.lettering, Align: Middle, Box: place})
				return true
			}
		}
	}
	return false
}

// circle draws a circle that texts interrupt.
func (f *figure) circle(mid Point, radius float64) {
	const parts = 48
	at := func(k int) Point { return mid.along(2*math.Pi*float64(k)/parts, radius) }
	around := Box{mid, mid}.grow(radius + hair)
	texts := slices.DeleteFunc(slices.Clone(f.fig.Labels), func(l Label) bool { return !l.Box.Meets(around) })
	for first := 0; first < parts; first++ {
		last := first
		for last < parts && !slices.ContainsFunc(texts, func(l Label) bool { return l.Box.Crosses(at(last), at(last+1)) }) {
			last++
		}
		if mid := (first + last) / 2; last > first {
			f.fig.Lines = append(f.fig.Lines, Line{Layer: Measures, Path: []Vertex{
				{at(first), math.Tan(math.Pi / 2 * float64(mid-first) / parts)}, {at(mid), math.Tan(math.Pi / 2 * float64(last-mid) / parts)}, {Point: at(last)},
			}})
		}
		first = last
	}
}

// vacant reports whether no text and no line is in a box.
func (f *figure) vacant(b Box) bool {
	points := make([]Point, 0, 4*(len(f.fig.Lines)-len(f.drawn))) // of all of them
	for _, l := range f.fig.Lines[len(f.drawn):] {
		var h hurdle
		if first := len(points); l.Layer != Paper {
			points = Flatten(points, l.Path, l.Closed, 0.1)
			h = newHurdle(points[first:], l.Closed)
		}
		f.drawn = append(f.drawn, h)
	}
	return !slices.ContainsFunc(f.fig.Labels, func(l Label) bool { return l.Box.Meets(b) }) && !inWay(b, f.drawn)
}

// enlarged draws what is round a run so many times larger, with the lengths from its
// lower left corner.
func (f *figure) enlarged(run []corner, zoom float64) Figure {
	box := boxOf(run)
	to := func(p Point) Point { return p.sub(box.Low).by(zoom) }
	d := &figure{layout: f.layout, w: zoom * box.Width(), h: zoom * box.Height()}
	around := box.grow(detailRim * f.lettering / zoom)
	for i := range f.fig.Lines {
		if l := &f.fig.Lines[i]; l.Layer >= ValleyFold && l.Layer <= Outline && !l.Fill {
			for _, path := range clipped(Flatten(nil, l.Path, l.Closed, 0.05/zoom), l.Closed, around, to) {
				d.fig.Lines = append(d.fig.Lines, Line{Layer: l.Layer, Path: path})
			}
		}
	}
	for _, ring := range f.rings {
		mapped := make([]Point, len(ring))
		for i, p := range ring {
			mapped[i] = to(p)
		}
		d.rings = append(d.rings, mapped)
	}
	d.fig.Box = Box{to(around.Low), to(around.High)}
	d.sides = d.around()
	for e, low := range map[edge]float64{below: d.fig.Box.Low.Y, leftOf: d.fig.Box.Low.X} {
		d.sides[e].line, d.sides[e].start = low, low
	}
	for _, c := range run {
		p, off := to(c.Point), c.sub(box.Low)
		d.span(&d.sides[below], p.X, p.Y, off.X)
		d.span(&d.sides[leftOf], p.Y, p.X, off.Y)
	}
	d.lay(&d.sides[below])
	d.sides[leftOf].line = d.fig.Box.Low.X
	d.lay(&d.sides[leftOf])
	return d.fig
}

// span adds a length of a detail to a side.
func (f *figure) span(s *side, at, thing, mm float64) {
	l := measure.Nanometres(int64(math.Round(mm * 1e6)))
	if mm < hair || slices.ContainsFunc(s.tags, func(t tag) bool { return math.Abs(t.at-at) < hair }) {
		return
	}
	s.add(tag{at: at, thing: thing, from: fromLow, lines: []string{f.length(l)}})
}

// clipped returns what of a path lies in a box, each part taken to where it is drawn.
func clipped(path []Point, closed bool, in Box, to func(Point) Point) (parts [][]Vertex) {
	last := Point{math.NaN(), 0}
	for i, p := range path {
		if i+1 == len(path) && !closed {
			break
		}
		q := path[(i+1)%len(path)]
		low, high, ok := in.clip(p, q)
		if !ok || high-low < 1e-9 {
			continue
		}
		a, b := p.add(q.sub(p).by(low)), p.add(q.sub(p).by(high))
		if a.sub(last).length() < hair {
			parts[len(parts)-1] = append(parts[len(parts)-1], Vertex{Point: to(b)})
		} else {
			parts = append(parts, []Vertex{{Point: to(a)}, {Point: to(b)}})
		}
		last = b
	}
	return parts
}
