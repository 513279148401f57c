package api

import "encoding/json"

// jsonScanner walks over a text that is known to be valid JSON.
type jsonScanner struct {
	text []byte
	pos  int
}

// peek returns the first byte of the next token, or zero at the end.
func (s *jsonScanner) peek() byte {
	for s.pos < len(s.text) {
		switch s.text[s.pos] {
		case ' ', '\t', '\r', '\n':
			s.pos++
		default:
			return s.text[s.pos]
		}
	}
	return 0
}

// next takes one byte of punctuation.
func (s *jsonScanner) next() { s.pos++ }

// expect takes the given punctuation, which valid JSON has here.
func (s *jsonScanner) expect(c byte) {
	if s.peek() == c {
		s.pos++
	}
}

// str takes a string and decodes it.
func (s *jsonScanner) str() string { return unquote(s.skip()) }

// skip takes one value of any type and returns its text.
func (s *jsonScanner) skip() []byte {
	first := s.peek()
	from := s.pos
	switch first {
	case '"':
		s.pos = stringEnd(s.text, s.pos)
	case '{', '[':
		s.skipNested()
	default:
		for s.pos < len(s.text) && !endsScalar(s.text[s.pos]) {
			s.pos++
		}
	}
	return s.text[from:s.pos]
}

// skipNested takes an object or a list.
func (s *jsonScanner) skipNested() {
	deep := 0
	for s.pos < len(s.text) {
		switch s.text[s.pos] {
		case '"':
			s.pos = stringEnd(s.text, s.pos)
			continue
		case '{', '[':
			deep++
		case '}', ']':
			deep--
		}
		s.pos++
		if deep == 0 {
			return
		}
	}
}

// endsScalar reports whether the byte cannot belong to a number or a word.
func endsScalar(c byte) bool {
	switch c {
	case ',', '}', ']', ':', ' ', '\t', '\r', '\n':
		return true
	default:
		return false
	}
}

// stringEnd returns the offset after the string that begins at from, or the
// end of the text if it never ends.
func stringEnd(text []byte, from int) int {
	for i := from + 1; i < len(text); i++ {
		switch text[i] {
		case '\\':
			i++
		case '"':
			return i + 1
		}
	}
	return len(text)
}

// unquote decodes a JSON string with its quotes.
func unquote(quoted []byte) string {
	plain := quoted[1 : len(quoted)-1]
	for _, c := range plain {
		if c == '\\' {
			var text string
			// The scanner only sees valid JSON, so there is no error to report.
			_ = json.Unmarshal(quoted, &text)
			return text
		}
	}
	return string(plain)
}
