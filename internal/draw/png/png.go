// Package png paints a drawing as a PNG preview of a given width.
//
// Every layer is one antialiased mask in one colour. If letters would be too
// small to read at that width, the drawing is laid out anew with larger ones,
// within reason. The same drawing gives the same bytes.
//
// The picture is for the eye: nothing in it is true to size, and the package
// scales no pictures.
package png

import (
	"fmt"
	"image"
	"image/color"
	imagedraw "image/draw"
	stdpng "image/png"
	"io"
	"math"

	"golang.org/x/image/vector"

	"creasefit/internal/draw"
)

// Bounds of the picture, in pixels.
const (
	Least    = 64
	Greatest = 4096
)

// Options are how the picture is to look.
type Options struct {
	Width int // in pixels, from Least to Greatest
	Dark  bool
}

// readable is the size of letters in pixels below which they are enlarged, and
// most how many times they are enlarged for that.
const (
	readable = 11.0
	most     = 3.0
)

// Encode paints the drawing. A drawing so high that it would be higher than
// Greatest becomes narrower. The error is the writer's, or says that the width
// is out of bounds.
func Encode(w io.Writer, d *draw.Drawing, o Options) error {
	if o.Width < Least || o.Width > Greatest {
		return fmt.Errorf("png: a width of %d pixels is not between %d and %d", o.Width, Least, Greatest)
	}
	d = legible(d, o.Width)
	c := newCanvas(d, o)
	c.labels(d.Heading, draw.Point{})
	for i := range d.Figures {
		c.figure(&d.Figures[i])
	}
	c.figure(&d.Legend)
	c.paint()
	e := stdpng.Encoder{CompressionLevel: stdpng.BestSpeed}
	return e.Encode(w, c.image)
}

// legible returns the drawing with letters that can be read at a width.
func legible(d *draw.Drawing, width int) *draw.Drawing {
	need := readable * d.Width / float64(width)
	if need <= d.Lettering {
		return d
	}
	return d.Lettered(min(need, most*d.Lettering))
}

// canvas gathers the shapes of each colour before they are painted.
type canvas struct {
	d       *draw.Drawing
	colours *draw.Palette
	scale   float64 // pixels per mm
	image   *image.RGBA
	layers  [draw.Layers + 2]mask
}

// The masks of the texts follow those of the layers.
const (
	quietText = draw.Layers
	plainText = draw.Layers + 1
)

func newCanvas(d *draw.Drawing, o Options) *canvas {
	c := &canvas{d: d, colours: draw.Light(), scale: float64(o.Width) / d.Width}
	if o.Dark {
		c.colours = draw.Dark()
	}
	c.scale = min(c.scale, Greatest/d.Height)
	w, h := int(math.Ceil(d.Width*c.scale-1e-6)), int(math.Ceil(d.Height*c.scale-1e-6))
	c.image = image.NewRGBA(image.Rect(0, 0, max(1, w), max(1, h)))
	imagedraw.Draw(c.image, c.image.Rect, uniform(c.colours.Ground), image.Point{}, imagedraw.Src)
	return c
}

func uniform(c draw.Colour) *image.Uniform { return image.NewUniform(color.RGBA{c.R, c.G, c.B, 255}) }

// at turns a place of a figure into one of the picture.
func (c *canvas) at(figure, p draw.Point) point {
	return point{(figure.X + p.X) * c.scale, (c.d.Height - figure.Y - p.Y) * c.scale}
}

// figure adds a figure's lines and texts.
func (c *canvas) figure(f *draw.Figure) {
	for i := range f.Lines {
		c.line(&f.Lines[i], f.At)
	}
	c.labels(f.Labels, f.At)
}

// line adds one line or area.
func (c *canvas) line(l *draw.Line, figure draw.Point) {
	flat := draw.Flatten(nil, l.Path, l.Closed, 0.1/c.scale)
	path := make([]point, len(flat))
	for i, p := range flat {
		path[i] = c.at(figure, p)
	}
	m := &c.layers[l.Layer]
	if l.Fill {
		m.area(path, l.Layer != draw.Paper)
		return
	}
	if l.Closed {
		path = append(path, path[0])
	}
	style, scale := l.Layer.Style(), c.d.Scale()*c.scale
	m.stroke(path, max(0.9, style.Width*scale), dashes(style.Dash, scale))
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

// paint puts one mask after the other into the picture.
func (c *canvas) paint() {
	size := c.image.Rect.Size()
	r, cover := vector.NewRasterizer(size.X, size.Y), image.NewAlpha(c.image.Rect)
	for i := range c.layers {
		m := &c.layers[i]
		box := m.bounds().Intersect(c.image.Rect)
		if box.Empty() {
			continue
		}
		cover.Pix = cover.Pix[:box.Dx()*box.Dy()]
		cover.Stride, cover.Rect = box.Dx(), image.Rectangle{Max: box.Size()}
		r.Reset(box.Dx(), box.Dy())
		r.DrawOp = imagedraw.Src
		m.fill(r, box.Min)
		r.Draw(cover, cover.Rect, image.Opaque, image.Point{})
		c.blend(cover, box, c.ink(i))
	}
}

// ink is the colour of a mask.
func (c *canvas) ink(i int) draw.Colour {
	switch i {
	case quietText:
		return c.colours.Quiet
	case plainText:
		return c.colours.Text
	default:
		return c.colours.Of(draw.Layer(i))
	}
}

// blend lays a colour over the opaque picture where the mask covers it.
func (c *canvas) blend(cover *image.Alpha, box image.Rectangle, ink draw.Colour) {
	for y := range box.Dy() {
		row := cover.Pix[y*cover.Stride : (y+1)*cover.Stride]
		pixels := c.image.Pix[c.image.PixOffset(box.Min.X, box.Min.Y+y):]
		for x, a := range row {
			if a == 0 {
				continue
			}
			p := pixels[4*x : 4*x+3 : 4*x+3]
			p[0], p[1], p[2] = mix(p[0], ink.R, a), mix(p[1], ink.G, a), mix(p[2], ink.B, a)
		}
	}
}

// mix goes from one value towards another by a 255th part as often as by says.
func mix(from, to, by uint8) uint8 {
	return uint8((uint32(from)*(255-uint32(by)) + uint32(to)*uint32(by) + 127) / 255)
}
