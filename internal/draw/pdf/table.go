package pdf

import (
	"creasefit/internal/draw"
	"creasefit/internal/measure"
)

// The table's letters and the height of a line, in mm.
const (
	cells  = 3.2
	line   = 4.4
	gutter = 5.0  // between columns
	narrow = 26.0 // what a column of names keeps on a cells page
)

// column is one column of the table.
type column struct {
	title string
	wraps bool // may be narrower than its texts
	width float64
	cell  func(*draw.Reading) string
}

// columns of the readings: the piece's name only where there are several, and
// the width of what is needed.
func (p *printer) columns(readings []draw.Reading) []column {
	all := []column{
		{title: "what", wraps: true, cell: func(r *draw.Reading) string { return r.What }},
		{title: "from", cell: func(r *draw.Reading) string { return r.From }},
		{title: "reading", cell: func(r *draw.Reading) string { return p.d.Length(r.At) }},
		{title: "mm", cell: func(r *draw.Reading) string { return p.decimal(r.At, measure.Millimetre, 3) }},
		{title: "in", cell: func(r *draw.Reading) string { return p.decimal(r.At, measure.Inch, 4) }},
	}
	if len(p.d.Figures) > 1 {
		all = append([]column{{title: "piece", wraps: true, cell: func(r *draw.Reading) string { return r.Piece }}}, all...)
	}
	over := margin - p.short // by how much the table is wider than the page
	for i := range all {
		c := &all[i]
		c.title = p.d.Say(c.title)
		c.width = draw.Width(c.title, cells)
		for k := range readings {
			c.width = max(c.width, draw.Width(c.cell(&readings[k]), cells))
		}
		over += c.width + gutter
	}
	for i := range all {
		if c := &all[i]; over > 0 && c.wraps {
			less := min(over, max(0, c.width-narrow))
			c.width, over = c.width-less, over-less
		}
	}
	return all
}

func (p *printer) decimal(l measure.Length, u measure.Unit, places int) string {
	return p.d.Decimal(string(measure.AppendDecimal(nil, l, u, places)))
}

// table prints the readings below what is on the page, and on further pages.
func (p *printer) table(readings []draw.Reading) {
	if len(readings) == 0 {
		return
	}
	columns := p.columns(readings)
	if need := line * float64(min(len(readings)+1, 6)); !p.open || p.left() < need {
		p.page(false, "")
	}
	p.titles(columns)
	for i := range readings {
		p.row(columns, &readings[i])
	}
}

// titles writes the head of the table.
func (p *printer) titles(columns []column) {
	p.f.areas(draw.Light().Quiet)
	x := margin
	for _, c := range columns {
		p.write(c.title, x, p.y+cells, cells)
		x += c.width + gutter
	}
	p.rule(x-gutter, line+0.2)
	p.y += line + 1.2
}

// rule draws a thin line below the current row.
func (p *printer) rule(to, below float64) {
	ink := draw.Light().Quiet
	p.f.lines(ink, 0.18, nil)
	p.f.segment(margin, p.y+below, to, p.y+below)
}

// row writes one reading, its texts wrapped to their columns.
func (p *printer) row(columns []column, r *draw.Reading) {
	high := 1
	texts := make([][]string, len(columns))
	for i, c := range columns {
		texts[i] = draw.Wrap(c.cell(r), cells, c.width+1e-9)
		high = max(high, len(texts[i]))
	}
	if p.left() < line*float64(high) {
		p.page(false, p.d.Say("readings, continued"))
		p.titles(columns)
	}
	p.f.areas(draw.Light().Text)
	x := margin
	for i, c := range columns {
		for k, text := range texts[i] {
			p.write(text, x, p.y+cells+line*float64(k), cells)
		}
		x += c.width + gutter
	}
	p.y += line * float64(high)
}
