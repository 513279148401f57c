package pdf_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/draw/pdf"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/peer"
)

const mmPerPoint = 25.4 / 72

func encode(t testing.TB, d *draw.Drawing, o pdf.Options) []byte {
	var b bytes.Buffer
	require.NoError(t, pdf.Encode(&b, d, o))
	return b.Bytes()
}

func sleeve() *draw.Drawing {
	return draw.New(drawtest.Sleeve(), draw.Options{Title: "Sleeve for a tin of tea", Step: measure.Marks(measure.Millimetre)[3]})
}

// run hands a file to a program and returns what it writes.
func run(t *testing.T, file []byte, program, install string, arguments ...string) []byte {
	path := peer.Path(t, program, install)
	name := filepath.Join(t.TempDir(), "drawing.pdf")
	require.NoError(t, os.WriteFile(name, file, 0o600))
	for i := range arguments {
		if arguments[i] == "FILE" {
			arguments[i] = name
		}
	}
	out, err := exec.Command(path, arguments...).Output()
	require.NoError(t, err)
	return out
}

// stroke is a path that another reader found on a page, in mm from its upper
// left corner.
type stroke struct {
	points  [][2]float64
	middles [][2]float64 // of its curves
	clip    *clip        // nil for none
}

// clip is the rectangle that a part of a piece is shown in.
type clip struct{ low, high [2]float64 }

func (c *clip) holds(p [2]float64) bool {
	const rim = 0.01
	return c.low[0]-rim < p[0] && c.low[1]-rim < p[1] && p[0] < c.high[0]+rim && p[1] < c.high[1]+rim
}

func (c *clip) take(p [2]float64) {
	for k, v := range p {
		c.low[k], c.high[k] = min(c.low[k], v), max(c.high[k], v)
	}
}

var number = regexp.MustCompile(`-?[0-9.]+(e-?[0-9]+)?`)

// trace reads the stroked paths of every page through MuPDF.
func trace(t *testing.T, file []byte) (pages [][]stroke, sizes [][2]float64) {
	out := run(t, file, "mutool", "apt-get install mupdf-tools", "trace", "FILE")
	reader := xml.NewDecoder(bytes.NewReader(out))
	reader.Strict = false
	var matrix [6]float64
	var open, clips bool
	var within *clip
	for {
		token, err := reader.Token()
		if err == io.EOF {
			return pages, sizes
		}
		require.NoError(t, err)
		e, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		value := func(name string) float64 {
			for _, a := range e.Attr {
				if a.Name.Local == name {
					v, err := strconv.ParseFloat(a.Value, 64)
					require.NoError(t, err)
					return v
				}
			}
			return math.NaN()
		}
		attribute := func(name string) (values []float64) {
			for _, a := range e.Attr {
				if a.Name.Local == name {
					for _, s := range number.FindAllString(a.Value, -1) {
						v, err := strconv.ParseFloat(s, 64)
						require.NoError(t, err)
						values = append(values, v)
					}
				}
			}
			return values
		}
		place := func(x, y float64) [2]float64 {
			return [2]float64{(matrix[0]*x + matrix[2]*y + matrix[4]) * mmPerPoint, (matrix[1]*x + matrix[3]*y + matrix[5]) * mmPerPoint}
		}
		add := func(x, y string) {
			last := &pages[len(pages)-1][len(pages[len(pages)-1])-1]
			last.points = append(last.points, place(value(x), value(y)))
		}
		switch e.Name.Local {
		case "page":
			box := attribute("mediabox")
			sizes = append(sizes, [2]float64{(box[2] - box[0]) * mmPerPoint, (box[3] - box[1]) * mmPerPoint})
			pages = append(pages, nil)
		case "stroke_path":
			copy(matrix[:], attribute("transform"))
			pages[len(pages)-1] = append(pages[len(pages)-1], stroke{clip: within})
			open, clips = true, false
		case "clip_path":
			copy(matrix[:], attribute("transform"))
			within = &clip{[2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}}
			open, clips = false, true
		case "pop_clip":
			within = nil
		case "fill_path", "fill_text", "clip_stroke_path":
			open, clips = false, false
		case "moveto", "lineto":
			switch {
			case clips:
				within.take(place(value("x"), value("y")))
			case open:
				add("x", "y")
			}
		case "curveto":
			if open {
				s := &pages[len(pages)-1][len(pages[len(pages)-1])-1]
				from, a, b, to := s.points[len(s.points)-1], place(value("x1"), value("y1")), place(value("x2"), value("y2")), place(value("x3"), value("y3"))
				s.middles = append(s.middles, [2]float64{(from[0] + 3*a[0] + 3*b[0] + to[0]) / 8, (from[1] + 3*a[1] + 3*b[1] + to[1]) / 8})
				add("x3", "y3")
			}
		}
	}
}

// lengths returns the lengths of the level lines of a page.
func lengths(page []stroke) (all []float64) {
	for _, s := range page {
		if len(s.points) == 2 && math.Abs(s.points[0][1]-s.points[1][1]) < 1e-6 {
			all = append(all, math.Abs(s.points[0][0]-s.points[1][0]))
		}
	}
	return all
}

func near(all []float64, want float64) bool {
	for _, v := range all {
		if math.Abs(v-want) < 0.01 {
			return true
		}
	}
	return false
}

func TestPagesAndCheckLinesAreTrue(t *testing.T) {
	a5 := pdf.Options{Width: measure.Millimetres(148), Height: measure.Millimetres(210)}
	for name, c := range map[string]struct {
		d     *draw.Drawing
		o     pdf.Options
		sides [2]float64 // of the paper, the shorter first
	}{
		"A4":     {sleeve(), pdf.Options{}, [2]float64{210, 297}},
		"letter": {drawtest.Every()[0].Draw(), pdf.Options{}, [2]float64{215.9, 279.4}},
		"A5":     {sleeve(), a5, [2]float64{148, 210}},
	} {
		pages, sizes := trace(t, encode(t, c.d, c.o))
		require.NotEmpty(t, pages)
		for i := range pages {
			assert.InDelta(t, c.sides[0], min(sizes[i][0], sizes[i][1]), 0.01, name)
			assert.InDelta(t, c.sides[1], max(sizes[i][0], sizes[i][1]), 0.01, name)
			if i == 0 { // it has no room at true scale with its dimensions
				assert.False(t, near(lengths(pages[i]), 100), "%s: page %d", name, i)
				continue
			}
			assert.True(t, near(lengths(pages[i]), 100), "%s: page %d has a line of 100 mm", name, i)
			assert.True(t, near(lengths(pages[i]), 101.6), "%s: page %d has a line of 4 in", name, i)
		}
	}
}

// find looks for the pattern's points, moved alike, in one stroke of a page,
// and returns the way they are moved.
func find(page []stroke, points []pattern.Point) bool {
	at := func(p pattern.Point) [2]float64 { return [2]float64{p.X.Millimetres(), -p.Y.Millimetres()} }
	for _, s := range page {
		for _, q := range s.points {
			first := at(points[0])
			dx, dy := q[0]-first[0], q[1]-first[1]
			found := 0
			for _, p := range points {
				for _, r := range s.points {
					if math.Hypot(at(p)[0]+dx-r[0], at(p)[1]+dy-r[1]) < 0.01 {
						found++
						break
					}
				}
			}
			if found == len(points) {
				return true
			}
		}
	}
	return false
}

// The sleeve's outline and its window are read back within 0.01 mm, on one
// page and on pages that it is split over.
func TestCoordinatesReadBack(t *testing.T) {
	p := &drawtest.Sleeve().Pieces[0]
	corner := func(x, y int64) pattern.Point { return pattern.At(measure.Micrometres(x), measure.Micrometres(y)) }
	outline := []pattern.Point{corner(0, 0), corner(219_500, 0), corner(219_500, 40_000), corner(48_650, 40_000), corner(32_650, 40_000)}
	var window []pattern.Point
	for _, v := range p.Panels[2].Hole {
		window = append(window, v.Point)
	}
	template := draw.NewTemplate(drawtest.Sleeve(), draw.Options{Title: "Sleeve for a tin of tea", Step: measure.Marks(measure.Millimetre)[3]})
	a4, _ := trace(t, encode(t, template, pdf.Options{}))
	assert.True(t, find(a4[0], outline) && find(a4[0], window) || find(a4[0], turned(outline)) && find(a4[0], turned(window)))
	a5, _ := trace(t, encode(t, template, pdf.Options{Width: measure.Millimetres(148), Height: measure.Millimetres(210)}))
	for _, page := range a5 {
		assert.True(t, find(page, outline) || find(page, turned(outline)), "the parts of a figure are not moved against one another")
	}
}

// Templates on paper that they have room on are read back within 0.01 mm.
func TestTemplatesReadBack(t *testing.T) {
	t.Parallel()
	drawtest.Files(t, func(name string, d *draw.Drawing) {
		if d.View != draw.Template {
			return // machines read SVG and DXF
		}
		var all [][2]float64
		pages, _ := trace(t, encode(t, d, pdf.Options{Width: measure.Millimetres(1000), Height: measure.Millimetres(1400)}))
		for _, page := range pages {
			for _, s := range page {
				all = append(all, s.upright()...)
			}
		}
		assert.Empty(t, drawtest.Missing(d.Pattern, all, 0.01), name)
	})
}

// upright are the places of a stroke with y upwards.
func (s *stroke) upright() (all [][2]float64) {
	for _, q := range append(s.points[:len(s.points):len(s.points)], s.middles...) {
		all = append(all, [2]float64{q[0], -q[1]})
	}
	return all
}

// word is a word as poppler finds it.
type word struct {
	text           string
	x0, y0, x1, y1 float64
}

// numbers reads the numbers in quotes of a line, after each of the names.
func numbers(t *testing.T, line string, names ...string) []float64 {
	t.Helper()
	values := make([]float64, len(names))
	for i, name := range names {
		_, after, found := strings.Cut(line, name+`="`)
		value, _, closed := strings.Cut(after, `"`)
		require.True(t, found && closed, "%s in %q", name, line)
		v, err := strconv.ParseFloat(value, 64)
		require.NoError(t, err)
		values[i] = v * mmPerPoint
	}
	return values
}

// words returns the words of each page, which must keep out of its margin.
func words(t *testing.T, file []byte) (pages [][]word) {
	t.Helper()
	width := 0.0
	out := string(run(t, file, "pdftotext", "apt-get install poppler-utils", "-bbox", "FILE", "-"))
	for line := range strings.Lines(out) {
		line = strings.TrimSpace(line)
		if strings.HasPrefix(line, "<page ") {
			width = numbers(t, line, "width")[0]
			pages = append(pages, nil)
		}
		if !strings.HasPrefix(line, "<word ") {
			continue
		}
		at := numbers(t, line, "xMin", "yMin", "xMax", "yMax")
		_, text, _ := strings.Cut(line, ">")
		w := word{strings.TrimSuffix(text, "</word>"), at[0], at[1], at[2], at[3]}
		if w.x1 >= width-8.5 {
			t.Errorf("%q runs into the margin", w.text)
		}
		pages[len(pages)-1] = append(pages[len(pages)-1], w)
	}
	return pages
}

// batch gathers files and reads many at once, which takes half the time.
type batch struct {
	names, paths []string
	pages        []int
}

// add keeps a file, and checks all that are there if they are many.
func (b *batch) add(t *testing.T, name string, file []byte) {
	path := filepath.Join(t.TempDir(), fmt.Sprint(len(b.paths), ".pdf"))
	require.NoError(t, os.WriteFile(path, file, 0o600))
	b.names, b.paths = append(b.names, name), append(b.paths, path)
	b.pages = append(b.pages, bytes.Count(file, []byte("<</Type /Page /")))
	if len(b.paths) == 50 {
		b.check(t)
	}
}

// check checks the words of all files.
func (b *batch) check(t *testing.T) {
	t.Helper()
	if len(b.paths) == 0 {
		return
	}
	united := filepath.Join(t.TempDir(), "united.pdf")
	program := peer.Path(t, "pdfunite", "apt-get install poppler-utils")
	require.NoError(t, exec.Command(program, append(b.paths, united)...).Run())
	file, err := os.ReadFile(united)
	require.NoError(t, err)
	pages := words(t, file)
	for i, name := range b.names {
		require.GreaterOrEqual(t, len(pages), b.pages[i])
		checkWords(t, name, pages[:b.pages[i]])
		pages = pages[b.pages[i]:]
	}
	assert.Empty(t, pages)
	*b = batch{}
}

// checkWords checks that no words of a page overlap, that none is cut off by
// the margin, that no page is empty and that every number is one.
func checkWords(t *testing.T, name string, pages [][]word) {
	for i, page := range pages {
		assert.Greater(t, len(page), 6, "%s: page %d holds more than its frame", name, i+1)
		for k, a := range page {
			if a.text == "NaN" {
				t.Errorf("%s: page %d has a number that is none", name, i+1)
			}
			for _, b := range page[:k] {
				// poppler's boxes are as high as the font: take the middle part
				ah, bh := (a.y1-a.y0)*0.22, (b.y1-b.y0)*0.22
				apart := a.x0 >= b.x1-0.1 || b.x0 >= a.x1-0.1 || a.y0+ah >= b.y1-bh || b.y0+bh >= a.y1-ah
				if !apart {
					t.Errorf("%s: page %d: %q overlaps %q", name, i+1, a.text, b.text)
				}
			}
		}
	}
}

func TestWordsAreApart(t *testing.T) {
	t.Parallel()
	for _, s := range drawtest.Every() {
		checkWords(t, s.Name, words(t, encode(t, s.Draw(), pdf.Options{})))
	}
	tried, all := 0, batch{}
	drawtest.EachRandom(t, 500, func(t *testing.T, s *drawtest.Sample) {
		o := pdf.Options{}
		if tried++; tried%3 == 0 {
			o = pdf.Options{Width: measure.Millimetres(420), Height: measure.Millimetres(594)}
		}
		all.add(t, fmt.Sprint(tried, " ", s.Name), encode(t, s.Draw(), o))
	})
	all.check(t)
}

func TestCutPlan(t *testing.T) {
	d := drawtest.DrawPlan()
	for _, o := range []pdf.Options{{}, {Width: measure.Millimetres(148), Height: measure.Millimetres(210)}} {
		checkWords(t, "plan", words(t, encode(t, d, o)))
	}
}

// The table has every reading.
func TestTableHoldsTheReadings(t *testing.T) {
	s := drawtest.Every()[0]
	text := string(run(t, encode(t, s.Draw(), pdf.Options{}), "pdftotext", "apt-get install poppler-utils", "-layout", "FILE", "-"))
	for _, r := range s.Draw().Readings {
		found := false
		for line := range strings.Lines(text) {
			found = found || strings.Contains(line, r.What) && strings.Contains(line, s.Solution.Step.Format(r.At))
		}
		assert.True(t, found, "%v", r)
	}
}

func TestWhatHasNoRoomWritesItsScale(t *testing.T) {
	o := pdf.Options{Width: measure.Millimetres(148), Height: measure.Millimetres(210)}
	file := encode(t, sleeve(), o)
	text := string(run(t, file, "pdftotext", "apt-get install poppler-utils", "FILE", "-"))
	m := regexp.MustCompile(`scale 1 : ([0-9.]*[0-9])`).FindStringSubmatch(text)
	require.NotNil(t, m, text)
	scale, err := strconv.ParseFloat(m[1], 64)
	require.NoError(t, err)
	pages, _ := trace(t, file)
	assert.InDelta(t, 219.5/scale, longest(pages[0]), 0.02, "the longest line is the sleeve's edge at that scale")
	assert.False(t, near(lengths(pages[0]), 100), "nothing says that it is true to size")
}

// longest returns the longest level line of any closed outline of a page.
func longest(page []stroke) float64 {
	best := 0.0
	for _, s := range page {
		for i := 1; len(s.points) > 2 && i < len(s.points); i++ {
			if math.Abs(s.points[i][1]-s.points[i-1][1]) < 1e-6 {
				best = max(best, math.Abs(s.points[i][0]-s.points[i-1][0]))
			}
		}
	}
	return best
}

// No letter is under 9 points on any page, however much a piece is shrunk.
func TestLettersCanBeRead(t *testing.T) {
	least := func(name string, file []byte) {
		for _, page := range words(t, file) {
			for _, w := range page {
				assert.Greater(t, max(w.x1-w.x0, w.y1-w.y0), 9*mmPerPoint, "%s: %q", name, w.text) // poppler's boxes are as high as the font
			}
		}
	}
	for _, s := range drawtest.Every() {
		least(s.Name, encode(t, s.Draw(), pdf.Options{}))
	}
	least("plan", encode(t, drawtest.DrawPlan(), pdf.Options{}))
}

func TestPaperOutOfBounds(t *testing.T) {
	for _, o := range []pdf.Options{
		{Width: measure.Millimetres(139), Height: measure.Millimetres(300)},
		{Width: measure.Millimetres(300)},
		{Width: measure.Millimetres(200), Height: measure.Inches(201)},
		{Width: measure.Millimetres(-200), Height: measure.Millimetres(200)},
	} {
		assert.ErrorContains(t, pdf.Encode(io.Discard, sleeve(), o), "is not between", fmt.Sprint(o))
	}
}

func TestOddTitles(t *testing.T) {
	for _, title := range []string{"", "\x00\xff😀 𝔸", strings.Repeat("long ", 100), strings.Repeat("x", 300), "Grüße · Чай"} {
		s := drawtest.Every()[0]
		o := s.Options()
		o.Title = title
		encode(t, draw.New(&s.Solution.Pattern, o), pdf.Options{})
	}
}

func TestGolden(t *testing.T) {
	for name, d := range drawtest.Goldens() {
		drawtest.CheckGolden(t, name+".pdf", encode(t, d, pdf.Options{}))
	}
	drawtest.CheckGolden(t, "cut-plan.pdf", encode(t, drawtest.DrawPlan(), pdf.Options{}))
	drawtest.CheckGolden(t, "sleeve-a5.pdf", encode(t, sleeve(), pdf.Options{Width: measure.Millimetres(148), Height: measure.Millimetres(210)}))
}

// full is a writer that takes nothing.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }

func TestWriteErrorIsReported(t *testing.T) {
	assert.ErrorContains(t, pdf.Encode(full{}, sleeve(), pdf.Options{}), "the disk is full")
}

func BenchmarkPDF(b *testing.B) {
	d := drawtest.Every()[0].Draw()
	b.ReportAllocs()
	for b.Loop() {
		if err := pdf.Encode(io.Discard, d, pdf.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func template(t *testing.T, s *drawtest.Sample, o pdf.Options) []byte {
	return encode(t, draw.NewTemplate(&s.Solution.Pattern, s.Options()), o)
}

func pagesOf(file []byte) int { return bytes.Count(file, []byte("<</Type /Page /")) }

// Pieces that fit on a page are on one, whichever way round, and what does not
// is parted; the check line is on every page.
func TestTemplate(t *testing.T) {
	for _, s := range drawtest.Every() {
		file := template(t, &s, pdf.Options{})
		pages, _ := trace(t, file)
		size := measure.Millimetres(100)
		least := 0.0 // pages that the paper alone takes
		for i := range s.Solution.Pattern.Pieces {
			p := &s.Solution.Pattern.Pieces[i]
			least += p.Width.Millimetres() * p.Height.Millimetres() / (210 * 297)
		}
		if s.Solution.Step.Unit() == measure.Inch {
			size = measure.Inches(4)
		}
		assert.GreaterOrEqual(t, float64(len(pages)), least, s.Name)
		for i, page := range pages {
			long := size.Millimetres()
			assert.True(t, near(lengths(page), long) || near(lengths(page), long/2), "%s: page %d has a check line", s.Name, i+1)
		}
	}
}

// A band of 262 mm has one A4 page; the page's words are on joining where a
// piece is parted.
func TestTemplateOfOneAndOfManyPages(t *testing.T) {
	mm := measure.Millimetres
	strip := func(w, h int64) *draw.Drawing {
		p := &pattern.Pattern{Pieces: []pattern.Piece{{Name: "band", Quantity: 1, Width: mm(w), Height: mm(h),
			Panels: []pattern.Panel{{Name: "back", Outline: pattern.Rectangle(mm(0), mm(0), mm(w), mm(h))}}}}}
		return draw.NewTemplate(p, draw.Options{Title: "Band", Step: measure.Marks(measure.Millimetre)[3]})
	}
	a4 := pdf.Options{Width: mm(210), Height: mm(297)}
	assert.Equal(t, 1, pagesOf(encode(t, strip(262, 44), a4)))
	assert.Equal(t, 1, pagesOf(encode(t, strip(181, 202), pdf.Options{Width: measure.Sixtyfourths(544), Height: measure.Inches(11)})))
	assert.Equal(t, 1, pagesOf(encode(t, strip(262, 180), a4)), "the check line is shorter or lies beside it")
	long := encode(t, strip(400, 160), a4)
	assert.Equal(t, 2, pagesOf(long))
	text := string(run(t, long, "pdftotext", "apt-get install poppler-utils", "FILE", "-"))
	assert.Contains(t, text, "Part A: part B, page 2, goes on here, mark to mark.")
	assert.Contains(t, text, "Part B: cut off here between the marks and lay it on part A, page 1, mark to mark.")
	pages, _ := trace(t, long)
	corners := []pattern.Point{pattern.At(mm(0), mm(0)), pattern.At(mm(400), mm(0)), pattern.At(mm(400), mm(160))}
	for _, page := range pages {
		assert.True(t, find(page, corners) || find(page, turned(corners)), "the parts are true to size")
	}
}

// turned turns places by a quarter to the left.
func turned(points []pattern.Point) (all []pattern.Point) {
	for _, p := range points {
		all = append(all, pattern.At(p.Y.Neg(), p.X))
	}
	return all
}
