// Package draw lays a flat pattern out as a drawing without a format: lines in
// layers, hatched glue areas, names, and the readings as dimensions from the
// edge that they are measured from. Every encoder below it draws the same.
//
// Coordinates are millimetres, x to the right and y upwards; those of a
// piece's lines are the pattern's. No two texts of a drawing overlap: all text
// is measured with the metrics of one font, and what does not fit in its
// place goes elsewhere.
//
// The package sees patterns and cut plans only: it solves, rounds and folds
// nothing, and it writes no file.
package draw

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Lettering is the size of the font in mm that line widths are meant for.
const Lettering = 3.2

// Options are how a pattern is to be drawn.
type Options struct {
	Title       string
	Description string       // in words; made from the pattern if empty
	Step        measure.Step // of the ruler that readings are written for
	// Lettering is the size of the font in mm. Zero chooses one from the size
	// of the largest blank, so that a picture of the whole can be read.
	Lettering float64
	// Say gives the wording of a name or a word of the drawing, for another
	// language; nil leaves them in English.
	Say func(string) string
}

// Drawing is a pattern laid out. Width and Height hold all figures, the
// legend and a margin.
type Drawing struct {
	Title, Description string
	Pattern            *pattern.Pattern // nil for a cut plan
	Step               measure.Step
	Lettering          float64
	Figures            []Figure
	Legend             Figure // what the lines mean
	Heading            []Label
	Width, Height      float64
	Readings           []Reading

	again   func(lettering float64) *Drawing
	remarks []string // how to read it, for the legend
}

// layout is what all figures of a drawing share.
type layout struct {
	step      measure.Step
	lettering float64
	say       func(string) string
}

// New draws a pattern.
func New(p *pattern.Pattern, o Options) *Drawing {
	l := o.layout()
	if l.lettering <= 0 {
		l.lettering = suitable(p)
	}
	d := &Drawing{
		Title: l.say(o.Title), Description: o.Description, Pattern: p, Step: o.Step, Lettering: l.lettering,
		Figures: make([]Figure, len(p.Pieces)),
	}
	for i := range p.Pieces {
		d.Figures[i] = l.drawPiece(&p.Pieces[i])
	}
	d.Readings = l.list(p)
	if d.Description == "" {
		d.Description = l.describe(p)
	}
	d.remarks = l.remarks(p)
	d.Legend = l.legend(d)
	l.stack(d)
	d.again = func(lettering float64) *Drawing {
		o.Lettering = lettering
		return New(p, o)
	}
	return d
}

func (o *Options) layout() *layout {
	l := &layout{step: o.Step, lettering: o.Lettering, say: o.Say}
	if l.say == nil {
		l.say = func(s string) string { return s }
	}
	return l
}

// suitable returns the size of letters for a picture of the whole.
func suitable(p *pattern.Pattern) float64 {
	longest := 0.0
	for i := range p.Pieces {
		longest = max(longest, p.Pieces[i].Width.Millimetres(), p.Pieces[i].Height.Millimetres())
	}
	return max(Lettering, longest/80)
}

// Lettered returns the drawing laid out anew with letters of another size in
// mm.
func (d *Drawing) Lettered(size float64) *Drawing { return d.again(size) }

// Scale is the factor for line widths and dashes.
func (d *Drawing) Scale() float64 { return d.Lettering / Lettering }
