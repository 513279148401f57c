package solve_test

import (
	"context"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw/drawtest"
	"creasefit/internal/fault"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// worked is a row of a table of hand-worked examples.
type worked struct {
	Name, Source string
	Request      map[string]string
	Step         string
	Pieces       []struct {
		Name   string
		Blank  []string
		Panels map[string]string
		Scores []string
	}
	Fit map[string]float64 `json:"fit_mm"`
}

// workedExamples reads the examples of a kind.
func workedExamples(t *testing.T, kind string) []worked {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "kinds", kind+".json"))
	require.NoError(t, err)
	var rows []worked
	require.NoError(t, json.Unmarshal(text, &rows))
	require.NotEmpty(t, rows)
	return rows
}

// checkWorked solves the examples of a kind and compares every size that they
// name.
func checkWorked(t *testing.T, kind string) {
	for _, row := range workedExamples(t, kind) {
		t.Run(row.Name, func(t *testing.T) {
			s, err := solve.Solve(context.Background(), drawtest.Asked(t, kind, row.Request))
			require.NoError(t, err)
			assert.Equal(t, row.Step, s.Step.String())
			require.Len(t, s.Pattern.Pieces, len(row.Pieces))
			for i, want := range row.Pieces {
				p := &s.Pattern.Pieces[i]
				assert.Equal(t, want.Name, p.Name)
				assert.Equal(t, want.Blank, []string{s.Step.Format(p.Width), s.Step.Format(p.Height)})
				panels, scores := map[string]string{}, []string(nil)
				for _, strip := range p.Strips {
					for _, c := range strip.Cells {
						panels[c.Name] = s.Step.Format(c.Size)
					}
					at := strip.Positions()
					for j := range strip.Scores {
						scores = append(scores, s.Step.Format(at[j+1]))
					}
				}
				assert.Equal(t, want.Panels, panels)
				assert.Equal(t, want.Scores, scores)
			}
			require.Len(t, s.Fits, len(row.Fit))
			for _, f := range s.Fits {
				name := f.Axis.String()
				if f.Between != "" {
					name += ", " + f.Between
				}
				assert.InDelta(t, row.Fit[name], f.Nominal.Millimetres(), 2e-6, name)
			}
			checkFolded(t, s)
			checkReadOff(t, s)
		})
	}
}

// checkReadOff checks the solution as if somebody had read it off a ruler: it
// must work as it stands.
func checkReadOff(t *testing.T, s *solve.Solution) {
	own := &solve.Measurements{}
	for i := range s.Pattern.Pieces {
		p := &s.Pattern.Pieces[i]
		own.Blanks = append(own.Blanks, [2]measure.Length{p.Width, p.Height})
		for _, strip := range p.Strips {
			at := strip.Positions()
			for j := range strip.Scores {
				if strip.Cells[j].Size.IsZero() {
					return // two scores in one place cannot be told apart on a ruler
				}
				if made := at[j+1].Add(strip.Scores[j].Beside); strip.Across == pattern.Height {
					own.Rises = append(own.Rises, made)
				} else {
					own.Marks = append(own.Marks, made)
				}
			}
		}
	}
	_, err := solve.CheckOwn(context.Background(), s.Request, own)
	var faults fault.Faults
	if errors.As(err, &faults) { // what lies on no edge is taken from the solution
		require.Equal(t, "depths", faults[0].Field)
		own.Depths = s.ReadOff().Depths
	}
	c, err := solve.CheckOwn(context.Background(), s.Request, own)
	require.NoError(t, err)
	assert.True(t, c.Works, "%+v", c)
	for i, f := range c.Fits {
		assert.Equal(t, s.Fits[i].Nominal, f.Nominal)
	}
}

// checkFolded folds the solution and its ideal: the ideal closes to the
// nanometre, and the folded plates leave the clearance claimed.
func checkFolded(t testing.TB, s *solve.Solution) {
	t.Helper()
	exact := fold.Prove(&s.Ideal, measure.Length{})
	require.True(t, exact.Closes && exact.Holds, "ideal: %v", exact.Faults)
	require.LessOrEqual(t, exact.Gap.Nanometres(), int64(1))
	rounded := fold.Prove(&s.Pattern, s.Proof.Tolerance)
	require.True(t, rounded.Closes && rounded.Holds, "rounded: %v", rounded.Faults)
	require.Len(t, rounded.Clearances, len(s.Fits))
	for i, f := range s.Fits {
		require.Equal(t, f.Axis, rounded.Clearances[i].Axis)
		require.Equal(t, f.Between, rounded.Clearances[i].Between)
		off, flex := f.Nominal.Sub(rounded.Clearances[i].Clearance).Abs(), int64(1000)
		if s.Pattern.Cavity.Sides > 0 { // laps are scored at whole papers and give up to three tenths of one
			flex += s.Pattern.Caliper.Nanometres() * 6 / 10
		}
		require.LessOrEqual(t, off.Nanometres(), flex, "%s: claimed %v, folded %v", f.Axis, f.Nominal, rounded.Clearances[i].Clearance)
		middle := exact.Clearances[i].Clearance.Sub(f.Window.Min.Add(f.Window.Max).Over(2)).Abs()
		require.LessOrEqual(t, middle.Nanometres(), int64(1000), "the ideal %s is not in the middle of its window", f.Axis)
	}
}
