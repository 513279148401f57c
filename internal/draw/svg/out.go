package svg

import (
	"unicode/utf8"

	"creasefit/internal/draw"
)

// out is the growing file.
type out struct{ b []byte }

func (o *out) text(s string) { o.b = append(o.b, s...) }

// number writes a decimal of at most so many places, without trailing zeros.
func (o *out) number(v float64, places int) { o.b = draw.AppendDecimal(o.b, v, places) }

func (o *out) point(p draw.Point, places int) {
	o.number(p.X, places)
	o.text(" ")
	o.number(p.Y, places)
}

// flag writes a flag of an arc and the space after it.
func (o *out) flag(set bool) {
	if set {
		o.text("1 ")
	} else {
		o.text("0 ")
	}
}

// colour writes a colour in hexadecimal.
func (o *out) colour(c draw.Colour) {
	const digits = "0123456789abcdef"
	o.b = append(o.b, '#', digits[c.R>>4], digits[c.R&15], digits[c.G>>4], digits[c.G&15], digits[c.B>>4], digits[c.B&15])
}

// escaped writes text so that it may stand between tags. What XML 1.0 does not
// allow in a document is left out.
func (o *out) escaped(s string) {
	for _, r := range s {
		switch {
		case r == '&':
			o.text("&amp;")
		case r == '<':
			o.text("&lt;")
		case r == '>':
			o.text("&gt;")
		case r < ' ' || r == utf8.RuneError || r == 0xfffe || r == 0xffff:
		default:
			o.b = utf8.AppendRune(o.b, r)
		}
	}
}
