package svg_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/draw/svg"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// element is what an independent reader makes of an SVG element.
type element struct {
	XMLName  xml.Name
	Attrs    []xml.Attr `xml:",any,attr"`
	Children []element  `xml:",any"`
	Text     string     `xml:",chardata"`
}

func (e *element) attr(name string) string {
	for _, a := range e.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func (e *element) number(t *testing.T, name string) float64 {
	v, err := strconv.ParseFloat(e.attr(name), 64)
	require.NoError(t, err, name)
	return v
}

// walk visits all elements.
func (e *element) walk(visit func(*element)) {
	visit(e)
	for i := range e.Children {
		e.Children[i].walk(visit)
	}
}

func read(t *testing.T, b []byte) element {
	var root element
	require.NoError(t, xml.Unmarshal(b, &root))
	return root
}

// points reads the corners of path data that consists of M, H, V, L and A.
func points(t *testing.T, data string) [][2]float64 {
	return traced(t, data, func(_, _ [2]float64, _ float64) {})
}

// bulge is that of an arc of a radius.
func bulge(a, b [2]float64, radius float64, large, sweep string) float64 {
	turn := 2 * math.Asin(min(1, math.Hypot(b[0]-a[0], b[1]-a[1])/(2*radius)))
	if large == "1" {
		turn = 2*math.Pi - turn
	}
	if sweep == "0" {
		turn = -turn
	}
	return math.Tan(turn / 4)
}

// traced reads the corners of path data, and tells of its arcs.
func traced(t *testing.T, data string, arc func(a, b [2]float64, bulge float64)) [][2]float64 {
	data = strings.NewReplacer("M", " M ", "H", " H ", "V", " V ", "L", " L ", "A", " A ", "Z", " ").Replace(data)
	fields := strings.Fields(data)
	next := func() float64 {
		v, err := strconv.ParseFloat(fields[0], 64)
		require.NoError(t, err, data)
		fields = fields[1:]
		return v
	}
	var at [2]float64
	var all [][2]float64
	for len(fields) > 0 {
		command := fields[0]
		fields = fields[1:]
		switch command {
		case "H":
			at[0] = next()
		case "V":
			at[1] = next()
		case "A":
			from, radius := at, next()
			large, sweep := fields[2], fields[3]
			fields = fields[4:]
			at = [2]float64{next(), next()}
			arc(from, at, bulge(from, at, radius, large, sweep))
		default:
			at = [2]float64{next(), next()}
		}
		all = append(all, at)
	}
	return all
}

// named gathers the corners of all paths whose title starts with a name.
func named(t *testing.T, root *element, name string) [][2]float64 {
	var all [][2]float64
	root.walk(func(e *element) {
		if e.XMLName.Local == "path" && len(e.Children) == 1 && strings.HasPrefix(e.Children[0].Text, name) {
			all = append(all, points(t, e.attr("d"))...)
		}
	})
	return all
}

func assertHas(t *testing.T, all [][2]float64, p pattern.Point, what string) {
	t.Helper()
	best := math.Inf(1)
	for _, q := range all {
		best = min(best, math.Hypot(q[0]-p.X.Millimetres(), q[1]-p.Y.Millimetres()))
	}
	assert.Less(t, best, 1e-3, "%s: no corner within 1 um of it", what)
}

// off is the distance of a point from the straight lines of a closed path.
func off(path [][2]float64, p pattern.Point) float64 {
	x, y, least := p.X.Millimetres(), p.Y.Millimetres(), math.Inf(1)
	for i, a := range path {
		b := path[(i+1)%len(path)]
		dx, dy := b[0]-a[0], b[1]-a[1]
		along := max(0, min(1, ((x-a[0])*dx+(y-a[1])*dy)/(dx*dx+dy*dy)))
		least = min(least, math.Hypot(a[0]+along*dx-x, a[1]+along*dy-y))
	}
	return least
}

// Creases, slits and outlines read back lie where the pattern has them.
func TestCoordinatesReadBack(t *testing.T) {
	for _, s := range drawtest.Every() {
		if len(s.Solution.Pattern.Pieces) > 1 {
			continue // names are not unique then
		}
		root := read(t, svg.Append(nil, s.Draw(), svg.Options{}))
		p := &s.Solution.Pattern.Pieces[0]
		outline := named(t, &root, "outline")
		for _, c := range p.Creases {
			all := append(named(t, &root, c.Name+":"), outline...)
			for i := range p.Cuts {
				all = append(all, named(t, &root, p.Cuts[i].Name)...)
			}
			assertHas(t, all, c.A, s.Name+" "+c.Name)
			assertHas(t, all, c.B, s.Name+" "+c.Name)
		}
		for _, c := range p.Cuts {
			for _, v := range c.Path {
				if c.Kind == pattern.Relief { // its corners may lie where the outline goes straight on
					assert.Less(t, off(outline, v.Point), 1e-3, s.Name+" "+c.Name)
				} else {
					assertHas(t, append(named(t, &root, c.Name), outline...), v.Point, s.Name+" "+c.Name)
				}
			}
		}
	}
}

// Templates and cutter's files are read back within a micrometre.
func TestFilesReadBack(t *testing.T) {
	drawtest.Files(t, func(name string, d *draw.Drawing) {
		root := read(t, svg.Append(nil, d, svg.Options{}))
		var all [][2]float64
		root.walk(func(e *element) {
			if e.XMLName.Local == "path" {
				all = append(all, traced(t, e.attr("d"), func(a, b [2]float64, bulge float64) { all = append(all, drawtest.Middle(a, b, bulge)) })...)
			}
		})
		assert.Empty(t, drawtest.Missing(d.Pattern, all, 1e-3), name)
	})
}

func TestTrueToSize(t *testing.T) {
	d := draw.New(drawtest.Sleeve(), draw.Options{Title: "Sleeve & <card>", Step: measure.Marks(measure.Millimetre)[2]})
	root := read(t, svg.Append(nil, d, svg.Options{ID: "7 tea/1"}))
	assert.Equal(t, root.attr("width"), fmt.Sprintf("%smm", strings.Fields(root.attr("viewBox"))[2]))
	assert.Equal(t, root.attr("height"), fmt.Sprintf("%smm", strings.Fields(root.attr("viewBox"))[3]))
	assert.Equal(t, "img", root.attr("role"))
	assert.Equal(t, "tea1-title tea1-desc", root.attr("aria-labelledby"))
	assert.Equal(t, "tea1-title", root.Children[0].attr("id"))
	assert.Equal(t, "Sleeve & <card>", root.Children[0].Text)
	assert.NotEmpty(t, root.Children[1].Text)
	root.walk(func(e *element) {
		if transform := e.attr("transform"); e.XMLName.Local == "g" && transform != "" {
			assert.True(t, strings.HasPrefix(transform, "matrix(1 0 0 -1 "), "nothing is scaled: %s", transform)
		}
	})
	outline := named(t, &root, "outline")
	assertHas(t, outline, pattern.At(measure.Micrometres(48_650), measure.Millimetres(40)), "thumb notch")
	assertHas(t, outline, pattern.At(measure.Millimetres(54), measure.Millimetres(36)), "rounded corner")
}

// box is what a text takes up as it is written: held to its textLength.
func box(t *testing.T, e *element, size float64) [4]float64 {
	w := e.number(t, "textLength")
	if m := e.attr("transform"); m != "" {
		var x, y float64
		_, err := fmt.Sscanf(m, "matrix(0 -1 1 0 %f %f)", &x, &y)
		require.NoError(t, err)
		return [4]float64{x - 0.72*size, y - w, x + 0.2*size, y}
	}
	x, y := e.number(t, "x"), e.number(t, "y")
	return [4]float64{x, y - 0.72*size, x + w, y + 0.2*size}
}

func TestTextsReadBackAreApart(t *testing.T) {
	drawtest.EachRandom(t, 500, func(t *testing.T, s *drawtest.Sample) {
		b := svg.Append(nil, s.Draw(), svg.Options{})
		assert.NotContains(t, string(b), "NaN")
		root := read(t, b)
		var boxes [][4]float64
		root.walk(func(g *element) {
			for i := range g.Children {
				if e := &g.Children[i]; e.XMLName.Local == "text" {
					boxes = append(boxes, box(t, e, g.number(t, "font-size")))
				}
			}
		})
		require.NotEmpty(t, boxes)
		for i, a := range boxes {
			for _, c := range boxes[:i] {
				apart := a[0] >= c[2]-0.02 || c[0] >= a[2]-0.02 || a[1] >= c[3]-0.02 || c[1] >= a[3]-0.02
				assert.True(t, apart, "%s: %v %v", s.Name, a, c)
			}
		}
	})
}

func TestSlottedBandIsSmall(t *testing.T) {
	for _, s := range drawtest.Every() {
		if strings.HasPrefix(s.Name, "slotted-band") {
			assert.Less(t, len(svg.Append(nil, s.Draw(), svg.Options{})), 12<<10, s.Name)
		}
	}
}

func TestDarkDiffersInColoursAlone(t *testing.T) {
	s := drawtest.Every()[0]
	light, dark := svg.Append(nil, s.Draw(), svg.Options{}), svg.Append(nil, s.Draw(), svg.Options{Dark: true})
	assert.NotEqual(t, light, dark)
	assert.Equal(t, len(light), len(dark))
	assert.Equal(t, light, svg.Append(nil, s.Draw(), svg.Options{}), "the same bytes every time")
}

func TestUnwritableTextIsLeftOut(t *testing.T) {
	s := drawtest.Every()[0]
	o := s.Options()
	o.Title = "a\x00b\xffc\u0007 \uffff&"
	root := read(t, svg.Append(nil, draw.New(&s.Solution.Pattern, o), svg.Options{}))
	assert.Equal(t, "abc &", root.Children[0].Text)
}

func TestGolden(t *testing.T) {
	for name, d := range drawtest.Goldens() {
		drawtest.CheckGolden(t, name+".svg", svg.Append(nil, d, svg.Options{}))
		drawtest.CheckGolden(t, name+"-dark.svg", svg.Append(nil, d, svg.Options{Dark: true}))
	}
	drawtest.CheckGolden(t, "cut-plan.svg", svg.Append(nil, drawtest.DrawPlan(), svg.Options{}))
}

func BenchmarkSVG(b *testing.B) {
	s := drawtest.Every()[0]
	b.ReportAllocs()
	for b.Loop() {
		svg.Append(nil, s.Draw(), svg.Options{})
	}
}

// BenchmarkFloor copies a finished picture: what any encoder takes at least.
func BenchmarkFloor(b *testing.B) {
	s := drawtest.Every()[0]
	done := svg.Append(nil, s.Draw(), svg.Options{})
	b.ReportAllocs()
	for b.Loop() {
		var out bytes.Buffer
		out.Write(done)
	}
}
