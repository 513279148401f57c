package guide_test

import (
	"context"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// askedFits finds the fits that a guide points to.
var askedFits = regexp.MustCompile(`\(fit=(\w+)\)`)

// assertFitsHold checks that what a guide points to has an answer, and that it does not
// leave out all fits to one side if one of them has.
func assertFitsHold(t require.TestingT, s *solve.Solution, g guide.Guide) {
	told := map[string]bool{}
	for _, found := range askedFits.FindAllStringSubmatch(strings.Join(g.FitNotes, " "), -1) {
		told[found[1]] = true
	}
	tighter, looser := false, false
	for _, f := range enclosure.NamedFits() {
		changed := *s.Request
		changed.FitName, changed.Fit = f.Name, f.Range(changed.Ruler.Unit())
		_, err := solve.Solve(context.Background(), &changed)
		if told[f.Name] {
			assert.NoError(t, err, "the guide points to fit=%s", f.Name)
		}
		tighter = tighter || err == nil && f.Range(measure.Inch).Max.Less(s.Request.Fit.Max) && f.Range(measure.Millimetre).Max.Less(s.Request.Fit.Max)
		looser = looser || err == nil && s.Request.Fit.Min.Less(f.Range(measure.Inch).Min) && s.Request.Fit.Min.Less(f.Range(measure.Millimetre).Min)
	}
	if s.Request.FitName != "" && len(s.Fits) > 0 {
		assert.Equal(t, []bool{tighter, looser}, []bool{
			strings.Contains(strings.Join(g.FitNotes, " "), "Clearly tighter"), strings.Contains(strings.Join(g.FitNotes, " "), "Clearly looser")}, g.FitNotes)
	}
}

// At eighths of an inch some boxes have readings for one fit alone; a guide that pointed
// to another sent its reader to a refusal.
func TestGuidesPointToFitsThatHold(t *testing.T) {
	left := 0
	for _, k := range repertoire.Kinds() {
		for i, f := range enclosure.NamedFits() {
			r := usual(k, measure.Inch)
			r.Ruler, r.FitName, r.Fit = measure.MustParseStep("1/8 in"), f.Name, f.Range(measure.Inch)
			s, err := solve.Solve(context.Background(), r)
			if err != nil {
				continue
			}
			g, err := guide.Write(s, guide.Options{Brief: true})
			require.NoError(t, err)
			assertFitsHold(t, s, g)
			if len(s.Fits) > 0 && len(askedFits.FindAllString(strings.Join(g.FitNotes, " "), -1)) < []int{1, 2, 1}[i] {
				left++
			}
		}
	}
	assert.Greater(t, left, 3, "fits that are left out")
}

// A band that is snug at eighths has one row of readings and two faces that may be too
// narrow: the guide tells the chance of both at once, as the warning does.
func TestGuideTellsOneChance(t *testing.T) {
	r := usual(lookup(t, "slotted-band"), measure.Inch)
	r.Height, r.Ruler = measure.Length{}, measure.MustParseStep("1/8 in")
	r.FitName, r.Fit = "snug", enclosure.NamedFits()[0].Range(measure.Inch)
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	require.Less(t, s.Sure.Chance, s.Fits[0].Chance-0.2)
	g, err := guide.Write(s, guide.Options{})
	require.NoError(t, err)
	chances := regexp.MustCompile(`(\d+) (?:times in|pieces out of) 100`)
	said := append([]string{}, g.FitNotes...)
	for _, w := range g.Warnings {
		said = append(said, w.Text)
	}
	found := chances.FindAllStringSubmatch(strings.Join(said, " "), -1)
	require.Len(t, found, 2)
	assert.Equal(t, found[0][1], found[1][1])
}

// lookup finds a kind.
func lookup(t *testing.T, name string) *enclosure.Kind {
	t.Helper()
	k, ok := repertoire.Lookup(name)
	require.True(t, ok, name)
	return k
}
