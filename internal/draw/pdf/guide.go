package pdf

import (
	"fmt"
	"io"

	"creasefit/internal/draw"
	"creasefit/internal/guide"
)

// The sizes of a guide's letters in mm, 9.6 to 6.5 points.
const (
	largest  = 3.4
	modest   = 2.8
	smallest = 2.3
	finer    = 0.1 // from one size that is tried to the next
)

// How long the longest blank is drawn, in mm, for smaller letters to be worth
// it, and at least.
const (
	large = 110.0
	least = 45.0
)

// between is the space between the two columns of a guide.
const between = 8.0

// EncodeGuide writes the guide with the picture of its pattern on one page: the
// letters become as small as they must, down to 2.3 mm. Where that is not
// enough for a picture that can be read, the picture and what else has no room
// go on to further pages.
//
// The picture is scaled to what is left of the page, above the columns of text
// or at the head of the second one, and its scale is written below it: it is no
// template. The error is the writer's, or
// says that the paper is too small or too large.
func EncodeGuide(w io.Writer, g *guide.Guide, d *draw.Drawing, o Options) error {
	short, long, err := o.paper(d.Step)
	if err != nil {
		return err
	}
	p := newPrinter(g.Title, g.Language, d, short.Millimetres(), long.Millimetres())
	s := &sheet{printer: p, g: g, views: views{d: d}}
	s.lay()
	s.number()
	return p.f.output(w)
}

// sheet is a guide that is being printed.
type sheet struct {
	*printer
	g     *guide.Guide
	views views
}

// lay prints everything on one page if it can, with letters that are a little
// smaller if that leaves room for a large picture, and else on several.
func (s *sheet) lay() {
	if s.onePage(modest, large) || s.onePage(smallest, least) {
		return
	}
	t := s.typeset(smallest)
	for size := largest; size > smallest; size -= finer {
		if one := s.typeset(size); one.height() <= one.room() {
			t = one
			break
		}
	}
	for {
		t = s.print(t, &spot{high: t.room()})
		if at := s.best(t); at.good(least) || len(t.rows) == 0 {
			s.print(t, &at)
			return
		}
	}
}

// onePage prints everything on one page with the largest of letters that are
// no smaller and leave room for a blank drawn that long.
func (s *sheet) onePage(letters, drawn float64) bool {
	for size := largest; size >= letters-1e-9; size -= finer {
		t := s.typeset(size)
		if at := s.best(t); at.good(drawn) {
			s.print(t, &at)
			return true
		}
	}
	return false
}

// best is the spot where the picture comes out larger.
func (s *sheet) best(t *text) spot {
	above, beside := s.above(t), s.beside(t)
	if above.drawn() < beside.drawn() {
		return beside
	}
	return above
}

// above is the picture over both columns.
func (s *sheet) above(t *text) spot {
	high := t.height()
	return spot{s.views.within(t.full, t.room()-high-t.caption()), high, false}
}

// beside is the picture at the head of the second column.
func (s *sheet) beside(t *text) spot {
	high := t.room()
	rest := t.rows[take(t.rows, high):]
	view := s.views.within(t.wide, high-tall(rest)-t.caption())
	return spot{view, high, view.d != nil}
}

// spot is where the picture is, if it has a drawing.
type spot struct {
	view
	high   float64 // of the columns, with the picture if that is beside
	beside bool
}

// typeset wraps all texts for a size of letters.
func (s *sheet) typeset(size float64) *text {
	full := s.short - 2*margin
	t := &text{size: size, full: full, wide: (full - between) / 2, long: s.long - 2*margin}
	t.title = draw.Wrap(s.g.Title, 1.9*size, full)
	t.summary = draw.Wrap(s.g.Summary, size, full)
	t.story(s.g)
	return t
}

// print prints a page: the texts in two columns, and the picture if it has a
// spot there, last, so that a reader of the file meets the texts in one go. It
// returns what the columns do not hold.
func (s *sheet) print(t *text, at *spot) (rest *text) {
	s.page(false, "")
	top := s.header(t)
	tall, high := at.tall(t), at.high
	left, right, second := top+tall, top+tall, margin+t.wide+between
	if at.beside {
		left = top
	}
	n := take(t.rows, high)
	s.column(t.rows[:n], margin, left)
	after := t.rows[n:]
	if at.beside {
		high -= tall
	}
	n = take(after, high)
	s.column(after[:n], second, right)
	switch {
	case at.beside:
		s.picture(&at.view, second, top, t)
	case at.d != nil:
		s.picture(&at.view, margin, top, t)
	}
	return &text{size: t.size, full: t.full, wide: t.wide, long: t.long, rows: after[n:]}
}

// header prints title and summary on the first page, and returns where they
// end.
func (s *sheet) header(t *text) float64 {
	y := margin
	if len(t.title) == 0 {
		return y
	}
	s.f.areas(draw.Light().Text)
	y = s.block(t.title, margin, y, 1.9*t.size)
	s.f.areas(draw.Light().Quiet)
	return s.block(t.summary, margin, y+0.4*t.size, t.size) + t.size
}

// block prints lines, and returns where they end.
func (s *sheet) block(lines []string, x, y, size float64) float64 {
	for _, line := range lines {
		s.write(line, x, y+0.75*size, size)
		y += spacing * size
	}
	return y
}

// column prints rows one below the other.
func (s *sheet) column(rows []row, x, y float64) {
	for i := range rows {
		r := &rows[i]
		if i > 0 {
			y += r.above
		}
		s.f.areas(r.ink())
		s.write(r.mark, x+r.hang, y+0.75*r.size, r.size)
		s.write(r.text, x+r.indent, y+0.75*r.size, r.size)
		y += spacing * r.size
	}
}

// number writes the number of every page if there are several, now that they
// are all there.
func (s *sheet) number() {
	if len(s.pages) == 1 {
		return
	}
	for i, at := range s.pages {
		s.f.turn(i)
		s.f.areas(draw.Light().Quiet)
		text := fmt.Sprintf("%d / %d", i+1, len(s.pages))
		s.write(text, at.w-margin-draw.Width(text, smallest), at.h-margin/2, smallest)
	}
}
