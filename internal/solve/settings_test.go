package solve_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/settings"
	"creasefit/internal/solve"
)

// A box with a lid round a simple thing, 3 x 4 x 1 in: the workshop rule of one
// stop for all walls of both pieces (common practice) comes out of it.
func TestOneStopScoresTrayAndLid(t *testing.T) {
	r := request(t, "lidded-box", "3 in", "1 in", "0.012 in", 1)
	r.Height = measure.MustParse("4 in")
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	list := s.Settings()
	walls := list[len(list)-1] // serves most
	assert.Equal(t, settings.Score, walls.Tool)
	assert.Equal(t, "1 1/8 in", s.Step.Format(walls.At))
	assert.Zero(t, walls.Papers)
	for piece := range 2 {
		var from []settings.Edge
		for _, u := range walls.Serves {
			if u.Piece == piece {
				from = append(from, u.Edge)
			}
		}
		assert.ElementsMatch(t, []settings.Edge{settings.Left, settings.Right, settings.Bottom, settings.Top}, from)
	}
	assert.Len(t, walls.Serves, 8)
}

// Every stop of every kind lies on its ruler but for whole papers, every score
// along a side is served exactly once, and from the edge that the chance counts on.
func TestSettingsAreComplete(t *testing.T) {
	solved := 0
	for _, k := range repertoire.Kinds() {
		name := k.Name
		s, err := solve.Solve(context.Background(), thick(t, name))
		if err != nil {
			continue // not round things as thick as these
		}
		solved++
		served := map[[2]int]int{}
		for _, set := range s.Settings() {
			for _, u := range set.Serves {
				for _, c := range u.Creases {
					served[[2]int{u.Piece, c}]++
				}
				p := &s.Pattern.Pieces[u.Piece]
				if u.Do == settings.Line {
					length := p.Width
					if u.Edge >= settings.Bottom {
						length = p.Height
					}
					at := set.At.Add(s.Pattern.Caliper.Times(int64(set.Papers)))
					assert.False(t, s.Sure.Datum == settings.Nearer && length.Sub(at).Less(at), "%s: %v from the %v", name, at, u.Edge)
				}
			}
		}
		for i := range s.Pattern.Pieces {
			for j := range s.Pattern.Pieces[i].Creases {
				if c := &s.Pattern.Pieces[i].Creases[j]; (c.A.X == c.B.X || c.A.Y == c.B.Y) && c.Bulge == 0 {
					assert.Equal(t, 1, served[[2]int{i, j}], "%s, %s", name, c.Name)
				}
			}
		}
	}
	assert.Greater(t, solved, 8)
}
