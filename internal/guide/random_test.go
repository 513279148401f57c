package guide_test

import (
	"context"
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/fault"
	"creasefit/internal/guide"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// Any solution of any kind gives a whole guide in every language and unit,
// and every number in it is the solution's.
func TestGuidesOfRandomRequests(t *testing.T) {
	named := readWords(t)
	for _, k := range repertoire.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			done := 0
			rapid.Check(t, func(t *rapid.T) {
				s, err := solve.Solve(context.Background(), drawRequest(t, k))
				if err != nil {
					return // no such enclosure
				}
				plain, err := guide.Write(s, guide.Options{})
				if err != nil {
					var none fault.Fault
					require.ErrorAs(t, err, &none)
					return // it cannot be made by hand
				}
				done++
				assertFitsHold(t, s, plain)
				assertOnRuler(t, s, plain)
				eachWay(t, s, func(g guide.Guide) {
					assertWhole(t, g)
					assertNumbersFound(t, s, g)
				})
				for _, w := range named {
					assertTranslated(t, s, w)
				}
			})
			if !testing.Short() {
				assert.Greater(t, done, 5, "hardly any request has a solution")
			}
		})
	}
}

// broken is what is left where something could not be written.
var broken = regexp.MustCompile(`%!|[{}]|<nil>|NaN|Inf\b|  | ,|\.\.|^\s|\s$|^\p{Ll}`)

// assertWhole checks that nothing of a guide is empty or half written.
func assertWhole(t *rapid.T, g guide.Guide) {
	texts := append([]string{g.Title, g.Summary}, append(g.Cautions, g.FitNotes...)...)
	for _, i := range append(append([]guide.Item{}, g.Materials...), g.Tools...) {
		texts = append(texts, i.Text)
	}
	for _, w := range g.Warnings {
		texts = append(texts, w.Text)
	}
	require.NotEmpty(t, g.CutList)
	require.NotEmpty(t, g.Steps)
	for i := range g.Steps {
		s := &g.Steps[i]
		texts = append(texts, s.Title, s.Whole())
		texts = append(texts, s.Lines...)
		if s.After != "" {
			texts = append(texts, s.After)
		}
		for _, n := range s.Numbers {
			assert.Contains(t, s.Whole(), n.Text, "%s: %s", s.Title, n.What)
		}
	}
	for _, text := range texts {
		assert.NotEmpty(t, text)
		assert.NotRegexp(t, broken, text)
	}
}

// assertTranslated checks that a language has a word for everything that the
// guide names. English takes the names as they are.
func assertTranslated(t *rapid.T, s *solve.Solution, w words) {
	if w.Language == "en" {
		return
	}
	assert.Contains(t, s.Request.Kind.Words, w.Language, "the kind has no words in this language")
	for _, warning := range s.Warnings {
		assert.Contains(t, w.Warnings, warning.Code, "%s.json does not have the warning", w.Language)
	}
	for _, f := range s.Fits {
		assert.True(t, f.Between == "" || joins(w, f.Between), "%s.json does not say %q", w.Language, f.Between)
	}
	for i := range s.Pattern.Pieces {
		for _, name := range namesOf(&s.Pattern.Pieces[i]) {
			base := strings.TrimRight(strings.TrimRight(name, "0123456789"), " ")
			_, whole := w.Names[name]
			_, numbered := w.Names[base]
			assert.True(t, whole || numbered, "%s.json does not name the part %q", w.Language, name)
		}
	}
}

// joins reports whether a language has words for two names and what joins them.
func joins(w words, text string) bool {
	for joint := range w.Joined {
		of, on, found := strings.Cut(text, joint)
		if found && w.Names[of] != nil && w.Names[on] != nil {
			return true
		}
	}
	return false
}

// namesOf returns the names of a piece and its parts.
func namesOf(p *pattern.Piece) []string {
	names := []string{p.Name}
	for _, x := range p.Panels {
		names = append(names, x.Name)
	}
	for _, x := range p.Creases {
		names = append(names, x.Name)
	}
	for _, x := range p.Cuts {
		names = append(names, x.Name)
	}
	return names
}

// The formats say what the guide says.
func TestFormatsAreComplete(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		s := solved(t, k.Name, 1)
		eachWay(t, s, func(g guide.Guide) {
			text, err := g.JSON()
			require.NoError(t, err)
			var read guide.Guide
			require.NoError(t, json.Unmarshal(text, &read))
			assert.Len(t, read.Steps, len(g.Steps))
			page, err := g.HTML(guide.Pictures{})
			require.NoError(t, err)
			for _, written := range []string{string(text), string(g.Markdown(nil)), flowed(g.Text()), string(page)} {
				for i := range g.Steps {
					assert.Contains(t, plainSpaces(written), plainSpaces(g.Steps[i].Title))
					for _, line := range g.Steps[i].Lines {
						assert.Contains(t, plainSpaces(written), plainSpaces(line))
					}
				}
			}
			assert.NotContains(t, string(text)+string(g.Text())+string(g.Markdown(nil)), "\u00a0")
		})
	}
}

// flowed joins the lines of plain text.
func flowed(text []byte) string { return strings.Join(strings.Fields(string(text)), " ") }

func plainSpaces(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

func TestPlainTextKeepsItsWidth(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		eachWay(t, solved(t, k.Name, 2), func(g guide.Guide) {
			for _, line := range strings.Split(string(g.Text()), "\n") {
				assert.LessOrEqual(t, len([]rune(line)), 72, line)
			}
		})
	}
}
