package pdf_test

import (
	"bytes"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/draw/pdf"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
)

// written is a guide with the drawing that goes with it.
func written(t testing.TB, s *drawtest.Sample, o guide.Options) (*guide.Guide, *draw.Drawing) {
	t.Helper()
	g, err := guide.Write(s.Solution, o)
	require.NoError(t, err)
	say, err := guide.Words(o.Language)
	require.NoError(t, err)
	how := s.Options()
	how.Say, how.Language = say, g.Language
	return &g, draw.New(&s.Solution.Pattern, how)
}

func encodeGuide(t testing.TB, g *guide.Guide, d *draw.Drawing, o pdf.Options) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, pdf.EncodeGuide(&b, g, d, o))
	return b.Bytes()
}

// ways are the ways that guides are written in by turns.
func ways(turn int) (guide.Options, pdf.Options) {
	languages := guide.Languages()
	o := guide.Options{Language: languages[turn%len(languages)], Units: []guide.Units{guide.OfRuler, guide.Both}[turn/2%2]}
	if turn%5 == 4 {
		return o, pdf.Options{Width: measure.Millimetres(148), Height: measure.Millimetres(210)}
	}
	return o, pdf.Options{}
}

// flowed returns all texts of a file in their order, with single spaces and
// without the numbers at the ends of pages.
func flowed(t *testing.T, file []byte) string {
	text := string(run(t, file, "pdftotext", "apt-get install poppler-utils", "-raw", "FILE", "-"))
	return strings.Join(strings.Fields(pageNumber.ReplaceAllString(text, " ")), " ")
}

var pageNumber = regexp.MustCompile(`\d+ / \d+\s*\f`)

// said are the texts of a guide that must stand on paper as they are.
func said(g *guide.Guide) []string {
	texts := append([]string{g.Title, g.Summary, g.Labels.Materials, g.Labels.Tools, g.Labels.CutList, g.Labels.Steps, g.Labels.Cautions}, g.Cautions...)
	texts = append(texts, g.FitNotes...)
	for _, of := range append(append([]guide.Item{}, g.Materials...), g.Tools...) {
		texts = append(texts, of.Text)
	}
	for i := range g.Steps {
		texts = append(append(texts, g.Steps[i].Title, g.Steps[i].Text, g.Steps[i].After), g.Steps[i].Lines...)
	}
	for _, of := range g.Warnings {
		texts = append(texts, of.Text)
	}
	for _, of := range g.CutList {
		texts = append(texts, of.Piece+": "+of.Width.Text+" × "+of.Height.Text)
	}
	return texts
}

// Every text of every guide is on its pages in one piece, no two words overlap
// and no page is empty.
func TestGuidesOfEveryKind(t *testing.T) {
	for i, s := range drawtest.Every() {
		for turn := i; turn < i+2; turn++ {
			o, page := ways(turn)
			g, d := written(t, &s, o)
			file := encodeGuide(t, g, d, page)
			checkWords(t, s.Name, words(t, file))
			text := flowed(t, file)
			for _, want := range said(g) {
				assert.Contains(t, text, strings.Join(strings.Fields(want), " "), "%s, %s", s.Name, o.Language)
			}
		}
	}
}

func TestGuidesOfRandomRequests(t *testing.T) {
	t.Parallel()
	turn, all := 0, batch{}
	drawtest.EachRandom(t, 500, func(t *testing.T, s *drawtest.Sample) {
		o, page := ways(turn)
		turn++
		g, d := written(t, s, o)
		all.add(t, fmt.Sprint(turn, " ", s.Name), encodeGuide(t, g, d, page))
	})
	all.check(t)
}

// A guide that is not long has one page, with letters that can be read.
func TestGuideHasOnePage(t *testing.T) {
	for _, s := range drawtest.Every() {
		if !strings.HasPrefix(s.Name, "band") && !strings.HasPrefix(s.Name, "sleeve") && !strings.HasPrefix(s.Name, "slotted-band") {
			continue
		}
		for _, language := range guide.Languages() {
			g, d := written(t, &s, guide.Options{Language: language, Units: guide.Both})
			pages := words(t, encodeGuide(t, g, d, pdf.Options{}))
			assert.Len(t, pages, 1, "%s, %s", s.Name, language)
			for _, w := range pages[0] {
				high := min(w.y1-w.y0, w.x1-w.x0+1.8) // a box is at least as high as its letters, and those of upright text as wide
				assert.GreaterOrEqual(t, high, 1.8, "%q of %s", w.text, s.Name)
			}
		}
	}
}

// The outline is as long as the written scale makes it.
func TestGuideWritesTheScaleOfItsPicture(t *testing.T) {
	for _, s := range drawtest.Every() {
		if !strings.HasPrefix(s.Name, "slotted-band") && !strings.HasPrefix(s.Name, "band") {
			continue // an outline whose longest edge is the blank's
		}
		for _, language := range guide.Languages() {
			g, d := written(t, &s, guide.Options{Language: language})
			file := encodeGuide(t, g, d, pdf.Options{})
			m := regexp.MustCompile(`(?:scale|Maßstab) 1 : ([0-9]+[.,]?[0-9]*[0-9])`).FindStringSubmatch(flowed(t, file))
			require.NotNil(t, m)
			scale, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
			require.NoError(t, err)
			pages, _ := trace(t, file)
			assert.InDelta(t, s.Solution.Pattern.Pieces[0].Width.Millimetres()/scale, longest(pages[0]), 0.02, s.Name)
		}
	}
}

func TestGuidePaper(t *testing.T) {
	g, d := written(t, &drawtest.Every()[0], guide.Options{})
	_, sizes := trace(t, encodeGuide(t, g, d, pdf.Options{Width: measure.Millimetres(210), Height: measure.Millimetres(148)}))
	for _, size := range sizes {
		assert.InDelta(t, 148, size[0], 0.01)
		assert.InDelta(t, 210, size[1], 0.01)
	}
	assert.ErrorContains(t, pdf.EncodeGuide(io.Discard, g, d, pdf.Options{Width: measure.Millimetres(100), Height: measure.Millimetres(100)}), "is not between")
	assert.ErrorContains(t, pdf.EncodeGuide(full{}, g, d, pdf.Options{}), "the disk is full")
}

func TestGuideWithOddTexts(t *testing.T) {
	long := strings.Repeat("unendlichlangeswort", 20)
	g := &guide.Guide{Title: long, Summary: "", Language: "xx", Steps: []guide.Step{{Title: "", Text: long + " \x00😀"}}, Cautions: []string{""}}
	for range 300 {
		g.FitNotes = append(g.FitNotes, "lorem "+long[:40])
	}
	file := encodeGuide(t, g, sleeve(), pdf.Options{})
	pages, _ := trace(t, file)
	assert.Greater(t, len(pages), 1)
	assert.Equal(t, file, encodeGuide(t, g, sleeve(), pdf.Options{}), "the same bytes every time")
}

// A language has a word for everything that its drawings say, on screen and on
// paper, but for what it writes in the same way.
func TestDrawingsSpeakTheLanguage(t *testing.T) {
	same := []string{"mm"}
	for _, language := range guide.Languages()[1:] {
		say, err := guide.Words(language)
		require.NoError(t, err)
		missing := map[string]bool{}
		heard := func(word string) string {
			if say(word) == word {
				missing[word] = true
			}
			return say(word)
		}
		drawn := func(p *draw.Drawing) {
			encode(t, p, pdf.Options{Width: measure.Millimetres(148), Height: measure.Millimetres(210)})
			encode(t, p, pdf.Options{Width: measure.Millimetres(148), Height: measure.Millimetres(210)})
			encodeGuide(t, &guide.Guide{Title: "x"}, p, pdf.Options{})
		}
		for _, s := range drawtest.Every() {
			o := s.Options()
			o.Say = heard
			drawn(draw.New(&s.Solution.Pattern, o))
		}
		drawtest.EachRandom(t, 500, func(_ *testing.T, s *drawtest.Sample) {
			o := s.Options()
			o.Say = heard
			draw.New(&s.Solution.Pattern, o)
		})
		order, answer := drawtest.Plan()
		for i := range order.Items {
			same = append(same, order.Items[i].Name)
		}
		drawn(draw.NewPlan(order, answer, draw.Options{Title: "cut plan", Step: order.Ruler, Say: heard}))
		for _, word := range same {
			delete(missing, word)
		}
		assert.Empty(t, missing, language)
	}
}

// A German drawing has the decimal comma, the unit's name and German words.
func TestGermanDrawing(t *testing.T) {
	say, err := guide.Words("de-AT")
	require.NoError(t, err)
	d := draw.New(drawtest.Sleeve(), draw.Options{Title: "Sleeve for one piece", Step: measure.Marks(measure.Millimetre)[3], Say: say, Language: "de"})
	text := flowed(t, encode(t, d, pdf.Options{}))
	for _, want := range []string{"81,3 mm", "Rille 1", "auf dich zu 90°", "Mit 100 % drucken", "Maß", " 8,6417"} {
		assert.Contains(t, text, want)
	}
	_, err = guide.Words("tlh")
	assert.Error(t, err)
}

func TestGuideGolden(t *testing.T) {
	for _, s := range drawtest.Every() {
		switch s.Name {
		case "slotted-band-thin-in":
			g, d := written(t, &s, guide.Options{})
			drawtest.CheckGolden(t, s.Name+"-guide.pdf", encodeGuide(t, g, d, pdf.Options{}))
		case "band-thick-mm":
			g, d := written(t, &s, guide.Options{Language: "de", Units: guide.Both})
			drawtest.CheckGolden(t, s.Name+"-guide-de.pdf", encodeGuide(t, g, d, pdf.Options{}))
		}
	}
}

func BenchmarkGuide(b *testing.B) {
	g, d := written(b, &drawtest.Every()[0], guide.Options{})
	b.ReportAllocs()
	for b.Loop() {
		if err := pdf.EncodeGuide(io.Discard, g, d, pdf.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
