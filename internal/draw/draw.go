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
	"bytes"
	"math"
	"strconv"
	"strings"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/settings"
)

// Lettering is the size of the font in mm that line widths are meant for.
const Lettering = 3.2

// View is what a drawing is for.
type View uint8

// The views.
const (
	Measured View = iota // every length that is set on a ruler, for making it by hand
	Template             // nothing but lines to cut, fold and glue by, to be printed at true scale
	Cutter               // lines for a machine that cuts
	Picture              // one step of the work
	Finished             // the enclosure round its contents
	Spread               // how its clearances come out
)

// String returns the view as it is written on the wire.
func (v View) String() string {
	return [...]string{"measured", "template", "cutter", "step", "finished", "spread"}[v]
}

// Options are how a pattern is to be drawn.
type Options struct {
	Title       string
	Description string       // in words; made from the pattern if empty
	Step        measure.Step // of the ruler that readings are written for
	// Lettering is the size of the font in mm. Zero chooses one from the size
	// of the largest blank, so that a picture of the whole can be read.
	Lettering float64
	// Say gives the wording of a name or a word of the drawing in another
	// language, of a unit too, and of "." where it is the decimal mark; nil
	// leaves them in English.
	Say      func(string) string
	Language string // of what Say says, BCP 47; "" if that goes without saying
	// Stops tells those that the pattern is made with; pictures of scoring measure from
	// the same edges. Nil for none.
	Stops func() []settings.Setting
	// Clearances are those of the pattern, for a drawing of how they come out.
	Clearances []Clearance
	// Beside are pieces that are never folded: an ornament, which is laid on the locked
	// tabs in the end.
	Beside []pattern.Piece

	papers map[*pattern.Piece]flat // found so far, for letters of any size
}

// Whole returns a pattern with the pieces beside it.
func (o *Options) Whole(p *pattern.Pattern) *pattern.Pattern {
	if len(o.Beside) == 0 {
		return p
	}
	all := *p
	all.Pieces = append(p.Pieces[:len(p.Pieces):len(p.Pieces)], o.Beside...)
	return &all
}

// Drawing is a pattern laid out. Width and Height hold all figures, the
// legend and a margin.
type Drawing struct {
	View               View
	Title, Description string
	Language           string           // as in the options
	Pattern            *pattern.Pattern // nil for a cut plan
	Step               measure.Step
	Lettering          float64
	Figures            []Figure
	Legend             Figure // what the lines mean
	Heading            []Label
	Width, Height      float64
	Readings           []Reading

	words   *layout
	again   func(lettering float64) *Drawing
	remarks []string // how to read it, for the legend
}

// layout is what all figures of a drawing share.
type layout struct {
	step      measure.Step
	lettering float64
	say       func(string) string
	stops     func() []settings.Setting
	found     []*detail // small corners of all figures so far
	papers    map[*pattern.Piece]flat
	board     bool // scores are cut half through
	caliper   measure.Length
}

// New draws a pattern.
func New(p *pattern.Pattern, o Options) *Drawing {
	l := o.layout(p)
	d := l.patterned(Measured, p, o, New, l.drawPiece)
	d.Readings, d.remarks = l.list(d.Pattern), l.remarks(p)
	return l.stacked(d)
}

// patterned draws every piece of a pattern and of what is beside it.
func (l *layout) patterned(view View, p *pattern.Pattern, o Options, again func(*pattern.Pattern, Options) *Drawing,
	draw func(*pattern.Piece, []pattern.Glue) Figure) *Drawing {
	whole := o.Whole(p)
	l.suit(suitable(whole))
	d := l.drawing(view, whole, o, func(o Options) *Drawing { return again(p, o) })
	for i := range whole.Pieces {
		d.Figures = append(d.Figures, draw(&whole.Pieces[i], whole.GluesOf(i)))
	}
	if d.Description == "" {
		d.Description = l.describe(whole)
	}
	return d
}

// drawing begins a drawing; again draws it with other options.
func (l *layout) drawing(view View, p *pattern.Pattern, o Options, again func(Options) *Drawing) *Drawing {
	return &Drawing{
		View: view, Title: l.say(o.Title), Description: o.Description, Language: o.Language, Pattern: p, Step: o.Step, Lettering: l.lettering, words: l,
		again: func(lettering float64) *Drawing {
			o.Lettering = lettering
			return again(o)
		},
	}
}

// keep makes room for what is found once for all drawings with the same options: the
// papers of pieces, and what words are in the language.
func (o *Options) keep() {
	if o.papers != nil {
		return
	}
	o.papers = map[*pattern.Piece]flat{}
	say, said := o.Say, map[string]string{}
	if say == nil {
		o.Say = func(s string) string { return s }
		return
	}
	o.Say = func(s string) string {
		text, known := said[s]
		if !known {
			text = say(s)
			said[s] = text
		}
		return text
	}
}

func (o *Options) layout(p *pattern.Pattern) *layout {
	o.keep()
	l := &layout{step: o.Step, lettering: o.Lettering, say: o.Say, stops: o.Stops, papers: o.papers}
	if p != nil {
		l.board, l.caliper = p.Stiff(), p.Caliper
	}
	return l
}

// suit chooses the size of letters where the options do not.
func (l *layout) suit(size float64) {
	if l.lettering <= 0 {
		l.lettering = size
	}
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

// Readable returns the drawing with letters that are as large as least, in parts
// of its width, as far as that can be had by tries: larger letters widen it.
func (d *Drawing) Readable(least float64) *Drawing {
	for range 4 {
		if d.Lettering >= least*d.Width*0.999 {
			break
		}
		d = d.Lettered(least * d.Width * 1.05)
	}
	return d
}

// Say returns the wording of a word in the drawing's language, for the texts
// that an encoder sets beside the figures.
func (d *Drawing) Say(word string) string { return d.words.say(word) }

// Decimal writes a number with the decimal mark of the drawing's language.
func (d *Drawing) Decimal(number string) string { return d.words.decimal(number) }

// Length writes a length as the drawing's ruler reads it, in its language.
func (d *Drawing) Length(at measure.Length) string { return d.words.length(at) }

// length writes a length as the ruler reads it: to the step or, for what lies
// on none of its marks but on one of a finer ruler, to that.
func (l *layout) length(at measure.Length) string {
	if finest := l.finest(); !at.IsMultipleOf(l.step) && at.IsMultipleOf(finest) {
		return l.spell(finest.Format(at))
	}
	return l.spell(l.step.Format(at))
}

// spell writes a length with the unit and the decimal mark of the language.
func (l *layout) spell(text string) string {
	unit := strings.LastIndexByte(text, ' ') + 1
	return l.decimal(text[:unit]) + l.say(text[unit:])
}

// decimal writes a number with the decimal mark of the language.
func (l *layout) decimal(number string) string { return strings.Replace(number, ".", l.say("."), 1) }

// AppendDecimal appends a number of at most so many places, up to 6, without trailing
// zeros and without a sign on zero.
func AppendDecimal(b []byte, v float64, places int) []byte {
	scale := [...]float64{1, 10, 100, 1e3, 1e4, 1e5, 1e6}[places]
	n := int64(math.Round(v * scale))
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	whole, part := n/int64(scale), n%int64(scale)
	b = strconv.AppendInt(b, whole, 10)
	if part == 0 {
		return b
	}
	point := len(b)
	b = strconv.AppendInt(b, int64(scale)+part, 10) // the leading 1 becomes the point
	b[point] = '.'
	return bytes.TrimRight(b, "0")
}

// Inches reports whether the drawing's ruler is in inches.
func (d *Drawing) Inches() bool { return d.Step.Unit() == measure.Inch }

// Scale is the factor for line widths and dashes.
func (d *Drawing) Scale() float64 { return d.Lettering / Lettering }
