package web

import (
	"html/template"
	"regexp"
	"slices"

	"creasefit/internal/bench"
	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/guide"
	"creasefit/internal/repertoire"
	"creasefit/internal/stock"
)

// pathPage is what the template of the workbench is filled with.
type pathPage struct {
	Words         *pathWords
	Other         string // the other language
	Style, Script Asset
}

// pathWords are the words of a page with the presets as it offers them.
type pathWords struct {
	*words
	Papers, Sheets, Benches, Fits, Kinds []preset
	Posts                                []postWords
}

// Title says the title of a preset.
func (w *pathWords) Title(title string) string { return w.title(title) }

// Say is one of the page's texts.
func (p *pathPage) Say(key string) string {
	text, ok := p.Words.Page[key]
	if !ok {
		panic("the pages have no words for " + key) // a test fills every page in
	}
	return text
}

// fragment is a piece of a sentence: a text, or the name of a field with the stop or comma
// after it, which is to stay with it.
type fragment struct{ Text, Name, After string }

var fieldMark = regexp.MustCompile(`\{(\w+)\}([.,]?)`)

// Sentence takes a sentence apart where its fields stand.
func (p *pathPage) Sentence(key string) []fragment {
	text, from := p.Say(key), 0
	var list []fragment
	for _, at := range fieldMark.FindAllStringSubmatchIndex(text, -1) {
		list = append(list, fragment{Text: text[from:at[0]]}, fragment{Name: text[at[2]:at[3]], After: text[at[4]:at[5]]})
		from = at[1]
	}
	return append(list, fragment{Text: text[from:]})
}

// Wishes are the wishes that can be ticked.
func (p *pathPage) Wishes() []preset {
	return offered([]string{"reusable", "no-glue", "one-sheet", "few-cuts"}, func(name string) (string, string) { return name, p.Say(name) })
}

// Data is what the script reads: the words, the things, the posts and where the
// element lies.
func (p *pathPage) Data() template.JS {
	return template.JS(quoted(map[string]any{
		"words": p.Words.words, "things": p.Words.things(), "posts": p.Words.Posts, "kinds": p.Words.Kinds, "designs": own.KindNames(), "round": rolled(), "parts": guide.Names(p.Words.Language),
		"element": map[string]string{"path": made().Solver.Path, "pinned": made().Solver.Pinned, "integrity": made().Solver.Integrity},
		"fold":    map[string]string{"pinned": made().Fold.Pinned, "integrity": made().Fold.Integrity},
	}))
}

// rolled names the kinds that can be rolled round what is round.
func rolled() (names []string) {
	for _, k := range repertoire.Kinds() {
		if k.Rolls() {
			names = append(names, k.Name)
		}
	}
	return names
}

// Workbench returns the page that leads from a thing to what goes round it, in one
// of the languages.
func Workbench(language string) []byte {
	w := wordsOf(language)
	said := func(name string) (string, string) { return name, w.Page[name] } // in a sentence
	all := &pathWords{
		words: w, Posts: w.posts(), Benches: offered(bench.Names(), said),
		Fits:   offered(enclosure.NamedFits(), func(f enclosure.NamedFit) (string, string) { return said(f.Name) }),
		Papers: offered(stock.All(), func(s stock.Stock) (string, string) { return s.Name, w.title(s.Title) }),
		Sheets: offered(stock.Sheets(), func(s stock.Sheet) (string, string) { return s.Name, w.title(s.Title) }),
		Kinds:  offered(repertoire.Kinds(), func(k *enclosure.Kind) (string, string) { return k.Name, k.In(language).Title }),
	}
	return rendered("page/path.html", &pathPage{Words: all, Other: otherThan(language), Style: made().Style, Script: made().Path})
}

// otherThan is the other one of two languages.
func otherThan(language string) string {
	all := Languages()
	return all[1-slices.Index(all, language)]
}
