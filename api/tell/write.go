package tell

import (
	"math"
	"strconv"
	"unicode/utf8"
)

// AppendString appends a JSON string. Characters that are unsafe inside HTML
// are escaped too, so that an answer can be pasted into a page.
func AppendString(dst []byte, text string) []byte {
	dst = append(dst, '"')
	from := 0
	for i := 0; i < len(text); {
		c := text[i]
		if c < utf8.RuneSelf {
			if c < ' ' || c == '"' || c == '\\' || c == '<' || c == '>' {
				dst = appendEscaped(append(dst, text[from:i]...), c)
				from = i + 1
			}
			i++
			continue
		}
		r, size := utf8.DecodeRuneInString(text[i:])
		if r == utf8.RuneError && size == 1 {
			dst = append(append(dst, text[from:i]...), "\ufffd"...)
			from = i + 1
		}
		i += size
	}
	return append(append(dst, text[from:]...), '"')
}

// appendEscaped appends one ASCII character as an escape.
func appendEscaped(dst []byte, c byte) []byte {
	const hex = "0123456789abcdef"
	if c == '"' || c == '\\' {
		return append(dst, '\\', c)
	}
	return append(dst, '\\', 'u', '0', '0', hex[c>>4], hex[c&15])
}

// AppendNumber appends a number without exponent or negative zero. Most numbers
// of answers are whole millionths, such as millimetres to the nanometre, which
// are written as whole numbers are. Not a number and infinity are none of ours.
func AppendNumber(dst []byte, x float64) []byte {
	const most = 1_000_000_000 // beyond it a float64 has no millionths
	millionths := math.Round(x * 1_000_000)
	if x < -most || x > most || millionths/1_000_000 != x {
		return strconv.AppendFloat(dst, x, 'f', -1, 64)
	}
	n := int64(millionths)
	if n < 0 {
		dst, n = append(dst, '-'), -n
	}
	dst = strconv.AppendInt(dst, n/1_000_000, 10)
	part := n % 1_000_000
	if part == 0 {
		return dst
	}
	point := len(dst)
	dst = strconv.AppendInt(dst, 1_000_000+part, 10) // a digit for the point, and six
	dst[point] = '.'
	for dst[len(dst)-1] == '0' {
		dst = dst[:len(dst)-1]
	}
	return dst
}

// number writes a number as AppendNumber does.
func number(x float64) string { return string(AppendNumber(nil, x)) }
