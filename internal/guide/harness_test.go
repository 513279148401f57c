package guide_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/assembly"
	"creasefit/internal/enclosure"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// usual is a request for the kind that is as plain as can be: a tasting card
// for the front of the stall, or a flat tin where the kind needs a thickness.
func usual(k *enclosure.Kind, unit measure.Unit) *solve.Request {
	r := &solve.Request{
		Kind: k, Unit: unit, Width: measure.MustParse("3 1/2 in"), Height: measure.MustParse("5 in"), Thickness: measure.MustParse("0.09 in"),
		Caliper: measure.MustParse("0.012 in"), CaliperTolerance: measure.Micrometres(11), Grammage: 270,
		Ruler: measure.Marks(measure.Inch)[4], CutError: measure.Sixtyfourths(2), ScoreError: measure.Sixtyfourths(2),
		FitName: "easy", Options: map[string]enclosure.Value{}, WallGive: measure.Micrometres(300),
	}
	if unit == measure.Millimetre {
		r.Width, r.Height, r.Thickness = measure.Millimetres(88), measure.Millimetres(125), measure.Millimetres(2)
		r.Caliper, r.Ruler = measure.Micrometres(300), measure.Marks(unit)[3]
		r.SheetWidth, r.SheetHeight = measure.Millimetres(297), measure.Millimetres(420)
	}
	r.Fit = enclosure.NamedFits()[1].Range(unit)
	if !made(r) { // a kind that is not for cards
		r.Thickness = measure.MustParse("1 1/2 in")
		if !made(r) { // whose sides need fine marks
			r.Ruler = measure.Marks(unit)[len(measure.Marks(unit))-1]
		}
	}
	return r
}

// made reports whether a request has a solution that can be made by hand.
func made(r *solve.Request) bool {
	s, err := solve.Solve(context.Background(), r)
	if err != nil {
		return false
	}
	_, err = assembly.Find(&s.Ideal, &s.Pattern, s.Proof.Tolerance)
	return err == nil
}

// solved solves a usual request.
func solved(t testing.TB, kind string, unit measure.Unit) *solve.Solution {
	t.Helper()
	k, ok := repertoire.Lookup(kind)
	require.True(t, ok, kind)
	s, err := solve.Solve(context.Background(), usual(k, unit))
	require.NoError(t, err, kind)
	return s
}

// drawRequest draws a request for a kind with any of its options, a few of them
// where there are many. It need not have a solution.
func drawRequest(t *rapid.T, k *enclosure.Kind) *solve.Request {
	unit := rapid.SampledFrom([]measure.Unit{measure.Inch, measure.Millimetre}).Draw(t, "unit")
	r := usual(k, unit)
	marks := measure.Marks(unit)
	r.Ruler = marks[len(marks)-1-rapid.IntRange(0, 1).Draw(t, "ruler")]
	r.Width, r.Height = drawSize(t, "width", 40, 250), drawSize(t, "height", 40, 250)
	r.Thickness = rapid.SampledFrom([]measure.Length{
		measure.Micrometres(400), measure.Millimetres(2), measure.Millimetres(9), measure.Millimetres(31)}).Draw(t, "thickness")
	r.Caliper = measure.Micrometres(int64(rapid.IntRange(90, 500).Draw(t, "caliper")))
	named := rapid.SampledFrom(enclosure.NamedFits()).Draw(t, "fit")
	r.FitName, r.Fit = named.Name, named.Range(unit)
	if rapid.Bool().Draw(t, "two numbers") {
		r.FitName = ""
	}
	for _, p := range k.Params {
		odds := map[bool]int{false: 3, true: 15}[p.Advanced]
		if p.Advanced && len(k.Params) > 12 {
			odds = 99
		}
		if rapid.IntRange(0, odds).Draw(t, p.Name+" given") == odds/2 { // the ends are drawn more often
			r.Options[p.Name] = drawOption(t, p, marks[3])
		}
	}
	return r
}

// drawSize draws a size in whole tenths of a millimetre.
func drawSize(t *rapid.T, name string, least, greatest int) measure.Length {
	return measure.Micrometres(100 * int64(rapid.IntRange(10*least, 10*greatest).Draw(t, name)))
}

// drawOption draws a value of one of a kind's own parameters, near to its
// default where that is a length.
func drawOption(t *rapid.T, p enclosure.Param, step measure.Step) enclosure.Value {
	switch p.Type {
	case enclosure.ChoiceParam:
		return enclosure.Value{Choice: rapid.SampledFrom(p.Choices).Draw(t, p.Name)}
	case enclosure.CountParam:
		return enclosure.Value{Count: rapid.Int64Range(p.LeastCount, min(p.GreatestCount, p.LeastCount+6)).Draw(t, p.Name)}
	default:
		size := p.DefaultLength(step.Unit())
		if size.IsZero() {
			size = measure.Millimetres(40)
		}
		size = size.Times(int64(rapid.IntRange(5, 15).Draw(t, p.Name))).Over(10)
		return enclosure.Value{Length: measure.Max(step.Size(), step.Nearest(size))}
	}
}

// eachWay calls use with the guide of a solution in every language and unit.
func eachWay(t require.TestingT, s *solve.Solution, use func(guide.Guide)) {
	for _, language := range guide.Languages() {
		for _, units := range []guide.Units{guide.OfRuler, guide.Inches, guide.Millimetres, guide.Both} {
			g, err := guide.Write(s, guide.Options{Language: language, Units: units})
			require.NoError(t, err)
			use(g)
		}
	}
}
