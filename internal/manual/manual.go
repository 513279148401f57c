// Package manual is what the service teaches whoever calls it: tasks, each with a
// request that runs, a glossary, the words of designs, the formats, the limits, a catalogue of problems
// and the changes, in English and German.
//
// The words are data in content; the answers shown are those that the service
// gives while the pages are made. The package answers no request and knows none
// but as texts.
package manual

import (
	"bytes"
	"embed"
	"encoding/json"
	"html/template"
	"strings"
)

//go:embed content page
var files embed.FS

// Languages are those that the pages are written in, the first without a prefix
// of its own.
var Languages = []string{"en", "de"}

// Words are the same in every language.
type Words struct{ En, De string }

// In returns the words in a language.
func (w Words) In(language string) string {
	if language == "de" {
		return w.De
	}
	return w.En
}

// Request is one that a page shows.
type Request struct {
	Method string // GET if empty
	Target string // path and query
	Media  string // of the body
	Body   string
	Says   Words // what it is, before it
}

// Answer is what the service said to a request.
type Answer struct {
	Status int
	Media  string
	Body   string
}

// Ask sends a request to the service.
type Ask func(Request) Answer

// Task is something that a caller wants to do.
type Task struct {
	ID       string
	Title    Words
	Text     []Words
	Requests []Request
}

// Term is an entry of the glossary.
type Term struct{ Term, Means Words }

// Part is one part of a design, with the words that it is written with.
type Part struct {
	ID          string
	Title, Text Words
	Words       []struct {
		Word, May string // what it may be, as JSON
		Means     Words
	}
}

// Problem is an entry of the catalogue: a request that has it, and one that is
// mended. A problem that no request can bring about says why.
type Problem struct {
	Code          string
	Title, Help   Words
	Status        int
	Asked, Mended *Request
	Comes         Words
}

// Tasks, Glossary, Design and Problems are read from the content once.
var (
	Tasks    = read[[]Task]("tasks")
	Glossary = read[[]Term]("glossary")
	Design   = read[[]Part]("design")
	Problems = read[map[string]Problem]("problems")
	labels   = read[map[string]Words]("labels")
	limits   = read[map[string]Words]("limits")
)

// read decodes a file of the content, which is our own.
func read[T any](name string) T {
	text, err := files.ReadFile("content/" + name + ".json")
	if err != nil {
		panic(err)
	}
	var v T
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&v); err != nil {
		panic(name + ": " + err.Error())
	}
	return v
}

// Style is the style sheet of the pages.
func Style() string {
	text, err := files.ReadFile("page/manual.css")
	if err != nil {
		panic(err)
	}
	return string(text)
}

// Page is one page of the manual.
type Page struct {
	Name     string // of its template
	Path     string // of the English page, such as /docs/glossary
	Language string
	Style    template.HTML // the line that loads the style sheet
	Data     any
	ask      Ask
}

// Address is that of a page in a language.
func Address(path, language string) string {
	if language == Languages[0] {
		return path
	}
	return "/" + language + path
}

// Write writes a page; what its requests are answered with comes from ask.
func Write(p Page, ask Ask) []byte {
	p.ask = ask
	functions := template.FuncMap{"inc": func(i int) int { return i + 1 }}
	t := template.Must(template.New("page").Funcs(functions).ParseFS(files, "page/*.html"))
	var b bytes.Buffer
	if err := t.ExecuteTemplate(&b, p.Name, &p); err != nil {
		panic(err) // template and data are our own
	}
	return b.Bytes()
}

// Say is a label in the page's language.
func (p *Page) Say(name string) string {
	words, ok := labels[name]
	if !ok {
		panic("no label " + name)
	}
	return words.In(p.Language)
}

// Of is the words in the page's language.
func (p *Page) Of(w Words) string { return w.In(p.Language) }

// To is the address of another page in the same language.
func (p *Page) To(path string) string { return Address(path, p.Language) }

// Other is the page in the other language, and OtherLanguage that.
func (p *Page) Other() string         { return Address(p.Path, p.OtherLanguage()) }
func (p *Page) OtherLanguage() string { return map[string]string{"en": "de", "de": "en"}[p.Language] }

// shown is how much of an answer a page shows.
const shown = 1800

// Answer asks, and cuts a long answer at a line.
func (p *Page) Answer(r Request) Answer {
	a := p.ask(r)
	a.Body = Shown(a)
	return a
}

// Shown is the part of an answer that a page shows: JSON is indented.
func Shown(a Answer) string {
	text := a.Body
	var indented bytes.Buffer
	if strings.Contains(a.Media, "json") && json.Indent(&indented, []byte(text), "", "  ") == nil {
		text = indented.String()
	}
	if len(text) <= shown {
		return strings.TrimRight(text, "\r\n")
	}
	cut := strings.LastIndexByte(text[:shown], '\n')
	if cut < 0 {
		cut = shown
	}
	return text[:cut] + "\n…"
}

// Command is the request as a command line of curl, an open client; the address
// of the service is in the variable CREASEFIT.
func (r Request) Command() string {
	quote := func(text string) string { return "'" + strings.ReplaceAll(text, "'", `'\''`) + "'" }
	if r.Media == "" {
		return `curl "$CREASEFIT"` + quote(r.Target)
	}
	return "curl -H " + quote("Content-Type: "+r.Media) + " --data-binary " + quote(r.Body) + " " + `"$CREASEFIT"` + quote(r.Target)
}

// IsLink reports whether a browser can follow the request.
func (r Request) IsLink() bool { return r.Media == "" && (r.Method == "" || r.Method == "GET") }

// Limit says what a limit is, by its name in the list of limits.
func (p *Page) Limit(name string) string { return limits[name].In(p.Language) }

// Exchange is a request of the page, to be shown with its answer; id and number
// tell it from the others.
func (p *Page) Exchange(r any, id string, number int) exchange {
	if pointer, ok := r.(*Request); ok {
		r = *pointer
	}
	return exchange{p, r.(Request), id + " " + string(rune('1'+number))}
}

type exchange struct {
	Page    *Page
	Request Request
	Number  string
}

// Rules are what holds for every call.
func (p *Page) Rules() []string {
	var rules []string
	for _, name := range [...]string{"units", "names", "cache", "cors", "busy", "cell"} {
		rules = append(rules, p.Say("rule-"+name))
	}
	return rules
}
