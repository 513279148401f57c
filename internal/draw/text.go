package draw

import (
	"strings"
	"sync"

	"golang.org/x/image/font"
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

// Characters whose widths are known: Latin, Greek and Cyrillic letters, and
// punctuation.
const (
	letters          = 0x530
	punctuation      = 0x2000
	punctuationEnd   = 0x21a0 // with fractions and arrows
	knownCharacters  = letters + punctuationEnd - punctuation
	widestOfAllOther = 1.0 // of the size
)

// slot returns where the width of a character is kept, -1 for none.
func slot(r rune) int {
	switch {
	case r >= 0 && r < letters:
		return int(r)
	case r >= punctuation && r < punctuationEnd:
		return letters + int(r-punctuation)
	default:
		return -1
	}
}

// advances holds the widths of the known characters, as parts of the size.
var advances = sync.OnceValue(func() *[knownCharacters]float64 {
	parsed, err := sfnt.Parse(Font())
	if err != nil {
		panic("draw: the built-in font cannot be read: " + err.Error())
	}
	var widths [knownCharacters]float64
	var buffer sfnt.Buffer
	for r := rune(0); r < punctuationEnd; r++ {
		at := slot(r)
		if at < 0 {
			continue
		}
		index, err := parsed.GlyphIndex(&buffer, r)
		if err != nil {
			continue
		}
		if advance, err := parsed.GlyphAdvance(&buffer, index, fixed.I(1000), font.HintingNone); err == nil {
			widths[at] = float64(advance) / 64 / 1000
		}
	}
	return &widths
})

// Width returns how wide a line of text is at a size, both in millimetres.
func Width(text string, size float64) float64 { return wider(0, text) * size }

// wider adds the characters of a text to a width, in sizes of letters.
func wider(sum float64, text string) float64 {
	table := advances()
	for _, r := range text {
		if at := slot(r); at >= 0 {
			sum += table[at]
		} else {
			sum += widestOfAllOther
		}
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

// boxAt returns the box of a size whose upper left corner is at a point.
func boxAt(left, top, w, h float64) Box { return Box{Point{left, top - h}, Point{left + w, top}} }
