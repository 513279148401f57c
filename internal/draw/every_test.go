package draw_test

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"creasefit/internal/assembly"
	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/golden"
	"creasefit/internal/measure"
)

// told sums a drawing up: its size, of each layer how many lines there are, how long they
// are together and where their middle is, and what is written, where, and how large.
func told(d *draw.Drawing) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s %.2f x %.2f mm, letters %.2f\n", d.View, d.Width, d.Height, d.Lettering)
	var sums [draw.Layers]struct{ lines, long, x, y, area float64 }
	var words []string
	where := draw.Point{}
	label := func(l *draw.Label, at draw.Point) {
		words = append(words, strings.Join(l.Lines, "/"))
		for i := range l.Lines {
			line := l.Line(i)
			where.X, where.Y = where.X+at.X+line.At.X+line.Width, where.Y+at.Y+line.At.Y+l.Size
		}
	}
	for _, f := range append(d.Figures, d.Legend) {
		for _, l := range f.Lines {
			points := draw.Flatten(nil, l.Path, l.Closed, 0.01)
			if l.Closed {
				points = append(points, points[0])
			}
			s := &sums[l.Layer]
			s.lines++
			for i := 1; i < len(points); i++ {
				p, q := points[i-1], points[i]
				long := math.Hypot(q.X-p.X, q.Y-p.Y)
				s.long, s.x, s.y = s.long+long, s.x+long*(f.At.X+(p.X+q.X)/2), s.y+long*(f.At.Y+(p.Y+q.Y)/2)
			}
			if l.Fill {
				s.area++
			}
		}
		for i := range f.Labels {
			label(&f.Labels[i], f.At)
		}
	}
	for i := range d.Heading {
		label(&d.Heading[i], draw.Point{})
	}
	for layer, s := range sums {
		if s.lines > 0 {
			fmt.Fprintf(&b, "  %s: %.0f, %.0f filled, %.1f mm about %.1f, %.1f\n", draw.Layer(layer), s.lines, s.area, s.long, s.x/s.long, s.y/s.long)
		}
	}
	if n := float64(len(words)); n > 0 {
		fmt.Fprintf(&b, "  %s, about %.2f, %.2f\n", strings.Join(words, " | "), where.X/n, where.Y/n)
	}
	return b.String()
}

// TestEveryDrawing sums up every view of every kind, the pictures of its work, a cut plan, a
// sheet to measure by and enclosures round one another. What changed is seen on the contact
// sheet (see the package drawtest).
func TestEveryDrawing(t *testing.T) {
	for _, s := range append(drawtest.Every(), drawtest.Adorned()) {
		p, o := &s.Solution.Pattern, s.Options()
		o.Clearances = []draw.Clearance{{Name: []string{"width"}, Least: measure.Micrometres(100), Most: measure.Micrometres(900),
			Low: measure.Micrometres(-200), High: measure.Micrometres(1100), Enough: measure.Micrometres(50), Chance: 0.93}}
		cutter, err := draw.NewCutter(p, o, draw.CutterOptions{Kerf: 0.2})
		require.NoError(t, err)
		var b strings.Builder
		measured := s.Draw()
		fmt.Fprintf(&b, "%s\n%s", measured.Description, told(measured))
		for _, r := range measured.Readings {
			fmt.Fprintln(&b, " ", r.Piece, r.What, r.From, r.At.Millimetres())
		}
		for _, d := range []*draw.Drawing{draw.NewTemplate(p, o), cutter, draw.NewFinished(p, o), draw.NewSpread(p, o), measured.Lettered(5), measured.Readable(0.03)} {
			b.WriteString(told(d))
		}
		picture := s.Pictures(o)
		for i := range s.Order().Steps {
			d := picture([]int{i + 1})
			fmt.Fprintf(&b, "%s\n%s", d.Description, told(d))
		}
		golden.Check(t, filepath.Join("testdata", s.Name+".txt"), []byte(b.String()))
	}
}

// TestOtherDrawings sums up drawings that are of no single kind.
func TestOtherDrawings(t *testing.T) {
	samples := map[string]drawtest.Sample{}
	for _, s := range drawtest.Every() {
		samples[s.Name] = s
	}
	band, tray := samples["band-thick-mm"], samples["tray-thick-mm"]
	work := func(s *drawtest.Sample) draw.Work {
		return draw.Work{Name: s.Name, Pattern: &s.Solution.Pattern, Options: s.Options(), Order: func() (*assembly.Order, error) { return s.Order(), nil }}
	}
	layers := draw.NewLayers(&tray.Solution.Pattern, []draw.Work{work(&band), work(&tray)}, tray.Options())
	sheet := draw.NewTestSheet(draw.TestSheet{}, draw.Options{Title: "Test sheet", Step: measure.Marks(measure.Inch)[4]})
	golden.Check(t, filepath.Join("testdata", "others.txt"), []byte(told(drawtest.DrawPlan())+told(sheet)+told(layers)))
}
