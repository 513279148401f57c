package guide_test

import (
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/feature/plural"
	"golang.org/x/text/language"

	"creasefit/internal/guide"
)

// words is a catalogue file as it is read without the package.
type words struct {
	Language string                       `json:"language"`
	Decimal  string                       `json:"decimal"`
	Units    map[string]string            `json:"units"`
	Cases    map[string]string            `json:"cases"`
	Numbered map[string]string            `json:"numbered"`
	Names    map[string]map[string]string `json:"names"`
	Many     map[string]any               `json:"many"`
	Drawing  map[string]string            `json:"drawing"`
	Joined   map[string]string            `json:"joined"`
	Warnings map[string]any               `json:"warnings"`
	Messages map[string]any               `json:"messages"`
	Labels   map[string]string            `json:"labels"`
}

// readWords reads all catalogues by language.
func readWords(t testing.TB) map[string]words {
	t.Helper()
	files, err := filepath.Glob("catalogues/*.json")
	require.NoError(t, err)
	all := map[string]words{}
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		d := json.NewDecoder(strings.NewReader(string(text)))
		d.DisallowUnknownFields()
		var w words
		require.NoError(t, d.Decode(&w), file)
		assert.Equal(t, w.Language+".json", filepath.Base(file))
		all[w.Language] = w
	}
	require.GreaterOrEqual(t, len(all), 2)
	return all
}

// forms returns the texts of a message by plural form.
func forms(message any) map[string]string {
	if text, ok := message.(string); ok {
		return map[string]string{"other": text}
	}
	all := map[string]string{}
	for form, text := range message.(map[string]any) {
		all[form] = text.(string)
	}
	return all
}

var argument = regexp.MustCompile(`\{([a-z]*)(?::([a-z]*))?\}`)

// placeholders returns the names of a message's arguments, each once.
func placeholders(message any) []string {
	var names []string
	for _, text := range forms(message) {
		for _, m := range argument.FindAllStringSubmatch(text, -1) {
			names = append(names, m[1])
		}
	}
	sort.Strings(names)
	return slices.Compact(names)
}

func TestEveryMessageInEveryLanguage(t *testing.T) {
	all := readWords(t)
	for name, w := range all {
		for key, message := range all["en"].Messages {
			if assert.Contains(t, w.Messages, key, name) {
				assert.Equal(t, placeholders(message), placeholders(w.Messages[key]), "%s: %s", name, key)
			}
		}
		for key := range w.Messages {
			assert.Contains(t, all["en"].Messages, key, "%s has a message that English has not", name)
		}
		for key, many := range all["en"].Many {
			assert.Equal(t, placeholders(many), placeholders(w.Many[key]), "%s: %s", name, key)
		}
		assert.ElementsMatch(t, slices.Collect(maps.Keys(all["en"].Labels)), slices.Collect(maps.Keys(w.Labels)), name)
		assert.NotContains(t, slices.Collect(maps.Values(w.Labels)), "", name)
		assert.Len(t, w.Labels, reflect.TypeFor[guide.Labels]().NumField(), name)
		assert.NotEmpty(t, w.Decimal)
		assert.NotEmpty(t, w.Units["in"])
		assert.NotEmpty(t, w.Units["mm"])
	}
}

// Every case that a text asks for is one that the language has, and every name
// has all of them.
func TestCases(t *testing.T) {
	for name, w := range readWords(t) {
		for key, message := range w.Messages {
			for _, text := range forms(message) {
				for _, m := range argument.FindAllStringSubmatch(text, -1) {
					assert.Contains(t, w.Cases, m[2], "%s: %s", name, key)
				}
				assert.Equal(t, strings.Count(text, "{"), len(argument.FindAllString(text, -1)), "%s: %s", name, key)
			}
		}
		for noun, cases := range w.Names {
			for form := range w.Cases {
				assert.NotEmpty(t, cases[form], "%s: %s has no %q", name, noun, form)
			}
			assert.Len(t, cases, len(w.Cases), "%s: %s", name, noun)
		}
	}
}

// pluralForms returns the forms that CLDR has for whole numbers.
func pluralForms(tag language.Tag) []string {
	names := map[plural.Form]string{plural.Zero: "zero", plural.One: "one", plural.Two: "two", plural.Few: "few", plural.Many: "many", plural.Other: "other"}
	seen := map[string]bool{}
	for n := range 1001 {
		seen[names[plural.Cardinal.MatchPlural(tag, n, 0, 0, 0, 0)]] = true
	}
	var all []string
	for form := range seen {
		all = append(all, form)
	}
	return all
}

func TestPluralFormsAreThoseOfTheLanguage(t *testing.T) {
	for name, w := range readWords(t) {
		want := pluralForms(language.MustParse(name))
		for key, message := range w.Messages {
			if have := forms(message); len(have) > 1 {
				assert.Len(t, have, len(want), "%s: %s", name, key)
				for _, form := range want {
					assert.Contains(t, have, form, "%s: %s", name, key)
				}
			}
		}
	}
}

// constants are all figures that the catalogues bring along. Everything else
// comes from the solution.
var constants = []string{"100"} // "of 100 pieces"

func TestCataloguesBringNoFigures(t *testing.T) {
	figures := regexp.MustCompile(`[0-9]+`)
	for name, w := range readWords(t) {
		for key, message := range w.Messages {
			for _, text := range forms(message) {
				for _, figure := range figures.FindAllString(text, -1) {
					assert.Contains(t, constants, figure, "%s: %s", name, key)
				}
			}
		}
	}
}

// What a drawing says is put together of the names that a language has; what has no name there stays as it is.
func TestWordsOfDrawings(t *testing.T) {
	for text, german := range map[string]string{
		"front width": "Breite der Vorderseite", "front height": "Höhe der Vorderseite", "lap on the front": "Klebelasche auf der Vorderseite",
		"score 2": "Rille 2", "in": "Zoll", "Sleeve with a glued lap": "Hülle mit Klebelasche", "nobody's width": "nobody's width", "7": "7",
	} {
		for name, want := range map[string]string{"en": text, "de": german} {
			say, err := guide.Words(name)
			require.NoError(t, err)
			assert.Equal(t, want, say(text))
		}
	}
}

func TestLanguages(t *testing.T) {
	all := guide.Languages()
	assert.Equal(t, "en", all[0])
	assert.Len(t, all, len(readWords(t)))
	for _, name := range all {
		_, err := language.Parse(name)
		assert.NoError(t, err)
	}
}
