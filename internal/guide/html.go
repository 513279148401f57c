package guide

import (
	"bytes"
	_ "embed"
	"html/template"
	"sync"
)

//go:embed guide.html
var page string

// parsed is the page as a template, parsed once.
var parsed = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("guide").Funcs(template.FuncMap{"inc": func(i int) int { return i + 1 }}).Parse(page))
})

// HTML writes the guide as one page that needs nothing else: semantic,
// printable, light or dark as the reader has it, with the same instructions as
// a schema.org HowTo in JSON-LD. figure is SVG text that the project drew
// itself, set above the steps as it is; nil for none.
func (g *Guide) HTML(figure []byte) ([]byte, error) {
	var b bytes.Buffer
	err := parsed().Execute(&b, struct {
		*Guide
		HowTo howTo
		Drawn template.HTML
	}{g, g.howTo(), template.HTML(figure)})
	return b.Bytes(), err
}

// howTo is the guide in the words of schema.org. It has no duration: how long
// a hand takes is not known.
type howTo struct {
	Context     string   `json:"@context"`
	Type        string   `json:"@type"`
	Language    string   `json:"inLanguage"`
	Name        string   `json:"name"`
	Description string   `json:"description"`
	Supply      []needed `json:"supply"`
	Tool        []needed `json:"tool"`
	Step        []done   `json:"step"`
}

// needed is a HowToSupply or a HowToTool.
type needed struct {
	Type string `json:"@type"`
	Name string `json:"name"`
}

// done is a HowToStep.
type done struct {
	Type     string `json:"@type"`
	Position int    `json:"position"`
	Name     string `json:"name"`
	Text     string `json:"text"`
}

func (g *Guide) howTo() howTo {
	h := howTo{
		Context: "https://schema.org", Type: "HowTo", Language: g.Language, Name: g.Title, Description: g.Summary,
		Supply: list("HowToSupply", g.Materials), Tool: list("HowToTool", g.Tools),
	}
	for i := range g.Steps {
		h.Step = append(h.Step, done{"HowToStep", i + 1, g.Steps[i].Title, g.Steps[i].Whole()})
	}
	return h
}

func list(kind string, items []Item) []needed {
	all := make([]needed, len(items))
	for i, item := range items {
		all[i] = needed{kind, item.Text}
	}
	return all
}
