package guide

import (
	"bytes"
	"embed"
	"encoding/json"
	html "html/template"
	"strings"
	"text/template"
	"unicode/utf8"
)

//go:embed guide.txt guide.md guide.html
var pages embed.FS

// The pages as templates, parsed once. They call functions that a template lacks.
var (
	functions = template.FuncMap{"inc": func(i int) int { return i + 1 }, "wrap": wrap, "rule": rule, "md": marked, "json": literal}
	texts     = template.Must(template.New("").Funcs(functions).ParseFS(pages, "guide.txt", "guide.md"))
	page      = html.Must(html.New("").Funcs(functions).ParseFS(pages, "guide.html"))
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
func (g *Guide) Text() []byte { return written("guide.txt", g) }

// Markdown writes the guide as Markdown, as far as CommonMark and the tables
// of its common extension go. link gives the address of a picture of each step
// of the order of work; nil for none.
func (g *Guide) Markdown(link func(step int) string) []byte {
	return written("guide.md", linked{g, Pictures{Link: link}})
}

// HTML writes the guide as one page that needs nothing else: semantic,
// printable, light or dark as the reader has it, with the same instructions as
// a HowTo of schema.org in JSON-LD, which has no duration: how long a hand takes is
// not known. The figure is set above the steps and each picture into its step.
func (g *Guide) HTML(p Pictures) ([]byte, error) {
	var b bytes.Buffer
	err := page.ExecuteTemplate(&b, "guide.html", linked{g, p})
	return b.Bytes(), err
}

// Pictures are what a page shows of the work: SVG text that the project drew
// itself, which is set into the page as it is.
type Pictures struct {
	Figure []byte                   // the pattern; nil for none
	Step   func(steps []int) []byte // steps of the order of work, from 1, that are told as one; nil for none
	Dark   string                   // style rules that make them light on dark
	Link   func(step int) string    // the address of such a picture; nil for none
}

// linked is a guide with its pictures.
type linked struct {
	*Guide
	pictures Pictures
}

// Link is the address of the picture of a step of the order of work; "" for none.
func (l linked) Link(step int) string {
	if l.pictures.Link == nil {
		return ""
	}
	return l.pictures.Link(step)
}

// Image is the address of the picture of the last thing that a step does; "" for none.
func (l linked) Image(s Step) string {
	if len(s.Order) == 0 {
		return ""
	}
	return l.Link(s.Order[len(s.Order)-1])
}

// Picture is that of a step; "" for none.
func (l linked) Picture(s Step) html.HTML {
	if l.pictures.Step == nil || len(s.Order) == 0 {
		return ""
	}
	return html.HTML(l.pictures.Step(s.Order))
}

// Drawn is the pattern, and Dark the rules for pictures on dark pages.
func (l linked) Drawn() html.HTML { return html.HTML(l.pictures.Figure) }
func (l linked) Dark() html.CSS   { return html.CSS(l.pictures.Dark) }

// literal writes a value as JSON.
func literal(v any) (html.JS, error) {
	text, err := json.Marshal(v)
	return html.JS(text), err
}

// written fills a text in and ends it with one line feed.
func written(name string, data any) []byte {
	var b bytes.Buffer
	if err := texts.ExecuteTemplate(&b, name, data); err != nil {
		panic(err) // templates and guides are our own
	}
	return append(bytes.TrimRight(spaced(b.Bytes()), "\n"), '\n')
}

// spaced turns the no-break spaces into plain ones.
func spaced(text []byte) []byte { return bytes.ReplaceAll(text, []byte(noBreak), []byte(" ")) }

// marked keeps a text from being read as Markdown.
func marked(text string) string { return marks.Replace(text) }

var marks = strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "<", `\<`, "[", `\[`, "|", `\|`)

// rule is a heading of plain text, underlined.
func rule(text, line string) string {
	return text + "\n" + strings.Repeat(line, utf8.RuneCountInString(text)) + "\n\n"
}

// columns is the width of plain text.
const columns = 72

// wrap breaks a text into lines of at most so many columns; a line break takes the
// place of a plain space and never of a no-break one.
func wrap(first, margin, text string) string {
	var b strings.Builder
	line, used := first, 0
	for word := range strings.SplitSeq(text, " ") {
		if used > 0 && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > columns {
			b.WriteString(line + "\n")
			line, used = margin, 0
		}
		if used > 0 {
			line += " "
		}
		line += word
		used++
	}
	return b.String() + line + "\n"
}
