package guide

import (
	"bytes"
	"encoding/json"
	"strconv"
	"strings"
)

// JSON writes the guide as one JSON object. Its texts have plain spaces only.
func (g *Guide) JSON() ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(g)
	return spaced(b.Bytes()), err
}

// Text writes the guide as plain text in lines of at most 72 characters.
func (g *Guide) Text() []byte {
	var t plain
	t.heading(g.Title, "=")
	t.paragraph("", g.Summary)
	if len(g.Warnings) > 0 {
		t.list(g.Labels.Warnings, warningTexts(g.Warnings))
	}
	t.list(g.Labels.Materials, itemTexts(g.Materials))
	t.list(g.Labels.Tools, itemTexts(g.Tools))
	if cuts := g.Cuts(); cuts != nil {
		t.list(g.Labels.CutList, cutTexts(cuts))
	}
	t.heading(g.Labels.Steps, "-")
	for i := range g.Steps {
		t.step(i+1, &g.Steps[i])
	}
	t.list(g.Labels.Cautions, g.Cautions)
	if len(g.FitNotes) > 0 {
		t.list(g.Labels.FitNotes, g.FitNotes)
	}
	return ended(t.Bytes())
}

// Markdown writes the guide as Markdown, as far as CommonMark and the tables
// of its common extension go. link gives the address of a picture of each step
// of the order of work; nil for none.
func (g *Guide) Markdown(link func(step int) string) []byte {
	var b bytes.Buffer
	say := func(parts ...string) {
		for _, p := range parts {
			b.WriteString(p)
		}
	}
	list := func(label string, texts []string) {
		if len(texts) > 0 {
			say("## ", marked(label), "\n\n- ", strings.Join(markedAll(texts), "\n- "), "\n\n")
		}
	}
	l := &g.Labels
	say("# ", marked(g.Title), "\n\n", marked(g.Summary), "\n\n")
	list(l.Warnings, warningTexts(g.Warnings))
	list(l.Materials, itemTexts(g.Materials))
	list(l.Tools, itemTexts(g.Tools))
	for i, c := range g.Cuts() {
		if i == 0 {
			say("## ", marked(l.CutList), "\n\n| ", l.Piece, " | ", l.Quantity, " | ", l.Width, " | ", l.Height, " |\n| --- | ---: | ---: | ---: |\n")
		}
		say("| ", marked(c.Piece), " | ", strconv.Itoa(c.Quantity), " | ", c.Width.Text, " | ", c.Height.Text, " |\n")
		if i == len(g.CutList)-1 {
			say("\n")
		}
	}
	say("## ", marked(l.Steps), "\n\n")
	for i := range g.Steps {
		g.Steps[i].markdown(say, i+1, link)
	}
	list(l.Cautions, g.Cautions)
	list(l.FitNotes, g.FitNotes)
	return ended(b.Bytes())
}

// markdown says a step as an item of a numbered list.
func (s *Step) markdown(say func(...string), number int, link func(step int) string) {
	say(strconv.Itoa(number), ". **", marked(s.Title), ".** ", marked(s.Text), "\n")
	for _, line := range s.Lines {
		say("    - ", marked(line), "\n")
	}
	if s.After != "" {
		say("\n    ", marked(s.After), "\n")
	}
	for _, n := range s.Order {
		if link != nil {
			say("\n    ![", marked(s.Title), "](", link(n), ")\n")
		}
	}
	say("\n")
}

// ended ends a text with one line feed.
func ended(text []byte) []byte { return append(bytes.TrimRight(spaced(text), "\n"), '\n') }

// spaced turns the no-break spaces into plain ones.
func spaced(text []byte) []byte { return bytes.ReplaceAll(text, []byte(noBreak), []byte(" ")) }

// marked keeps a text from being read as Markdown.
func marked(text string) string {
	return strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "<", `\<`, "[", `\[`, "|", `\|`).Replace(text)
}

func markedAll(texts []string) []string {
	all := make([]string, len(texts))
	for i, text := range texts {
		all[i] = marked(text)
	}
	return all
}

func itemTexts(items []Item) []string {
	texts := make([]string, len(items))
	for i, item := range items {
		texts[i] = item.Text
	}
	return texts
}

func warningTexts(warnings []Warning) []string {
	texts := make([]string, len(warnings))
	for i, warning := range warnings {
		texts[i] = warning.Text
	}
	return texts
}

func cutTexts(blanks []Blank) []string {
	texts := make([]string, len(blanks))
	for i, b := range blanks {
		texts[i] = strconv.Itoa(b.Quantity) + " × " + b.Piece + ": " + b.Width.Text + " × " + b.Height.Text
	}
	return texts
}
