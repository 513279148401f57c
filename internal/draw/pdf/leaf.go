package pdf

import "creasefit/internal/draw"

// points is how many points a millimetre has.
const points = 72 / 25.4

// leaf is a page in the making. Places are given in mm from its upper left
// corner.
type leaf struct {
	wide, high float64 // in points
	body       []byte
	pen        pen
	ink        draw.Colour // of areas and texts
	inked      bool
	marked     []*element // by the number of its mark
}

// pen is how lines are drawn.
type pen struct {
	colour draw.Colour
	width  float64 // mm
	dash   [6]float64
	dashes int
	set    bool
}

// number appends a number to the thousandth and a space.
func (l *leaf) number(v float64) { l.body = append(draw.AppendDecimal(l.body, v, 3), ' ') }

func (l *leaf) place(x, y float64) {
	l.number(x * points)
	l.number(l.high - y*points)
}

func (l *leaf) op(operator string) { l.body = append(append(l.body, operator...), '\n') }

func (l *leaf) colour(c draw.Colour, operator string) {
	for _, part := range [...]uint8{c.R, c.G, c.B} {
		l.number(float64(part) / 255)
	}
	l.op(operator)
}

// lines sets how lines are drawn; their dashes in mm.
func (l *leaf) lines(c draw.Colour, width float64, dash []float64) {
	p := pen{colour: c, width: width, dashes: copy(make([]float64, 6), dash), set: true}
	copy(p.dash[:], dash)
	if p == l.pen {
		return
	}
	l.pen = p
	l.colour(c, "RG")
	l.number(width * points)
	l.op("w")
	l.body = append(l.body, '[')
	for _, d := range dash {
		l.number(d * points)
	}
	l.op("] 0 d")
}

// areas sets the colour of areas and texts.
func (l *leaf) areas(c draw.Colour) {
	if !l.inked || l.ink != c {
		l.ink, l.inked = c, true
		l.colour(c, "rg")
	}
}

func (l *leaf) move(x, y float64) {
	l.place(x, y)
	l.op("m")
}

func (l *leaf) to(x, y float64) {
	l.place(x, y)
	l.op("l")
}

func (l *leaf) curve(x1, y1, x2, y2, x3, y3 float64) {
	l.place(x1, y1)
	l.place(x2, y2)
	l.place(x3, y3)
	l.op("c")
}

// segment draws a straight line.
func (l *leaf) segment(x0, y0, x1, y1 float64) {
	l.move(x0, y0)
	l.to(x1, y1)
	l.op("S")
}

// within shows of what follows only what lies in a rectangle, until whole.
func (l *leaf) within(x, y, w, h float64) {
	l.op("q")
	l.place(x, y+h)
	l.number(w * points)
	l.number(h * points)
	l.op("re W n")
}

// whole ends within. What was set since is forgotten.
func (l *leaf) whole() {
	l.op("Q")
	l.pen, l.inked = pen{}, false
}

// text writes a line of text of a size in mm from the beginning of its
// baseline, turned to the left by quarters: 0 is level, 1 reads upwards.
func (f *file) text(text string, x, y, size float64, quarters int) {
	l := f.leaf
	l.body = append(l.body, "BT /F "...)
	l.number(size * points)
	l.body = append(l.body, "Tf "...)
	l.body = append(l.body, [...]string{"1 0 0 1 ", "0 1 -1 0 ", "-1 0 0 -1 ", "0 -1 1 0 "}[quarters&3]...)
	l.place(x, y)
	l.body = append(l.body, "Tm <"...)
	for _, r := range text {
		glyph := glyphOf(r)
		f.beyond = f.beyond || !common(r)
		const digits = "0123456789ABCDEF"
		l.body = append(l.body, digits[glyph>>12], digits[glyph>>8&15], digits[glyph>>4&15], digits[glyph&15])
	}
	l.op("> Tj ET")
}
