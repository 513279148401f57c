// Package svg writes a drawing as SVG 1.1: millimetre-true, readable without
// a style sheet, a script or a font of its own, and safe to place in a page.
//
// A piece's lines keep the pattern's coordinates; a transformation turns them
// upright. Texts are held to their measured widths, so that they do not
// overlap in another font either. The same drawing gives the same bytes.
//
// The package lays nothing out, and it compresses and animates nothing.
package svg

import (
	"strconv"

	"creasefit/internal/draw"
)

// Options are how the picture is to look.
type Options struct {
	Dark bool
	// ID begins the names of the picture's elements; it must be set if a page
	// holds several pictures. Letters, digits and hyphens are taken, and
	// "creasefit" if there are none.
	ID string
	// Classes names the layers, texts and grounds, so that a page's style can
	// give them other colours; Style writes such rules.
	Classes bool
}

// Style returns the rules of a style sheet that give pictures with classes the
// colours of a palette.
func Style(p *draw.Palette) string {
	o := out{}
	rule := func(class string, c draw.Colour, what string) {
		o.text("." + class + what)
		o.colour(c)
		o.text("}")
	}
	for l := range draw.Layers {
		class := className(draw.Layer(l))
		rule(class, p.Of(draw.Layer(l)), "{stroke:")
		rule(class, p.Of(draw.Layer(l)), " path[fill]{fill:")
	}
	rule("cf-ground", p.Ground, "{fill:")
	rule("cf-text", p.Text, "{fill:")
	rule("cf-quiet", p.Quiet, "{fill:")
	return string(o.b)
}

func className(l draw.Layer) string { return "cf-" + strconv.Itoa(int(l)) }

// class names a group or an area for the style of a page.
func (p *picture) class(name string) {
	if p.classes {
		p.text(` class="` + name + `"`)
	}
}

// Append appends the drawing.
func Append(dst []byte, d *draw.Drawing, o Options) []byte {
	p := picture{out: out{dst}, d: d, colours: draw.Light(), classes: o.Classes}
	if o.Dark {
		p.colours = draw.Dark()
	}
	p.open(name(o.ID))
	p.labels(d.Heading, draw.Point{})
	for i := range d.Figures {
		p.bed = ""
		if len(d.Figures) > 1 {
			p.bed = "bed-" + strconv.Itoa(i+1)
		}
		p.figure(&d.Figures[i])
	}
	if d.View != draw.Cutter {
		p.figure(&d.Legend)
	}
	p.text("</svg>\n")
	return p.b
}

// name keeps what may stand in an element's name.
func name(id string) string {
	kept := make([]byte, 0, len(id))
	for i := range len(id) {
		c := id[i]
		letter := c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z'
		if letter || len(kept) > 0 && (c >= '0' && c <= '9' || c == '-') {
			kept = append(kept, c)
		}
	}
	if len(kept) == 0 {
		return "creasefit"
	}
	return string(kept)
}

// picture is a drawing that is being written.
type picture struct {
	out
	d       *draw.Drawing
	colours *draw.Palette
	bed     string // the name of the bed that is being written, of several
	classes bool
}

// named names the group that begins, in drawings for a machine; the names of
// groups on one of several beds begin with the bed's.
func (p *picture) named(name string) {
	if p.d.View != draw.Cutter || name == "" {
		return
	}
	p.text(` id="`)
	if p.bed != "" && name != p.bed {
		p.text(p.bed + "-")
	}
	p.text(name + `"`)
}

// open writes the root element, what the picture is in words, and its ground.
func (p *picture) open(id string) {
	p.text(`<svg xmlns="http://www.w3.org/2000/svg" width="`)
	p.number(p.d.Width, 3)
	p.text(`mm" height="`)
	p.number(p.d.Height, 3)
	p.text(`mm" viewBox="0 0 `)
	p.number(p.d.Width, 3)
	p.text(" ")
	p.number(p.d.Height, 3)
	if p.d.Language != "" {
		p.text(`" lang="`)
		p.escaped(p.d.Language)
	}
	p.text(`" role="img" aria-labelledby="` + id + `-title ` + id + `-desc" font-family="Go,Arial,Helvetica,sans-serif" fill="none">`)
	p.text("\n<title id=\"" + id + `-title">`)
	p.escaped(p.d.Title)
	p.text("</title>\n<desc id=\"" + id + `-desc">`)
	p.escaped(p.d.Description)
	if p.d.View == draw.Cutter { // nothing but lines for the machine
		p.text("</desc>\n")
		return
	}
	p.text("</desc>\n<path")
	p.class("cf-ground")
	p.text(` fill="`)
	p.colour(p.colours.Ground)
	p.text(`" d="M0 0H`)
	p.number(p.d.Width, 3)
	p.text("V")
	p.number(p.d.Height, 3)
	p.text("H0Z\"/>\n")
}

// figure writes a figure's lines, with the y axis upwards, and its texts.
func (p *picture) figure(f *draw.Figure) {
	p.text("<g")
	p.named(p.bed)
	p.text(` transform="matrix(1 0 0 -1 `)
	p.number(f.At.X, 3)
	p.text(" ")
	p.number(p.d.Height-f.At.Y, 3)
	p.text(`)">` + "\n")
	for rest := f.Lines; len(rest) > 0; {
		n := 1
		for n < len(rest) && rest[n].Layer == rest[0].Layer {
			n++
		}
		p.layer(rest[:n])
		rest = rest[n:]
	}
	p.text("</g>\n")
	p.labels(f.Labels, f.At)
}

// layer writes the lines of one layer.
func (p *picture) layer(lines []draw.Line) {
	layer, scale := lines[0].Layer, p.d.Scale()
	style := layer.Style()
	p.text("<g")
	p.named(layer.String())
	p.class(className(layer))
	p.text(` stroke="`)
	p.colour(p.colours.Of(layer))
	p.text(`" stroke-width="`)
	p.number(style.Width*scale, 3)
	for i, dash := range style.Dash {
		if i == 0 {
			p.text(`" stroke-dasharray="`)
		} else {
			p.text(" ")
		}
		p.number(dash*scale, 2)
	}
	p.text(`">`)
	p.paths(lines, layer)
	p.text("</g>\n")
}

// labels writes texts whose coordinates are measured from a place of the
// drawing.
func (p *picture) labels(labels []draw.Label, at draw.Point) {
	for i := 0; i < len(labels); {
		first := &labels[i]
		p.text("<g")
		if first.Quiet {
			p.class("cf-quiet")
		} else {
			p.class("cf-text")
		}
		p.text(` fill="`)
		p.colour(p.colours.Ink(first))
		p.text(`" font-size="`)
		p.number(first.Size, 2)
		p.text(`">`)
		for ; i < len(labels) && labels[i].Quiet == first.Quiet && sameSize(labels[i].Size, first.Size); i++ {
			for k := range labels[i].Lines {
				p.line(&labels[i], k, at)
			}
		}
		p.text("</g>\n")
	}
}

func sameSize(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }

// line writes one line of a label.
func (p *picture) line(l *draw.Label, i int, at draw.Point) {
	line := l.Line(i)
	x, y := at.X+line.At.X, p.d.Height-at.Y-line.At.Y
	if l.Upright {
		p.text(`<text transform="matrix(0 -1 1 0 `)
		p.number(x, 2)
		p.text(" ")
		p.number(y, 2)
		p.text(`)`)
	} else {
		p.text(`<text x="`)
		p.number(x, 2)
		p.text(`" y="`)
		p.number(y, 2)
	}
	p.text(`" textLength="`)
	p.number(line.Width, 2)
	p.text(`" lengthAdjust="spacingAndGlyphs">`)
	p.escaped(line.Text)
	p.text("</text>")
}
