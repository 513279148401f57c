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
// a schema.org HowTo in JSON-LD. The figure is set above the steps and each
// picture into its step.
func (g *Guide) HTML(p Pictures) ([]byte, error) {
	drawn := make([]template.HTML, len(g.Steps))
	for i := range g.Steps {
		if p.Step != nil && len(g.Steps[i].Order) > 0 {
			drawn[i] = template.HTML(p.Step(g.Steps[i].Order))
		}
	}
	var b bytes.Buffer
	err := parsed().Execute(&b, struct {
		*Guide
		HowTo    howTo
		Drawn    template.HTML
		Pictures []template.HTML
		Dark     template.CSS
	}{g, g.howTo(p.Link), template.HTML(p.Figure), drawn, template.CSS(p.Dark)})
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
	Image    string `json:"image,omitempty"` // of the last thing that the step does
}

func (g *Guide) howTo(link func(int) string) howTo {
	h := howTo{
		Context: "https://schema.org", Type: "HowTo", Language: g.Language, Name: g.Title, Description: g.Summary,
		Supply: list("HowToSupply", g.Materials), Tool: list("HowToTool", g.Tools),
	}
	for i := range g.Steps {
		s := &g.Steps[i]
		step := done{Type: "HowToStep", Position: i + 1, Name: s.Title, Text: s.Whole()}
		if n := len(s.Order); n > 0 && link != nil {
			step.Image = link(s.Order[n-1])
		}
		h.Step = append(h.Step, step)
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
