package assembly_test

import (
	"context"
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/assembly"
	"creasefit/internal/enclosure"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// wild draws requests of any kind from what it says of its parameters: small and
// large, flat and thick, in paper and in board.
type wild struct{ *rand.Rand }

// size returns a length from low to high millimetres, small ones as often as
// large ones, in tenths of a millimetre.
func (r wild) size(low, high float64) measure.Length {
	low = max(low, 0.1)
	return measure.Micrometres(100 * int64(math.Round(10*low*math.Pow(max(high, low)/low, r.Float64()))))
}

func (r wild) request(kind *enclosure.Kind) *solve.Request {
	unit := []measure.Unit{measure.Inch, measure.Millimetre}[r.IntN(2)]
	marks, fit := measure.Marks(unit), enclosure.NamedFits()[r.IntN(3)]
	q := &solve.Request{
		Kind: kind, Unit: unit, Ruler: marks[len(marks)-1-r.IntN(2)], Caliper: measure.Micrometres(50 + r.Int64N(950)),
		Width: r.size(20, 400), Height: r.size(20, 400), Thickness: r.size(0.2, 90),
		FitName: fit.Name, Fit: fit.Range(unit), Options: map[string]enclosure.Value{},
	}
	for _, p := range kind.Params {
		often := 3
		if p.Advanced {
			often = 15
		}
		if r.IntN(often) > 0 {
			continue
		}
		switch p.Type {
		case enclosure.ChoiceParam:
			q.Options[p.Name] = enclosure.Value{Choice: p.Choices[r.IntN(len(p.Choices))]}
		case enclosure.CountParam:
			q.Options[p.Name] = enclosure.Value{Count: p.LeastCount + r.Int64N(p.GreatestCount-p.LeastCount+1)}
		default:
			l := r.size(p.Least.Millimetres(), min(p.Greatest.Millimetres(), 120))
			q.Options[p.Name] = enclosure.Value{Length: measure.Max(p.Least, measure.Min(p.Greatest, l))}
		}
	}
	return q
}

// each solves random requests of a kind until it has so many solutions.
func each(t *testing.T, kind *enclosure.Kind, want int, use func(*solve.Solution)) {
	r := wild{rand.New(rand.NewPCG(13, uint64(len(kind.Name))))}
	for solved, tries := 0, 0; solved < want; tries++ {
		require.Less(t, tries, 100*want, "hardly any request has a solution")
		if s, err := solve.Solve(context.Background(), r.request(kind)); err == nil {
			solved++
			use(s)
		}
	}
}

var (
	orders = flag.Int("orders", 80, "how many solutions of each kind are asked for their order")
	judged = flag.Int("judged", 5, "of how many of them the order is looked at frame by frame, and judged by the other method")
)

// TestEverySolutionHasAnOrder finds the order of random solutions of every kind:
// its steps follow one another without a jump, begin with flat blanks and end with
// the closed thing.
func TestEverySolutionHasAnOrder(t *testing.T) {
	want := *orders
	if testing.Short() {
		want = 15
	}
	for _, k := range repertoire.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			found := 0
			each(t, k, want, func(s *solve.Solution) {
				o, err := assembly.Find(&s.Ideal, &s.Pattern, s.Proof.Tolerance)
				if !assert.NoError(t, err, "%v", s.Request) {
					return
				}
				if found++; found <= *judged {
					assertFollows(t, s, o)
					assert.Empty(t, throughs(s, o, o.Frame), "%v", s.Request)
				}
			})
		})
	}
}

// assertFollows checks the frames of an order.
func assertFollows(t *testing.T, s *solve.Solution, o *assembly.Order) {
	last := len(o.Steps) - 1
	for i := range last {
		assert.True(t, alike(o.Frame(i, 1).Model, o.Frame(i+1, 0).Model), "step %d", i)
	}
	assert.True(t, alike(o.Frame(last, 1).Model, fold.Fold(&s.Pattern, 1)), "it is closed in the end")
	flat := o.Frame(0, 0).Model
	for i := range flat.Plates {
		of := func(p *fold.Plate) bool { return p.Piece == flat.Plates[i].Piece && p.Copy == flat.Plates[i].Copy }
		for j := range flat.Plates {
			if of(&flat.Plates[j]) {
				assert.InDelta(t, 1, flat.Plates[i].Inside[0]*flat.Plates[j].Inside[0]+flat.Plates[i].Inside[1]*flat.Plates[j].Inside[1]+flat.Plates[i].Inside[2]*flat.Plates[j].Inside[2], 1e-9)
			}
		}
	}
}

// alike reports whether all plates of two models are in the same places.
func alike(a, b fold.Model) bool {
	for i := range a.Plates {
		for k, v := range a.Plates[i].Outline {
			if v.Minus(b.Plates[i].Outline[k]).Length() > 1e-6 {
				return false
			}
		}
	}
	return len(a.Plates) == len(b.Plates)
}
