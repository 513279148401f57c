package own_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// things are what goes into the designs: a stack of tasting cards, and thicker.
var things = [][3]float64{{90, 127, 12}, {105, 148, 20}, {140, 200, 30}}

// Every design to learn from has a solution that is proven, in thin and in thick
// paper, on both rulers.
func TestDesignsToLearnFromAreProven(t *testing.T) {
	for _, d := range own.Examples() {
		t.Run(d.Name, func(t *testing.T) {
			k, err := own.Read(d.Text)
			if !assert.NoError(t, err) {
				return
			}
			for _, thing := range things {
				for _, unit := range []measure.Unit{measure.Inch, measure.Millimetre} {
					for _, caliper := range []int64{150, 300, 500} {
						q := request(k, unit, thing, caliper)
						s, err := solve.Solve(context.Background(), q)
						if assert.NoError(t, err, "%v %v %d", thing, unit, caliper) {
							assert.True(t, s.Proof.Closes && s.Proof.Holds)
							assert.NotEmpty(t, s.Fits)
							for _, w := range s.Warnings {
								assert.NotEqual(t, "open-side", w.Code, w.Detail)
							}
						}
					}
				}
			}
		})
	}
}

// What is cut away goes from an edge of the blank to an edge, and meets none between.
func TestReliefsGoFromEdgeToEdge(t *testing.T) {
	cut := 0
	for _, d := range own.Examples() {
		k, err := own.Read(d.Text)
		require.NoError(t, err)
		s, err := solve.Solve(t.Context(), request(k, measure.Millimetre, things[1], 300))
		require.NoError(t, err)
		for i := range s.Pattern.Pieces {
			p := &s.Pattern.Pieces[i]
			for _, c := range p.Cuts {
				if c.Kind != pattern.Relief {
					continue
				}
				cut++
				for k, v := range c.Path {
					assert.Equal(t, k == 0 || k == len(c.Path)-1, p.OnEdge(v.Point), "%s: %s", d.Name, c.Name)
				}
			}
		}
	}
	assert.Positive(t, cut)
}

func request(k *enclosure.Kind, unit measure.Unit, thing [3]float64, caliper int64) *solve.Request {
	marks := measure.Marks(unit)
	mm := func(l float64) measure.Length { return measure.Micrometres(int64(1000 * l)) }
	return &solve.Request{
		Kind: k, Unit: unit, Ruler: marks[len(marks)-1], Caliper: measure.Micrometres(caliper), Width: mm(thing[0]), Height: mm(thing[1]), Thickness: mm(thing[2]),
		CutError: measure.Sixtyfourths(2), ScoreError: measure.Sixtyfourths(2), FitName: "easy", Fit: enclosure.NamedFits()[1].Range(unit), Options: map[string]enclosure.Value{},
	}
}

// inputOf is what a kind is told of a request.
func inputOf(q *solve.Request) *enclosure.Input {
	return &enclosure.Input{Unit: q.Unit, Width: q.Width, Height: q.Height, Thickness: q.Thickness, Caliper: q.Caliper, Fit: q.Fit, Params: q.Kind.Params}
}
