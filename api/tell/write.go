package tell

import (
	"encoding/binary"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
	"unsafe"
)

// plain are the characters that a string has as they are.
var plain = func() (is [256]bool) {
	for c := ' '; c < utf8.RuneSelf; c++ {
		is[c] = !strings.ContainsRune(`"\<>`, c)
	}
	return is
}()

// AppendString appends a JSON string. Characters that are unsafe inside HTML
// are escaped too, so that an answer can be pasted into a page.
func AppendString(dst []byte, text string) []byte {
	dst = append(dst, '"')
	for {
		i := plainWords(text)
		for i < len(text) && plain[text[i]] {
			i++
		}
		if dst = append(dst, text[:i]...); i == len(text) {
			return append(dst, '"')
		}
		r, size := utf8.DecodeRuneInString(text[i:])
		if r < utf8.RuneSelf {
			dst = appendEscaped(dst, text[i])
		} else {
			dst = utf8.AppendRune(dst, r) // U+FFFD for what is no character
		}
		text = text[i+size:]
	}
}

// plainWords is how far a text is plain, in whole words of eight characters: a word is
// looked at as fast as a character. The highest bit of one that is too small, or the same
// as one that it is held against, is set when that is taken off (Warren, Hacker's Delight,
// 6-1, from memory); what it borrows from the next one stops at no word that is plain.
func plainWords(text string) (n int) {
	const each, high = 0x0101010101010101, 0x8080808080808080
	for bytes := unsafe.Slice(unsafe.StringData(text), len(text)); len(bytes)-n >= 8; n += 8 {
		w := binary.LittleEndian.Uint64(bytes[n:])
		quote, slash, angle := w^'"'*each, w^'\\'*each, (w|2*each)^'>'*each // with its second bit set < is >
		if (w|(w-' '*each)|(quote-each)|(slash-each)|(angle-each))&high != 0 {
			break
		}
	}
	return n
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
	if whole := int64(x); float64(whole) == x && whole > -most && whole < most {
		return strconv.AppendInt(dst, whole, 10)
	}
	millionths := math.Round(x * 1_000_000)
	if x <= -most || x >= most || millionths/1_000_000 != x {
		return strconv.AppendFloat(dst, x, 'f', -1, 64)
	}
	n := int64(millionths)
	if n < 0 {
		dst, n = append(dst, '-'), -n
	}
	dst = strconv.AppendInt(dst, n/1_000_000, 10)
	part := uint32(n % 1_000_000)
	digit := func(tens uint32) byte { return byte('0' + part/tens%10) }
	dst = append(dst, '.', digit(100_000), digit(10_000), digit(1000), digit(100), digit(10), digit(1))
	for dst[len(dst)-1] == '0' {
		dst = dst[:len(dst)-1]
	}
	return dst
}

// number writes a number as AppendNumber does.
func number(x float64) string { return string(AppendNumber(nil, x)) }
