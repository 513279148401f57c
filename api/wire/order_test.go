package wire

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/assembly"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
)

// orderOf finds the order of work of a solution and tells it.
func orderOf(t *testing.T, s *told) []WorkStep {
	t.Helper()
	o, err := assembly.Find(&s.Ideal, &s.Pattern, s.Proof.Tolerance)
	require.NoError(t, err)
	return OfOrder(&s.Pattern, o)
}

// TestAnOrderDoesEverythingOnce: steps are counted from one, begin at the bench and fold
// at last; whatever a pattern glues and whatever hooks into something comes about in one step,
// and every fold ends where its score says.
func TestAnOrderDoesEverythingOnce(t *testing.T) {
	everySolution(t, func(t *testing.T, s *told) {
		glues, locks, folded := map[WorkGlue]int{}, map[WorkLock]int{}, map[string]float64{}
		for i, step := range orderOf(t, s) {
			assert.Equal(t, i+1, step.Step)
			assert.NotEmpty(t, step.Pieces)
			assert.NotEqual(t, 1, step.Alike, "one of a kind is not said to be alike")
			assert.Equal(t, step.Do == "lock", len(step.Locks) > 0, "a step locks something if that is what it does")
			for _, g := range step.Glues {
				glues[g]++
			}
			for _, l := range step.Locks {
				locks[l]++
			}
			for _, turn := range step.Turns {
				line := turn.Piece + " " + turn.Score + " " + turn.Panel
				assert.InDelta(t, folded[line], turn.From, 0.011, "%s goes on from where it was", line)
				assert.Contains(t, []string{"valley", "mountain"}, turn.Fold)
				if len(turn.Path) > 0 {
					assert.Equal(t, [2]float64{turn.From, turn.To}, [2]float64{turn.Path[0], turn.Path[len(turn.Path)-1]})
				}
				folded[line] = turn.To
			}
			for _, m := range step.Moves {
				assert.InDelta(t, 1, math.Hypot(math.Hypot(m.Way[0], m.Way[1]), m.Way[2]), 1e-5, "a direction is of length one")
				assert.GreaterOrEqual(t, m.By, 0.0)
			}
		}
		for g, n := range gluesOf(&s.Pattern) {
			assert.Equal(t, n, glues[g], "%v", g)
		}
		assert.Equal(t, locksOf(&s.Pattern), locks)
		angles := map[string]float64{}
		for _, p := range s.answer.Pieces {
			for _, sc := range p.Scores {
				angles[p.Name+" "+sc.Name] = sc.Angle
			}
		}
		for i := range s.Pattern.Pieces {
			p := &s.Pattern.Pieces[i]
			for _, c := range p.Creases {
				line := p.Name + " " + c.Name + " "
				if to, turned := folded[line+p.Panels[c.To].Name]; turned && angles[p.Name+" "+c.Name] > 0 {
					assert.InDelta(t, c.Angle, to, 0.011, "%s is folded up", line)
				}
			}
		}
	})
}

// gluesOf are the glue areas of a pattern as an order tells them: as often as there are
// areas between the same two panels.
func gluesOf(p *pattern.Pattern) map[WorkGlue]int {
	all := map[WorkGlue]int{}
	add := func(list []pattern.Glue, own, other *pattern.Piece) {
		for _, g := range list {
			all[WorkGlue{own.Name, own.Panels[g.Panel].Name, other.Name, other.Panels[g.To].Name}]++
		}
	}
	for i := range p.Pieces {
		add(p.Pieces[i].Glues, &p.Pieces[i], &p.Pieces[i])
	}
	for _, b := range p.Bonds {
		add(b.Glues, &p.Pieces[b.A], &p.Pieces[b.B])
	}
	return all
}

// locksOf are the cuts and pieces of a pattern that hook into one another.
func locksOf(p *pattern.Pattern) map[WorkLock]int {
	all := map[WorkLock]int{}
	for i := range p.Pieces {
		for _, j := range p.Pieces[i].Joints {
			all[WorkLock{p.Pieces[i].Cuts[j.A].Name, p.Pieces[i].Cuts[j.B].Name}]++
		}
	}
	for _, l := range p.Locks {
		all[WorkLock{p.Pieces[l.A].Name, p.Pieces[l.B].Name}]++
	}
	return all
}

// TestASlottedBandIsHooked as hands do it (common practice of belly bands with a slit lock): the
// contents first, then the left slit into the right one.
func TestASlottedBandIsHooked(t *testing.T) {
	k, _ := repertoire.Lookup("slotted-band")
	steps := orderOf(t, solved(t, k, "unit=in&width=3.5&height=5&thickness=0.09&caliper=0.012"))
	do := Each(steps, func(s WorkStep) string { return s.Do })
	assert.Equal(t, []string{"cut", "score", "slit", "fold", "put in", "lock"}, do)
	last := steps[len(steps)-1]
	assert.Equal(t, []WorkLock{{"left slit", "right slit"}}, last.Locks)
	assert.Equal(t, 2, last.Alike)
	in := steps[slices.Index(do, "put in")]
	require.Len(t, in.Moves, 1)
	assert.Equal(t, "contents", in.Moves[0].What)
}
