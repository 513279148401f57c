package web

import (
	"encoding/json"
	"slices"
	"strings"

	"creasefit/internal/contents"
	"creasefit/internal/guide"
	"creasefit/internal/mail"
	"creasefit/internal/measure"
)

// words is what the pages say in a language. What has no entry in problems,
// reasons, titles, names or choices stays as the service says it.
type words struct {
	Language string            `json:"language"` // BCP 47
	Decimal  string            `json:"decimal"`
	Units    map[string]string `json:"units"`
	Page     map[string]string `json:"page"`
	Problems map[string]string `json:"problems"` // by code
	Reasons  map[string]string `json:"reasons"`  // why a kind does not work, by what the service says
	Titles   map[string]string `json:"titles"`   // of presets
	Names    map[string]string `json:"names"`    // of parameters
	Choices  map[string]string `json:"choices"`  // of parameters
}

// wordsOf reads the words of a language, which there is a file of.
func wordsOf(language string) *words {
	w := &words{}
	if err := json.Unmarshal([]byte(source("words/"+language+".json")), w); err != nil {
		panic(err) // the files are our own
	}
	return w
}

// title says the title of a preset.
func (w *words) title(title string) string {
	if said, ok := w.Titles[title]; ok {
		return said
	}
	return title
}

// preset is one named thing, paper or sheet as a page offers it.
type preset struct {
	Name  string `json:"name"`
	Title string `json:"title"`
	Group string `json:"-"`
	Size  string `json:"size,omitempty"` // width x height x thickness, in its unit, as far as known
}

// things are the contents by name.
func (w *words) things() []preset {
	var list []preset
	for _, item := range contents.All() {
		finest := measure.Finest(item.Unit)
		p := preset{Name: item.Name, Title: w.title(item.Title), Size: finest.Format(item.Width) + "|" + finest.Format(item.Height) + "|"}
		if !item.Thickness.IsZero() {
			p.Size += item.Thickness.Decimal(item.Unit, 3)
		}
		if group, title, ok := strings.Cut(p.Title, ": "); ok {
			p.Group, p.Title = group, title
		}
		list = append(list, p)
	}
	return list
}

// offered lists what a page offers of some things, as each is called.
func offered[T any](things []T, of func(T) (name, title string)) []preset {
	list := make([]preset, len(things))
	for i, thing := range things {
		list[i].Name, list[i].Title = of(thing)
	}
	return list
}

// posts are the posts by name, each with what it calls its classes.
func (w *words) posts() []postWords {
	var list []postWords
	for _, p := range mail.Posts() {
		title, _, _ := strings.Cut(p.Title, " (")
		q := postWords{Name: p.Name, Title: w.title(title), Classes: map[string]string{}}
		for _, c := range p.Classes {
			q.Classes[c.Name] = c.Title
		}
		list = append(list, q)
	}
	return list
}

// postWords is what a post and its classes are called.
type postWords struct {
	Name    string            `json:"name"`
	Title   string            `json:"title"`
	Classes map[string]string `json:"classes"`
}

// Languages are those that the pages are written in, the first the usual one.
func Languages() []string { return slices.Clone(guide.Languages()) }
