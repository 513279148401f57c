package solve

import (
	"cmp"
	"context"
	"math"
	"slices"

	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/settings"
)

// Finished is what somebody measured on a folded piece, inside and outside along
// the width, the height and the thickness; zero where nothing was measured.
type Finished struct{ Inside, Outside [3]measure.Length }

// Measured reports whether anything was.
func (f *Finished) Measured() bool { return *f != Finished{} }

// Culprit is what an error comes from, as a maker can mend it.
type Culprit uint8

// The culprits.
const (
	CutStop   Culprit = iota // the stop of a cut
	ScoreStop                // the stop of a score
	OneCut                   // one cut beside its stop
	OneScore                 // one score or its fold beside its stop
	Paper                    // the caliper of the pack
	Folds                    // what every fold takes up
)

// String returns the culprit as it is written on the wire.
func (c Culprit) String() string {
	return [...]string{"cut-stop", "score-stop", "one-cut", "one-score", "caliper", "fold"}[c]
}

// Suspect is one thing that was most likely off, by how much, and how many of its
// standard deviations that is.
type Suspect struct {
	Of         Culprit
	At         measure.Length // of a stop
	Off        measure.Length
	Deviations float64
}

// Lesson is what a finished piece teaches: what was most likely off, the likeliest
// first, how unlikely the measurements are altogether, and what to say of paper
// and hand from then on.
type Lesson struct {
	Suspects                        []Suspect
	Surprise                        float64 // chance of measurements as far off as these, or farther
	Caliper, CaliperTolerance, Fold measure.Length
	Cut, Score                      measure.Length
	Mend                            []Change // the smallest that leaves the wanted clearances with these
}

// foldPrior is by how much, three standard deviations, what a fold takes up may be
// off in parts of the caliper, before anything was measured (common practice).
const foldPrior = 1

// CheckFinished judges somebody's own measurements, and learns from what she
// measured on the folded piece.
func CheckFinished(ctx context.Context, r *Request, own *Measurements, f *Finished) (*Check, error) {
	c, err := CheckOwn(ctx, r, own)
	if err != nil || !f.Measured() {
		return c, err
	}
	c.Lesson = c.learn(f)
	return c, c.mendLearned(ctx)
}

// learn finds what was most likely off: the mean of all errors given what was
// measured, where each is normal about nothing and a reading is off by half a
// mark (the linear model of every least-squares adjustment; JCGM 100:2008,
// 5.1.2).
func (c *Check) learn(f *Finished) *Lesson {
	s, r, j := c.Solution, c.Request, c.judged
	s.Ornament = nil // it was not measured
	folded := r.folded(s.plan, s.sizes, s.plan.Build)
	s.Outside = s.outside(fold.Extent(&folded))
	seen := s.observed(f)
	spread := make([]float64, len(j.sources)+1) // standard deviations; the last is that of folds
	for i, source := range j.sources {
		_, spread[i] = source.Normal()
	}
	spread[len(j.sources)] = float64(r.Caliper.Nanometres()) * foldPrior / 3
	g, surprise := adjusted(seen, spread, float64(r.Ruler.Size().Nanometres())/math.Sqrt(12))
	off, left := make([]float64, len(spread)), make([]float64, len(spread))
	for i, d := range spread {
		off[i], left[i] = g.mean(seen, i)*d*d, d*math.Sqrt(max(0, 1-g.known(seen, i)*d*d))
	}
	return s.lesson(off, left, spread, surprise)
}

// mendLearned looks for the smallest change that leaves the wanted clearances
// with the caliper and the folds that were learned.
func (c *Check) mendLearned(ctx context.Context) error {
	q := *c.Request
	q.Caliper, q.CaliperTolerance, q.FoldAllowance = c.Lesson.Caliper, c.Lesson.CaliperTolerance, c.Lesson.Fold
	plan, err := q.planned()
	if err != nil || len(plan.Problem.Readings) != len(c.sizes) {
		return nil // the paper that was learned is made up in another way
	}
	for _, w := range plan.Problem.Windows {
		if v := w.Form.Value(c.sizes); v.Less(w.Min) || w.Max.Less(v) {
			again := &Check{Solution: Solution{Request: &q, plan: plan, sizes: c.sizes}}
			err := again.mend(ctx)
			c.Lesson.Mend = again.Mend
			return err
		}
	}
	return nil
}

// observed lists what was measured that the model knows of.
func (s *Solution) observed(f *Finished) (list []observation) {
	fold := len(s.judged.sources)
	taken := s.perFold()
	for i := range s.plan.Fits {
		fit := &s.plan.Fits[i]
		if fit.Between != "" || int(fit.Axis) >= len(f.Inside) || f.Inside[fit.Axis].IsZero() {
			continue
		}
		times, own := make([]float64, fold+1), face{}
		own.of.of(s.plan.Problem.Windows[fit.Window].Form.Terms)
		form := s.judged.form(fit, &own, times[:fold])
		s.forget(times)
		for reading, n := range own.of[:len(s.sizes)] {
			times[fold] -= float64(n) * taken[reading] * slope(fit)
		}
		expected := form.Nominal.Sub(s.Request.give(fit)).Add(*s.Request.size(fit.Axis.String()))
		list = append(list, observation{float64(f.Inside[fit.Axis].Sub(expected).Nanometres()), times})
	}
	depends, folds := s.dependence(), s.foldSlopes()
	for axis, expected := range s.Outside.sizes() {
		if f.Outside[axis].Sign() > 0 {
			times := append(slices.Clone(depends[axis]), folds[axis])
			s.forget(times)
			list = append(list, observation{float64(f.Outside[axis].Sub(expected).Nanometres()), times})
		}
	}
	return list
}

// forget leaves out the contents: the piece was measured, not they.
func (s *Solution) forget(times []float64) {
	for i, cause := range s.judged.causes {
		if cause.of == contents {
			times[i] = 0
		}
	}
}

// perFold is, by reading, how often what a fold takes up is taken off it.
func (s *Solution) perFold() []float64 {
	unit := *s.Request
	unit.FoldAllowance = measure.Nanometres(2)
	taken := make([]float64, len(s.sizes))
	for i, l := range unit.takenUp(s.plan) {
		taken[i] = float64(l.Nanometres()) / 2
	}
	return taken
}

// foldSlopes is how the outside follows what folds take up while all readings
// stay.
func (s *Solution) foldSlopes() [3]float64 {
	q := *s.Request
	q.FoldAllowance = q.FoldAllowance.Add(nudge)
	p := q.folded(s.plan, s.sizes, s.plan.Build)
	return slopesFrom(s.Outside.sizes(), around(&p, fold.Extent(&p), s.Ornament))
}

// lesson sums up what was off, and what is known of paper and hand now.
func (s *Solution) lesson(off, left, spread []float64, surprise float64) *Lesson {
	r := s.Request
	l := &Lesson{Surprise: surprise, Caliper: r.Caliper, CaliperTolerance: r.CaliperTolerance, Fold: r.FoldAllowance.Add(nanometres(off[len(off)-1]))}
	l.suspect(Folds, measure.Length{}, off[len(off)-1], spread[len(off)-1])
	cuts, scores := newHand(r.CutError), newHand(r.ScoreError)
	for i, c := range s.judged.causes {
		h := &cuts
		if c.tool == settings.Score {
			h = &scores
		}
		switch c.of {
		case pack:
			l.Caliper, l.CaliperTolerance = r.Caliper.Add(nanometres(off[i])), nanometres(3*left[i])
			l.suspect(Paper, measure.Length{}, off[i], spread[i])
		case stopSet:
			h.see(off[i], left[i], spread[i])
			l.suspect(CutStop+Culprit(c.tool), c.at, off[i], spread[i])
		case stroke:
			l.suspect(OneCut+Culprit(c.tool), c.at, off[i], spread[i])
		}
	}
	l.Cut, l.Score = cuts.error(), scores.error()
	slices.SortStableFunc(l.Suspects, func(a, b Suspect) int { return cmp.Compare(math.Abs(b.Deviations), math.Abs(a.Deviations)) })
	l.Suspects = l.Suspects[:min(len(l.Suspects), mostSuspects)]
	return l
}

// Suspects that are told: so many, each off by so many deviations at the least.
const (
	mostSuspects = 5
	suspicious   = 0.3
)

// suspect adds what moved.
func (l *Lesson) suspect(of Culprit, at measure.Length, off, spread float64) {
	if spread > 0 && math.Abs(off) >= suspicious*spread {
		l.Suspects = append(l.Suspects, Suspect{of, at, nanometres(off), off / spread})
	}
}

func nanometres(nm float64) measure.Length { return measure.Nanometres(int64(math.Round(nm))) }

// hand is how exactly somebody sets stops: what she said of it counts as much as
// ten stops do, and one finished piece is a few more.
type hand struct {
	said   measure.Length
	sum    float64 // of squares in parts of what was said, and of what is not known
	weight float64
}

const saidCounts = 10

func newHand(said measure.Length) hand { return hand{said: said, sum: saidCounts, weight: saidCounts} }

// see counts a stop: by as much as the measurements say of it.
func (h *hand) see(off, left, spread float64) {
	if spread <= 0 {
		return
	}
	known := 1 - left*left/(spread*spread)
	h.sum += off*off/(spread*spread) + known*left*left/(spread*spread)
	h.weight += known
}

// error is that of one line, three standard deviations.
func (h *hand) error() measure.Length {
	return nanometres(float64(h.said.Nanometres()) * math.Sqrt(h.sum/h.weight))
}
