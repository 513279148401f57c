package draw

import (
	"strings"
	"sync"

	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Metrics of the font that all text is laid out in, as parts of its size.
const (
	ascent  = 0.75 // of capitals and digits, with a little air
	descent = 0.22
	leading = 1.25 // from line to line
)

// Font returns the font that all text is laid out in: Go Regular, under the
// licence of the Go project. The bytes are shared and must not be changed.
func Font() []byte { return goregular.TTF }

// last is the last character that the font may have.
const last = 0xffff

// face is the font, read once.
type face struct {
	*sfnt.Font
	glyphs [last + 1]uint16 // by character, 0 for none
	widths []float64        // by glyph, as parts of the size
}

var typeface = sync.OnceValue(func() *face {
	font, err := sfnt.Parse(Font())
	if err != nil {
		panic("draw: the built-in font cannot be read: " + err.Error())
	}
	f := &face{Font: font, widths: make([]float64, font.NumGlyphs())}
	var buffer sfnt.Buffer
	for r := range f.glyphs {
		if g, err := font.GlyphIndex(&buffer, rune(r)); err == nil {
			f.glyphs[r] = uint16(g)
		}
	}
	for g := range f.widths {
		advance, err := font.GlyphAdvance(&buffer, sfnt.GlyphIndex(g), fixed.I(1000), xfont.HintingNone)
		if err != nil {
			panic("draw: a glyph of the built-in font has no width: " + err.Error())
		}
		f.widths[g] = float64(advance) / 64 / 1000
	}
	f.widths[0] = 1 // what it does not have is as wide as it is high
	return f
})

// Shapes returns the font to take the shapes of glyphs from.
func Shapes() *sfnt.Font { return typeface().Font }

// Glyph returns the number of a character's glyph in the font, 0 if it has none.
func Glyph(r rune) uint16 { return typeface().glyph(r) }

func (f *face) glyph(r rune) uint16 {
	if r < 0 || r > last {
		return 0
	}
	return f.glyphs[r]
}

// Width returns how wide a line of text is at a size, both in millimetres.
func Width(text string, size float64) float64 { return wider(0, text) * size }

// wider adds the characters of a text to a width, in sizes of letters.
func wider(sum float64, text string) float64 {
	f := typeface()
	for _, r := range text {
		sum += f.widths[f.glyph(r)]
	}
	return sum
}

// Wrap breaks text at spaces into lines no wider than most, as far as its
// words allow; no-break spaces hold their words together.
func Wrap(text string, size, most float64) []string {
	if Width(text, size) <= most {
		return []string{text}
	}
	var lines []string
	start, end, width := 0, 0, 0.0 // of the line
	for at := 0; at <= len(text); {
		next := at + len(text[at:])
		if i := strings.IndexByte(text[at:], ' '); i >= 0 {
			next = at + i
		}
		if with := wider(width, text[end:next]); start < end && with*size > most {
			lines = append(lines, text[start:end])
			start, width = at, wider(0, text[at:next])
		} else if start == end {
			start, width = at, wider(0, text[at:next])
		} else {
			width = with
		}
		end, at = next, next+1
	}
	return append(lines, text[start:end])
}

// Align says which side of its box the lines of a label keep to.
type Align uint8

// The alignments. Lines of a label are always read from the left.
const (
	Left Align = iota
	Middle
	Right
)

// Label is a block of text.
type Label struct {
	Lines   []string
	Size    float64 // of the font, mm
	Align   Align
	Upright bool // reads from the bottom up
	Quiet   bool // secondary: a dimension or a remark
	Box     Box  // what the block takes up, as it lies
}

// textAt is a block of text whose upper left corner is at a place.
func textAt(left, top, size float64, quiet bool, lines ...string) Label {
	w, h := Block(lines, size)
	return Label{Lines: lines, Size: size, Quiet: quiet, Box: boxAt(left, top, w, h)}
}

// Block measures lines of text: how wide and how high they are together.
func Block(lines []string, size float64) (w, h float64) {
	for _, l := range lines {
		w = max(w, Width(l, size))
	}
	return w, (ascent + descent + leading*float64(len(lines)-1)) * size
}

// TextLine is where one line of a label begins: at the left end of its baseline.
type TextLine struct {
	Text  string
	At    Point
	Width float64
}

// Line returns line i of the label and where it goes.
func (l *Label) Line(i int) TextLine {
	text := l.Lines[i]
	width := Width(text, l.Size)
	long, down := l.Box.Width(), (ascent+leading*float64(i))*l.Size
	if l.Upright {
		long = l.Box.Height()
	}
	in := (long - width) * [...]float64{0, 0.5, 1}[l.Align]
	at := Point{l.Box.Low.X + in, l.Box.High.Y - down}
	if l.Upright {
		at = Point{l.Box.Low.X + down, l.Box.Low.Y + in}
	}
	return TextLine{text, at, width}
}

// Box is an upright rectangle.
type Box struct{ Low, High Point }

// Width and Height return the sizes of the box.
func (b Box) Width() float64 { return b.High.X - b.Low.X }

// Height returns how high the box is.
func (b Box) Height() float64 { return b.High.Y - b.Low.Y }

// Meets reports whether two boxes have an area in common.
func (b Box) Meets(c Box) bool {
	return b.Low.X < c.High.X && c.Low.X < b.High.X && b.Low.Y < c.High.Y && c.Low.Y < b.High.Y
}

// join returns the least box round both.
func (b Box) join(c Box) Box {
	return Box{
		Point{min(b.Low.X, c.Low.X), min(b.Low.Y, c.Low.Y)},
		Point{max(b.High.X, c.High.X), max(b.High.Y, c.High.Y)},
	}
}

// grow returns the box with a margin all round.
func (b Box) grow(by float64) Box {
	return Box{Point{b.Low.X - by, b.Low.Y - by}, Point{b.High.X + by, b.High.Y + by}}
}

func (b Box) corners() [4]Point {
	return [4]Point{b.Low, {b.High.X, b.Low.Y}, b.High, {b.Low.X, b.High.Y}}
}

// boxAt returns the box of a size whose upper left corner is at a point.
func boxAt(left, top, w, h float64) Box { return Box{Point{left, top - h}, Point{left + w, top}} }
