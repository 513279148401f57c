package own

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// A caliper that is dropped from any size that a fit or a layer binds is
// caught by the fold proof: folded up from the ideals without any play, the contents do
// not go in then, or something does not meet.
func TestADroppedCaliperIsCaught(t *testing.T) {
	dropped := 0
	for _, e := range append(Examples(), Kinds()...) {
		t.Run(e.Name, func(t *testing.T) {
			d, err := Decode(e.Text)
			require.NoError(t, err)
			v, in := newDerivation(d), trial()
			in.Fit.Min, in.Fit.Max = measure.Micrometres(2), measure.Micrometres(2)
			if strings.Contains(e.Name, "scores-one") {
				in.Thickness = measure.Millimetres(2)
			}
			plan, err := v.plan(in)
			require.NoError(t, err)
			r, err := v.derive(values(v.lengths(in, nil), nil))
			require.NoError(t, err)
			bound := map[int]bool{} // the unknowns that fits and layers bind
			for _, f := range r.fits {
				if f.between == "" { // a lid has a play of its own
					v.note(bound, f.form)
				}
			}
			for _, w := range r.layers {
				v.note(bound, w.form)
			}
			sizes := plan.Ideals()
			whole := plan.Build(sizes)
			proof := fold.Prove(&whole, measure.Micrometres(1))
			require.True(t, proof.Closes && proof.Holds, "%v", proof.Faults)
			for u := range bound {
				w := &v.unknowns[u-v.first]
				if w.end || w.fixed.given {
					continue
				}
				n := slices.IndexFunc(plan.Problem.Readings, func(q rounding.Reading) bool { return q.Name == w.name })
				less := slices.Clone(sizes)
				dropping := in.Caliper
				if d.goesInto() { // what goes into something is too large with one more
					dropping = dropping.Neg()
				}
				less[n] = less[n].Sub(dropping)
				whole := plan.Build(less)
				proof := fold.Prove(&whole, measure.Micrometres(1))
				assert.False(t, proof.Closes && proof.Holds, "a caliper less of %s", w.name)
				dropped++
			}
		})
	}
	assert.Greater(t, dropped, 20)
}

// note adds the unknowns of a form.
func (v *derivation) note(bound map[int]bool, f form) {
	for _, p := range f {
		if p.of >= v.first {
			bound[p.of] = true
		}
	}
}
