package solve_test

import (
	"context"
	"errors"
	"flag"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// random makes requests: about half on an inch ruler, thin and thick papers,
// named and free fits, each option of the kind now and then.
type random struct {
	*rand.Rand
	thickest measure.Length
}

// about returns a length from low to high millimetres, on no mark in particular.
func (r random) about(low, high float64) measure.Length {
	return measure.Micrometres(int64(1000 * (low + (high-low)*r.Float64())))
}

func (r random) request(kind *enclosure.Kind) *solve.Request {
	unit := measure.Inch
	if r.IntN(2) == 0 {
		unit = measure.Millimetre
	}
	marks := measure.Marks(unit)
	q := &solve.Request{
		Kind: kind, Unit: unit, Ruler: marks[len(marks)-1-r.IntN(2)],
		Width: r.about(60, 300), Height: r.about(60, 300), Caliper: r.about(0.05, 0.9),
		CutError: measure.Sixtyfourths(1), ScoreError: measure.Sixtyfourths(1), Options: map[string]enclosure.Value{},
	}
	if r.IntN(4) > 0 {
		q.Thickness = r.about(0, r.thickest.Millimetres())
	}
	if f := r.IntN(4); f < 3 {
		q.FitName, q.Fit = enclosure.NamedFits()[f].Name, enclosure.NamedFits()[f].Range(unit)
	} else {
		q.Fit.Min = r.about(0, 8)
		q.Fit.Max = q.Fit.Min.Add(r.about(0.8, 8))
	}
	for _, p := range kind.Params {
		if r.IntN(odds(&p)) > 0 {
			continue
		}
		switch p.Type {
		case enclosure.ChoiceParam:
			q.Options[p.Name] = enclosure.Value{Choice: p.Choices[r.IntN(len(p.Choices))]}
		case enclosure.CountParam:
			q.Options[p.Name] = enclosure.Value{Count: p.LeastCount + r.Int64N(p.GreatestCount-p.LeastCount+1)}
		case enclosure.LengthParam:
			size := measure.Max(p.Least, marks[2].Nearest(r.about(p.Least.Millimetres(), 60)))
			q.Options[p.Name] = enclosure.Value{Length: size}
		}
	}
	return q
}

var folded = flag.Int("folded", 500, "random solutions of each kind that are folded up")

// checkRandom solves random requests of a kind and folds every solution. What
// the kind refuses names a field and a bound; the proof refuses nothing.
func checkRandom(t *testing.T, kind string, thickest measure.Length) {
	want := *folded
	k, ok := repertoire.Lookup(kind)
	require.True(t, ok)
	r := random{rand.New(rand.NewPCG(7, 1959)), thickest}
	solved, refused := 0, 0
	for tries := 0; solved < want && tries < 20*want; tries++ {
		q := r.request(k)
		s, err := solve.Solve(context.Background(), q)
		if err != nil {
			refused++
			checkRefusal(t, q, err)
			continue
		}
		solved++
		checkFolded(t, s)
	}
	require.Equal(t, want, solved, "%d refused", refused)
	t.Logf("%s: %d solved, %d refused", kind, solved, refused)
}

// checkRefusal checks that a refusal is about the request and says what would
// be right.
func checkRefusal(t *testing.T, q *solve.Request, err error) {
	t.Helper()
	var faults fault.Faults
	require.NoError(t, faults.Add(err))
	for _, f := range faults {
		require.NotEqual(t, fault.NoProof, f.Code, "%+v: %v", q, f)
		if f.Code == fault.Impossible {
			require.NotEmpty(t, f.Field)
			require.NotEmpty(t, f.Hint)
			require.True(t, f.Expected != "" || strings.HasPrefix(f.Hint, "no other "), f.Hint)
		}
	}
}

func TestRandomEnvelopesFoldUp(t *testing.T) {
	checkRandom(t, "envelope", measure.Sixtyfourths(9))
}

// Envelopes of ISO 269 for inserts of ISO 216, and American trade sizes for
// the inserts of trade charts: with the clearance that the published pair
// leaves, the back comes out as large as the envelope is published.
func TestEnvelopeBacksAgainstPublishedPairs(t *testing.T) {
	for _, c := range []struct {
		name                          string
		unit                          measure.Unit
		width, height, outerW, outerH string
	}{
		{"A6 in C6", measure.Millimetre, "148 mm", "105 mm", "162 mm", "114 mm"},
		{"A5 in C5", measure.Millimetre, "210 mm", "148 mm", "229 mm", "162 mm"},
		{"A4 in C4", measure.Millimetre, "297 mm", "210 mm", "324 mm", "229 mm"},
		{"a third of A4 in DL", measure.Millimetre, "210 mm", "99 mm", "220 mm", "110 mm"},
		{"A2", measure.Inch, "5.5 in", "4.25 in", "5.75 in", "4.375 in"},
		{"A6", measure.Inch, "6.25 in", "4.5 in", "6.5 in", "4.75 in"},
		{"A7", measure.Inch, "7 in", "5 in", "7.25 in", "5.25 in"},
		{"A9", measure.Inch, "8.5 in", "5.5 in", "8.75 in", "5.75 in"},
	} {
		t.Run(c.name, func(t *testing.T) {
			k, _ := repertoire.Lookup("envelope")
			marks := measure.Marks(c.unit)
			r := &solve.Request{
				Kind: k, Unit: c.unit, Width: measure.MustParse(c.width), Height: measure.MustParse(c.height), Caliper: measure.MustParse("0.1 mm"),
				Ruler: marks[3], Step: marks[2], Options: map[string]enclosure.Value{},
			}
			if c.unit == measure.Inch {
				r.Step = marks[3]
			}
			for axis, sizes := range [...][3]measure.Length{
				{r.Width, measure.MustParse(c.outerW), measure.MustParse("0.2 mm")},
				{r.Height, measure.MustParse(c.outerH), measure.MustParse("0.35 mm")},
			} {
				play := sizes[1].Sub(sizes[0]).Sub(sizes[2])
				half := r.Step.Size().Over(2)
				r.Fit = enclosure.Range{Min: play.Sub(half), Max: play.Add(half)}
				s, err := solve.Solve(context.Background(), r)
				require.NoError(t, err)
				assert.Equal(t, sizes[1], s.Pattern.Pieces[0].Strips[axis].Cells[1].Size)
			}
		})
	}
}

// By hand: the back is 7.016 to 7.0785 in wide and 5.028 to 5.0905 in high, the
// bounds are rounded inwards to 1/64 in.
func TestEnvelopeRefusesFlapsThatDoNotMeet(t *testing.T) {
	for _, c := range []struct{ option, value, field, expected string }{
		{"bottom_panel", "2 in", "bottom_panel", "from 4 1/8 in to 5 in"},
		{"closing_flap", "9 in", "closing_flap", "from 9/16 in to 4 7/8 in"},
		{"side_flap", "4 in", "side_flap", "from 5/8 in to 3 1/2 in"},
		{"relief", "3 in", "relief", "from 1/16 in to 2 7/16 in"},
	} {
		t.Run(c.option, func(t *testing.T) {
			k, _ := repertoire.Lookup("envelope")
			r := request(t, "envelope", "7 in", "0 in", "0.008 in", 0)
			r.Kind, r.Height = k, measure.MustParse("5 in")
			r.Options[c.option] = enclosure.Value{Length: measure.MustParse(c.value)}
			_, err := solve.Solve(context.Background(), r)
			var faults fault.Faults
			require.True(t, errors.As(err, &faults), "%v", err)
			assert.Equal(t, fault.Impossible, faults[0].Code)
			var fields []string
			for _, f := range faults {
				fields = append(fields, f.Field+": "+f.Expected)
			}
			assert.Contains(t, fields, c.field+": "+c.expected)
		})
	}
	r := request(t, "envelope", "7 in", "1/4 in", "0.008 in", 0)
	r.Height = measure.MustParse("5 in")
	_, err := solve.Solve(context.Background(), r)
	assert.ErrorContains(t, err, "thickness")
}

func BenchmarkSolveEnvelope(b *testing.B) { benchmarkKind(b, "envelope") }

// benchmarkKind solves one request of a kind, with its proof.
func benchmarkKind(b *testing.B, kind string) {
	r := request(b, kind, "7 in", "0.03 in", "0.008 in", 1)
	r.Height = measure.MustParse("5 in")
	benchmarkSolve(b, r)
}
