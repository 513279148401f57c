package png

import (
	"slices"
	"sync"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"creasefit/internal/draw"
)

// em is the size that outlines are loaded at; they are scaled from there.
const em = 1024

// outlines keeps the outlines of the font's characters that were met, by
// character; there are no more than the font has.
var outlines sync.Map

// outline returns the outline of a character, nil if the font has none.
func outline(r rune, buffer *sfnt.Buffer) sfnt.Segments {
	if known, ok := outlines.Load(r); ok {
		return known.(sfnt.Segments)
	}
	index := draw.Glyph(r)
	segments, err := draw.Shapes().LoadGlyph(buffer, sfnt.GlyphIndex(index), fixed.I(em), nil)
	if err != nil {
		return nil
	}
	segments = slices.Clone(segments)
	if index != 0 {
		outlines.Store(r, segments)
	}
	return segments
}

// labels paints texts.
func (c *canvas) labels(labels []draw.Label, figure draw.Point) {
	for i := range labels {
		l := &labels[i]
		ink := c.ink(c.colours.Ink(l))
		for k := range l.Lines {
			line := l.Line(k)
			w := writing{brush: c.brush, at: c.at(figure, line.At), scale: l.Size * c.scale / em, upright: l.Upright}
			w.write(line.Text, ink)
		}
	}
}

// writing paints letters along a baseline.
type writing struct {
	*brush
	at      point
	scale   float64 // pixels per unit of the outline
	upright bool
	buffer  sfnt.Buffer
	along   float64 // how far it has come, in units of the outline
}

func (w *writing) write(text string, ink int) {
	for _, r := range text {
		w.trace(outline(r, &w.buffer))
		w.paint(ink)
		w.along += draw.Width(string(r), em)
	}
}

// trace adds the rings of one letter to the shape.
func (w *writing) trace(segments sfnt.Segments) {
	for _, s := range segments {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			w.end()
			w.shape = append(w.shape, w.place(s.Args[0]))
		case sfnt.SegmentOpLineTo:
			w.shape = append(w.shape, w.place(s.Args[0]))
		case sfnt.SegmentOpQuadTo:
			w.curve(w.place(s.Args[0]), w.place(s.Args[1]))
		}
	}
	w.end()
}

// curve adds a quadratic curve as a few chords, enough for letters.
func (w *writing) curve(control, end point) {
	from := w.shape[len(w.shape)-1]
	const n = 4
	for i := 1; i <= n; i++ {
		t := float64(i) / n
		u := 1 - t
		w.shape = append(w.shape, point{
			u*u*from.x + 2*u*t*control.x + t*t*end.x,
			u*u*from.y + 2*u*t*control.y + t*t*end.y,
		})
	}
}

// place turns a place of a letter's outline into one of the picture.
func (w *writing) place(f fixed.Point26_6) point {
	x, y := (w.along+float64(f.X)/64)*w.scale, float64(f.Y)/64*w.scale
	if w.upright {
		return point{w.at.x + y, w.at.y - x}
	}
	return point{w.at.x + x, w.at.y + y}
}
