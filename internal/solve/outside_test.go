package solve

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
)

// TestOutsideFollowsAsSaid moves all readings of solved kinds at once by a
// little and folds the pattern up again: the outside is never further off than
// the terms that were found one by one allow, and what follows the folding of the
// solution is what folding anew measures.
func TestOutsideFollowsAsSaid(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 7))
	for _, k := range repertoire.Kinds() {
		s := solvedIn(t, k)
		link, leaders, follower := s.link(), s.leaders(), fold.Follow(&s.Pattern)
		counted := s.counted(leaders)
		for range 200 {
			sizes, moved := append([]measure.Length(nil), s.sizes...), make([]measure.Length, len(s.sizes))
			s.moveSettings(r, moved)
			for i, leader := range leaders {
				c := counted[leader]
				sizes[i] = sizes[i].Add(part(moved[c.reading], c.share))
			}
			p := s.plan.Build(sizes)
			require.Equal(t, fold.Extent(&p), follower.Extent(&p), k.Name)
			for axis, size := range s.refolded(follower, s.plan, sizes) {
				worst := link.Outside[axis].WorstCase
				slack := measure.Nanometres(200) // slopes are rounded to a thousandth
				require.False(t, size.Less(worst.Min.Sub(slack)) || worst.Max.Add(slack).Less(size), "%s, axis %d: %v is not within %v", k.Name, axis, size, worst)
			}
		}
	}
}

// TestWhatIsFoldedOtherwiseIsNotFollowed: a pattern whose creases turn otherwise, or whose
// pieces or contents lie otherwise, is folded anew. Each change shows in the outside of some kind.
func TestWhatIsFoldedOtherwiseIsNotFollowed(t *testing.T) {
	far := measure.Millimetres(3)
	creases := func(change func(c *pattern.Crease)) func(p *pattern.Pattern) {
		return func(p *pattern.Pattern) {
			for i := range p.Pieces {
				p.Pieces[i].Creases = slices.Clone(p.Pieces[i].Creases)
				for k := range p.Pieces[i].Creases {
					change(&p.Pieces[i].Creases[k])
				}
			}
		}
	}
	changes := map[string]func(p *pattern.Pattern){
		"angle":  creases(func(c *pattern.Crease) { c.Angle *= 0.75 }),
		"fold":   creases(func(c *pattern.Crease) { c.Fold = pattern.Valley + pattern.Mountain - c.Fold }),
		"slant":  creases(func(c *pattern.Crease) { c.B = pattern.At(c.B.X.Add(far), c.B.Y.Add(far)) }),
		"turned": creases(func(c *pattern.Crease) { c.A, c.B = c.B, c.A }),
		"cavity": func(p *pattern.Pattern) { p.Cavity.Turned = 90 },
		"places": func(p *pattern.Pattern) {
			for i := range p.Places {
				p.Places[i].Lie = pattern.FaceUp
			}
		},
	}
	shown := map[string]bool{}
	for _, k := range repertoire.Kinds() {
		p := solvedIn(t, k).Pattern
		follower, before := fold.Follow(&p), fold.Extent(&p)
		for name, change := range changes {
			q := p
			q.Pieces, q.Places = slices.Clone(p.Pieces), slices.Clone(p.Places)
			change(&q)
			anew := fold.Extent(&q)
			assert.Equal(t, anew, follower.Extent(&q), "%s, %s", k.Name, name)
			shown[name] = shown[name] || anew != before
		}
		follower.Done()
	}
	for name := range changes {
		assert.True(t, shown[name], "%s shows nowhere", name)
	}
}

// solvedIn is a solution of the kind: round a box of tea, or round a card where
// that is too thick.
func solvedIn(t *testing.T, k *enclosure.Kind) *Solution {
	q := &Request{
		Kind: k, Unit: measure.Millimetre, Ruler: measure.Marks(measure.Millimetre)[3], Caliper: measure.Micrometres(300),
		Width: measure.Millimetres(90), Height: measure.Millimetres(130), Thickness: measure.Millimetres(25),
		CutError: measure.Micrometres(20), ScoreError: measure.Micrometres(20), FitName: "easy", Fit: enclosure.NamedFits()[1].Range(measure.Millimetre),
	}
	s, err := Solve(context.Background(), q)
	if err != nil {
		q.Thickness = measure.Millimetres(2)
		s, err = Solve(context.Background(), q)
	}
	require.NoError(t, err)
	return s
}

// moveSettings says how far off every reading is when each stop and each stroke
// is off by its whole error one way or the other.
func (s *Solution) moveSettings(r *rand.Rand, moved []measure.Length) {
	a := &s.judgement().account
	errors := make([]measure.Length, len(a.sources))
	for i := range errors {
		errors[i] = a.sources[i].High.Times(2*r.Int64N(2) - 1)
	}
	for reading := range moved {
		var c coefficients
		c[reading] = 1
		times := make([]float64, len(errors))
		a.settings(times, c, 1)
		for i, e := range errors {
			moved[reading] = moved[reading].Add(part(e, times[i]))
		}
	}
}
