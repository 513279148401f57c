package png

import (
	"sync"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"creasefit/internal/draw"
)

// font is the font of all texts, read once.
var font = sync.OnceValue(func() *sfnt.Font {
	f, err := sfnt.Parse(draw.Font())
	if err != nil {
		panic("png: the built-in font cannot be read: " + err.Error())
	}
	return f
})

// em is the size that outlines are loaded at; they are scaled from there.
const em = 1024

// labels adds the outlines of all letters.
func (c *canvas) labels(labels []draw.Label, figure draw.Point) {
	for i := range labels {
		l := &labels[i]
		m := &c.layers[plainText]
		if l.Quiet {
			m = &c.layers[quietText]
		}
		for k := range l.Lines {
			line := l.Line(k)
			pen := pen{mask: m, at: c.at(figure, line.At), scale: l.Size * c.scale / em, upright: l.Upright}
			pen.write(line.Text)
		}
	}
}

// pen writes letters along a baseline.
type pen struct {
	mask    *mask
	at      point
	scale   float64 // pixels per unit of the outline
	upright bool
	buffer  sfnt.Buffer
	along   float64 // how far it has come, in units of the outline
}

func (p *pen) write(text string) {
	for _, r := range text {
		index, err := font().GlyphIndex(&p.buffer, r)
		if err != nil {
			continue
		}
		if segments, err := font().LoadGlyph(&p.buffer, index, fixed.I(em), nil); err == nil {
			p.outline(segments)
		}
		p.along += draw.Width(string(r), em)
	}
}

// outline adds the rings of one letter.
func (p *pen) outline(segments sfnt.Segments) {
	start := len(p.mask.points)
	for _, s := range segments {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if len(p.mask.points) > start {
				p.mask.close()
			}
			p.mask.points = append(p.mask.points, p.place(s.Args[0]))
		case sfnt.SegmentOpLineTo:
			p.mask.points = append(p.mask.points, p.place(s.Args[0]))
		case sfnt.SegmentOpQuadTo:
			p.curve(p.place(s.Args[0]), p.place(s.Args[1]))
		}
	}
	if len(p.mask.points) > start {
		p.mask.close()
	}
}

// curve adds a quadratic curve as a few chords, enough for letters.
func (p *pen) curve(control, end point) {
	from := p.mask.points[len(p.mask.points)-1]
	const n = 4
	for i := 1; i <= n; i++ {
		t := float64(i) / n
		u := 1 - t
		p.mask.points = append(p.mask.points, point{
			u*u*from.x + 2*u*t*control.x + t*t*end.x,
			u*u*from.y + 2*u*t*control.y + t*t*end.y,
		})
	}
}

// place turns a place of a letter's outline into one of the picture.
func (p *pen) place(f fixed.Point26_6) point {
	x, y := (p.along+float64(f.X)/64)*p.scale, float64(f.Y)/64*p.scale
	if p.upright {
		return point{p.at.x + y, p.at.y - x}
	}
	return point{p.at.x + x, p.at.y + y}
}
