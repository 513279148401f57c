package pdf

import (
	"math"
	"strconv"

	"creasefit/internal/draw"
)

// window is the part of a figure that a page shows, and where.
type window struct {
	x, y  float64 // of the figure's origin on the page; y downwards
	scale float64
	part  draw.Box // of the figure, in its coordinates
	// turned is true if the figure is turned by a quarter to the left.
	turned bool
}

// figure prints a figure at true scale below what is on the page or on a page of
// its own; what has no room there with its texts is printed smaller, its
// letters no smaller than 9 points.
func (p *printer) figure(i int) {
	f := &p.d.Figures[i]
	w, h := f.Box.Width(), f.Box.Height()
	if p.open && !p.now().scaled && w <= p.now().w-2*margin && h <= p.left() {
		p.put(f, 1)
		return
	}
	for _, landscape := range [...]bool{false, true} {
		if wide, high := p.room(landscape); w <= wide && h <= high {
			p.page(landscape, "")
			p.put(f, 1)
			return
		}
	}
	p.shrink(i)
}

// put prints a figure at a scale below what is on the page.
func (p *printer) put(f *draw.Figure, scale float64) {
	p.show(f, window{margin - f.Box.Low.X*scale, p.y + f.Box.High.Y*scale, scale, f.Box, false})
	p.y += f.Box.Height()*scale + space
}

// legend prints the legend below what is on the page, or on a new one; that of
// a drawing with large letters is made to fit.
func (p *printer) legend(f *draw.Figure) {
	wide, high := p.room(false)
	scale := min(1, wide/f.Box.Width(), high/f.Box.Height())
	if !p.open || f.Box.Height()*scale > p.left() {
		p.page(false, "")
	}
	p.put(f, scale)
}

// tries is how many sizes of letters are tried.
const tries = 12

// shrink prints a figure on a page of its own, as large as it can be there with
// letters of 9 points, or of as many as come nearest to that. A figure grows about
// as much for each millimetre that letters do, so two sizes tell of the one sought.
func (p *printer) shrink(i int) {
	plain := p.d
	defer func() { p.d = plain }()
	best := p.at(plain, i)
	last, slope := best, 0.0
	for range tries {
		if best.readable() || p.o.err() != nil {
			break
		}
		v := p.at(plain.Lettered(last.sought(draw.Lettering, slope)), i)
		slope = v.slope(&last)
		if last = v; v.letters() > best.letters() {
			best = v
		}
	}
	p.page(best.landscape, best.note+". "+p.d.Say("Not a template: set the readings on a ruler."))
	p.pages[len(p.pages)-1].scaled = true
	p.d = best.d
	p.put(&best.d.Figures[i], best.scale)
}

// shrunk is a figure as large as a page takes it.
type shrunk struct {
	d         *draw.Drawing
	scale     float64
	note      string
	landscape bool
}

// letters returns the size of its letters on the page.
func (s *shrunk) letters() float64 { return s.scale * s.d.Lettering }

// slope is how much a figure grows for each millimetre that its letters do.
func (s *shrunk) slope(before *shrunk) float64 {
	return (1/s.scale - 1/before.scale) / (s.d.Lettering - before.d.Lettering)
}

// sought returns the size of letters that would be large enough on a page if the
// figure grows by a slope with them, but not far above what no growth asks for; half a
// percent more makes up for rounded scales.
func (s *shrunk) sought(letters, slope float64) float64 {
	at, most := letters/s.scale, 1.2*letters/s.scale
	if left := 1 - slope*letters; left > 0 {
		at = max(at, min(most, (at-slope*letters*s.d.Lettering)/left))
	} else {
		at = most
	}
	return 1.005 * at
}

func (s *shrunk) readable() bool { return s.letters() >= draw.Lettering-1e-9 }

// at lays a figure of a drawing out on a page.
func (p *printer) at(d *draw.Drawing, i int) shrunk {
	most, landscape := p.largest(&d.Figures[i])
	note, scale := p.scale(most)
	return shrunk{d, scale, note, landscape}
}

// largest returns the largest scale at which a figure has room on a page, and
// which way the page lies for that.
func (p *printer) largest(f *draw.Figure) (scale float64, landscape bool) {
	for _, way := range [...]bool{false, true} {
		wide, high := p.room(way)
		if s := min(wide/f.Box.Width(), high/f.Box.Height()); s > scale {
			scale, landscape = s, way
		}
	}
	return scale, landscape
}

// scale rounds a scale down to one that can be written, and writes it.
func (p *printer) scale(most float64) (note string, scale float64) {
	by := math.Ceil(100/most-1e-9) / 100
	return p.d.Say("scale") + " 1 : " + p.d.Decimal(strconv.FormatFloat(by, 'f', -1, 64)), 1 / by
}

// extents returns the box of each line of a figure.
func extents(f *draw.Figure) []draw.Box {
	boxes := make([]draw.Box, len(f.Lines))
	for i := range f.Lines {
		boxes[i] = draw.Around(draw.Flatten(nil, f.Lines[i].Path, f.Lines[i].Closed, 0.1))
	}
	return boxes
}

// within returns the lines and texts of a figure that may reach into a part of
// it; reach are the boxes of the lines.
func within(f *draw.Figure, reach []draw.Box, part draw.Box) draw.Figure {
	const thick = 2 // mm; no line is wider
	near := draw.Box{Low: draw.Point{X: part.Low.X - thick, Y: part.Low.Y - thick}, High: draw.Point{X: part.High.X + thick, Y: part.High.Y + thick}}
	var visible draw.Figure
	for i := range f.Lines {
		if reach[i].Meets(near) {
			visible.Lines = append(visible.Lines, f.Lines[i])
		}
	}
	for i := range f.Labels {
		if f.Labels[i].Box.Meets(part) {
			visible.Labels = append(visible.Labels, f.Labels[i])
		}
	}
	return visible
}

// shows reports whether a part of a figure has a line or a text in it.
func shows(f *draw.Figure, part draw.Box) bool {
	if f.Texts(part) {
		return true
	}
	for i := range f.Lines {
		l := &f.Lines[i]
		if l.Layer == draw.Paper {
			continue
		}
		points := draw.Flatten(nil, l.Path, l.Closed, 0.1)
		if l.Closed {
			points = append(points, points[0])
		}
		for k := 1; k < len(points); k++ {
			if part.Crosses(points[k-1], points[k]) {
				return true
			}
		}
	}
	return false
}
