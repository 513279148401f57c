package pdf

import (
	"fmt"
	"io"

	"creasefit/internal/draw"
	"creasefit/internal/guide"
)

// The sizes of a guide's letters in mm: 10 points, and in large print 22. Large
// print begins at 16 to 18 points by the guidelines of most associations of people
// who see little (from memory); 22 can be read at arm's length over the work.
const (
	plainLetters = 10 / points
	largeLetters = 22 / points
	largeInside  = 16 / points // of its pictures
)

// base is what the number of a page takes at its foot.
const base = 3.2

// between is the space between the two columns of a guide.
const between = 6.0

// Guide is what a guide is printed with.
type Guide struct {
	// Steps draws the picture of steps of the order of work, from 1, that are told as
	// one; without it the pattern follows after the text.
	Steps func(steps []int) *draw.Drawing
	Large bool // one column of large letters
}

// EncodeGuide writes a guide in two columns, each picture below the words of its
// step, and its parts tagged for readers that speak. The pattern stands for how
// the guide's lengths are written, and is printed if there are no pictures. The
// error is the writer's, or says that the paper is too small or too large.
func EncodeGuide(w io.Writer, g *guide.Guide, d *draw.Drawing, how Guide, o Options) error {
	short, long, err := o.paper(d.Step)
	if err != nil {
		return err
	}
	p := newPrinter(g.Title, g.Language, d, short.Millimetres(), long.Millimetres())
	s := &sheet{printer: p, g: g, how: how}
	s.draw()
	s.print(s.shortest())
	s.written = len(p.pages)
	if how.Steps == nil {
		s.pattern()
	}
	s.number()
	return p.f.output(w)
}

// sheet is a guide that is being printed.
type sheet struct {
	*printer
	g       *guide.Guide
	how     Guide
	drawn   []*ladder // by step of the guide; nil for none
	written int       // pages of text
}

// heights are how high pictures may be, in sizes of letters: lower ones are taken
// where they save a page.
var heights = [...]float64{18, 15, 12.5, 10.5, 9, 7.5, 6.5}

// shortest sets the guide so that it takes the fewest pages, with pictures as high
// as that allows.
func (s *sheet) shortest() *text {
	low := s.typeset(heights[len(heights)-1])
	least := low.pages(s.titleSize(low))
	for _, high := range heights[:len(heights)-1] {
		if t := s.typeset(high); t.pages(s.titleSize(t)) <= least {
			return t
		}
	}
	return low
}

// typeset wraps all texts, with pictures at most so many letters high.
func (s *sheet) typeset(high float64) *text {
	t := s.columns()
	t.title = draw.Wrap(s.g.Title, s.titleSize(t), t.full)
	t.summary = draw.Wrap(s.g.Summary, t.size, t.full)
	t.story(s.g, func(step int) *picture {
		if s.drawn[step] == nil {
			return nil
		}
		return s.drawn[step].fitted(high * t.size)
	})
	return t
}

// columns is the room for the text.
func (s *sheet) columns() *text {
	t := &text{size: plainLetters, full: s.short - 2*margin, columns: 2, long: s.long - 2*margin - base}
	if s.how.Large {
		t.size, t.columns = largeLetters, 1
	}
	if t.full < 40*t.size {
		t.columns = 1
	}
	t.wide = (t.full - between*float64(t.columns-1)) / float64(t.columns)
	return t
}

// draw draws the picture of every step.
func (s *sheet) draw() {
	t, letters := s.columns(), letter
	if s.how.Large {
		letters = largeInside
	}
	s.drawn = make([]*ladder, len(s.g.Steps))
	for i := range s.g.Steps {
		if steps := s.g.Steps[i].Order; s.how.Steps != nil && len(steps) > 0 {
			s.drawn[i] = &ladder{d: s.how.Steps(steps), wide: t.wide, letters: letters}
		}
	}
}

func (s *sheet) titleSize(t *text) float64 {
	if s.how.Large {
		return 1.3 * t.size
	}
	return 1.7 * t.size
}

// print prints the pages.
func (s *sheet) print(t *text) {
	s.page(false, "")
	top := s.header(t)
	rows := t.rows
	for first := true; first || len(rows) > 0; first = false {
		if !first {
			s.page(false, "")
			top = margin
		}
		for c := range t.columns {
			n := take(rows, s.long-margin-base-top)
			s.column(rows[:n], margin+float64(c)*(t.wide+between), top)
			rows = rows[n:]
		}
	}
}

// header prints title and summary on the first page, and returns where they
// end.
func (s *sheet) header(t *text) float64 {
	s.f.areas(draw.Light().Text)
	y := s.block("H1", t.title, margin, margin, s.titleSize(t))
	s.f.areas(draw.Light().Quiet)
	return s.block("P", t.summary, margin, y+0.3*t.size, t.size) + 0.6*t.size
}

// block prints lines, and returns where they end.
func (s *sheet) block(tag string, lines []string, x, y, size float64) float64 {
	s.f.begin(&element{tag: tag})
	defer s.f.end()
	return s.lines(lines, x, y, size, spacing)
}

// column prints rows one below the other.
func (s *sheet) column(rows []row, x, y float64) {
	for i := range rows {
		r := &rows[i]
		if i > 0 {
			y += r.above
		}
		s.f.begin(r.of)
		if r.picture != nil {
			s.picture(r.picture, x, y)
		} else {
			s.row(r, x, y)
		}
		s.f.end()
		y += r.height()
	}
}

// row prints a row of text.
func (s *sheet) row(r *row, x, y float64) {
	s.f.areas(draw.Light().Of(draw.ValleyFold))
	at := y + 0.75*r.size
	s.write(r.mark, x+r.hang, at, r.size)
	s.write(r.label, x+r.indent, at, r.size)
	if !r.heading {
		s.f.areas(draw.Light().Text)
	}
	s.write(r.text, x+r.indent+r.after(), at, r.size)
}

// number writes the number of every page if there are several, now that they
// are all there.
func (s *sheet) number() {
	for i, at := range s.pages {
		s.f.turn(i)
		s.f.artifact()
		switch text := fmt.Sprintf("%d / %d", i+1, len(s.pages)); {
		case i >= s.written:
			s.head(at, i+1)
		case len(s.pages) > 1:
			s.f.areas(draw.Light().Quiet)
			s.write(text, at.w-margin-draw.Width(text, letter), at.h-margin, letter)
		}
		s.f.end()
	}
}
