// Package pdf writes a drawing as PDF. A template is printed at true scale on as
// few pages as it fits; what is larger than a page is parted, with marks and words
// to lay the parts together by. Other drawings are printed at true scale where a
// piece has room on a page with its dimensions, and else smaller, its letters no
// smaller than 9 points; their readings follow as a table. Pages at true scale
// have lines to check the printer with.
//
// The text is set in the font that the drawing was laid out in, which is
// embedded. The dates are fixed: the same drawing gives the same bytes.
//
// The package works no sizes out, and it prints nothing.
package pdf

import (
	"context"
	"fmt"
	"io"

	"creasefit/internal/draw"
	"creasefit/internal/measure"
)

// Options are how the pages are to be.
type Options struct {
	// Width and Height are the sizes of the paper in the printer, either way
	// round. Zero stands for letter paper for readings in inches, and for A4.
	Width, Height measure.Length
	// Context may end the work early; nil for none.
	Context context.Context
}

// err says whether the work is to end.
func (o Options) err() error {
	if o.Context == nil {
		return nil
	}
	return o.Context.Err()
}

// LeastSide is the least side of a page: the check lines must fit.
func LeastSide() measure.Length { return measure.Millimetres(140) }

// GreatestSide is the greatest side of a page, the 200 in of ISO 32000-1,
// annex C.
func GreatestSide() measure.Length { return measure.Inches(200) }

// paper returns the sides of the pages, the shorter first: as asked for, or
// what is common where the step's unit is used.
func (o Options) paper(step measure.Step) (w, h measure.Length, err error) {
	w, h = o.Width, o.Height
	switch {
	case !w.IsZero() || !h.IsZero():
	case step.Unit() == measure.Inch:
		w, h = measure.Sixtyfourths(8*64+32), measure.Inches(11)
	default:
		w, h = measure.Millimetres(210), measure.Millimetres(297)
	}
	for _, side := range [...]measure.Length{w, h} {
		if side.Less(LeastSide()) || GreatestSide().Less(side) {
			return w, h, fmt.Errorf("pdf: a page of %v x %v mm has a side that is not between %v and %v mm",
				w.Millimetres(), h.Millimetres(), LeastSide().Millimetres(), GreatestSide().Millimetres())
		}
	}
	return measure.Min(w, h), measure.Max(w, h), nil
}

// Encode writes the drawing. The error is the writer's or the context's, or says
// that the paper is too small or too large.
func Encode(w io.Writer, d *draw.Drawing, o Options) error {
	short, long, err := o.paper(d.Step)
	if err != nil {
		return err
	}
	if d.Lettering > draw.Lettering {
		d = d.Lettered(draw.Lettering)
	}
	p := newPrinter(d.Title, d.Language, d, short.Millimetres(), long.Millimetres())
	p.o = o
	if d.View == draw.Template {
		if err := p.template(); err != nil {
			return err
		}
		return p.f.output(w)
	}
	var parts []func()
	for i := range d.Figures {
		parts = append(parts, func() { p.figure(i) })
	}
	parts = append(parts, func() { p.legend(&d.Legend) }, func() { p.table(d.Readings) }, p.finish)
	for _, part := range parts {
		if err := o.err(); err != nil {
			return err
		}
		part()
	}
	if err := o.err(); err != nil {
		return err
	}
	return p.f.output(w)
}

// The margin that printers leave white, and the bands for heading and check
// lines, all in mm.
const (
	margin = 9.0
	footer = 17.0
	space  = 6.0 // between things on a page
)

// printer lays pages out.
type printer struct {
	f           *file
	d           *draw.Drawing
	o           Options
	short, long float64
	pages       []page
	open        bool // a page has room below y
	y           float64
}

// page is what is known of a page before the number of pages is.
type page struct {
	w, h   float64
	note   string // below the title
	scaled bool   // what it shows is not true to size
}

func newPrinter(title, language string, d *draw.Drawing, short, long float64) *printer {
	return &printer{f: &file{title: title, language: language}, d: d, short: short, long: long}
}

// page begins a page.
func (p *printer) page(landscape bool, note string) {
	at := page{w: p.short, h: p.long, note: note}
	if landscape {
		at.w, at.h = p.long, p.short
	}
	p.f.page(at.w, at.h)
	p.pages = append(p.pages, at)
	p.y, p.open = p.top(), true
}

// now is the page that is being laid out.
func (p *printer) now() page { return p.pages[len(p.pages)-1] }

// heading returns the lines of the title on a page of a width.
func (p *printer) heading(width float64) []string {
	return draw.Wrap(p.d.Title, 4.6, width-2*margin-40)
}

// top returns where the content of a page begins.
func (p *printer) top() float64 { return p.topOf(p.now().w) }

func (p *printer) topOf(width float64) float64 {
	_, h := draw.Block(p.heading(width), 4.6)
	return margin + h + 4.5 + space
}

// room returns the sizes of a page's content.
func (p *printer) room(landscape bool) (w, h float64) {
	w, h = p.short, p.long
	if landscape {
		w, h = p.long, p.short
	}
	return w - 2*margin, h - margin - footer - p.topOf(w)
}

// left returns the height that the open page still has.
func (p *printer) left() float64 { return p.now().h - margin - footer - p.y }

// finish writes heads and feet, now that the number of pages is known.
func (p *printer) finish() {
	for i, at := range p.pages {
		p.f.turn(i)
		p.head(at, i+1)
		if !at.scaled {
			p.foot(at)
		}
	}
}

// head writes the title, the page's number and its note.
func (p *printer) head(at page, number int) {
	p.f.areas(draw.Light().Text)
	p.lines(p.heading(at.w), margin, margin, 4.6, 1.25)
	p.f.areas(draw.Light().Quiet)
	text := fmt.Sprintf("%d / %d", number, len(p.pages))
	p.write(text, at.w-margin-draw.Width(text, letter), margin+3, letter)
	_, h := draw.Block(p.heading(at.w), 4.6)
	p.write(draw.Wrap(at.note, letter, at.w-2*margin)[0], margin, margin+h+3.2, letter)
}

// foot draws the lines that show whether the printer keeps to the scale.
func (p *printer) foot(at page) {
	y := at.h - margin - 12
	p.f.areas(draw.Light().Quiet)
	for _, line := range draw.Wrap(p.d.Say("Print at 100 %, then measure: the lines are exactly this long."), letter, at.w-2*margin) {
		p.write(line, margin, y, letter)
	}
	p.check(margin, y+4, 100, "100 "+p.d.Say("mm"))
	p.check(margin, y+9, 101.6, "4 "+p.d.Say("in"))
}

// check draws a line of a length in mm with ticks at its ends.
func (p *printer) check(x, y, long float64, text string) {
	p.rod(x, y, long)
	p.write(text, x+long+2, y+1, letter)
}

func (p *printer) rod(x, y, long float64) {
	c := draw.Light().Text
	p.f.lines(c, 0.25, nil)
	p.f.segment(x, y, x+long, y)
	p.f.segment(x, y-1.5, x, y+1.5)
	p.f.segment(x+long, y-1.5, x+long, y+1.5)
}

// lines sets texts one below the other, with a spacing in sizes of letters, and returns
// where they end.
func (p *printer) lines(texts []string, x, y, size, spacing float64) float64 {
	for _, text := range texts {
		p.write(text, x, y+0.75*size, size)
		y += spacing * size
	}
	return y
}

// write sets text at a size in mm from the left end of its baseline.
func (p *printer) write(text string, x, y, size float64) {
	if text != "" {
		p.f.text(text, x, y, size, 0)
	}
}
