package draw

import (
	"math"
	"slices"
	"strconv"

	"creasefit/internal/pattern"
)

// legendWidth is how wide the legend's lines may be, in sizes of letters: on
// the smallest page, 122 mm.
const legendWidth = 38

// legend explains the lines that occur in the figures; those of a spread explain
// themselves.
func (l *layout) legend(d *Drawing) Figure {
	var used [Layers]bool
	for i := range d.Figures {
		for _, line := range d.Figures[i].Lines {
			used[line.Layer] = true
		}
	}
	k := key{layout: l, most: legendWidth * l.lettering}
	for _, layer := range [...]Layer{Outline, SlitCut, BlankEdge, ValleyFold, MountainFold, HalfCutUnder, HalfCut, Pasted, PastedUnder, Waste} {
		if used[layer] && d.View != Spread {
			k.entry(layer, l.say(layer.String()))
		}
	}
	if len(k.fig.Labels) > 0 {
		k.x, k.y = 0, k.y-1.6*l.lettering
	}
	for _, text := range d.remarks {
		for _, line := range Wrap(text, k.lettering, k.most) { // on lines of its own
			k.text(line, 0, true)
			k.y -= leading * k.lettering
		}
	}
	k.details()
	k.fig.Name = l.say("legend")
	return k.fig
}

// remarks say how the drawing is to be read.
func (l *layout) remarks(p *pattern.Pattern) []string {
	return []string{
		l.say("The side that will be inside faces you. A valley fold comes towards you, a mountain fold goes away from you."),
		l.say("Every length is measured from the edge with the dot.") + " " +
			l.say("Ruler:") + " " + l.spell(l.step.String()) + ". " + l.say("Paper:") + " " + l.length(p.Caliper) + " " + l.say("thick."),
	}
}

// key is a legend in the making; x and y are where the next entry begins.
type key struct {
	*layout
	fig  Figure
	most float64
	x, y float64
}

// entry adds a sample of a layer's line and its name.
func (k *key) entry(layer Layer, text string) {
	long, size := 6.2*k.lettering, k.lettering
	w, h := Block([]string{text}, size)
	need := long + 0.6*size + w
	if k.x > 0 && k.x+need > k.most {
		k.x, k.y = 0, k.y-1.6*size
	}
	mid := k.y - h/2
	k.fig.Lines = append(k.fig.Lines, k.sample(layer, k.x, mid, long)...)
	k.text(text, k.x+long+0.6*size, false)
	k.x += need + 1.6*size
}

// sample draws a piece of a layer's line, or of its hatching.
func (k *key) sample(layer Layer, x, y, long float64) []Line {
	if layer != Pasted && layer != PastedUnder && layer != Waste {
		lines := []Line{{Layer: layer, Path: []Vertex{{Point: Point{x, y}}, {Point: Point{x + long, y}}}}}
		if layer == SlitCut {
			lines = append(lines, dot(layer, Point{x + long, y}, 0.22*k.lettering))
		}
		return lines
	}
	half := 0.5 * k.lettering
	low, high := -half, half
	if layer == PastedUnder {
		low, high = half, -half
	}
	var lines []Line
	for at := x; at+2*half <= x+long+1e-9; at += 0.9 * math.Sqrt2 * k.lettering {
		lines = append(lines, Line{Layer: layer, Path: []Vertex{{Point: Point{at, y + low}}, {Point: Point{at + 2*half, y + high}}}})
	}
	return lines
}

// details adds the details that were found in the figures, in rows.
func (k *key) details() {
	gap, high := 1.5*k.lettering, 0.0
	k.x, k.y = 0, k.y-gap
	for _, d := range k.found {
		f := &figure{layout: k.layout, fig: d.figure}
		f.fig.Name = k.say("detail") + " " + d.letter
		f.title(strconv.Itoa(d.times) + " ×, " + strconv.Itoa(int(d.zoom)) + " : 1")
		if wide := f.fig.Box.Width(); k.x > 0 && k.x+wide > k.most {
			k.x, k.y, high = 0, k.y-high-gap, 0
		}
		by := Point{k.x, k.y}.sub(Point{f.fig.Box.Low.X, f.fig.Box.High.Y})
		k.fig.add(&f.fig, by)
		k.x, high = k.x+f.fig.Box.Width()+gap, max(high, f.fig.Box.Height())
	}
}

// add adds what another figure has, moved by so much.
func (f *Figure) add(other *Figure, by Point) {
	for _, l := range other.Lines {
		l.Path = slices.Clone(l.Path)
		for i := range l.Path {
			l.Path[i].Point = l.Path[i].add(by)
		}
		f.Lines = append(f.Lines, l)
	}
	for _, l := range other.Labels {
		l.Box = Box{l.Box.Low.add(by), l.Box.High.add(by)}
		f.Labels = append(f.Labels, l)
	}
	f.Box = f.Box.join(Box{other.Box.Low.add(by), other.Box.High.add(by)})
}

// text adds a line of text at the current height.
func (k *key) text(text string, x float64, quiet bool) {
	k.fig.label(textAt(x, k.y, k.lettering, quiet, text))
}
