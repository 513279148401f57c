package own

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Two pairs of slits of one piece are each drawn on a fold of its own, as deep as they say.
func TestEverySlitLiesOnItsFold(t *testing.T) {
	d, err := Decode([]byte(`{"design": "cross wrap", "holds": "back", "pieces": [{"piece": "wrap", "panels": [
		{"panel": "back"},
		{"panel": "left side", "on": "back", "edge": "left"}, {"panel": "left front", "on": "left side", "edge": "left"},
		{"panel": "left tab", "on": "left front", "edge": "left", "fold": "mountain", "reach": "15 mm"},
		{"panel": "right side", "on": "back", "edge": "right"}, {"panel": "right front", "on": "right side", "edge": "right"},
		{"panel": "right tab", "on": "right front", "edge": "right", "fold": "mountain", "reach": "15 mm"},
		{"panel": "lower side", "on": "back", "edge": "bottom", "reach": "30 mm"}, {"panel": "lower front", "on": "lower side", "edge": "bottom"},
		{"panel": "lower tab", "on": "lower front", "edge": "bottom", "fold": "mountain", "reach": "15 mm"},
		{"panel": "upper side", "on": "back", "edge": "top", "reach": "30 mm"}, {"panel": "upper front", "on": "upper side", "edge": "top"},
		{"panel": "upper tab", "on": "upper front", "edge": "top", "fold": "mountain", "reach": "15 mm"}]}],
		"joins": [{"meet": "fold of left tab", "with": "fold of right tab", "sewn": "no"}, {"level": "left front", "with": "right front"},
		{"meet": "fold of lower tab", "with": "fold of upper tab", "sewn": "no"}, 
		{"even": "left front", "with": "right front"}, {"even": "lower front", "with": "upper front"},
		{"slits": "left tab", "with": "right tab"}, {"slits": "lower tab", "with": "upper tab"}]}`))
	require.NoError(t, err)
	v := newDerivation(d.Ways[0])
	p := v.planner(trial())
	require.NoError(t, v.attempt(p))
	sheet := p.build(p.plan.Ideals()).Pieces[0]
	require.Len(t, sheet.Cuts, 4+4) // and the corners of the blank
	for i := range sheet.Cuts[:4] {
		cut := &sheet.Cuts[i]
		assert.Equal(t, pattern.Slit, cut.Kind)
		for k := range sheet.Creases {
			c := &sheet.Creases[k]
			if c.Name != cut.On {
				continue
			}
			a, b := cut.Path[0].Point, cut.Path[1].Point
			assert.True(t, a == c.A || a == c.B, "%s begins at an end of %s", cut.Name, c.Name)
			assert.True(t, a.X == b.X && b.X == c.A.X || a.Y == b.Y && b.Y == c.A.Y, "%s lies on %s", cut.Name, c.Name)
			assert.Equal(t, cut.Depth, measure.Max(a.X.Sub(b.X).Abs(), a.Y.Sub(b.Y).Abs()), cut.Name)
		}
	}
}
