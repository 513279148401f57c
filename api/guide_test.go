package api

import (
	"encoding/json"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/guide"
	"creasefit/internal/repertoire"
)

func TestEveryKindHasAGuideInEveryFormatAndLanguage(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		query, _ := solveExample(k)
		for _, language := range guide.Languages() {
			t.Run(k.Name+"/"+language, func(t *testing.T) {
				target := "/v1/guide/" + k.Name + "?" + query + "&language=" + language
				g := decode[guide.Guide](get(t, target).ok())
				assert.Equal(t, language, g.Language)
				assert.NotEmpty(t, g.Cautions)
				for _, f := range guideFormats[1:] {
					a := get(t, target+"&format="+f.String()).ok()
					assert.Equal(t, f.Media(), a.Header().Get("Content-Type"))
				}
			})
		}
	}
}

func TestGuideShowsTheFigureAndTheUnits(t *testing.T) {
	page := get(t, "/v1/guide/slotted-band.html?"+cards+"&units=both").ok().Body.String()
	assert.Contains(t, page, "<svg")
	assert.Contains(t, page, "application/ld+json")
	assert.Contains(t, page, "209.6") // 8 1/4 in
	text := get(t, "/v1/guide/slotted-band.md?"+cards+"&pick=/title").problem(http.StatusBadRequest)
	assert.NotEmpty(t, text.Detail)
	assert.Equal(t, "en", get(t, "/v1/guide/slotted-band?"+cards+"&pick=/language").ok().Body.String())
}

func TestGuideAsPDF(t *testing.T) {
	letter := get(t, "/v1/guide/slotted-band.pdf?"+cards).ok().Body.String()
	a5 := get(t, "/v1/guide/slotted-band?"+cards+"&format=pdf&language=de&paper=148x210mm").ok().Body.String()
	for text, parts := range map[string][]string{letter: {"%PDF-", "/MediaBox [0 0 612 792]", "/Lang <FEFF0065006E>"}, a5: {"%PDF-", "/MediaBox [0 0 419.528 595.276]", "/Lang <FEFF00640065>"}} {
		for _, part := range parts {
			assert.Contains(t, text, part)
		}
	}
	assert.Equal(t, "paper", get(t, "/v1/guide/slotted-band.pdf?"+cards+"&paper=2x2in").problem(http.StatusBadRequest).Errors[0].Name)
}

func TestGuideDrawsInItsLanguage(t *testing.T) {
	page := get(t, "/v1/guide/slotted-band.html?"+cards+"&language=de").ok().Body.String()
	assert.Contains(t, page, ">1  vorher</text>")
	assert.NotContains(t, page, "left tab")
}

func TestGuideNamesWhatIsWrong(t *testing.T) {
	for query, field := range map[string]string{"&language=xx": "language", "&units=cm": "units"} {
		assert.Equal(t, field, get(t, "/v1/guide/slotted-band?"+cards+query).problem(http.StatusBadRequest).Errors[0].Name)
	}
}

// Every step of a guide that the order of work has shows its picture, with words:
// in the page, as the image of its HowTo step, and as a link.
func TestGuidesHavePictures(t *testing.T) {
	const box = "unit=mm&width=60&height=40&thickness=12&caliper=0.4"
	page := get(t, "/v1/guide/lidded-box.html?"+box+"&units=both").ok().Body.String()
	assert.GreaterOrEqual(t, strings.Count(page, `id="picture-`), 16, "a title and a description each")
	assert.Contains(t, page, "cf-ground{fill:#14191b}", "dark on dark pages")
	_, howTo, found := strings.Cut(page, `<script type="application/ld+json">`)
	require.True(t, found)
	howTo, _, _ = strings.Cut(howTo, "</script>")
	var read struct {
		Step []struct{ Name, Image string }
	}
	require.NoError(t, json.Unmarshal([]byte(howTo), &read))
	images := 0
	for _, s := range read.Step {
		if s.Image != "" {
			images++
			get(t, s.Image).ok()
		}
	}
	assert.Greater(t, images, 4)
	assert.Contains(t, get(t, "/v1/guide/lidded-box.md?"+box).ok().Body.String(), "](/v1/drawing/lidded-box.svg?")
}

// Without the steps a guide has the same warnings and cut list, in every format, of a
// kind and of a portfolio.
func TestGuideWithoutSteps(t *testing.T) {
	for _, address := range []string{"/v1/guide/lidded-box?unit=mm&width=58&height=78&thickness=58&caliper=0.4&sheet=a5", "/v1/guide/portfolio?unit=mm&width=58&height=78&thickness=58&caliper=0.4&layers=sleeve&layers=tray"} {
		whole := decode[guide.Guide](call(t, shared(), "GET", address+"&language=de", "").ok())
		brief := decode[guide.Guide](call(t, shared(), "GET", address+"&language=de&steps=no", "").ok())
		assert.NotEmpty(t, whole.Steps)
		assert.Empty(t, brief.Steps)
		assert.Equal(t, whole.Warnings, brief.Warnings)
		assert.Equal(t, whole.CutList, brief.CutList)
		for _, format := range []string{"html", "text", "markdown", "pdf"} {
			call(t, shared(), "GET", address+"&steps=no&format="+format, "").ok()
		}
	}
}

// The pictures of a guide's JSON are for a light page or a dark one; the links of its
// Markdown have no names that a drawing does not know; large print is larger.
func TestGuidesHaveTheirOwnNames(t *testing.T) {
	const box = "unit=mm&width=60&height=40&thickness=12&caliper=0.4"
	picture := func(theme string) string {
		for _, s := range decode[guide.Guide](get(t, "/v1/guide/lidded-box?"+box+"&pictures="+theme).ok()).Steps {
			if len(s.Pictures) > 0 {
				return s.Pictures[0]
			}
		}
		return ""
	}
	light, dark := picture("light"), picture("dark")
	assert.NotEmpty(t, light)
	assert.NotEqual(t, light, dark)
	assert.Empty(t, picture("no"))
	assert.Contains(t, dark, "#14191b", "the ground of a dark page")
	markdown := get(t, "/v1/guide/lidded-box.md?"+box+"&units=both&pictures=dark&print=large").ok().Body.String()
	_, link, found := strings.Cut(markdown, "](/v1/drawing/")
	require.True(t, found)
	link, _, _ = strings.Cut(link, ")")
	get(t, "/v1/drawing/"+link).ok()
	small, large := get(t, "/v1/guide/lidded-box.pdf?"+box).ok().Body.String(), get(t, "/v1/guide/lidded-box.pdf?"+box+"&print=large").ok().Body.String()
	assert.Greater(t, strings.Count(large, "<</Type /Page /"), strings.Count(small, "<</Type /Page /"), "larger letters take more pages")
}
