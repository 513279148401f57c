package draw

import (
	"strconv"

	"creasefit/internal/sheet"
)

// cutLine is one cut on a sheet, in millimetres from its lower left corner:
// where it runs, and the two parts that it makes.
type cutLine struct {
	step      int // from 1
	upright   bool
	line      Box // of no width, or of no height
	low, high Box
}

// cutLines replays the steps of a plan and returns every cut, in their order.
func cutLines(order *sheet.Order, s *sheet.Sheets) []cutLine {
	stock := order.Sheets[s.Stock]
	parts := map[int]Box{0: {High: Point{stock.Width.Millimetres(), stock.Height.Millimetres()}}}
	var lines []cutLine
	for i := range s.Steps {
		step := &s.Steps[i]
		for n, id := range step.Parts {
			part := parts[id]
			for _, low := range step.Low[n*step.Repeat : (n+1)*step.Repeat] {
				c := divide(part, step, order.Kerf.Millimetres())
				c.step, parts[low], part = i+1, c.low, c.high
				lines = append(lines, c)
			}
			parts[step.Rest[n]] = part
		}
	}
	return lines
}

// divide makes one cut. The low part of a turned one lies at the far end.
func divide(part Box, step *sheet.Step, kerf float64) cutLine {
	c := cutLine{upright: step.Cut == sheet.Width, line: part, low: part, high: part}
	side := func(p *Point) *float64 { return &p.Y }
	if c.upright {
		side = func(p *Point) *float64 { return &p.X }
	}
	from, to, at := *side(&part.Low), *side(&part.High), step.At.Millimetres()
	near, far, end, begin := &c.low, &c.high, from+at, min(from+at+kerf, to)
	if step.Turned {
		near, far, end, begin = far, near, max(to-at-kerf, from), to-at
	}
	*side(&near.High), *side(&far.Low) = end, begin
	*side(&c.line.Low), *side(&c.line.High) = end, end
	return c
}

// numberCuts writes beside every cut the number of its step, where there is
// room for it: between the cut and the next one, clear of all texts.
func (f *figure) numberCuts(lines []cutLine) {
	size := f.lettering
	for i := range lines {
		text := []string{strconv.Itoa(lines[i].step)}
		w, h := Block(text, size)
		for _, at := range lines[i].spots(w, h, 0.3*size) {
			if f.clear(at, lines) {
				f.label(Label{Lines: text, Size: size, Align: Middle, Quiet: true, Box: at})
				break
			}
		}
	}
}

// spots returns the places for a number of that size beside the cut, inside
// one of its parts: near its beginning first, but last in a corner, where it
// could belong to another cut.
func (c *cutLine) spots(w, h, gap float64) []Box {
	var list []Box
	for _, along := range [...]float64{0.12, 0.25, 0.4, 0.55, 0.7, 0.85, 1, 0} {
		for _, part := range [...]Box{c.high, c.low} {
			room := Point{part.Width() - w - 2*gap, part.Height() - h - 2*gap}
			if room.X < 0 || room.Y < 0 {
				continue
			}
			left, bottom := part.Low.X+gap, part.Low.Y+gap
			if c.upright {
				bottom += along * room.Y
				if part == c.low {
					left += room.X
				}
			} else {
				left += along * room.X
				if part == c.low {
					bottom += room.Y
				}
			}
			list = append(list, boxAt(left, bottom+h, w, h))
		}
	}
	return list
}

// clear reports whether a box meets no text and no cut.
func (f *figure) clear(b Box, lines []cutLine) bool {
	for i := range lines {
		l := &lines[i].line
		if l.Low.X < b.High.X && b.Low.X < l.High.X+1e-9 && l.Low.Y < b.High.Y && b.Low.Y < l.High.Y+1e-9 {
			return false
		}
	}
	return !f.fig.Texts(b)
}

// grainArrow draws beside the sheet, or above it, which way the grain runs.
func (f *figure) grainArrow(grain sheet.Side) {
	size := f.lettering
	text := []string{f.say("grain")}
	w, h := Block(text, size)
	long, away := 12*size, 1.2*size
	switch grain {
	case sheet.AlongHeight:
		mid := Point{f.w + away, f.h / 2}
		f.doubleArrow(mid, Point{0, 1}, long)
		f.label(Label{Lines: text, Size: size, Align: Middle, Upright: true, Quiet: true, Box: boxAt(mid.X+0.6*size, mid.Y+w/2, h, w)})
	case sheet.AlongWidth:
		mid := Point{f.w / 2, f.h + away}
		f.doubleArrow(mid, Point{1, 0}, long)
		f.label(Label{Lines: text, Size: size, Align: Middle, Quiet: true, Box: boxAt(mid.X-w/2, mid.Y+0.6*size+h, w, h)})
	}
}

// doubleArrow draws a line with a head at both ends.
func (f *figure) doubleArrow(mid, along Point, long float64) {
	across := Point{-along.Y, along.X}.by(0.17 * f.lettering)
	ends := [...]Point{mid.add(along.by(-long / 2)), mid.add(along.by(long / 2))}
	f.stroke(ends[0], ends[1])
	for i, end := range ends {
		back := end.add(along.by(0.75 * f.lettering * float64(1-2*i)))
		f.fig.Lines = append(f.fig.Lines, Line{
			Layer: Measures, Closed: true, Fill: true, Path: []Vertex{{Point: end}, {Point: back.add(across)}, {Point: back.sub(across)}},
		})
		f.fig.Box = f.fig.Box.join(Box{end, end})
	}
}
