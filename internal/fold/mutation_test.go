package fold

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// TestEveryCaliperCounts drops and doubles a caliper in every size of the
// hand-made patterns. Each must fail its proof or measure another clearance.
func TestEveryCaliperCounts(t *testing.T) {
	for name, patterns := range map[string][]*pattern.Pattern{
		"wrap":     mutants(rightWrap, wrap.pattern, func(w *wrap) []*float64 { return []*float64{&w.front, &w.side1, &w.back, &w.side2} }),
		"band":     mutants(rightBand, band.pattern, func(b *band) []*float64 { return []*float64{&b.front1, &b.back, &b.front2} }),
		"tray":     mutants(rightTray, tray.pattern, func(y *tray) []*float64 { return []*float64{&y.w, &y.h} }),
		"envelope": mutants(rightEnvelope, envelope.pattern, func(e *envelope) []*float64 { return []*float64{&e.w, &e.h} }),
		"diagonal": mutants(rightDiagonal, diagonal.pattern, func(d *diagonal) []*float64 { return []*float64{&d.w, &d.h} }),
	} {
		right := Prove(patterns[0], measure.Length{})
		for i, p := range patterns[1:] {
			t.Run(fmt.Sprint(name, " ", i), func(t *testing.T) {
				proof := Prove(p, measure.Length{})
				assert.True(t, differs(right, proof))
				assert.Equal(t, proof.Gap, Gap(p, measure.Length{}))
			})
		}
	}
}

// TestEveryLayerCounts drops and doubles a caliper in what each doubled fold
// goes round.
func TestEveryLayerCounts(t *testing.T) {
	for name, make := range map[string]func() *pattern.Pattern{
		"band":     func() *pattern.Pattern { return rightBand().pattern() },
		"envelope": func() *pattern.Pattern { return rightEnvelope().pattern() },
		"diagonal": func() *pattern.Pattern { return rightDiagonal().pattern() },
	} {
		right := Prove(make(), measure.Length{})
		for i := range make().Pieces[0].Creases {
			for _, sign := range []int64{-1, 1} {
				p := make()
				c := &p.Pieces[0].Creases[i]
				c.Round = c.Round.Add(p.Caliper.Times(sign))
				if c.Angle > 179 && c.Round.Sign() >= 0 {
					t.Run(fmt.Sprint(name, " ", c.Name, " ", sign), func(t *testing.T) {
						assert.True(t, differs(right, Prove(p, measure.Length{})))
					})
				}
			}
		}
	}
}

// mutants returns the pattern of a right one, and those with one caliper more
// and less in each of its sizes.
func mutants[S any](right func() S, make func(S) *pattern.Pattern, sizes func(*S) []*float64) []*pattern.Pattern {
	first := right()
	patterns := []*pattern.Pattern{make(first)}
	t := patterns[0].Caliper.Millimetres()
	for i := range sizes(&first) {
		for _, change := range []float64{-t, t} {
			s := right()
			*sizes(&s)[i] += change
			patterns = append(patterns, make(s))
		}
	}
	return patterns
}

// differs reports whether a proof fails, or measures a clearance that is more
// than a micrometre from the right one.
func differs(right, got Proof) bool {
	if len(got.Faults) > 0 {
		return true
	}
	for i, c := range got.Clearances {
		if measure.Micrometres(1).Less(c.Clearance.Sub(right.Clearances[i].Clearance).Abs()) {
			return true
		}
	}
	return false
}
