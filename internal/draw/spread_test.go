package draw_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Two clearances on one scale: the less sure one is first, each curve is highest
// in the middle of its spread and as wide as six deviations, the band is as wide
// as what was wanted, and only what lies under what is enough is hatched.
func TestSpread(t *testing.T) {
	mm := func(text string) measure.Length { return measure.MustParse(text + " mm") }
	easy := draw.Clearance{Name: []string{"width"}, Least: mm("1.5"), Most: mm("3"), Low: mm("1"), High: mm("3"), Chance: 0.9999}
	tight := draw.Clearance{Name: []string{"lid over tray", "height"}, Least: mm("0"), Most: mm("1.5"), Low: mm("1").Neg(), High: mm("2"), Enough: mm("0.3").Neg(), Chance: 0.945}
	d := draw.NewSpread(&pattern.Pattern{}, draw.Options{Title: "Box", Step: measure.MustParseStep("0.5 mm"), Clearances: []draw.Clearance{easy, tight}})
	require.Len(t, d.Figures, 2)
	assert.Equal(t, "lid over tray, height: goes in 94 times in 100. width: goes in at least 99 times in 100", d.Description)
	perMM := 0.0
	for i, c := range []draw.Clearance{tight, easy} {
		f := &d.Figures[i]
		hatched := false
		for _, l := range f.Lines {
			box := [2]float64{math.Inf(1), math.Inf(-1)}
			peak := l.Path[0].Point
			for _, v := range l.Path {
				box[0], box[1] = min(box[0], v.X), max(box[1], v.X)
				if v.Y > peak.Y {
					peak = v.Point
				}
			}
			switch {
			case l.Layer == draw.Paper:
				if perMM == 0 {
					perMM = (box[1] - box[0]) / 1.5
				}
				assert.InDelta(t, 1.5*perMM, box[1]-box[0], 1e-9, "one scale")
			case l.Layer == draw.Outline:
				assert.InDelta(t, c.High.Sub(c.Low).Millimetres()*perMM, box[1]-box[0], 1e-9)
				assert.InDelta(t, (box[0]+box[1])/2, peak.X, 1e-9)
			case l.Layer == draw.Waste && l.Closed:
				hatched = true
				assert.LessOrEqual(t, box[1]-box[0], 0.7*perMM+1e-9, "from -1 to -0.3 mm")
			}
		}
		assert.Equal(t, i == 0, hatched)
		for j := range f.Labels {
			for k := range j {
				assert.False(t, f.Labels[j].Box.Meets(f.Labels[k].Box), "%s and %s", f.Labels[j].Lines, f.Labels[k].Lines)
			}
		}
	}
}
