package solve_test

import (
	"context"
	"math"
	"math/rand/v2"
	"regexp"
	"slices"
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

// A bound that a refusal offers has been tried. These were refused again: a lap "from
// 18 mm to 18 mm", and a prism box of 33.5 mm which then wanted 37.
func TestOfferedBoundsAreNotRefusedAgain(t *testing.T) {
	pillow := asked(t, "pillow-pack", 80_000, 90_000, 12_000, 700, "middle_height", "6 mm")
	prism := asked(t, "prism-box", 12_000, 0, 30_000, 800)
	for _, r := range []*solve.Request{pillow, prism} {
		assert.Positive(t, takeOffers(t, r), r.Kind.Name)
	}
	thick := refusal(t, asked(t, "pillow-pack", 13_100, 9_434, 12_000, 700))
	assert.Empty(t, thick.Expected, "no height helps")
	assert.Contains(t, thick.Hint, "no other middle_height alone would do")
}

// Bounds of random refusals lie within what each size may be, and both ends are not
// refused again.
func TestRandomBoundsAreNotRefusedAgain(t *testing.T) {
	want := 12
	if testing.Short() {
		want = 3
	}
	random := rand.New(rand.NewPCG(7, 13))
	size := func(low, high float64) measure.Length {
		return measure.Micrometres(100 * int64(math.Round(10*low*math.Pow(high/low, random.Float64()))))
	}
	for _, k := range repertoire.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			offers := 0
			for tries := 0; offers < want && tries < 60*want; tries++ {
				r := asked(t, k.Name, 0, 0, 0, 50+random.Int64N(700))
				r.Width, r.Height, r.Thickness = size(4, 400), size(4, 400), size(0.2, 90)
				for _, p := range k.Params {
					if p.Type == enclosure.LengthParam && random.IntN(4) == 0 {
						l := size(max(0.1, p.Least.Millimetres()), min(p.Greatest.Millimetres(), 120))
						r.Options[p.Name] = enclosure.Value{Length: r.Ruler.Up(measure.Max(p.Least, measure.Min(p.Greatest, l)))}
					}
				}
				offers += takeOffers(t, r)
			}
			t.Logf("%d bounds", offers)
		})
	}
}

// isLength reports whether a field is a size of the contents or of the kind's own.
func isLength(k *enclosure.Kind, field string) bool {
	return field == "width" || field == "height" || field == "thickness" ||
		slices.ContainsFunc(k.Params, func(p enclosure.Param) bool { return p.Name == field && p.Type == enclosure.LengthParam })
}

// offer reads the lengths of a bound.
var offer = regexp.MustCompile(`\d[\d.]*(?: mm)`)

// takeOffers tries the ends of every bound that a refusal offers, and returns how
// many there were.
func takeOffers(t *testing.T, r *solve.Request) (offers int) {
	t.Helper()
	_, err := solve.Solve(context.Background(), r)
	var faults fault.Faults
	require.NoError(t, faults.Add(err))
	for i, f := range faults {
		assert.NotContains(t, faults[:i], f, "each fault once")
		if f.Code != fault.Impossible || !isLength(r.Kind, f.Field) || strings.Contains(f.Expected, ", and") {
			continue
		}
		for _, text := range offer.FindAllString(f.Expected, -1) {
			l := measure.MustParse(text)
			q := *r
			q.Options = map[string]enclosure.Value{}
			for name, v := range r.Options {
				q.Options[name] = v
			}
			limits := enclosure.Widths()
			switch f.Field {
			case "width":
				q.Width = l
			case "height":
				q.Height = l
			case "thickness":
				q.Thickness, limits = l, enclosure.Thicknesses()
			default:
				q.Options[f.Field] = enclosure.Value{Length: l}
				for _, p := range r.Kind.Params {
					if p.Name == f.Field {
						limits = enclosure.Range{Min: p.Least, Max: p.Greatest}
					}
				}
			}
			offers++
			assert.False(t, l.Less(limits.Min) || limits.Max.Less(l), "%s: %s is offered, which is out of range", f.Field, l)
			_, err := solve.Solve(context.Background(), &q)
			var again fault.Faults
			require.NoError(t, again.Add(err))
			for _, g := range again {
				assert.NotEqual(t, f.Field, g.Field, "%s %v of %v %v %v at %v: %s, and then %s", r.Kind.Name, l, r.Width, r.Height, r.Thickness, r.Caliper, f.Expected, g.Error())
			}
			if len(faults) == 1 {
				assert.Empty(t, again, "%s %v of %v %v %v at %v %v: nothing else was wrong", f.Field, l, r.Width, r.Height, r.Thickness, r.Caliper, r.Options)
			}
		}
	}
	return offers
}
