package guide_test

import (
	"maps"
	"math"
	"math/big"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/assembly"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// figure is a number in a text: "3 5/8 in", "92,1 mm", "4".
var figure = regexp.MustCompile(`(−?)(?:(\d+)\x{a0})?(?:(\d+)/(\d+)|(\d+)(?:[.,](\d+))?)(?:\x{a0}(in|Zoll|mm)\b)?`)

// assertNumbersFound looks every number of a guide up in its solution.
func assertNumbersFound(t assert.TestingT, s *solve.Solution, g guide.Guide) {
	lengths, counts := known(s), countsOf(s)
	for _, text := range allTexts(s, g) {
		for _, m := range figure.FindAllStringSubmatch(text, -1) {
			if m[7] == "" {
				n, _ := strconv.Atoi(m[5])
				assert.Contains(t, counts, n, "%q in %q", m[0], text)
				continue
			}
			if !lengths.has(m, s.Step.Unit()) {
				assert.Fail(t, "not in the solution", "%q in %q", m[0], text)
			}
		}
	}
}

// allTexts returns the texts of a guide but for those that are the solution's
// or the kind's own words.
func allTexts(s *solve.Solution, g guide.Guide) []string {
	texts := append(slices.Clone(g.Cautions), g.FitNotes...)
	for _, i := range append(slices.Clone(g.Materials), g.Tools...) {
		texts = append(texts, i.Text)
	}
	for _, b := range g.CutList {
		texts = append(texts, b.Piece, strconv.Itoa(b.Quantity), b.Width.Text, b.Height.Text)
	}
	for i := range g.Steps {
		texts = append(texts, g.Steps[i].Title, g.Steps[i].Whole())
	}
	for i, w := range g.Warnings {
		if w.Text != s.Warnings[i].Detail {
			texts = append(texts, w.Text)
		}
	}
	return append(texts, strings.TrimPrefix(g.Summary, s.Request.Kind.Help))
}

// book is the lengths that a solution has.
type book map[measure.Length]bool

// has reports whether a written length is one of them: exactly in the ruler's
// unit as far as that has marks, else as nearly as its places tell.
func (b book) has(m []string, ruler measure.Unit) bool {
	value, tolerance := new(big.Rat), 0.0
	per, unit := int64(25_400_000), measure.Inch
	if m[7] == "mm" {
		per, unit = 1_000_000, measure.Millimetre
	}
	switch {
	case m[3] != "":
		value.SetString(m[3] + "/" + m[4])
		if m[2] != "" {
			whole, _ := new(big.Rat).SetString(m[2])
			value.Add(value, whole)
		}
		if unit != ruler {
			tolerance = 25_400_000.0 / 128
		}
	default:
		value.SetString(m[5] + "." + m[6] + "0")
		tolerance = 0.0005 * 25_400_000
		if unit == measure.Millimetre {
			tolerance = 5_000
			if ruler != unit {
				tolerance = 50_000
			}
		} else if m[6] == "" && unit != ruler {
			tolerance = 25_400_000.0 / 128
		}
	}
	nm, _ := value.Mul(value, new(big.Rat).SetInt64(per)).Float64()
	if m[1] != "" {
		nm = -nm
	}
	for l := range b {
		if math.Abs(float64(l.Nanometres())-nm) <= tolerance {
			return true
		}
	}
	return false
}

// add adds lengths as they are.
func (b book) add(ls ...measure.Length) {
	for _, l := range ls {
		b[l] = true
	}
}

// known gathers every length of a solution that a guide may tell.
func known(s *solve.Solution) book {
	b, r := book{}, s.Request
	b.add(r.Width, r.Height, r.Thickness, r.Caliper, r.SheetWidth, r.SheetHeight, r.Fit.Min, r.Fit.Max, s.Step.Size())
	b.add(s.Outside.Width, s.Outside.Height, s.Outside.Thickness)
	for _, f := range s.Fits {
		b.add(f.Nominal, f.Window.Min, f.Window.Max, f.RSS.Min, f.RSS.Max)
	}
	for _, a := range s.Alternatives {
		b.add(a.Step.Size())
		for _, f := range a.Fits {
			b.add(f.Nominal)
		}
	}
	if o := s.Ornament; o != nil {
		b.add(o.HalfWidth, o.HalfWidth.Times(2), o.Height, o.GlueFrom, o.GlueTo, o.GlueHeight, o.TrimWidth, o.ShowsHeight, o.Adds, s.Step.Up(o.GlueFrom), s.Step.Down(o.GlueTo), s.Step.Down(o.GlueHeight))
	}
	for i := range s.Pattern.Pieces {
		b.piece(&s.Pattern.Pieces[i], s.Step)
	}
	for _, bond := range s.Pattern.Bonds {
		b.glued(&s.Pattern.Pieces[bond.A], bond.Glues, s.Step)
		b.seams(&s.Pattern.Pieces[bond.B], bond.Seams)
	}
	for _, p := range s.Pattern.Places {
		b.add(p.X, p.Y, p.Above)
	}
	if o, err := assembly.Find(&s.Ideal, &s.Pattern, s.Proof.Tolerance); err == nil {
		for i := range o.Steps {
			b.add(measure.Micrometres(int64(math.Round(1000 * o.Steps[i].Flex))))
		}
	}
	for _, l := range slices.Collect(maps.Keys(b)) { // lengths that are set with papers
		if set, ok := s.Set(l); ok {
			b.add(set.Mark)
		}
	}
	return b
}

// piece adds the lengths of a piece: every place on it from both ends, the
// sizes of its cuts, glued areas and seams.
func (b book) piece(p *pattern.Piece, ruler measure.Step) {
	b.add(p.Width, p.Height)
	for i := range p.Panels {
		b.places(p, p.Panels[i].Outline)
	}
	for _, c := range p.Creases {
		b.places(p, pattern.Polygon(c.A, c.B))
		for _, at := range []pattern.Point{c.A, c.B} { // where a score at 45 degrees comes to the edges
			far := p.Width.Sub(at.X)
			b.add(at.Y.Add(at.X), at.Y.Sub(at.X), at.Y.Add(far), at.Y.Sub(far))
			rise := p.Height.Sub(at.Y)
			b.add(at.X.Sub(at.Y), at.X.Add(rise), at.X.Sub(rise))
		}
	}
	for _, c := range p.Cuts {
		b.add(c.At, c.Depth, c.Width)
		b.places(p, c.Path)
		b.between(c.Path, c.Path, func(l measure.Length) measure.Length { return l })
	}
	b.glued(p, p.Glues, ruler)
	b.seams(p, p.Seams)
}

// glued adds the sizes of glue areas of a piece and how far they lie in.
func (b book) glued(p *pattern.Piece, glues []pattern.Glue, ruler measure.Step) {
	for _, g := range glues {
		b.between(g.Area, g.Area, ruler.Down)
		b.between(g.Area, p.Panels[g.Panel].Outline, ruler.Up)
	}
}

// seams adds how far seams are apart, and how far in they lie on the second piece.
func (b book) seams(second *pattern.Piece, seams []pattern.Seam) {
	for _, s := range seams {
		b.add(s.Apart)
		b.between(pattern.Polygon(s.B1, s.B2), second.Panels[s.PanelB].Outline, func(l measure.Length) measure.Length { return l })
	}
}

// places adds the places of points from the left, right, bottom and top.
func (b book) places(p *pattern.Piece, points []pattern.Vertex) {
	for i, v := range points {
		b.add(v.X, v.Y, p.Width.Sub(v.X), p.Height.Sub(v.Y))
		if next := points[(i+1)%len(points)].Point; v.Bulge < 0 || v.Bulge > 0 {
			b.places(p, pattern.Polygon(pattern.Middle(v.Point, next, v.Bulge)))
		}
	}
}

// between adds the distances between points along the axes.
func (b book) between(points, others []pattern.Vertex, as func(measure.Length) measure.Length) {
	for _, v := range points {
		for _, u := range others {
			b.add(as(v.X.Sub(u.X).Abs()), as(v.Y.Sub(u.Y).Abs()))
		}
	}
}

// countsOf returns the whole numbers that a guide may tell.
func countsOf(s *solve.Solution) []int {
	counts := []int{int(math.Round(s.Request.Grammage)), len(s.Pattern.Places), 2, pattern.MostPapers}
	for _, c := range constants {
		n, _ := strconv.Atoi(c)
		counts = append(counts, n)
	}
	for _, f := range s.Fits {
		counts = append(counts, int(f.Chance*100), int(s.Sure.Chance*100+1e-9))
	}
	trailing := regexp.MustCompile(`\d+$`)
	named := func(name string) {
		if n, err := strconv.Atoi(trailing.FindString(name)); err == nil {
			counts = append(counts, n)
		}
	}
	for _, p := range s.Pattern.Pieces {
		counts = append(counts, p.Quantity)
		named(p.Name)
		for i, c := range p.Creases {
			counts = append(counts, i+1, int(math.Round(c.Angle)))
			named(c.Name)
		}
		for _, panel := range p.Panels {
			named(panel.Name)
		}
		for _, c := range p.Cuts {
			named(c.Name)
		}
	}
	return counts
}

// A check that cannot fail checks nothing: a number that is not the
// solution's is found out.
func TestStrangeNumbersAreFoundOut(t *testing.T) {
	s := solved(t, "band", measure.Inch)
	for _, text := range []string{"7 7/8\u00a0in", "7\u00a025/32\u00a0in", "0.071\u00a0in", "201\u00a0mm", "77"} {
		g := guide.Guide{Summary: text}
		var found recorder
		assertNumbersFound(&found, s, g)
		assert.NotEmpty(t, found, text)
	}
	g, err := guide.Write(s, guide.Options{})
	assert.NoError(t, err)
	assertNumbersFound(t, s, g)
}

// recorder notes what an assertion says against something.
type recorder []string

func (r *recorder) Errorf(format string, args ...any) { *r = append(*r, format) }
