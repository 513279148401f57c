package pdf

import (
	"fmt"
	"math"
	"strconv"

	"creasefit/internal/draw"
)

// window is the part of a figure that a page shows, and where.
type window struct {
	x, y  float64 // of the figure's origin on the page; y downwards
	scale float64
	part  draw.Box // of the figure, in its coordinates
	// turned is true if the figure is turned by a quarter to the left.
	turned bool
}

// figure prints a figure: below what is on the page, on a page of its own, or
// over several.
func (p *printer) figure(f *draw.Figure, fit bool) {
	w, h := f.Box.Width(), f.Box.Height()
	if p.open && w <= p.now().w-2*margin && h <= p.left() {
		p.flow(f)
		return
	}
	for _, landscape := range [...]bool{false, true} {
		if wide, high := p.room(landscape); w <= wide && h <= high {
			p.page(landscape, "")
			p.flow(f)
			return
		}
	}
	if fit {
		p.shrink(f)
	} else {
		p.tiles(f)
	}
}

// flow prints a figure that fits below what is on the page.
func (p *printer) flow(f *draw.Figure) {
	p.show(f, window{margin - f.Box.Low.X, p.y + f.Box.High.Y, 1, f.Box, false})
	p.y += f.Box.Height() + space
}

// legend prints the legend below what is on the page, or on a new one; that of
// a drawing with large letters is made to fit.
func (p *printer) legend(f *draw.Figure) {
	wide, high := p.room(false)
	scale := min(1, wide/f.Box.Width(), high/f.Box.Height())
	if !p.open || f.Box.Height()*scale > p.left() {
		p.page(false, "")
	}
	p.show(f, window{margin - f.Box.Low.X*scale, p.y + f.Box.High.Y*scale, scale, f.Box, false})
	p.y += f.Box.Height()*scale + space
}

// shrink prints a figure on a page of its own, as large as it can be there.
func (p *printer) shrink(f *draw.Figure) {
	scale, landscape := 0.0, false
	for _, way := range [...]bool{false, true} {
		wide, high := p.room(way)
		if s := min(wide/f.Box.Width(), high/f.Box.Height()); s > scale {
			scale, landscape = s, way
		}
	}
	note, scale := p.scale(scale)
	p.page(landscape, note)
	p.show(f, window{margin - f.Box.Low.X*scale, p.y + f.Box.High.Y*scale, scale, f.Box, false})
	p.y += f.Box.Height()*scale + space
}

// scale rounds a scale down to one that can be written, and writes it.
func (p *printer) scale(most float64) (note string, scale float64) {
	by := math.Ceil(100/most-1e-9) / 100
	return p.d.Say("scale") + " 1 : " + p.d.Decimal(strconv.FormatFloat(by, 'f', -1, 64)), 1 / by
}

// grid is a figure split over pages.
type grid struct {
	landscape  bool
	w, h       float64 // of what a page shows
	cols, rows int
}

// split finds the way of laying the paper that takes the fewest pages.
func (p *printer) split(f *draw.Figure) grid {
	var best grid
	for _, landscape := range [...]bool{false, true} {
		w, h := p.room(landscape)
		g := grid{landscape: landscape, w: w - 2*marks, h: h - 2*marks}
		g.cols, g.rows = count(f.Box.Width(), g.w), count(f.Box.Height(), g.h)
		if best.cols == 0 || g.cols*g.rows < best.cols*best.rows {
			best = g
		}
	}
	return best
}

// count is how many pages a length takes that overlap.
func count(long, page float64) int {
	return max(1, int(math.Ceil((long-overlap)/(page-overlap)-1e-9)))
}

// tiles prints a figure over several pages, row by row from the top, and
// leaves out those that would show nothing.
func (p *printer) tiles(f *draw.Figure) {
	g, reach := p.split(f), extents(f)
	for row := range g.rows {
		if p.o.err() != nil {
			return // Encode looks at the same
		}
		for col := range g.cols {
			low := draw.Point{X: f.Box.Low.X + float64(col)*(g.w-overlap), Y: f.Box.High.Y - float64(row)*(g.h-overlap) - g.h}
			part := draw.Box{Low: low, High: draw.Point{X: low.X + g.w, Y: low.Y + g.h}}
			visible := within(f, reach, part)
			if !shows(&visible, part) {
				continue
			}
			p.page(g.landscape, p.place(f.Name, row+1, col+1, g))
			x, y := margin+marks, p.y+marks
			p.f.within(x, y, g.w, g.h)
			p.show(&visible, window{x - part.Low.X, y + part.High.Y, 1, part, false})
			p.f.whole()
			p.seams(g, col, row, x, y)
		}
	}
	p.open = false
}

// extents returns the box of each line of a figure.
func extents(f *draw.Figure) []draw.Box {
	boxes := make([]draw.Box, len(f.Lines))
	for i := range f.Lines {
		points := draw.Flatten(nil, f.Lines[i].Path, f.Lines[i].Closed, 0.1)
		b := draw.Box{Low: points[0], High: points[0]}
		for _, q := range points[1:] {
			b.Low = draw.Point{X: min(b.Low.X, q.X), Y: min(b.Low.Y, q.Y)}
			b.High = draw.Point{X: max(b.High.X, q.X), Y: max(b.High.Y, q.Y)}
		}
		boxes[i] = b
	}
	return boxes
}

// within returns the lines and texts of a figure that may reach into a part of
// it; reach are the boxes of the lines.
func within(f *draw.Figure, reach []draw.Box, part draw.Box) draw.Figure {
	const thick = 2 // mm; no line is wider
	near := draw.Box{Low: draw.Point{X: part.Low.X - thick, Y: part.Low.Y - thick}, High: draw.Point{X: part.High.X + thick, Y: part.High.Y + thick}}
	var visible draw.Figure
	for i := range f.Lines {
		if reach[i].Meets(near) {
			visible.Lines = append(visible.Lines, f.Lines[i])
		}
	}
	for i := range f.Labels {
		if f.Labels[i].Box.Meets(part) {
			visible.Labels = append(visible.Labels, f.Labels[i])
		}
	}
	return visible
}

// place says which part of a figure a page shows.
func (p *printer) place(name string, row, col int, g grid) string {
	say := p.d.Say
	return fmt.Sprintf("%s: %s %d %s %d, %s %d %s %d", name, say("row"), row, say("of"), g.rows, say("column"), col, say("of"), g.cols)
}

// shows reports whether a part of a figure has a line or a text in it.
func shows(f *draw.Figure, part draw.Box) bool {
	for i := range f.Labels {
		if f.Labels[i].Box.Meets(part) {
			return true
		}
	}
	for i := range f.Lines {
		l := &f.Lines[i]
		if l.Layer == draw.Paper {
			continue
		}
		points := draw.Flatten(nil, l.Path, l.Closed, 0.1)
		if l.Closed {
			points = append(points, points[0])
		}
		for k := 1; k < len(points); k++ {
			if part.Crosses(points[k-1], points[k]) {
				return true
			}
		}
	}
	return false
}

// seams draws, in the band round a tile, the marks that two pages share: lines
// where each of them begins and ends, with the number of the seam between.
func (p *printer) seams(g grid, col, row int, x, y float64) {
	ink := draw.Light().Quiet
	p.f.lines(ink, 0.18, nil)
	p.f.areas(ink)
	down := g.rows * (g.cols - 1) // seams between columns come first
	if col > 0 {
		p.upright(x, y, g.h, row*(g.cols-1)+col)
		p.f.segment(x, y, x, y+g.h)
	}
	if col < g.cols-1 {
		p.upright(x+g.w-overlap, y, g.h, row*(g.cols-1)+col+1)
	}
	if row > 0 {
		p.level(x, y, g.w, down+(row-1)*g.cols+col+1)
		p.f.segment(x, y, x+g.w, y)
	}
	if row < g.rows-1 {
		p.level(x, y+g.h-overlap, g.w, down+row*g.cols+col+1)
	}
}

// upright marks a seam between two columns above and below the tile.
func (p *printer) upright(x, y, high float64, number int) {
	text := strconv.Itoa(number)
	for _, top := range [...]float64{y - marks + 0.5, y + high + 0.5} {
		p.f.segment(x, top, x, top+marks-1)
		p.f.segment(x+overlap, top, x+overlap, top+marks-1)
		p.write(text, x+(overlap-draw.Width(text, 2.8))/2, top+3, 2.8)
	}
}

// level marks a seam between two rows to the left and right of the tile.
func (p *printer) level(x, y, wide float64, number int) {
	text := strconv.Itoa(number)
	for _, left := range [...]float64{x - marks + 0.5, x + wide + 0.5} {
		p.f.segment(left, y, left+marks-1, y)
		p.f.segment(left, y+overlap, left+marks-1, y+overlap)
		p.write(text, left+(marks-1-draw.Width(text, 2.8))/2, y+overlap/2+1, 2.8)
	}
}
