package guide

import (
	"embed"
	"encoding/json"
	"io/fs"
	"slices"
	"strings"
	"sync"

	"golang.org/x/text/feature/plural"
	"golang.org/x/text/language"
)

// catalogue is all words of one language: one file. Names that it
// does not list are written as the pattern has them, in English.
type catalogue struct {
	Language string            `json:"language"`
	Decimal  string            `json:"decimal"` // the decimal mark
	Units    map[string]string `json:"units"`   // by the unit's name on the wire

	// Cases are the forms that a text may ask of a name, {of:dat}, and how
	// each is made of a name that is not listed. Numbered says the same of
	// names that end in a number, if they take more than the bare name.
	Cases    map[string]string `json:"cases"`
	Numbered map[string]string `json:"numbered"`

	Names    map[string]map[string]string `json:"names"`    // of pieces, panels, cuts; by case, "" the bare name
	Many     map[string]*message          `json:"many"`     // several parts {n} by the last English word of their names, as an object
	Drawing  map[string]string            `json:"drawing"`  // by the English words of a drawing, of units too, and of "."
	Joined   map[string]*message          `json:"joined"`   // names {of} with a joint behind: " height"; or between {of} and {on}: " on the "
	Warnings map[string]*message          `json:"warnings"` // by code; a warning without one stays as it is
	Messages map[string]*message          `json:"messages"`
	Labels   Labels                       `json:"labels"`

	tag language.Tag
}

//go:embed catalogues/*.json
var files embed.FS

// catalogues returns all catalogues, English first, then by name.
var catalogues = sync.OnceValue(func() []*catalogue {
	names, err := fs.Glob(files, "catalogues/*.json")
	must(err)
	all := make([]*catalogue, 0, len(names))
	for _, name := range names {
		text, err := files.ReadFile(name)
		must(err)
		c := &catalogue{}
		must(json.Unmarshal(text, c))
		c.tag = language.MustParse(c.Language)
		all = append(all, c)
	}
	i := slices.IndexFunc(all, func(c *catalogue) bool { return c.Language == "en" })
	all[0], all[i] = all[i], all[0]
	slices.SortFunc(all[1:], func(a, b *catalogue) int { return strings.Compare(a.Language, b.Language) })
	return all
})

// must stops the program for an embedded file that cannot be read, which a
// test would have found.
func must(err error) {
	if err != nil {
		panic("guide: " + err.Error())
	}
}

// form returns the plural form that a count takes in the language, as CLDR
// names it.
func (c *catalogue) form(n int) string {
	f := plural.Cardinal.MatchPlural(c.tag, n, 0, 0, 0, 0)
	return [...]string{plural.Other: "other", plural.Zero: "zero", plural.One: "one", plural.Two: "two", plural.Few: "few", plural.Many: "many"}[f]
}
