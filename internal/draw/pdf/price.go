package pdf

import "creasefit/internal/draw"

// MostPages is how many pages one drawing may be laid out for: the largest bag
// that there is on A4. More than that nobody lays together.
const MostPages = 500

// Pages returns for how many pages a drawing is laid out, those that would show
// nothing included: what it costs, known before it is begun. It is zero for
// paper that is too small or too large.
func Pages(d *draw.Drawing, o Options) int {
	short, long, err := o.paper(d.Step)
	if err != nil {
		return 0
	}
	if d.View != draw.Template {
		return len(d.Figures)
	}
	if d.Lettering > draw.Lettering {
		d = d.Lettered(draw.Lettering)
	}
	p := newPrinter(d.Title, d.Language, d, short.Millimetres(), long.Millimetres())
	pages, s := 0, p.sheets(1)
	for i := range d.Figures { // pieces may share pages, parts seldom do
		pages += s.pieces(&d.Figures[i])
	}
	return pages
}
