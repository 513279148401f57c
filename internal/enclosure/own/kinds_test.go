package own_test

import (
	"context"
	"flag"
	"maps"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// requests is how many random requests a kind and its design are both asked.
var requests = flag.Int("requests", 60, "random requests a kind")

// between returns a length from low to high millimetres, every other one on a mark.
func between(r *rand.Rand, low, high float64, u measure.Unit) measure.Length {
	l := measure.Micrometres(int64(1000 * (low + (high-low)*r.Float64()*r.Float64())))
	if marks := measure.Marks(u); u != measure.NoUnit && r.IntN(2) == 0 {
		return marks[r.IntN(len(marks))].Up(l)
	}
	return l
}

// derives reports whether a kind works a size out that is not given, other than a design
// can: it is always given then.
func derives(k *enclosure.Kind, mine *enclosure.Param) bool {
	i := slices.IndexFunc(k.Params, func(p enclosure.Param) bool { return p.Name == mine.Name })
	return k.Params[i].DefaultInch != mine.DefaultInch
}

// random makes a request of a kind with some of the sizes that its design has too.
func random(r *rand.Rand, k, mine *enclosure.Kind, with map[string]string) *solve.Request {
	unit := []measure.Unit{measure.Inch, measure.Millimetre}[r.IntN(2)]
	marks := measure.Marks(unit)
	q := &solve.Request{
		Kind: k, Unit: unit, Ruler: marks[len(marks)-1-r.IntN(3)], Caliper: measure.Min(between(r, 0.06, 1, measure.NoUnit), measure.Millimetres(1)),
		Width: between(r, 30, 400, unit), Height: between(r, 30, 400, unit), Thickness: between(r, 0.2, 60, unit),
		CutError: measure.Sixtyfourths(2), ScoreError: measure.Sixtyfourths(2), Options: map[string]enclosure.Value{},
	}
	f := r.IntN(3)
	q.FitName, q.Fit = enclosure.NamedFits()[f].Name, enclosure.NamedFits()[f].Range(unit)
	for _, p := range mine.Params {
		if derives(k, &p) || r.IntN(2) == 0 {
			most := min(p.Greatest.Millimetres(), 60)
			q.Options[p.Name] = enclosure.Value{Length: measure.Max(p.Least, q.Ruler.Nearest(between(r, p.Least.Millimetres(), most, unit)))}
		}
	}
	for name, choice := range with {
		if choice == own.Given || choice == own.LeftOut {
			continue // the design has that size, or has it not
		}
		count, _ := strconv.ParseInt(choice, 10, 64) // of a count
		q.Options[name] = enclosure.Value{Choice: choice, Count: count}
	}
	return q
}

// Every kind that a design is given for, and its design, answer the same: readings,
// step, alternatives, outside and chance.
func TestKindsAsDesignsAnswerAlike(t *testing.T) {
	for _, d := range own.Kinds() {
		t.Run(d.Name, func(t *testing.T) {
			kind, ok := repertoire.Lookup(d.Kind)
			require.True(t, ok)
			mine, err := own.Read(d.Text)
			require.NoError(t, err)
			assert.Equal(t, kind.Needs, mine.Needs)
			r := rand.New(rand.NewPCG(19, 7))
			solved, refused := 0, 0
			for range *requests {
				q := random(r, kind, mine, d.With)
				as := *q
				as.Kind, as.Options = mine, sizesOnly(q, d.With)
				want, wrong := solve.Solve(context.Background(), q)
				got, err := solve.Solve(context.Background(), &as)
				if wrong != nil {
					if err == nil {
						refused++
					}
					continue
				}
				solved++
				if !assert.NoError(t, err, "%+v", q) || !assertAlike(t, want, got) {
					t.Fatalf("%s: %+v", d.Name, q)
				}
			}
			t.Logf("%d of %d requests answered, alike; the kind alone refuses %d", solved, *requests, refused)
			assert.Greater(t, solved, *requests/10)
		})
	}
}

func assertAlike(t *testing.T, want, got *solve.Solution) bool {
	off, panels := 1e-12, 0
	for i := range got.Pattern.Pieces {
		panels += len(got.Pattern.Pieces[i].Panels)
	}
	if panels > 20 { // which of two faces comes first that are as likely in the way tells in the integral
		off += want.Sure.Within
	}
	ok := assert.Equal(t, want.Step, got.Step) && assert.Len(t, got.Pattern.Pieces, len(want.Pattern.Pieces))
	for i := range got.Pattern.Pieces {
		a, b := &want.Pattern.Pieces[i], &got.Pattern.Pieces[i]
		ok = ok && assert.Equal(t, pattern.At(a.Width, a.Height), pattern.At(b.Width, b.Height), "blank") &&
			assert.Equal(t, want.ReadOff(), got.ReadOff())
	}
	return ok && assert.Equal(t, want.Outside, got.Outside) && assert.Equal(t, want.Fits, got.Fits) && assert.Equal(t, want.Alternatives, got.Alternatives) &&
		assert.InDelta(t, want.Sure.Chance, got.Sure.Chance, off)
}

// How much longer a solution takes by a design than by its kind: both are asked in turn,
// and their processor time is told in microseconds a solution.
func BenchmarkSolveAlike(b *testing.B) {
	for _, d := range own.Kinds() {
		kind, _ := repertoire.Lookup(d.Kind)
		mine, err := own.Read(d.Text)
		if err != nil {
			b.Fatal(err)
		}
		r := rand.New(rand.NewPCG(19, 7))
		var asked [2][]*solve.Request // of the kind, of the design
		for len(asked[0]) < 8 {
			q := random(r, kind, mine, d.With)
			if _, err := solve.Solve(context.Background(), q); err == nil {
				as := *q
				as.Kind, as.Options = mine, sizesOnly(q, d.With)
				asked[0], asked[1] = append(asked[0], q), append(asked[1], &as)
			}
		}
		b.Run(d.Name, func(b *testing.B) {
			var took [2]time.Duration
			for b.Loop() {
				for k := range asked {
					took[k] += own.OfProcessor(func() {
						for _, q := range asked[k] {
							if _, err := solve.Solve(context.Background(), q); err != nil {
								b.Fatal(err)
							}
						}
					})
				}
			}
			for k, name := range [...]string{"kind-us", "design-us"} {
				b.ReportMetric(float64(took[k].Microseconds())/float64(b.N*len(asked[k])), name)
			}
			b.ReportMetric(float64(took[1])/float64(took[0]), "times")
		})
	}
}

// sizesOnly are the options of a request that its design has too.
func sizesOnly(q *solve.Request, with map[string]string) map[string]enclosure.Value {
	sizes := maps.Clone(q.Options)
	maps.DeleteFunc(sizes, func(name string, _ enclosure.Value) bool { return with[name] != "" && with[name] != own.Given })
	return sizes
}
