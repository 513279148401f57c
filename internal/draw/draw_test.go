package draw_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// texts returns the boxes of all texts of a drawing, where they lie in it.
func texts(d *draw.Drawing) (boxes []draw.Box, words []string) {
	add := func(labels []draw.Label, at draw.Point) {
		for _, l := range labels {
			b := l.Box
			b.Low.X, b.High.X = b.Low.X+at.X, b.High.X+at.X
			b.Low.Y, b.High.Y = b.Low.Y+at.Y, b.High.Y+at.Y
			boxes = append(boxes, b)
			words = append(words, l.Lines[0])
		}
	}
	add(d.Heading, draw.Point{})
	for _, f := range d.Figures {
		add(f.Labels, f.At)
	}
	add(d.Legend.Labels, d.Legend.At)
	return boxes, words
}

// checkLayout checks that texts are apart, inside the drawing and finite.
func checkLayout(t *testing.T, name string, d *draw.Drawing) {
	boxes, words := texts(d)
	require.NotEmpty(t, boxes)
	for i, b := range boxes {
		assert.Greater(t, b.Width(), 0.0, "%s: %q", name, words[i])
		inside := b.Low.X >= 0 && b.Low.Y >= 0 && b.High.X <= d.Width && b.High.Y <= d.Height
		assert.True(t, inside, "%s: %q lies outside: %v in %v x %v", name, words[i], b, d.Width, d.Height)
		for j := range boxes[:i] {
			assert.False(t, b.Meets(boxes[j]), "%s: %q overlaps %q", name, words[i], words[j])
		}
	}
	for _, f := range d.Figures {
		for _, l := range f.Lines {
			for _, v := range l.Path {
				assert.False(t, math.IsNaN(v.X+v.Y) || math.IsInf(v.X+v.Y, 0), "%s: %s", name, l.Name)
			}
		}
	}
}

func TestTextsOfRandomRequestsAreApart(t *testing.T) {
	drawtest.EachRandom(t, 500, func(t *testing.T, s *drawtest.Sample) {
		checkLayout(t, s.Name, s.Draw())
	})
}

// TestMarksAreWrittenAsFractions reads back what drawings write: a decimal of an
// inch lies on no mark of any ruler.
func TestMarksAreWrittenAsFractions(t *testing.T) {
	finest := measure.Marks(measure.Inch)[6]
	read := 0
	drawtest.EachRandom(t, 300, func(t *testing.T, s *drawtest.Sample) {
		for _, f := range s.Draw().Figures {
			for _, label := range f.Labels {
				for _, line := range label.Lines {
					if l, err := measure.Parse(line, measure.NoUnit, measure.DecimalPoint); err == nil && strings.HasSuffix(line, " in") {
						read++
						assert.False(t, strings.Contains(line, ".") && l.IsMultipleOf(finest), "%s: %s", s.Name, line)
					}
				}
			}
		}
	})
	assert.Greater(t, read, 100)
}

func TestTextsAreApartInOtherLettering(t *testing.T) {
	for _, s := range drawtest.Every() {
		for _, size := range []float64{1, 3.2, 9, 30} {
			checkLayout(t, s.Name, s.Draw().Lettered(size))
		}
	}
}

// Long words in another language wrap or move out of their panels.
func TestTextsAreApartInLongWords(t *testing.T) {
	for _, s := range drawtest.Every() {
		o := s.Options()
		o.Say = func(word string) string { return "außergewöhnlich umständliche " + word + " mit Zusatzbezeichnung" }
		checkLayout(t, s.Name, draw.New(&s.Solution.Pattern, o))
	}
}

// Every position on a strip is written as the ruler reads it.
func TestReadingsAreThePatterns(t *testing.T) {
	for _, s := range drawtest.Every() {
		d := s.Draw()
		for i, p := range s.Solution.Pattern.Pieces {
			var words []string
			for _, l := range d.Figures[i].Labels {
				words = append(words, l.Lines...)
			}
			for _, strip := range p.Strips {
				for _, at := range strip.Positions()[1:] {
					assert.Contains(t, words, s.Solution.Step.Format(at), s.Name)
				}
			}
		}
	}
}

// A score that is made papers off its boundary is written as a hand sets it, by the
// solution's own account of settings, and not at the boundary.
func TestScoresBesideABoundary(t *testing.T) {
	found := 0
	for _, s := range drawtest.Every() {
		d := s.Draw()
		for i, p := range s.Solution.Pattern.Pieces {
			for _, strip := range p.Strips {
				for j, score := range strip.Scores {
					if score.Beside.IsZero() {
						continue
					}
					set, ok := s.Solution.Set(strip.Positions()[j+1].Add(score.Beside))
					require.True(t, ok)
					want := fmt.Sprintf("%s + %d paper", s.Solution.Step.Format(set.Mark), set.Papers)
					assert.True(t, slices.ContainsFunc(d.Figures[i].Labels, func(l draw.Label) bool { return slices.Contains(l.Lines, want) }), "%s: %s", s.Name, want)
					found++
				}
			}
		}
	}
	assert.Positive(t, found)
}

func TestSleeveLayout(t *testing.T) {
	d := draw.New(drawtest.Sleeve(), draw.Options{Title: "Sleeve for a tin of tea", Step: measure.Marks(measure.Millimetre)[2]})
	checkLayout(t, "sleeve", d)
	layers := map[draw.Layer]int{}
	for _, f := range d.Figures {
		for _, l := range f.Lines {
			layers[l.Layer]++
		}
	}
	for _, l := range []draw.Layer{draw.Paper, draw.PastedUnder, draw.ValleyFold, draw.SlitCut, draw.Outline, draw.Measures} {
		assert.Positive(t, layers[l], l.String())
	}
	assert.Zero(t, layers[draw.MountainFold]+layers[draw.Pasted])
	assert.Contains(t, d.Description, "score 1 81.3 mm from the left, valley 90°")
}

// contrast is the ratio of WCAG 2.2 between two colours.
func contrast(a, b draw.Colour) float64 {
	l := [2]float64{luminance(a), luminance(b)}
	return (max(l[0], l[1]) + 0.05) / (min(l[0], l[1]) + 0.05)
}

func luminance(c draw.Colour) float64 {
	sum := 0.0
	for i, v := range [3]uint8{c.R, c.G, c.B} {
		s := float64(v) / 255
		if s <= 0.04045 {
			s /= 12.92
		} else {
			s = math.Pow((s+0.055)/1.055, 2.4)
		}
		sum += s * [3]float64{0.2126, 0.7152, 0.0722}[i]
	}
	return sum
}

func TestContrasts(t *testing.T) {
	for name, p := range map[string]*draw.Palette{"light": draw.Light(), "dark": draw.Dark()} {
		for _, ground := range []draw.Colour{p.Ground, p.Of(draw.Paper)} {
			for l := draw.Pasted; l <= draw.Measures; l++ {
				assert.GreaterOrEqual(t, contrast(p.Of(l), ground), 4.0, "%s %s", name, l)
			}
			assert.GreaterOrEqual(t, contrast(p.Text, ground), 4.5, name)
			assert.GreaterOrEqual(t, contrast(p.Quiet, ground), 4.5, name)
		}
	}
}

func BenchmarkNew(b *testing.B) {
	s := drawtest.Every()[0]
	b.ReportAllocs()
	for b.Loop() {
		s.Draw()
	}
}

// A name keeps off the edge of a glue area where its panel has room beside it.
func TestNamesKeepOffGlue(t *testing.T) {
	mm := measure.Millimetres
	p := &pattern.Pattern{Pieces: []pattern.Piece{{
		Name: "band", Quantity: 1, Width: mm(49), Height: mm(40),
		Panels: []pattern.Panel{{Name: "outer half", Outline: pattern.Rectangle(mm(0), mm(0), mm(49), mm(40))}},
		Glues:  []pattern.Glue{{Name: "lap", Area: pattern.Rectangle(mm(30), mm(0), mm(49), mm(40))}},
	}}}
	found := false
	for _, l := range draw.New(p, draw.Options{Step: measure.Marks(measure.Millimetre)[3]}).Figures[0].Labels {
		if slices.Equal(l.Lines, []string{"outer half"}) {
			found = true
			assert.False(t, l.Box.Crosses(draw.Point{X: 30}, draw.Point{X: 30, Y: 40}))
		}
	}
	assert.True(t, found)
}
