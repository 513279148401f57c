package solve

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	goods "creasefit/internal/contents"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
)

// presets yields a request by hand for every preset contents on both rulers;
// those whose source states no thickness are 1 1/2 in thick.
func presets(t *testing.T, kind string, yield func(name string, r *Request)) {
	for _, item := range goods.All() {
		for _, u := range []measure.Unit{measure.Inch, measure.Millimetre} {
			r := seen(t, kind, 1, 1, 1, 38)
			r.Unit, r.Ruler, r.Fit = u, measure.Finest(u), enclosure.NamedFits()[1].Range(u)
			r.Width, r.Height = item.Width, item.Height
			if item.Thickness.Sign() > 0 {
				r.Thickness = item.Thickness
			}
			if u == measure.Inch {
				r.Ruler = measure.MustParseStep("1/16 in")
			}
			yield(item.Name, r)
		}
	}
}

// With a knife and a ruler everything that is offered goes in at least 95 times
// in 100, unless a fit is asked for: what two pieces of a kind have between them
// is chosen so.
func TestPresetsAreSureByHand(t *testing.T) {
	for _, kind := range []string{"sleeve", "lidded-box", "drawer-box"} {
		solved := 0
		presets(t, kind, func(name string, r *Request) {
			s, err := Solve(context.Background(), r)
			if err != nil {
				return // a card has no room for walls
			}
			solved++
			assert.GreaterOrEqual(t, s.Sure.Chance, sureEnough, "%s round %s", kind, name)
			assert.NotContains(t, codes(s), "unsure-fit", "%s round %s", kind, name)
		})
		assert.Greater(t, solved, 100, kind)
	}
}

func codes(s *Solution) (list []string) {
	for _, w := range s.Warnings {
		list = append(list, w.Code)
	}
	return list
}

// A bench chooses the closest fit that it makes sure: a cutting machine a snug
// one, a hand an easy one; a bench that makes none sure the surest. What is asked
// for stays.
func TestBenchChoosesTheFit(t *testing.T) {
	for _, c := range []struct {
		error  measure.Length
		wanted float64
		fit    string
	}{
		{measure.Micrometres(200), 0, "snug"},
		{measure.Sixtyfourths(2), 0, "easy"},
		{measure.Sixtyfourths(2), 0.7, "snug"},
		{measure.Millimetres(3), 0, "loose"},
	} {
		for kind, param := range map[string]string{"lidded-box": "lid_fit", "drawer-box": "slide"} {
			r := seen(t, kind, 2, 200, 150, 40)
			r.CutError, r.ScoreError, r.WantedChance = c.error, c.error, c.wanted
			s, err := Solve(context.Background(), r)
			require.NoError(t, err)
			assert.Equal(t, c.fit, s.Request.Options[param].Choice, "%s +- %s, %v", kind, c.error, c.wanted)
			assert.NotContains(t, r.Options, param, "the request stays as it is")
			q := r.with(enclosure.Option{Name: param, Choice: "snug"})
			s, err = Solve(context.Background(), &q)
			require.NoError(t, err)
			assert.Equal(t, "snug", s.Request.Options[param].Choice)
		}
	}
}
