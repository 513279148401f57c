package guide_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"creasefit/internal/guide"
	"creasefit/internal/repertoire"
)

// page is what a test asks of a parsed page.
type page struct {
	elements map[string]int
	ids      map[string]int
	refers   []string // what it would fetch
	labels   []string // what is labelled by an id
	lang     string
	data     []byte // of the JSON-LD
}

// parsePage parses a page and checks that every element that is opened is
// closed in turn.
func parsePage(t *testing.T, text []byte) page {
	t.Helper()
	p := page{elements: map[string]int{}, ids: map[string]int{}}
	var open []string
	z := html.NewTokenizer(bytes.NewReader(text))
	for {
		kind := z.Next()
		if kind == html.ErrorToken {
			break
		}
		token := z.Token()
		switch kind {
		case html.StartTagToken:
			p.see(token)
			if token.Data != "meta" {
				open = append(open, token.Data)
			}
		case html.EndTagToken:
			require.NotEmpty(t, open)
			require.Equal(t, open[len(open)-1], token.Data, "closes what was opened last")
			open = open[:len(open)-1]
		case html.TextToken:
			if len(open) > 0 && open[len(open)-1] == "script" {
				p.data = append(p.data, token.Data...)
			}
		}
	}
	assert.Empty(t, open)
	_, err := html.Parse(bytes.NewReader(text))
	require.NoError(t, err)
	return p
}

// see notes a start tag.
func (p *page) see(token html.Token) {
	p.elements[token.Data]++
	for _, a := range token.Attr {
		switch a.Key {
		case "id":
			p.ids[a.Val]++
		case "src", "href":
			p.refers = append(p.refers, a.Val)
		case "aria-labelledby":
			p.labels = append(p.labels, a.Val)
		case "lang":
			p.lang = a.Val
		}
	}
}

func TestHTMLIsSound(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		eachWay(t, solved(t, k.Name, 1), func(g guide.Guide) {
			text, err := g.HTML(guide.Pictures{Figure: []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"></svg>`)})
			require.NoError(t, err)
			p := parsePage(t, text)
			assert.Equal(t, g.Language, p.lang)
			for _, once := range []string{"html", "title", "main", "article", "h1", "svg", "script"} {
				assert.Equal(t, 1, p.elements[once], once)
			}
			assert.Equal(t, len(g.CutList) > 1, p.elements["table"] == 1, "one blank alone is told by its step")
			for id, times := range p.ids {
				assert.Equal(t, 1, times, id)
			}
			for _, label := range p.labels {
				assert.Contains(t, p.ids, label)
			}
			assert.Empty(t, p.refers, "the page fetches nothing")
			assert.NotContains(t, string(text), "ZgotmplZ")
		})
	}
}

// The HowTo has what schema.org defines for it: name, step, tool and supply,
// each step with its name and text.
func TestHowTo(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		eachWay(t, solved(t, k.Name, 2), func(g guide.Guide) {
			text, err := g.HTML(guide.Pictures{})
			require.NoError(t, err)
			var how struct {
				Context     string `json:"@context"`
				Type        string `json:"@type"`
				InLanguage  string
				Name        string
				Description string
				Supply      []map[string]string
				Tool        []map[string]string
				Step        []map[string]any
			}
			d := json.NewDecoder(bytes.NewReader(parsePage(t, text).data))
			d.DisallowUnknownFields()
			require.NoError(t, d.Decode(&how))
			assert.Equal(t, []string{"https://schema.org", "HowTo", g.Language, g.Title, g.Summary},
				[]string{how.Context, how.Type, how.InLanguage, how.Name, how.Description})
			assert.Len(t, how.Supply, len(g.Materials))
			assert.Len(t, how.Tool, len(g.Tools))
			require.Len(t, how.Step, len(g.Steps))
			for i, item := range how.Tool {
				assert.Equal(t, map[string]string{"@type": "HowToTool", "name": g.Tools[i].Text}, item)
			}
			for i, step := range how.Step {
				assert.Equal(t, map[string]any{"@type": "HowToStep", "position": float64(i + 1), "name": g.Steps[i].Title, "text": g.Steps[i].Whole()}, step)
			}
		})
	}
}

// Whatever stands in a text, it stays text.
func TestHTMLKeepsTextsApartFromMarkup(t *testing.T) {
	nasty := `</script><script>alert("1")</script><img src=x onerror=y>`
	g := guide.Guide{Language: "en", Title: nasty, Summary: nasty, Steps: []guide.Step{{Title: nasty, Text: nasty, Lines: []string{nasty}}}}
	text, err := g.HTML(guide.Pictures{})
	require.NoError(t, err)
	p := parsePage(t, text)
	assert.Equal(t, 1, p.elements["script"])
	assert.Zero(t, p.elements["img"])
	var how struct{ Name string }
	require.NoError(t, json.Unmarshal(p.data, &how))
	assert.Equal(t, nasty, how.Name)
}

func TestMarkdownKeepsTextsApartFromMarkup(t *testing.T) {
	g := guide.Guide{Title: "a_b*c", Summary: "<b> [x] `y` |", Steps: []guide.Step{{Title: "t", Text: `\`}}}
	text := string(g.Markdown(nil))
	assert.True(t, strings.HasPrefix(text, "# a\\_b\\*c\n\n\\<b> \\[x] \\`y\\` \\|\n"), text)
	assert.Contains(t, text, `1. **t.** \\`)
}
