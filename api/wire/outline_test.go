package wire

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/pattern"
)

// TestPartialScoresLieOnTheirLine: each begins and ends on the blank, on the line of the score
// that it is a part of; only
// mats and what is glued under a prism's flaps, which lie flat on another piece, say what shows
// beside them.
func TestPartialScoresLieOnTheirLine(t *testing.T) {
	partial := 0
	everySolution(t, func(t *testing.T, s *told) {
		for i, p := range s.answer.Pieces {
			for _, part := range p.Partials {
				partial++
				for _, c := range []Corner{part.Begins, part.Ends} {
					assert.Zero(t, c.Ring, "no edge")
					assert.True(t, c.X.MM >= 0 && c.X.MM <= p.Blank.Width.MM && c.Y.MM >= 0 && c.Y.MM <= p.Blank.Height.MM, "%s of %s: %+v", part.Name, p.Name, c)
				}
				assert.True(t, isPanel(&s.Pattern.Pieces[i], part.Panel), part.Panel)
			}
			laid := len(p.Scores) == 0 && (s.Request.Kind.Name == "mat-stack" && i > 0 || s.Request.Kind.Name == "prism-box")
			assert.Equal(t, laid, p.Reveal != nil, p.Name)
		}
	})
	assert.Positive(t, partial)
}

// isPanel reports whether a piece has a panel of that name.
func isPanel(p *pattern.Piece, name string) bool {
	return slices.ContainsFunc(p.Panels, func(o pattern.Panel) bool { return o.Name == name })
}

// TestOutlinesAreOnTheirBlank: rings are counted from nothing without a gap, and what is
// folded comes to all four edges of its blank; a polygon lies in the middle of it.
func TestOutlinesAreOnTheirBlank(t *testing.T) {
	everySolution(t, func(t *testing.T, s *told) {
		for _, p := range s.answer.Pieces {
			require.NotEmpty(t, p.Outline)
			ring, low, high := 0, [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{}
			for _, c := range p.Outline {
				assert.Contains(t, []int{ring, ring + 1}, c.Ring)
				ring = c.Ring
				for axis, at := range [2]float64{c.X.MM, c.Y.MM} {
					low[axis], high[axis] = min(low[axis], at), max(high[axis], at)
				}
				assert.Equal(t, c.Where != "", strings.HasPrefix(c.Where, "where ") && strings.HasSuffix(c.Where, " cross"))
			}
			if slices.ContainsFunc(p.Outline, func(c Corner) bool { return c.Bulge != 0 }) {
				continue // an arc comes to the edge between its corners
			}
			assert.InDelta(t, p.Blank.Width.MM, low[0]+high[0], 1e-6, "%s lies in the middle of its blank", p.Name)
			assert.InDelta(t, p.Blank.Height.MM, low[1]+high[1], 1e-6, p.Name)
			if len(p.Scores) > 0 {
				assert.Equal(t, [2]float64{}, low, p.Name)
			}
		}
	})
}

// TestWhatASolutionSays: fits, finer steps and the outside are those that were worked out.
func TestWhatASolutionSays(t *testing.T) {
	everySolution(t, func(t *testing.T, s *told) {
		require.Len(t, s.answer.Fit, len(s.Fits))
		for i, f := range s.answer.Fit {
			made := &s.Fits[i]
			assert.Equal(t, []string{made.Axis.String(), made.Between, made.Verdict}, []string{f.Axis, f.Between, f.Verdict})
			assert.Equal(t, []float64{on(made.Window.Min), on(made.Window.Max)}, []float64{f.Window[0].MM, f.Window[1].MM})
			assert.Equal(t, []float64{on(made.Nominal), on(made.WorstCase.Min), on(made.RSS.Max)}, []float64{f.Nominal.MM, f.WorstCase[0].MM, f.RSS[1].MM})
			assert.Equal(t, math.Round(made.Chance*1e4)/1e4, f.Chance)
			assert.True(t, f.Window[0].MM <= f.Nominal.MM && f.Nominal.MM <= f.Window[1].MM, "%s: the clearance lies in its window", f.Axis)
		}
		for i, a := range s.answer.Alternatives {
			made := &s.Alternatives[i]
			assert.Equal(t, s.answer.Links.Self+"&step="+made.Step.FormatURL(made.Step.Size()), a.Link)
			assert.True(t, made.Step.Size().Less(s.Step.Size()), "a finer one")
			assert.Len(t, a.Fit, len(made.Fits))
			assert.Zero(t, a.Chance, "no chance was wanted")
		}
		o := s.answer.Outside
		assert.Equal(t, []float64{on(s.Outside.Width), on(s.Outside.Height), on(s.Outside.Thickness)}, []float64{o.Width.MM, o.Height.MM, o.Thickness.MM})
		assert.Equal(t, math.Round(100*max(0, s.Outside.Mass))/100, o.Mass)
		assert.Equal(t, []any{true, true}, []any{s.answer.Proof.Closes, s.answer.Proof.Holds})
		assert.LessOrEqual(t, s.answer.Proof.Gap, s.answer.Proof.Tolerance)
		assert.Nil(t, s.answer.Ornament)
		assert.Nil(t, s.answer.Order, "it is given to those who name it")
	})
}
