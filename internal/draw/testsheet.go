package draw

import "creasefit/internal/measure"

// TestSheet is what a maker measures to learn her paper and her hand: the
// distance of the two scores of a strip to fold up, and of the marks on a sheet
// to wet. Zero stands for 25 and 100 mm, or 1 and 4 in.
type TestSheet struct{ Apart, Marked measure.Length }

// test is one thing to do, and the names of what is then measured: each with so
// many blanks to write on.
type test struct {
	name, words string
	blanks      []blank
}

type blank struct {
	name  string
	times int
}

// tests are in the order of the work: the sheet is cut up last.
var tests = [...]test{
	{"caliper", "Wind a strip of the paper, some 12 mm (1/2 in) wide, ten times tightly round a block that you know the size of. Mark " +
		"where it begins and ends, unroll it, and measure. Or press a stack flat and measure how high it is.",
		[]blank{{"block width", 1}, {"block thickness", 1}, {"turns", 1}, {"wound", 1}, {"stack count", 1}, {"stack", 1}}},
	{"cuts", "Cut ten strips at one stop. Take the stop away and set it anew for each. Measure how wide they are.",
		[]blank{{"cut at", 1}, {"cuts", 10}}},
	{"scores", "Score ten strips at one stop, set anew for each. Measure how far from the edge the scores are.",
		[]blank{{"score at", 1}, {"scores", 10}}},
	{"folds", "Score ten strips twice, as this one is drawn. Fold both walls up square and measure between them, inside.",
		[]blank{{"scored apart", 1}, {"folded inside", 10}}},
	{"growth", "Measure between the marks along and across the grain, wet the sheet as paste would, and measure again.",
		[]blank{{"marked", 1}, {"wet along", 1}, {"wet across", 1}}},
}

// NewTestSheet draws what is to be made and measured, at true scale, with blanks
// for what is measured.
func NewTestSheet(t TestSheet, o Options) *Drawing {
	l := o.layout(nil)
	l.suit(Lettering)
	d := l.drawing(Template, nil, o, func(o Options) *Drawing { return NewTestSheet(t, o) })
	d.Description = l.say("What to make and to measure of a paper and a hand.")
	d.remarks = []string{l.say("Do all of it with the paper and the tools that you work with, and write down every length as the ruler " +
		"says it.")}
	d.Figures = []Figure{l.tests(), l.foldStrip(or(t.Apart, l.step, 25, 1)), l.markedSheet(or(t.Marked, l.step, 100, 4))}
	return l.stacked(d)
}

// or is a length in millimetres, or what is usual on such a ruler.
func or(given measure.Length, ruler measure.Step, millimetres, inches int64) float64 {
	switch {
	case given.Sign() > 0:
		return given.Millimetres()
	case ruler.Unit() == measure.Inch:
		return measure.Inches(inches).Millimetres()
	default:
		return measure.Millimetres(millimetres).Millimetres()
	}
}

// wide is how wide the words and blanks of tests are, in sizes of letters.
const wide = 52

// tests writes all tests with their blanks, one below the other.
func (l *layout) tests() Figure {
	f := &figure{layout: l}
	f.fig.Name = l.say("what to measure")
	f.fig.Box.High.X = wide * l.lettering
	y := 0.0
	for i := range tests {
		y = f.test(&tests[i], y)
	}
	return f.fig
}

// test writes one test below y and says where the next begins.
func (f *figure) test(t *test, y float64) float64 {
	size := f.lettering
	y = f.write(f.say(t.name), 1.3*size, false, y)
	y = f.write(f.say(t.words), size, true, y)
	x := 0.0
	for _, b := range t.blanks {
		x, y = f.blanks(b, x, y)
	}
	return y - 4*size
}

// write writes a text below y and says where it ends.
func (f *figure) write(text string, size float64, quiet bool, y float64) float64 {
	lines := Wrap(text, size, wide*f.lettering)
	_, h := Block(lines, size)
	f.label(textAt(0, y, size, quiet, lines...))
	return y - h - 0.5*f.lettering
}

// blanks draws lines to write on, behind their name, from x on in the row below
// y or, where that has no room for them, in the next.
func (f *figure) blanks(b blank, x, y float64) (nextX, nextY float64) {
	size, name := f.lettering, f.say(b.name)
	long, gap, row := 5*size, 0.8*size, 2.6*size
	if b.times > 1 {
		long = 3.2 * size
	}
	w, h := Block([]string{name}, size)
	if need := w + float64(b.times)*(long+gap); x > 0 && x+need > wide*size {
		x, y = 0, y-row
	}
	line := y - row + 0.3*size
	f.label(textAt(x, line+h, size, false, name))
	x += w
	for range b.times {
		from, to := Point{x + gap, line}, Point{x + gap + long, line}
		f.fig.Lines = append(f.fig.Lines, Line{Layer: Measures, Path: []Vertex{{Point: from}, {Point: to}}})
		f.fig.Box = f.fig.Box.join(Box{from, to})
		x = to.X
	}
	return x + 2*gap, y
}

// foldStrip is a strip with two scores so far apart, and a wall beyond each.
func (l *layout) foldStrip(apart float64) Figure {
	const wall, high = 20, 15
	f := l.sheetOf(l.say("fold strip"), apart+2*wall, high)
	for _, x := range [...]float64{wall, wall + apart} {
		f.fig.Lines = append(f.fig.Lines, Line{Layer: ValleyFold, Name: l.say("valley fold"), Path: []Vertex{{Point: Point{x, 0}}, {Point: Point{x, high}}}})
	}
	f.caption("scored apart", apart)
	return f.fig
}

// markedSheet is a square with marks so far apart both ways, and an arrow for
// the grain.
func (l *layout) markedSheet(apart float64) Figure {
	const beside, arm = 10, 3
	f := l.sheetOf(l.say("sheet to wet"), apart+2*beside, apart+2*beside)
	for _, x := range [...]float64{beside, beside + apart} {
		for _, y := range [...]float64{beside, beside + apart} {
			f.fig.Lines = append(f.fig.Lines, Line{Layer: Measures, Path: []Vertex{{Point: Point{x - arm, y}}, {Point: Point{x + arm, y}}}},
				Line{Layer: Measures, Path: []Vertex{{Point: Point{x, y - arm}}, {Point: Point{x, y + arm}}}})
		}
	}
	text := l.say("Let the grain run this way:") + noBreak + "↕"
	lines := Wrap(text, l.lettering, apart)
	w, h := Block(lines, l.lettering)
	f.label(textAt(beside+(apart-w)/2, beside+(apart+h)/2, l.lettering, false, lines...))
	f.caption("marked", apart)
	return f.fig
}

// sheetOf begins the figure of a rectangle of paper.
func (l *layout) sheetOf(name string, w, h float64) *figure {
	f := &figure{layout: l, w: w, h: h}
	f.fig.Name, f.fig.Size, f.fig.Box = name, Point{w, h}, Box{High: Point{w, h}}
	f.paper(rectangle(f.fig.Box), l.say("outline"))
	return f
}

// caption writes the name and the length that it stands for below a figure.
func (f *figure) caption(name string, apart float64) {
	text := f.say(name) + " = " + f.length(measure.Nanometres(int64(apart*1e6)))
	f.label(textAt(0, -0.5*f.lettering, f.lettering, false, text))
}
