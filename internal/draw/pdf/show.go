package pdf

import (
	"math"
	"strings"

	"creasefit/internal/draw"
)

// show draws what a window shows of a figure.
func (p *printer) show(f *draw.Figure, w window) {
	for i := range f.Lines {
		if l := &f.Lines[i]; l.Layer != draw.Paper { // the paper is in the printer
			p.line(l, w)
		}
	}
	for i := range f.Labels {
		if l := &f.Labels[i]; l.Box.Meets(w.part) {
			p.label(l, w)
		}
	}
}

// at turns a place of the figure into one of the page.
func (w *window) at(q draw.Point) (x, y float64) {
	if w.turned {
		return w.x - q.Y*w.scale, w.y - q.X*w.scale
	}
	return w.x + q.X*w.scale, w.y - q.Y*w.scale
}

// line draws one line or area in its layer's style.
func (p *printer) line(l *draw.Line, w window) {
	scale := p.d.Scale() * w.scale
	style, c := l.Layer.Style(), draw.Light().Of(l.Layer)
	dash := make([]float64, len(style.Dash))
	for i, d := range style.Dash {
		dash[i] = d * scale
	}
	p.f.lines(c, style.Width*scale, dash)
	how := "S"
	if l.Fill {
		p.f.areas(c)
		how = "f"
	}
	p.path(l, w)
	p.f.op(how)
}

// path traces a line.
func (p *printer) path(l *draw.Line, w window) {
	p.f.move(w.at(l.Path[0].Point))
	for i, v := range l.Path {
		last := i+1 == len(l.Path)
		if last && !l.Closed {
			break
		}
		next := l.Path[(i+1)%len(l.Path)].Point
		switch {
		case v.IsArc():
			p.arc(v, next, w)
		case !last:
			p.f.to(w.at(next))
		}
	}
	if l.Closed {
		p.f.op("h")
	}
}

// arc traces an arc as cubic curves of at most an eighth of a circle each,
// which stay within 5 millionths of the radius.
func (p *printer) arc(from draw.Vertex, to draw.Point, w window) {
	a := draw.ArcBetween(from.Point, to, from.Bulge)
	n := int(math.Ceil(math.Abs(a.Sweep)/(math.Pi/4) - 1e-9))
	step := a.Sweep / float64(n)
	reach := 4.0 / 3 * math.Tan(step/4) * a.Radius
	for i := range n {
		start, end := a.From+step*float64(i), a.From+step*float64(i+1)
		p0, p3 := a.At(float64(i)/float64(n)), a.At(float64(i+1)/float64(n))
		if i == n-1 {
			p3 = to
		}
		x1, y1 := w.at(draw.Point{X: p0.X - reach*math.Sin(start), Y: p0.Y + reach*math.Cos(start)})
		x2, y2 := w.at(draw.Point{X: p3.X + reach*math.Sin(end), Y: p3.Y - reach*math.Cos(end)})
		x3, y3 := w.at(p3)
		p.f.curve(x1, y1, x2, y2, x3, y3)
	}
}

// label writes the lines of a label.
func (p *printer) label(l *draw.Label, w window) {
	p.f.areas(draw.Light().Ink(l))
	whole := w.holds(l.Box)
	for i := range l.Lines {
		if line := l.Line(i); whole {
			p.text(l, line, w)
		} else {
			p.words(l, line, w)
		}
	}
}

// words writes the words of a line that a page shows in full: a page's
// neighbour, which overlaps it, shows the others. Only a word longer than the
// overlap may be cut.
func (p *printer) words(l *draw.Label, line draw.TextLine, w window) {
	for word := range strings.SplitSeq(line.Text, " ") {
		part := draw.TextLine{Text: word, At: line.At, Width: draw.Width(word, l.Size)}
		step := draw.Width(word+" ", l.Size)
		box := draw.Box{Low: part.At, High: draw.Point{X: part.At.X + part.Width, Y: part.At.Y + l.Size}}
		if l.Upright {
			box = draw.Box{Low: draw.Point{X: part.At.X - l.Size, Y: part.At.Y}, High: draw.Point{X: part.At.X, Y: part.At.Y + part.Width}}
			line.At.Y += step
		} else {
			line.At.X += step
		}
		if w.holds(box) || part.Width > lapping-1 && box.Meets(w.part) {
			p.text(l, part, w)
		}
	}
}

// holds reports whether the window shows all of a box.
func (w *window) holds(b draw.Box) bool {
	return w.part.Low.X <= b.Low.X && w.part.Low.Y <= b.Low.Y && b.High.X <= w.part.High.X && b.High.Y <= w.part.High.Y
}

// text writes a line of a label.
func (p *printer) text(l *draw.Label, line draw.TextLine, w window) {
	if x, y := w.at(line.At); line.Text != "" {
		quarters := 0
		for _, turned := range [...]bool{l.Upright, w.turned} {
			if turned {
				quarters++
			}
		}
		p.f.text(line.Text, x, y, l.Size*w.scale, quarters)
	}
}
