// Package png paints a drawing as a PNG preview of a given width.
//
// The picture has a palette, and every shape is painted in the box round it
// alone, in the drawing's order. If letters would be too small to read at that
// width, the drawing is laid out anew with larger ones, within reason. The
// same drawing gives the same bytes.
//
// The picture is for the eye: nothing in it is true to size, and the package
// scales no pictures.
package png

import (
	"context"
	"fmt"
	stdpng "image/png"
	"io"
	"math"
	"sync"

	"creasefit/internal/draw"
)

// Bounds of the picture, in pixels.
const (
	Least    = 64
	Greatest = 4096
)

// Options are how the picture is to look.
type Options struct {
	Width   int // in pixels, from Least to Greatest
	Dark    bool
	Context context.Context // that may end the work early; nil for none
}

// readable is the size of letters in pixels below which they are enlarged, and
// most how many times they are enlarged for that.
const (
	readable = 11.0
	most     = 3.0
)

// Encode paints the drawing. A drawing so high that it would be higher than
// Greatest becomes narrower. The error is the writer's or the context's, or
// says that the width is out of bounds.
func Encode(w io.Writer, d *draw.Drawing, o Options) error {
	if o.Width < Least || o.Width > Greatest {
		return fmt.Errorf("png: a width of %d pixels is not between %d and %d", o.Width, Least, Greatest)
	}
	if o.Context == nil {
		o.Context = context.Background()
	}
	c := newCanvas(legible(d, o.Width), o)
	c.labels(c.d.Heading, draw.Point{})
	for i := range c.d.Figures {
		c.figure(&c.d.Figures[i])
		if err := o.Context.Err(); err != nil {
			return err
		}
	}
	c.figure(&c.d.Legend)
	e := stdpng.Encoder{CompressionLevel: stdpng.BestSpeed, BufferPool: &buffers}
	return e.Encode(w, c.image)
}

// buffers keeps what one picture was compressed with for the next one.
var buffers pool

type pool struct{ sync.Pool }

// Get returns a buffer, nil if there is none.
func (p *pool) Get() *stdpng.EncoderBuffer {
	b, _ := p.Pool.Get().(*stdpng.EncoderBuffer)
	return b
}

// Put keeps a buffer.
func (p *pool) Put(b *stdpng.EncoderBuffer) { p.Pool.Put(b) }

// legible returns the drawing with letters that can be read at a width.
func legible(d *draw.Drawing, width int) *draw.Drawing {
	need := readable * d.Width / float64(width)
	if need <= d.Lettering {
		return d
	}
	return d.Lettered(min(need, most*d.Lettering))
}

// canvas is a drawing that is being painted.
type canvas struct {
	*brush
	d       *draw.Drawing
	colours *draw.Palette
	scale   float64 // pixels per mm
}

func newCanvas(d *draw.Drawing, o Options) *canvas {
	c := &canvas{d: d, colours: draw.Light(), scale: min(float64(o.Width)/d.Width, Greatest/d.Height)}
	if o.Dark {
		c.colours = draw.Dark()
	}
	w, h := int(math.Ceil(d.Width*c.scale-1e-6)), int(math.Ceil(d.Height*c.scale-1e-6))
	c.brush = newBrush(max(1, w), max(1, h), c.colours.Ground)
	for l := range draw.Layers { // before mixtures fill the palette
		c.ink(c.colours.Of(draw.Layer(l)))
	}
	return c
}

// at turns a place of a figure into one of the picture.
func (c *canvas) at(figure, p draw.Point) point {
	return point{(figure.X + p.X) * c.scale, (c.d.Height - figure.Y - p.Y) * c.scale}
}

// figure paints a figure's lines and texts.
func (c *canvas) figure(f *draw.Figure) {
	for i := range f.Lines {
		part := f.Lines[i].Layer == draw.Paper && i+1 < len(f.Lines) && f.Lines[i+1].Layer == draw.Paper // holes are areas that run the other way
		c.line(&f.Lines[i], part, f.At)
	}
	c.labels(f.Labels, f.At)
}

// line paints one line or area; one that is part of a shape is painted with
// the area that follows.
func (c *canvas) line(l *draw.Line, part bool, figure draw.Point) {
	ink := c.ink(c.colours.Of(l.Layer))
	path := draw.Flatten(nil, l.Path, l.Closed, 0.1/c.scale)
	if l.Fill {
		for _, p := range path {
			c.shape = append(c.shape, c.at(figure, p))
		}
		c.end()
		if !part {
			c.paint(ink)
		}
		return
	}
	if l.Closed {
		path = append(path, path[0])
	}
	style, scale := l.Layer.Style(), c.d.Scale()*c.scale
	c.stroke(path, figure, max(0.9, style.Width*scale), dashes(style.Dash, scale), ink)
}

// dashes returns a dash pattern in pixels.
func dashes(pattern []float64, scale float64) []float64 {
	if len(pattern) == 0 {
		return nil
	}
	scaled := make([]float64, len(pattern))
	for i, d := range pattern {
		scaled[i] = max(1, d*scale)
	}
	return scaled
}

// stroke paints a line, in dashes if there are any. The ends of whole lines
// reach on by half of the width, so that corners are closed.
func (c *canvas) stroke(path []draw.Point, figure draw.Point, width float64, dash []float64, ink int) {
	part, left := 0, math.Inf(1)
	if len(dash) > 0 {
		left = dash[0]
	}
	for i := 1; i < len(path); i++ {
		a, b := c.at(figure, path[i-1]), c.at(figure, path[i])
		for long := math.Hypot(b.x-a.x, b.y-a.y); long > 0; {
			step := min(long, left)
			x, y := (b.x-a.x)/long, (b.y-a.y)/long
			end := point{a.x + x*step, a.y + y*step}
			switch {
			case len(dash) == 0:
				c.bar(point{a.x - x*width/2, a.y - y*width/2}, point{end.x + x*width/2, end.y + y*width/2}, width, ink)
			case part%2 == 0:
				c.bar(a, end, width, ink)
			}
			a, long, left = end, long-step, left-step
			if left <= 0 {
				part++
				left = dash[part%len(dash)]
			}
		}
	}
}
