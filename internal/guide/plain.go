package guide

import (
	"bytes"
	"strconv"
	"strings"
	"unicode/utf8"
)

// columns is the width of plain text.
const columns = 72

// plain is plain text while it is written.
type plain struct{ bytes.Buffer }

// heading writes a line and underlines it.
func (t *plain) heading(text, rule string) {
	t.WriteString(text + "\n" + strings.Repeat(rule, utf8.RuneCountInString(text)) + "\n\n")
}

// list writes a heading and a list.
func (t *plain) list(label string, texts []string) {
	t.heading(label, "-")
	for _, text := range texts {
		t.wrap("- ", "  ", text)
	}
	t.WriteByte('\n')
}

// paragraph writes text with the same margin on every line.
func (t *plain) paragraph(margin, text string) {
	t.wrap(margin, margin, text)
	t.WriteByte('\n')
}

// step writes a numbered step.
func (t *plain) step(number int, s *Step) {
	first := strconv.Itoa(number) + ". "
	margin := strings.Repeat(" ", len(first))
	t.WriteString(first + s.Title + "\n")
	if s.Text != "" {
		t.wrap(margin, margin, s.Text)
	}
	for _, line := range s.Lines {
		t.wrap(margin+"- ", margin+"  ", line)
	}
	if s.After != "" {
		t.wrap(margin, margin, s.After)
	}
	t.WriteByte('\n')
}

// wrap writes text in lines of at most so many columns; a line break takes the
// place of a plain space and never of a no-break one.
func (t *plain) wrap(first, margin, text string) {
	line := first
	used := 0
	for _, word := range strings.Split(text, " ") {
		if used > 0 && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > columns {
			t.WriteString(line + "\n")
			line, used = margin, 0
		}
		if used > 0 {
			line += " "
		}
		line += word
		used++
	}
	t.WriteString(line + "\n")
}
