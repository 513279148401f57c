package ask

import (
	"bytes"
	"encoding/json"
	"iter"
	"strings"
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
		for s.pos < len(s.Text) && strings.IndexByte(",}]: \t\r\n", s.Text[s.pos]) < 0 {
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
	if bytes.IndexByte(quoted, '\\') < 0 {
		return string(quoted[1 : len(quoted)-1])
	}
	var text string
	_ = json.Unmarshal(quoted, &text) // it is valid JSON
	return text
}

// Members are the members of a valid JSON object, none of anything else.
func Members(object []byte) iter.Seq2[string, []byte] { return members(object, Unquote) }

// members are those of an object, each under what is made of its quoted name.
func members(object []byte, named func(quoted []byte) string) iter.Seq2[string, []byte] {
	return func(yield func(string, []byte) bool) {
		s := Scanner{Text: object}
		if s.Peek() != '{' {
			return
		}
		for s.Next(); s.Peek() != '}'; s.Expect(',') {
			name := named(s.Skip())
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
