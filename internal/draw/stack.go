package draw

// stacked puts heading, figures and legend one below the other.
func (l *layout) stacked(d *Drawing) *Drawing {
	d.Legend = l.legend(d)
	margin, gap := 2*l.lettering, 2.2*l.lettering
	wide := d.Legend.Box.Width()
	for i := range d.Figures {
		wide = max(wide, d.Figures[i].Box.Width())
	}
	var lines []string
	size := 1.7 * l.lettering
	if d.Title != "" {
		lines = Wrap(d.Title, size, wide)
	}
	w, h := 0.0, 0.0
	if len(lines) > 0 {
		w, h = Block(lines, size)
		h += 0.8 * gap
	}
	wide = max(wide, w)
	d.Width = wide + 2*margin
	d.Height = 2*margin + h
	for i := range d.Figures {
		d.Height += d.Figures[i].Box.Height() + gap
	}
	d.Height += d.Legend.Box.Height()
	top := d.Height - margin
	if len(lines) > 0 {
		d.Heading = []Label{textAt(margin, top, size, false, lines...)}
	}
	top -= h
	for i := range d.Figures {
		top = d.Figures[i].put(margin, top) - gap
	}
	d.Legend.put(margin, top)
	return d
}

// put moves a figure so that its box begins at an upper left corner, and
// returns where it ends.
func (f *Figure) put(left, top float64) float64 {
	f.At = Point{left - f.Box.Low.X, top - f.Box.High.Y}
	return top - f.Box.Height()
}
