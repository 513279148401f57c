package solve

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/tolerance"
)

// sleeveChecked is a sleeve of 98 mm round 95 x 60 x 24 mm in card of 0.3 mm, made
// by a cutting machine, as it is checked with what was measured on it.
func sleeveChecked(t *testing.T, finished func(s *Solution) *Finished) (*Solution, *Check) {
	q := seen(t, "sleeve", 1, 95, 60, 24)
	q.CutError, q.ScoreError, q.CaliperTolerance = measure.Micrometres(200), measure.Micrometres(200), measure.Micrometres(11)
	s, err := Solve(context.Background(), q)
	require.NoError(t, err)
	c, err := CheckFinished(context.Background(), q, s.ReadOff(), finished(s))
	require.NoError(t, err)
	return s, c
}

// Inside, a sleeve should be a caliper less than its back is wide, 97.7 mm of 98. One
// that is as it should teaches nothing; one that is 0.5 mm less both ways was
// folded by folds that take up more than none, since stops are set to 0.2 mm and
// papers are known to 0.011.
func TestFoldedPieceTeaches(t *testing.T) {
	inside := func(less string) func(s *Solution) *Finished {
		return func(s *Solution) *Finished {
			by := measure.MustParse(less + " mm")
			return &Finished{Inside: [3]measure.Length{s.Fits[0].Nominal.Add(s.Request.Width).Sub(by), {}, s.Fits[1].Nominal.Add(s.Request.Thickness).Sub(by)}}
		}
	}
	s, right := sleeveChecked(t, inside("0"))
	assert.Equal(t, measure.MustParse("97.7 mm"), s.Fits[0].Nominal.Add(s.Request.Width))
	assert.Empty(t, right.Lesson.Suspects)
	assert.InDelta(t, 1, right.Lesson.Surprise, 1e-9)
	_, thick := sleeveChecked(t, inside("0.5"))
	require.NotEmpty(t, thick.Lesson.Suspects)
	assert.Equal(t, Folds, thick.Lesson.Suspects[0].Of)
	assert.Greater(t, thick.Lesson.Fold.Millimetres(), 0.1)
	assert.Less(t, thick.Lesson.Fold.Millimetres(), 0.5)
	assert.Less(t, thick.Lesson.Surprise, 0.05)
	_, none := sleeveChecked(t, func(*Solution) *Finished { return &Finished{} })
	assert.Nil(t, none.Lesson)
}

// What a piece teaches lies nearer to the truth than what was stated: over many
// random pieces, the caliper and what folds take up that are learned are off by
// less, squared, than they were, and their limits hold as often as they should.
func TestLessonsComeNearer(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 6))
	q := seen(t, "lidded-box", 1, 120, 90, 40)
	q.CutError, q.ScoreError, q.CaliperTolerance = measure.Micrometres(300), measure.Micrometres(300), measure.Micrometres(60)
	s, err := Solve(context.Background(), q)
	require.NoError(t, err)
	c, err := CheckOwn(context.Background(), s.Request, s.ReadOff())
	require.NoError(t, err)
	probe := &Solution{Request: c.Request, plan: c.plan, sizes: c.sizes, judged: c.judged, Pattern: c.Pattern, Outside: s.Outside}
	seen := probe.observed(&Finished{Inside: [3]measure.Length{measure.Millimetres(1), measure.Millimetres(1), measure.Millimetres(1)}, Outside: [3]measure.Length{measure.Millimetres(1), measure.Millimetres(1), measure.Millimetres(1)}})
	require.Len(t, seen, 6)
	var before, after [2]float64
	pieces := 400
	for range pieces {
		f := &Finished{}
		truth := make([]float64, len(c.judged.sources)+1)
		for i, source := range c.judged.sources {
			_, deviation := source.Normal()
			truth[i] = r.NormFloat64() * deviation
		}
		truth[len(truth)-1] = r.NormFloat64() * float64(q.Caliper.Nanometres()) / 3
		for i, o := range seen {
			made := float64(measure.Millimetres(1).Nanometres()) - o.off
			for k, times := range o.times {
				made += times * truth[k]
			}
			made += r.NormFloat64() * float64(q.Ruler.Size().Nanometres()) / math.Sqrt(12)
			if i < 3 {
				f.Inside[i] = nanometres(made)
			} else {
				f.Outside[i-3] = nanometres(made)
			}
		}
		lesson := c.learn(f)
		paper := truth[c.judged.pack]
		for i, pair := range [...][2]float64{{paper, float64(lesson.Caliper.Sub(q.Caliper).Nanometres())}, {truth[len(truth)-1], float64(lesson.Fold.Nanometres())}} {
			before[i] += pair[0] * pair[0]
			after[i] += (pair[1] - pair[0]) * (pair[1] - pair[0])
		}
	}
	t.Logf("caliper: %.3f of the variance is left, folds: %.3f", after[0]/before[0], after[1]/before[1])
	assert.Less(t, after[0], before[0])
	assert.Less(t, after[1], 0.9*before[1])
}

// Two errors and one sum of them: the mean is shared by their variances (the
// textbook case; JCGM 100:2008, 5.1.2, propagated backwards).
func TestAdjustment(t *testing.T) {
	seen := []observation{{off: 10, times: []float64{1, 1}}}
	spread := []float64{3, 1}
	g, surprise := adjusted(seen, spread, 0)
	assert.InDelta(t, 9, g.mean(seen, 0)*9, 1e-9)
	assert.InDelta(t, 1, g.mean(seen, 1)*1, 1e-9)
	assert.InDelta(t, 1-tolerance.ChiSquare(10, 1), surprise, 1e-12)
	assert.InDelta(t, 0.9, g.known(seen, 0)*9, 1e-9, "9 of 10 parts of the variance")
}
