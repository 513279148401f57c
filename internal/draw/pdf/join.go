package pdf

import (
	"fmt"
	"math"
	"strconv"

	"creasefit/internal/draw"
)

// checkLines returns what stands above the check line.
func (s *sheets) checkLines(number string) []string {
	title := draw.Wrap(s.d.Title+number, letter, s.line)
	long, unit := s.line, "mm"
	if s.d.Inches() {
		long, unit = s.line/25.4, "in"
	}
	text := fmt.Sprintf("%s %.0f %s", s.d.Say("Print at 100 %: the line is this long:"), long, s.d.Say(unit))
	return append(title[:min(2, len(title))], draw.Wrap(text, letter, s.line)...)
}

// checkSize returns the size of the block with the check line and the page's
// number.
func (s *sheets) checkSize() draw.Point {
	wide, high := draw.Block(s.checkLines(" · 99 / 99"), letter)
	return draw.Point{X: max(wide, s.line) + 4, Y: high + 6}
}

// printCheck prints the block with the check line.
func (s *sheets) printCheck(x, y float64, page int) {
	s.f.areas(draw.Light().Text)
	lines := s.checkLines(fmt.Sprintf(" · %d / %d", page+1, s.pages()))
	s.lines(lines, x, y, letter, 1.25)
	_, high := draw.Block(lines, letter)
	s.rod(x+0.2, y+high+2.5, s.line)
}

// name returns the letter of a part, or a number when letters run out.
func (t *tiling) name(part int) string {
	if n := t.first + part; n < 26 {
		return string(rune('A' + n))
	}
	return strconv.Itoa(t.first + part + 1)
}

// printMap prints how the parts of a piece lie to one another.
func (s *sheets) printMap(t *tiling, x, y float64) {
	s.f.lines(draw.Light().Quiet, 0.18, nil)
	s.f.areas(draw.Light().Text)
	for i, page := range t.pages {
		left, top := x+cell*float64(i%t.cols), y+cell*float64(i/t.cols)
		s.rectangle(left, top, cell, cell)
		if page >= 0 {
			text := t.name(i)
			s.write(text, left+(cell-draw.Width(text, letter))/2, top+cell/2+0.36*letter, letter)
		}
	}
}

func (p *printer) rectangle(x, y, w, h float64) {
	p.f.move(x, y)
	p.f.to(x+w, y)
	p.f.to(x+w, y+h)
	p.f.to(x, y+h)
	p.f.op("h S")
}

// joins prints, in the band round a part, where its neighbours join it: marks
// at both ends of the line that two parts have in common, and in words what to
// do there.
func (s *sheets) joins(b *block, w *window) {
	t := b.of
	ink := draw.Light().Quiet
	s.f.lines(ink, 0.25, nil)
	s.f.areas(ink)
	low, high := b.part.Low, b.part.High
	for _, side := range [...]struct {
		col, row int
		from, to draw.Point
		goesOn   bool // the neighbour lies on this part
	}{
		{-1, 0, low, draw.Point{X: low.X, Y: high.Y}, false},
		{1, 0, draw.Point{X: high.X - lapping, Y: low.Y}, draw.Point{X: high.X - lapping, Y: high.Y}, true},
		{0, -1, high, draw.Point{X: low.X, Y: high.Y}, false},
		{0, 1, draw.Point{X: high.X, Y: low.Y + lapping}, draw.Point{X: low.X, Y: low.Y + lapping}, true},
	} {
		col, row := b.col+side.col, b.row+side.row
		if col < 0 || row < 0 || col >= t.cols || row >= t.rows || t.pages[row*t.cols+col] < 0 {
			continue
		}
		here, there := t.name(b.row*t.cols+b.col), row*t.cols+col
		text := fmt.Sprintf(s.d.Say("Part %s: cut off here between the marks and lay it on part %s, page %d, mark to mark."), here, t.name(there), t.pages[there]+1)
		if side.goesOn {
			text = fmt.Sprintf(s.d.Say("Part %s: part %s, page %d, goes on here, mark to mark."), here, t.name(there), t.pages[there]+1)
		}
		s.join(w, side.from, side.to, side.goesOn, text, here+" → "+t.name(there))
	}
}

// join marks the line from a to b of the figure, and says in words that stand
// beyond the part what is done there, or in brief if they have no room.
func (s *sheets) join(w *window, a, b draw.Point, goesOn bool, text, brief string) {
	along := draw.Point{X: b.X - a.X, Y: b.Y - a.Y}
	long := math.Hypot(along.X, along.Y)
	along = draw.Point{X: along.X / long, Y: along.Y / long}
	for _, end := range [...]struct {
		at  draw.Point
		way float64
	}{{a, -1}, {b, 1}} {
		x0, y0 := w.at(draw.Point{X: end.at.X + 0.5*end.way*along.X, Y: end.at.Y + 0.5*end.way*along.Y})
		x1, y1 := w.at(draw.Point{X: end.at.X + (band-0.5)*end.way*along.X, Y: end.at.Y + (band-0.5)*end.way*along.Y})
		s.f.segment(x0, y0, x1, y1)
	}
	if draw.Width(text, letter) > long {
		text = brief
	}
	right, off := draw.Point{X: along.Y, Y: -along.X}, -0.3*band
	if goesOn {
		off = lapping + 0.3*band + letter*0.7
	}
	x, y := w.at(draw.Point{X: a.X + along.X + off*right.X, Y: a.Y + along.Y + off*right.Y})
	turns := 0
	if along.Y > 0.5 {
		turns = 1
	} else if along.X < -0.5 {
		turns = 2
	}
	if w.turned {
		turns++
	}
	s.f.text(text, x, y, letter, turns)
}
