package ask

import (
	"encoding/json"
	"iter"
)

// Scanner walks over a text that is known to be valid JSON.
type Scanner struct {
	Text []byte
	pos  int
}

// Peek returns the first byte of the next token, or zero at the end.
func (s *Scanner) Peek() byte {
	for s.pos < len(s.Text) {
		switch s.Text[s.pos] {
		case ' ', '\t', '\r', '\n':
			s.pos++
		default:
			return s.Text[s.pos]
		}
	}
	return 0
}

// Next takes one byte of punctuation.
func (s *Scanner) Next() { s.pos++ }

// Expect takes the given punctuation, which valid JSON has here.
func (s *Scanner) Expect(c byte) {
	if s.Peek() == c {
		s.pos++
	}
}

// Str takes a string and decodes it.
func (s *Scanner) Str() string { return Unquote(s.Skip()) }

// Skip takes one value of any type and returns its text.
func (s *Scanner) Skip() []byte {
	first := s.Peek()
	from := s.pos
	switch first {
	case '"':
		s.pos = stringEnd(s.Text, s.pos)
	case '{', '[':
		s.skipNested()
	default:
		for s.pos < len(s.Text) && !endsScalar(s.Text[s.pos]) {
			s.pos++
		}
	}
	return s.Text[from:s.pos]
}

// skipNested takes an object or a list.
func (s *Scanner) skipNested() {
	deep := 0
	for s.pos < len(s.Text) {
		switch s.Text[s.pos] {
		case '"':
			s.pos = stringEnd(s.Text, s.pos)
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

// Unquote decodes a JSON string with its quotes.
func Unquote(quoted []byte) string {
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

// Members are the members of a valid JSON object, none of anything else.
func Members(object []byte) iter.Seq2[string, []byte] {
	return func(yield func(string, []byte) bool) {
		s := Scanner{Text: object}
		if s.Peek() != '{' {
			return
		}
		for s.Next(); s.Peek() != '}'; s.Expect(',') {
			name := s.Str()
			s.Expect(':')
			if !yield(name, s.Skip()) {
				return
			}
		}
	}
}

// Items are the items of a valid JSON list, none of anything else.
func Items(list []byte) iter.Seq[[]byte] {
	return func(yield func([]byte) bool) {
		s := Scanner{Text: list}
		if s.Peek() != '[' {
			return
		}
		for s.Next(); s.Peek() != ']'; s.Expect(',') {
			if !yield(s.Skip()) {
				return
			}
		}
	}
}

// Member returns a member of a valid JSON object as text, empty if it has none.
func Member(object []byte, name string) string {
	for is, member := range Members(object) {
		switch {
		case is != name:
		case member[0] == '"':
			return Unquote(member)
		default:
			return string(member)
		}
	}
	return ""
}
