package draw

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Clearance is how a clearance comes out when it is made many times: how much
// was wanted, where it lies by its errors, three standard deviations either way,
// from where on it goes in, and how often it does.
type Clearance struct {
	Name              []string // what it is of, in words of the drawing
	Least, Most       measure.Length
	Low, High, Enough measure.Length
	Chance            float64
}

// NewSpread draws the spread of every clearance against what was wanted, the least
// sure first, all on one scale: the curve is how often it comes out so, what is
// hatched does not go in.
func NewSpread(p *pattern.Pattern, o Options) *Drawing {
	l := o.layout(nil)
	l.suit(Lettering)
	d := l.drawing(Spread, p, o, func(o Options) *Drawing { return NewSpread(p, o) })
	d.remarks = []string{l.say("The curve shows how often the room comes out so when the piece is made many times. The light band is what was wanted; what is hatched does not go in.")}
	list := slices.Clone(o.Clearances)
	slices.SortStableFunc(list, func(a, b Clearance) int { return cmp.Compare(a.Chance, b.Chance) })
	scale := l.scaleOf(list)
	var told []string
	for i := range list {
		f := l.spread(&list[i], scale)
		d.Figures, told = append(d.Figures, f), append(told, f.Name+": "+l.timesIn100(list[i].Chance))
	}
	d.Description = strings.Join(told, ". ")
	return l.stacked(d)
}

// ruled is where lengths lie in a picture.
type ruled struct{ from, per float64 }

// at is where a length lies.
func (s ruled) at(l measure.Length) float64 { return (l.Millimetres() - s.from) * s.per }

// How wide a spread is drawn and how high its curve is, in sizes of letters.
const (
	spreadWide = 44
	curveHigh  = 6
)

// scaleOf is the scale on which all clearances have room, zero among them.
func (l *layout) scaleOf(list []Clearance) ruled {
	var low, high measure.Length
	for _, c := range list {
		low = measure.Min(measure.Min(low, c.Low), measure.Min(c.Least, c.Enough))
		high = measure.Max(high, measure.Max(c.High, c.Most))
	}
	span := max(high.Sub(low).Millimetres(), 0.1)
	return ruled{low.Millimetres(), spreadWide * l.lettering / span}
}

// spread draws one clearance.
func (l *layout) spread(c *Clearance, s ruled) Figure {
	f := &figure{layout: l}
	names := make([]string, len(c.Name))
	for i, name := range c.Name {
		names[i] = l.say(name)
	}
	f.fig.Name = strings.Join(names, ", ")
	high := curveHigh * l.lettering
	left, right := s.at(c.Least), s.at(c.Most)
	f.fig.Lines = append(f.fig.Lines, Line{Layer: Paper, Name: l.say("what was wanted"), Path: rectangle(Box{Point{left, 0}, Point{right, high}}), Closed: true, Fill: true})
	curve := bell(c, s, high)
	f.fig.Lines = f.fails(c, s, curve)
	f.fig.Lines = append(f.fig.Lines, Line{Layer: Outline, Name: l.say("how often it comes out so"), Path: curve})
	f.stroke(Point{0, 0}, Point{spreadWide * l.lettering, 0})
	for _, mark := range [...]measure.Length{{}, c.Least, c.Most} {
		f.mark(s.at(mark), l.length(mark))
	}
	f.fig.Box = f.fig.Box.join(Box{High: Point{spreadWide * l.lettering, high}})
	f.title(l.timesIn100(c.Chance))
	f.ordered()
	return f.fig
}

// timesIn100 says a chance as people do, downwards and never as certain.
func (l *layout) timesIn100(chance float64) string {
	n := int(chance*100 + 1e-9)
	if n >= 99 {
		return l.say("goes in at least 99 times in 100")
	}
	return strings.Replace(l.say("goes in {n} times in 100"), "{n}", strconv.Itoa(n), 1)
}

// bell is the normal curve of a clearance, from its least to its greatest; a line
// where it has no errors.
func bell(c *Clearance, s ruled, high float64) []Vertex {
	const points = 48
	low, end := s.at(c.Low), s.at(c.High)
	if end-low < 1e-6 {
		return []Vertex{{Point: Point{low, 0}}, {Point: Point{low, high}}}
	}
	path := make([]Vertex, points+1)
	for i := range path {
		z := 6*float64(i)/points - 3
		path[i].Point = Point{low + (end-low)*float64(i)/points, high * math.Exp(-z*z/2)}
	}
	return path
}

// fails hatches what lies under the curve where it does not go in.
func (f *figure) fails(c *Clearance, s ruled, curve []Vertex) []Line {
	limit := s.at(c.Enough)
	var under []Vertex
	for _, v := range curve {
		if v.X <= limit {
			under = append(under, v)
		}
	}
	if len(under) < 2 {
		return f.fig.Lines
	}
	last := under[len(under)-1]
	under = append(under, Vertex{Point: Point{last.X, 0}}, Vertex{Point: Point{under[0].X, 0}})
	return append(f.shade(f.fig.Lines, Waste, under, Point{math.Sqrt2 / 2, math.Sqrt2 / 2}, 0.6*f.lettering),
		Line{Layer: Waste, Name: f.say("does not go in"), Path: under, Closed: true})
}

// mark draws a mark on the axis with its length below, unless that would lie on
// another one.
func (f *figure) mark(x float64, text string) {
	size := 0.85 * f.lettering
	label := textAt(x-Width(text, size)/2, -0.6*f.lettering, size, true, text)
	if !f.fig.Texts(label.Box) {
		f.stroke(Point{x, 0}, Point{x, -0.4 * f.lettering})
		f.label(label)
	}
}
