package draw_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/draw"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
)

// The marks and the scores are as far apart as asked for, in every language no two
// texts overlap, and every length that can be measured has its blanks.
func TestTestSheet(t *testing.T) {
	for _, language := range guide.Languages() {
		say, err := guide.Words(language)
		assert.NoError(t, err)
		for _, step := range []string{"0.5 mm", "1/16 in"} {
			d := draw.NewTestSheet(draw.TestSheet{Apart: measure.Millimetres(30), Marked: measure.Millimetres(150)}, draw.Options{Step: measure.MustParseStep(step), Say: say, Language: language})
			blanks, folds, lowest, highest := 0, []float64{}, math.Inf(1), math.Inf(-1)
			for i := range d.Figures {
				f := &d.Figures[i]
				for j := range f.Labels {
					assert.LessOrEqual(t, f.Labels[j].Box.High.X, f.Box.High.X+0.01, "%s", f.Labels[j].Lines)
					for k := range j {
						assert.False(t, f.Labels[j].Box.Meets(f.Labels[k].Box), "%s and %s", f.Labels[j].Lines, f.Labels[k].Lines)
					}
				}
				for _, l := range f.Lines {
					from, to := l.Path[0].Point, l.Path[len(l.Path)-1].Point
					switch {
					case l.Layer == draw.ValleyFold:
						folds = append(folds, from.X)
					case l.Layer == draw.Measures && i == 0:
						blanks++
						assert.LessOrEqual(t, to.X, f.Box.High.X+0.01)
					case l.Layer == draw.Measures && from.X == to.X:
						lowest, highest = min(lowest, from.X), max(highest, from.X)
					}
				}
			}
			assert.Equal(t, 6+11+11+11+3, blanks)
			assert.Equal(t, []float64{20, 50}, folds)
			assert.InDelta(t, 150, highest-lowest, 1e-9)
			assert.Contains(t, d.Title+d.Figures[0].Name, say("what to measure"))
		}
	}
}
