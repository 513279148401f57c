package solve_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
	"creasefit/internal/rounding"
	"creasefit/internal/solve"
)

// wide makes requests of any kind from what it says of its parameters: on both
// rulers, small and large, thin and thick, in paper and in board.
type wide struct{ *rand.Rand }

// between returns a length from low to high millimetres, small ones as often as
// large ones; every other one lies on a mark of the ruler.
func (r wide) between(low, high float64, u measure.Unit) measure.Length {
	low = max(low, 0.01)
	l := measure.Micrometres(int64(1000 * low * math.Pow(max(high, low)/low, r.Float64())))
	if marks := measure.Marks(u)[1:]; r.IntN(2) == 0 {
		return marks[r.IntN(len(marks))].Up(l)
	}
	return l
}

func (r wide) request(kind *enclosure.Kind) *solve.Request {
	unit := []measure.Unit{measure.Inch, measure.Millimetre}[r.IntN(2)]
	marks := measure.Marks(unit)
	q := &solve.Request{
		Kind: kind, Unit: unit, Ruler: marks[len(marks)-1-r.IntN(3)], Caliper: r.between(0.05, 2, measure.NoUnit),
		Width: r.between(20, 400, unit), Height: r.between(20, 400, unit), Thickness: r.between(0.2, 90, unit),
		CutError: measure.Sixtyfourths(1), ScoreError: measure.Sixtyfourths(1), Options: map[string]enclosure.Value{},
	}
	if q.Caliper = measure.Min(q.Caliper, measure.Millimetres(2)); r.IntN(3) == 0 {
		q.Caliper = measure.Thousandths(4 + r.Int64N(20))
	}
	if f := r.IntN(4); f < 3 {
		q.FitName, q.Fit = enclosure.NamedFits()[f].Name, enclosure.NamedFits()[f].Range(unit)
	} else {
		q.Fit.Min = r.between(0.1, 6, unit)
		q.Fit.Max = q.Fit.Min.Add(r.between(1, 6, unit))
	}
	for _, p := range kind.Params {
		if r.IntN(odds(&p)) == 0 {
			q.Options[p.Name] = r.value(&p, unit)
		}
	}
	if enclosure.Round(q.Options) {
		q.Thickness = q.Width
	}
	return q
}

// odds is how seldom an option is given: one of so many times. Advanced ones are
// many, and contradict one another where they all are.
func odds(p *enclosure.Param) int {
	if p.Advanced {
		return 15
	}
	return 3
}

// value returns a value of a parameter that lies within its bounds.
func (r wide) value(p *enclosure.Param, u measure.Unit) enclosure.Value {
	switch p.Type {
	case enclosure.ChoiceParam:
		return enclosure.Value{Choice: p.Choices[r.IntN(len(p.Choices))]}
	case enclosure.CountParam:
		return enclosure.Value{Count: p.LeastCount + r.Int64N(p.GreatestCount-p.LeastCount+1)}
	}
	l := r.between(p.Least.Millimetres(), min(p.Greatest.Millimetres(), 120), u)
	return enclosure.Value{Length: measure.Max(p.Least, measure.Min(p.Greatest, l))}
}

// TestEveryKindFoldsUp solves random requests of every kind there is and folds
// every answer: its ideal closes to the nanometre, its readings within the
// tolerance, and the folded plates leave the clearance that is claimed.
func TestEveryKindFoldsUp(t *testing.T) {
	want := *folded
	if testing.Short() {
		want = min(want, 200)
	}
	for _, k := range repertoire.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			t.Parallel()
			r := wide{rand.New(rand.NewPCG(26, uint64(len(k.Name))))}
			solved, refused := 0, 0
			for ; solved < want && refused < 60*want; refused += 1 {
				q := r.request(k)
				s, err := solve.Solve(context.Background(), q)
				if err != nil {
					checkRefusal(t, q, err)
					continue
				}
				solved, refused = solved+1, refused-1
				checkFolded(t, s)
			}
			require.Equal(t, want, solved, "%d refused", refused)
			t.Logf("%d solved, %d refused", solved, refused)
		})
	}
}

// layered are readings that neither a closure nor a fit has, and that still go
// round a layer of stock: the proof must see them by itself.
var layered = map[string]bool{"outer side": true, "left side": true, "bottom gusset": true, "end wall": true, "base": true,
	"outer base height": true, "lid outer base height": true}

// unseen are readings that the proof does not see: nothing is folded round a
// notch or goes through a slit for a ribbon, and a glued lap holds as well where it is longer than said.
var unseen = map[string]bool{"before the notch": true, "after the notch": true,
	"half of the ribbon slit": true, "before the ribbon slit": true, "after the ribbon slit": true, "above the ribbon slit": true, "below the ribbon slit": true,
	"inner half": true, "outer half": true,
	"left of the point": true, "right of the point": true, "slot before its mark": true, "slot after its mark": true, "relief at the gussets": true,
	"bottom tuck": true, "top tuck": true, "dust flap": true}

// TestEveryCaliperOfEveryKindCounts makes one size after the other of the ideal
// pattern one or two calipers too long or too short, and the stock thicker or
// thinner. Unless the kind's own closures and fits have nothing against that,
// the proof must fail or the folded plates must leave another clearance.
func TestEveryCaliperOfEveryKindCounts(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		if k.Name == "mat-stack" {
			continue // folds nothing: TestMatStacksStepDownEvenly measures its reveals
		}
		t.Run(k.Name, func(t *testing.T) {
			t.Parallel()
			r := wide{rand.New(rand.NewPCG(59, uint64(len(k.Name))))}
			noticed := 0
			for solved := 0; solved < 40; {
				q := r.request(k)
				s, err := solve.Solve(context.Background(), q)
				if err != nil {
					continue
				}
				solved++
				noticed += mutate(t, s.Request)
			}
			assert.Greater(t, noticed, 40)
		})
	}
}

// mutate makes the mutants of one request and returns how many were noticed.
func mutate(t *testing.T, q *solve.Request) (noticed int) {
	plan, sizes := planned(t, q, q.Caliper)
	base := plan.Build(sizes)
	right := fold.Prove(&base, measure.Length{})
	require.Empty(t, right.Faults)
	notice := func(mutant *pattern.Pattern, excused bool, what string) {
		seen := differs(&right, mutant)
		require.True(t, seen || excused, "%s makes no difference in %+v", what, q)
		if seen {
			noticed++
		}
	}
	for i, reading := range plan.Problem.Readings {
		for _, calipers := range []int64{-2, -1, 1, 2} {
			wrong := append([]measure.Length(nil), sizes...)
			if wrong[i] = wrong[i].Add(q.Caliper.Times(calipers)); wrong[i].Sign() <= 0 || unseen[reading.Name] {
				continue
			}
			mutant := plan.Build(wrong)
			notice(&mutant, reading.Fixed || !layered[reading.Name] && allowed(plan, wrong), fmt.Sprintf("%s and %d calipers", reading.Name, calipers))
		}
	}
	for _, caliper := range []measure.Length{q.Caliper.Over(2), q.Caliper.Times(2)} {
		mutant := plan.Build(sizes)
		mutant.Caliper = caliper
		notice(&mutant, caliperFree(t, q, sizes), "another caliper")
	}
	return noticed
}

// planned returns the plan of a request in stock of a caliper, and its ideals.
func planned(t *testing.T, q *solve.Request, caliper measure.Length) (*enclosure.Plan, []measure.Length) {
	plan, err := q.Kind.Plan(&enclosure.Input{Unit: q.Unit, Width: q.Width, Height: q.Height, Thickness: q.Thickness,
		Caliper: caliper, Fit: q.Fit, Given: q.Options, Params: q.Kind.Params})
	require.NoError(t, err)
	return plan, plan.Ideals()
}

// caliperFree reports whether the ideals are the same in stock that is a little
// thinner, as those of a gate are, whose folds end where their scores are.
func caliperFree(t *testing.T, q *solve.Request, sizes []measure.Length) bool {
	_, thinner := planned(t, q, q.Caliper.Sub(measure.Micrometres(1)))
	return slices.Equal(sizes, thinner)
}

// allowed reports whether sizes close as the plan states, and leave the
// clearances of its ideals: then they are as right as these.
func allowed(plan *enclosure.Plan, sizes []measure.Length) bool {
	p := &plan.Problem
	for i := range p.Closures {
		f := &p.Closures[i].Form
		blind := slices.ContainsFunc(f.Terms, func(t rounding.Term) bool { return unseen[p.Readings[t.Reading].Name] })
		if !blind && !f.Value(sizes).IsZero() {
			return false
		}
	}
	for _, f := range plan.Fits {
		w := &p.Windows[f.Window]
		if off := w.Form.Value(sizes).Sub(w.Min.Add(w.Max).Over(2)).Abs(); measure.Micrometres(1).Less(off) {
			return false
		}
	}
	return true
}

// differs reports whether a mutant fails its proof, or leaves a clearance that
// is more than a micrometre from the right one.
func differs(right *fold.Proof, mutant *pattern.Pattern) bool {
	got := fold.Prove(mutant, measure.Length{})
	for i, c := range got.Clearances {
		if measure.Micrometres(1).Less(c.Clearance.Sub(right.Clearances[i].Clearance).Abs()) {
			return true
		}
	}
	return len(got.Faults) > 0
}
