package web

import (
	"encoding/json"
	"html/template"
	"maps"
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/guide"
	"creasefit/internal/repertoire"
)

// ownPage is what the template of the page is filled with on which somebody
// describes an enclosure.
type ownPage struct {
	pathPage
	Fold Asset
}

// OwnPage returns that page in one of the languages.
func OwnPage(language string) []byte {
	w := &words{Language: language}
	if err := json.Unmarshal([]byte(source("words/own/"+language+".json")), &w.Page); err != nil {
		panic(err) // the files are our own
	}
	f := made()
	return rendered("page/own.html", &ownPage{pathPage{Words: &pathWords{words: w}, Other: otherThan(language), Style: f.OwnStyle, Script: f.Own}, f.Fold})
}

// Usual is what the page begins with, a stack of tasting cards.
func (*ownPage) Usual() map[string]string {
	return map[string]string{"width": "90", "height": "127", "thickness": "12", "caliper": "0.3", "fit": enclosure.UsualFit}
}

// Fits are the named fits.
func (*ownPage) Fits() []enclosure.NamedFit { return enclosure.NamedFits() }

// calledKey begins the keys of what the page calls designs, their panels and sizes.
const calledKey = "called "

// Data is what the script reads: the words, in which language they are, and what
// designs, panels and sizes are called in it.
func (p *ownPage) Data() template.JS {
	page, names, known := map[string]string{}, guide.Names(p.Words.Language), wordsOf(p.Words.Language)
	maps.Copy(names, known.Names)
	for _, k := range repertoire.Kinds() {
		if title := k.In(p.Words.Language).Title; title != k.Title {
			names[k.Title] = title
		}
	}
	for key, text := range p.Words.Page {
		if name, ok := strings.CutPrefix(key, calledKey); ok {
			names[name] = text
		} else {
			page[key] = text
		}
	}
	return template.JS(quoted(map[string]any{"page": page, "language": p.Words.Language, "names": names, "problems": known.Problems}))
}
