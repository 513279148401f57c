package pdf_test

import (
	"bytes"
	"compress/zlib"
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

// written is a guide with the drawing that goes with it, and its pictures.
func written(t testing.TB, s *drawtest.Sample, o guide.Options) (*guide.Guide, *draw.Drawing, pdf.Guide) {
	t.Helper()
	g, err := guide.Write(s.Solution, o)
	require.NoError(t, err)
	say, err := guide.Words(o.Language)
	require.NoError(t, err)
	how := s.Options()
	how.Say, how.Language = say, g.Language
	steps := how
	steps.Title = ""
	return &g, draw.New(&s.Solution.Pattern, how), pdf.Guide{Steps: s.Pictures(steps)}
}

func encodeGuide(t testing.TB, g *guide.Guide, d *draw.Drawing, how pdf.Guide, o pdf.Options) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, pdf.EncodeGuide(&b, g, d, how, o))
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
	texts := append([]string{g.Title, g.Summary, g.Labels.Materials, g.Labels.Tools, g.Labels.Steps, g.Labels.Cautions}, g.Cautions...)
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
		if len(g.CutList) == 1 {
			break // the first step says it
		}
		texts = append(texts, of.Piece+": "+of.Width.Text+" × "+of.Height.Text)
	}
	return texts
}

// Every text of every guide is on its pages in one piece, no two words overlap
// and no page is empty.
func TestGuidesOfEveryKind(t *testing.T) {
	turns := 2
	if testing.Short() {
		turns = 1
	}
	for i, s := range drawtest.Every() {
		for turn := i; turn < i+turns; turn++ {
			o, page := ways(turn)
			g, d, how := written(t, &s, o)
			file := encodeGuide(t, g, d, how, page)
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
	drawtest.EachRandom(t, 200, func(t *testing.T, s *drawtest.Sample) {
		o, page := ways(turn)
		turn++
		g, d, how := written(t, s, o)
		all.add(t, fmt.Sprint(turn, " ", s.Name), encodeGuide(t, g, d, how, page))
	})
	all.check(t)
}

// A band takes one page and a box with a lid at most three, with a picture of every
// step; of the German ones a slotted band may go on to a second. In large print the letters
// are of 22 points and in one column.
func TestGuidePages(t *testing.T) {
	for _, s := range drawtest.Every() {
		for _, language := range guide.Languages() {
			g, d, how := written(t, &s, guide.Options{Language: language})
			file := encodeGuide(t, g, d, how, pdf.Options{})
			most := map[string]int{"band": 1, "slotted-band": 1, "lidded-box": 3}[s.Solution.Request.Kind.Name]
			if language == "de" && s.Solution.Request.Kind.Name == "slotted-band" {
				most = 2
			}
			if most > 0 {
				assert.LessOrEqual(t, pagesOf(file), most, "%s, %s", s.Name, language)
			}
			assert.Equal(t, len(g.Steps), bytes.Count(file, []byte("/S /Figure")), "%s: a picture a step", s.Name)
			how.Large = true
			large := encodeGuide(t, g, d, how, pdf.Options{})
			assert.Contains(t, sizesOf(t, large), "22")
			checkWords(t, s.Name+" large", words(t, large))
		}
	}
}

// sizesOf returns the sizes in points of the letters of a file, as they are written.
func sizesOf(t *testing.T, file []byte) []string {
	var sizes []string
	for _, stream := range regexp.MustCompile(`(?s)/Filter /FlateDecode /Length \d+>>\nstream\n(.*?)\nendstream`).FindAllSubmatch(file, -1) {
		r, err := zlib.NewReader(bytes.NewReader(stream[1]))
		require.NoError(t, err)
		content, err := io.ReadAll(r)
		require.NoError(t, err)
		for _, size := range regexp.MustCompile(`/F ([0-9.]+) Tf`).FindAllSubmatch(content, -1) {
			sizes = append(sizes, string(size[1]))
		}
	}
	return sizes
}

// No text of any file is smaller than 9 points; that of guides is of 10 but in
// pictures and for the numbers of pages.
func TestNoTextIsSmallerThanNinePoints(t *testing.T) {
	check := func(name string, file []byte) {
		for _, size := range sizesOf(t, file) {
			points, err := strconv.ParseFloat(size, 64)
			require.NoError(t, err)
			assert.GreaterOrEqual(t, points, 8.99, name)
		}
	}
	for _, s := range drawtest.Every() {
		check(s.Name, encode(t, s.Draw(), pdf.Options{}))
		check(s.Name+" template", template(t, &s, pdf.Options{}))
		g, d, how := written(t, &s, guide.Options{Language: "de", Units: guide.Both})
		check(s.Name+" guide", encodeGuide(t, g, d, how, pdf.Options{}))
		check(s.Name+" guide without pictures", encodeGuide(t, g, d, pdf.Guide{}, pdf.Options{}))
	}
	check("cut plan", encode(t, drawtest.DrawPlan(), pdf.Options{}))
}

// Every part of a guide is tagged: the text of its tags, in their order, is the
// guide's, by another reader.
func TestGuidesAreTagged(t *testing.T) {
	s := drawtest.Every()[0]
	g, d, how := written(t, &s, guide.Options{})
	file := encodeGuide(t, g, d, how, pdf.Options{})
	told := string(run(t, file, "pdfinfo", "apt-get install poppler-utils", "-struct-text", "FILE"))
	for _, tag := range []string{"Document", "H1", "H2", "H3", "P", "Figure"} {
		assert.Contains(t, told, tag)
	}
	at := 0
	for i := range g.Steps {
		next := strings.Index(told[at:], g.Steps[i].Title)
		require.GreaterOrEqual(t, next, 0, "%q is missing or out of order", g.Steps[i].Title)
		at += next
	}
	assert.Contains(t, string(run(t, file, "pdfinfo", "apt-get install poppler-utils", "FILE")), "Tagged:          yes")
	assert.Contains(t, string(run(t, encode(t, d, pdf.Options{}), "pdfinfo", "apt-get install poppler-utils", "FILE")), "Tagged:          no")
}

func TestGuidePaper(t *testing.T) {
	g, d, how := written(t, &drawtest.Every()[0], guide.Options{})
	_, sizes := trace(t, encodeGuide(t, g, d, how, pdf.Options{Width: measure.Millimetres(210), Height: measure.Millimetres(148)}))
	for _, size := range sizes {
		assert.InDelta(t, 148, size[0], 0.01)
		assert.InDelta(t, 210, size[1], 0.01)
	}
	assert.ErrorContains(t, pdf.EncodeGuide(io.Discard, g, d, how, pdf.Options{Width: measure.Millimetres(100), Height: measure.Millimetres(100)}), "is not between")
	assert.ErrorContains(t, pdf.EncodeGuide(full{}, g, d, how, pdf.Options{}), "the disk is full")
}

func TestGuideWithOddTexts(t *testing.T) {
	long := strings.Repeat("unendlichlangeswort", 20)
	g := &guide.Guide{Title: long, Summary: "", Language: "xx", Steps: []guide.Step{{Title: "", Text: long + " \x00😀"}}, Cautions: []string{""}}
	for range 300 {
		g.FitNotes = append(g.FitNotes, "lorem "+long[:40])
	}
	file := encodeGuide(t, g, sleeve(), pdf.Guide{}, pdf.Options{})
	pages, _ := trace(t, file)
	assert.Greater(t, len(pages), 1)
	assert.Equal(t, file, encodeGuide(t, g, sleeve(), pdf.Guide{}, pdf.Options{}), "the same bytes every time")
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
			encodeGuide(t, &guide.Guide{Title: "x"}, p, pdf.Guide{}, pdf.Options{})
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
			g, d, how := written(t, &s, guide.Options{})
			drawtest.CheckGolden(t, s.Name+"-guide.pdf", encodeGuide(t, g, d, how, pdf.Options{}))
		case "band-thick-mm":
			g, d, how := written(t, &s, guide.Options{Language: "de", Units: guide.Both})
			drawtest.CheckGolden(t, s.Name+"-guide-de.pdf", encodeGuide(t, g, d, how, pdf.Options{}))
		}
	}
}

func BenchmarkGuide(b *testing.B) {
	g, d, how := written(b, &drawtest.Every()[0], guide.Options{})
	b.ReportAllocs()
	for b.Loop() {
		if err := pdf.EncodeGuide(io.Discard, g, d, how, pdf.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
