package api

import (
	"strconv"
	"unicode/utf8"
)

// appendInt appends a whole number.
func appendInt(dst []byte, n int) []byte { return strconv.AppendInt(dst, int64(n), 10) }

// appendString appends a JSON string. Characters that are unsafe inside HTML
// are escaped too, so that an answer can be pasted into a page.
func appendString(dst []byte, text string) []byte {
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

// appendDecimal appends a number rounded to the given places without trailing
// zeros, exponent or negative zero.
func appendDecimal(dst []byte, x float64, places int) []byte {
	from := len(dst)
	dst = strconv.AppendFloat(dst, x, 'f', places, 64)
	if places > 0 {
		for dst[len(dst)-1] == '0' {
			dst = dst[:len(dst)-1]
		}
		if dst[len(dst)-1] == '.' {
			dst = dst[:len(dst)-1]
		}
	}
	if string(dst[from:]) == "-0" {
		return append(dst[:from], '0')
	}
	return dst
}

// count writes a number of things.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// comma appends a comma before every entry of a list but the first.
func comma(dst []byte, i int) []byte {
	if i == 0 {
		return dst
	}
	return append(dst, ',')
}
