package pdf

import (
	"fmt"
	"math"
	"slices"

	"creasefit/internal/draw"
)

// The measures of a template's pages, in mm: what printers leave white, the
// letters of 9 points, how far parts of a piece overlap, the band round a part
// for the marks, and what stays free round everything.
const (
	white   = 6.5
	letter  = 3.2
	lapping = 10.0
	band    = 5.0
	apart   = 3.0
	cell    = 5.0 // of the map of the pages
)

// sheets are the pages of a template: pieces, parts of pieces that are larger
// than a page, and on every page a line to check the printer with.
type sheets struct {
	*printer
	blocks []block
	spots  []draw.Spot
	checks []draw.Spot
	check  draw.Point
	line   float64 // how long the check line is
	number []int   // by area: of the page, from 0
	tiled  []*tiling
}

// block is a rectangle on a page: a piece or a part of one, with what stays
// free round it.
type block struct {
	figure   *draw.Figure
	part     draw.Box     // of the figure
	visible  *draw.Figure // what reaches into a part
	of       *tiling      // nil for a whole piece
	col, row int
	around   float64 // from the part to the block's edge
	chart    *tiling // the block is the map of its pages, nil for none
}

func (b *block) size() draw.Point {
	if t := b.chart; t != nil {
		return draw.Point{X: cell*float64(t.cols) + apart, Y: cell*float64(t.rows) + apart}
	}
	return draw.Point{X: b.part.Width() + 2*b.around, Y: b.part.Height() + 2*b.around}
}

// tiling is how a piece larger than a page is parted.
type tiling struct {
	figure     *draw.Figure
	cols, rows int
	w, h       float64 // of a part
	pages      []int   // by row and column from the top left: the number of the page, -1 for a part with nothing on it
	first      int     // the number of the first part, of all pieces
}

// template prints every piece at true scale on as few pages as they fit.
func (p *printer) template() error {
	s, err := p.laid()
	if err != nil {
		return err
	}
	s.print()
	return p.o.err()
}

// laid lays the pieces out, with a check line of 100 mm or 4 in, or half as long if
// that takes fewer pages, and the maps and the legend where they take none.
func (p *printer) laid() (*sheets, error) {
	best := p.nested(1)
	if err := p.o.err(); err != nil {
		return nil, err
	}
	if half := p.nested(0.5); best == nil || half != nil && half.pages() < best.pages() {
		best = half
	}
	if best == nil {
		return nil, fmt.Errorf("pdf: no part of the template has room on a page of %v x %v mm", p.short, p.long)
	}
	for _, t := range best.tiled {
		best.add(block{chart: t})
	}
	best.add(block{figure: &p.d.Legend, part: p.d.Legend.Box, around: apart / 2})
	return best, nil
}

// usable is what a printer reaches of an upright page.
func (p *printer) usable() draw.Point { return draw.Point{X: p.short - 2*white, Y: p.long - 2*white} }

// nested lays the blocks out with a check line of a part of its length.
func (p *printer) nested(part float64) *sheets {
	s := p.sheets(part)
	for i := range p.d.Figures {
		s.block(&p.d.Figures[i])
	}
	s.check = s.checkSize()
	if !s.nest() {
		return nil
	}
	return s
}

// sheets begins pages with a check line of a part of its length.
func (p *printer) sheets(part float64) *sheets {
	s := &sheets{printer: p, line: 100 * part}
	if p.d.Inches() {
		s.line = 101.6 * part
	}
	return s
}

// fits reports whether a piece has room on a page beside the check line.
func (s *sheets) fits(f *draw.Figure) bool {
	b := block{figure: f, part: f.Box, around: apart / 2}
	_, _, ok := draw.Nest([]draw.Point{b.size()}, s.usable(), s.checkSize())
	return ok
}

// pieces is how many parts a piece is printed in.
func (s *sheets) pieces(f *draw.Figure) int {
	if s.fits(f) {
		return 1
	}
	t := s.split(f)
	return t.cols * t.rows
}

func (s *sheets) nest() bool {
	sizes := make([]draw.Point, len(s.blocks))
	for i := range s.blocks {
		sizes[i] = s.blocks[i].size()
	}
	var ok bool
	s.spots, s.checks, ok = draw.Nest(sizes, s.usable(), s.check)
	return ok
}

func (s *sheets) pages() int { return len(s.checks) }

// block adds a piece, in parts if it has no room on a page.
func (s *sheets) block(f *draw.Figure) {
	if s.fits(f) {
		s.blocks = append(s.blocks, block{figure: f, part: f.Box, around: apart / 2})
		return
	}
	t := s.split(f)
	for _, other := range s.tiled {
		t.first += other.cols * other.rows
	}
	s.tiled = append(s.tiled, t)
	reach := extents(f)
	for row := range t.rows {
		for col := range t.cols {
			if s.o.err() != nil {
				return // Encode looks at the same
			}
			low := draw.Point{X: f.Box.Low.X + float64(col)*(t.w-lapping), Y: f.Box.High.Y - float64(row)*(t.h-lapping) - t.h}
			part := draw.Box{Low: low, High: draw.Point{X: low.X + t.w, Y: low.Y + t.h}}
			part.Low.Y, part.High.X = max(part.Low.Y, f.Box.Low.Y), min(part.High.X, f.Box.High.X)
			t.pages = append(t.pages, -1)
			if visible := within(f, reach, part); shows(&visible, part) {
				s.blocks = append(s.blocks, block{figure: f, part: part, visible: &visible, of: t, col: col, row: row, around: band + apart/2})
			}
		}
	}
}

// split finds the way of parting a piece that takes the fewest parts; a page
// keeps its check line below or beside a part.
func (s *sheets) split(f *draw.Figure) *tiling {
	room, check := s.usable(), s.checkSize()
	best := &tiling{}
	edge := 2*band + apart
	for _, page := range [...]draw.Point{{X: room.X, Y: room.Y - check.Y}, {X: room.X - check.Y, Y: room.Y}} {
		for _, size := range [...]draw.Point{page, {X: page.Y, Y: page.X}} {
			t := &tiling{figure: f, w: size.X - edge, h: size.Y - edge}
			t.cols, t.rows = parts(f.Box.Width(), t.w), parts(f.Box.Height(), t.h)
			if t.w > lapping && t.h > lapping && (best.cols == 0 || t.cols*t.rows < best.cols*best.rows) {
				best = t
			}
		}
	}
	return best
}

// parts is how many parts a length takes that overlap.
func parts(long, part float64) int {
	return max(1, int(math.Ceil((long-lapping)/(part-lapping)-1e-9)))
}

// add adds a block where that takes no further page.
func (s *sheets) add(b block) {
	with := *s
	with.blocks = append(s.blocks[:len(s.blocks):len(s.blocks)], b)
	if with.nest() && with.pages() <= s.pages() {
		*s = with
	}
}

// order numbers the pages in the order of the pieces, and returns their areas.
func (s *sheets) order() (areas []int) {
	s.number = slices.Repeat([]int{-1}, s.pages())
	for i, spot := range s.spots {
		if s.number[spot.Area] < 0 {
			s.number[spot.Area] = len(areas)
			areas = append(areas, spot.Area)
		}
		if b := &s.blocks[i]; b.of != nil {
			b.of.pages[b.row*b.of.cols+b.col] = s.number[spot.Area]
		}
	}
	return areas
}

// print prints the pages.
func (s *sheets) print() {
	for _, area := range s.order() {
		if s.o.err() != nil {
			return
		}
		s.printPage(area)
	}
}

// printPage prints one page, so turned that its check line is level.
func (s *sheets) printPage(area int) {
	page := leafPlace{turned: s.checks[area].Turned, wide: s.short, high: s.long}
	s.printer.page(page.turned, "")
	for i, spot := range s.spots {
		if spot.Area == area {
			s.printBlock(&s.blocks[i], page.of(spot, s.blocks[i].size()))
		}
	}
	at := page.of(s.checks[area], s.check)
	s.printCheck(at.x, at.y, s.number[area])
}

// leafPlace turns places of the upright area into those of a page that may lie
// on its side.
type leafPlace struct {
	turned     bool
	wide, high float64
}

// place is where a block's upper left corner is on a page, and whether the
// block is turned by a quarter to the left there.
type place struct {
	x, y   float64
	turned bool
}

// of returns where a block goes. A page that lies on its side is turned by a
// quarter to the right, and everything on it.
func (l *leafPlace) of(spot draw.Spot, size draw.Point) place {
	w, h := size.X, size.Y
	if spot.Turned {
		w, h = h, w
	}
	if !l.turned {
		return place{white + spot.At.X, l.high - white - spot.At.Y - h, spot.Turned}
	}
	return place{white + spot.At.Y, white + spot.At.X, !spot.Turned}
}

// printBlock prints a piece or a part of one.
func (s *sheets) printBlock(b *block, at place) {
	if b.chart != nil {
		s.printMap(b.chart, at.x+apart/2, at.y+apart/2)
		return
	}
	x, y := at.x+b.around, at.y+b.around
	w := window{x - b.part.Low.X, y + b.part.High.Y, 1, b.part, at.turned}
	wide, high := b.part.Width(), b.part.Height()
	if at.turned {
		wide, high = high, wide
		w.x, w.y = x+b.part.High.Y, y+b.part.High.X
	}
	if b.of != nil {
		s.f.within(x, y, wide, high)
		s.show(b.visible, w)
		s.f.whole()
		s.joins(b, &w)
		return
	}
	s.show(b.figure, w)
}
