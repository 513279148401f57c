package solve

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
	"creasefit/internal/settings"
	"creasefit/internal/tolerance"
)

// seen is a request as the workbench sends it: 0.3 mm stock, a half-millimetre
// ruler, by hand.
func seen(t testing.TB, kind string, fit int, width, height, thickness int64) *Request {
	k, ok := repertoire.Lookup(kind)
	require.True(t, ok)
	return &Request{
		Kind: k, Unit: measure.Millimetre, Width: measure.Millimetres(width), Height: measure.Millimetres(height), Thickness: measure.Millimetres(thickness),
		Caliper: measure.Micrometres(300), CaliperTolerance: measure.Micrometres(11), WallGive: enclosure.WallGive(measure.Micrometres(300), measure.Length{}),
		Ruler: measure.Finest(measure.Millimetre), CutError: measure.Sixtyfourths(2), ScoreError: measure.Sixtyfourths(2),
		FitName: enclosure.NamedFits()[fit].Name, Fit: enclosure.NamedFits()[fit].Range(measure.Millimetre),
	}
}

// A sleeve of 95 x 60 x 24 mm, snug, its contents +- 0.5 mm: 0.956 along the
// width, and 0.863 for both faces and both sides at once (a simulation of marks
// from one edge, handed over with the task). Measured from the nearer edges it
// would be 0.83, so that it is not.
func TestSleeveGoesInAsOftenAsSimulated(t *testing.T) {
	r := seen(t, "sleeve", 0, 95, 60, 24)
	r.SizeTolerance, r.ThicknessTolerance = tolerance.Within(measure.Micrometres(500)), tolerance.Within(measure.Micrometres(500))
	s, err := Solve(context.Background(), r)
	require.NoError(t, err)
	assert.InDelta(t, 0.956, s.Fits[0].Chance, 0.0005)
	assert.InDelta(t, 0.863, s.Sure.Chance, 0.003)
	assert.Equal(t, settings.OneEdge, s.Sure.Datum)
}

// The height of a tuck carton, snug: the dust flaps' scores are two lines, and
// what they lie inside the body's is no third and fourth; 0.970 and not 0.860.
func TestCartonCountsItsAllowanceOnce(t *testing.T) {
	s, err := Solve(context.Background(), seen(t, "tuck-carton", 0, 95, 60, 24))
	require.NoError(t, err)
	height := s.Fits[1]
	require.Equal(t, pattern.Height, height.Axis)
	assert.InDelta(t, 0.970, height.Chance, 0.001)
}

// The workshop rule (common practice): a lid 1/16 in larger than its tray, both
// scored at one stop, in card of 0.3 mm.
func TestWorkshopRuleLid(t *testing.T) {
	r := seen(t, "lidded-box", 1, 200, 150, 40)
	r.Unit, r.Ruler = measure.Inch, measure.Marks(measure.Inch)[4]
	r.Width, r.Height, r.Thickness, r.Fit = measure.Inches(8), measure.Inches(6), measure.MustParse("1 1/2 in"), enclosure.NamedFits()[1].Range(measure.Inch)
	r.Options = map[string]enclosure.Value{"lid_fit": {Choice: "snug"}}
	s, err := Solve(context.Background(), r)
	require.NoError(t, err)
	tray, lid := &s.Pattern.Pieces[0], &s.Pattern.Pieces[1]
	assert.Equal(t, measure.Sixtyfourths(4), lid.Width.Sub(tray.Width), "the lid's blank is 1/16 in larger")
	assert.Equal(t, tray.Strips[0].Cells[0].Size, lid.Strips[0].Cells[0].Size, "and its walls are as high")
	assert.Equal(t, settings.Nearer, s.Sure.Datum)
	assert.GreaterOrEqual(t, s.Sure.Chance, 0.9)
	t.Logf("%.4f", s.Sure.Chance)
}

// A making is the sizes that come of one try: every stop off by an error of its
// own, every line beside its stop by another.
type making struct {
	r     *rand.Rand
	stops map[cause]float64
}

// line is where a line comes to lie that was set at so far, in millimetres.
func (m *making) line(a *account, tool settings.Tool, at measure.Length) float64 {
	whole, share := a.r.CutError.Millimetres()/3, strokeShare
	if tool == settings.Score {
		whole, share = a.r.ScoreError.Millimetres()/3, foldShare
	}
	c := cause{of: stopSet, layer: a.layer, tool: tool, at: at}
	if _, ok := m.stops[c]; !ok {
		m.stops[c] = m.r.NormFloat64() * whole * math.Sqrt(1-share*share)
	}
	return at.Millimetres() + m.stops[c] + m.r.NormFloat64()*whole*share
}

// sizes are those of all readings in one making, in millimetres.
func (m *making) sizes(a *account) []float64 {
	made, seen := make([]float64, len(a.sizes)), make([]bool, len(a.sizes))
	for _, s := range a.plan.Strips {
		var length, at measure.Length
		for _, reading := range s.Readings {
			length = length.Add(a.sizes[reading])
		}
		end, before := m.line(a, settings.Cut, length), 0.0
		for i, reading := range s.Readings {
			at = at.Add(a.sizes[reading])
			place := end
			if i < len(s.Readings)-1 {
				from, far := a.datum.From(at, length)
				if place = m.line(a, settings.Score, from); far {
					place = end - place
				}
			}
			if !seen[reading] {
				made[reading] = place - before
			}
			before = place
		}
		for _, reading := range s.Readings {
			seen[reading] = true
		}
	}
	for i := range made {
		if !seen[i] {
			if made[i] = a.sizes[i].Millimetres(); a.loose[i].stop >= 0 {
				made[i] = m.line(a, settings.Cut, a.sizes[i])
			}
		}
	}
	return made
}

// TestChanceAgainstMakings makes random solutions of all kinds many times over,
// line by line: the share in which everything goes in is the chance, within
// 0.003 and what the number of makings leaves open.
func TestChanceAgainstMakings(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 6))
	want, makings := 60, 40_000
	if testing.Short() {
		want, makings = 16, 10_000
	}
	worst, done, kinds := 0.0, 0, repertoire.Kinds()
	for done < want {
		q := randomHand(r)
		q.Kind = kinds[r.IntN(len(kinds))]
		s := solved(q)
		if s == nil || s.Sure.Chance > 0.999 || s.repeats() {
			continue
		}
		done++
		share := s.madeAll(r, makings)
		off := math.Abs(share - s.Sure.Chance)
		worst = max(worst, off)
		assert.LessOrEqual(t, off, 0.003+4.5*math.Sqrt(share*(1-share)/float64(makings)), "%s: %.4f, made %.4f, %d forms", s.Request.Kind.Name, s.Sure.Chance, share, len(s.judgement().forms))
	}
	t.Logf("at most %.4f off", worst)
}

// repeats reports whether a reading follows itself along an edge, as the sides of
// a prism do; what is across these is not the sum of single makings.
func (s *Solution) repeats() bool {
	for _, strip := range s.plan.Strips {
		for i, reading := range strip.Readings {
			if slices.Contains(strip.Readings[:i], reading) {
				return true
			}
		}
	}
	return false
}

// madeAll is the share of so many makings in which everything goes in.
func (s *Solution) madeAll(r *rand.Rand, makings int) float64 {
	a, held := &s.judgement().account, 0
	var list [mostFaces]face
	type need struct {
		fit  *enclosure.Fit
		face face
	}
	var needs []need
	for i := range s.plan.Fits {
		for _, f := range faces(list[:0], s.plan, &s.plan.Fits[i], s.sizes) {
			needs = append(needs, need{&s.plan.Fits[i], f})
		}
	}
	varied := func(of tolerance.Source) float64 {
		return (of.High.Millimetres()-of.Low.Millimetres())/2 + r.NormFloat64()*(of.High.Millimetres()+of.Low.Millimetres())/6
	}
	for range makings {
		m := making{r, map[cause]float64{}}
		made := m.sizes(a)
		w, h, t, caliper := varied(s.Request.SizeTolerance), varied(s.Request.SizeTolerance), varied(s.Request.ThicknessTolerance), varied(tolerance.Within(s.Request.CaliperTolerance))
		ok := true
		for i := 0; i < len(needs) && ok; i++ {
			n := &needs[i]
			moved := 0.0
			for reading, c := range n.face.of[:len(made)] {
				moved += float64(c) * (made[reading] - s.sizes[reading].Millimetres())
			}
			nominal := s.plan.Problem.Windows[n.fit.Window].Form.Value(s.sizes).Add(n.face.more)
			clearance := n.fit.Clearance(nominal).Add(s.Request.give(n.fit)).Millimetres() + moved*slope(n.fit)
			need := float64(n.fit.Need.Width)*w + float64(n.fit.Need.Height)*h + float64(n.fit.Need.Thickness)*t + float64(n.fit.Need.HalfCalipers)/2*caliper
			ok = clearance >= need
		}
		if ok {
			held++
		}
	}
	return float64(held) / float64(makings)
}
