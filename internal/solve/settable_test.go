package solve_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// TestEveryCornerIsSetByHand solves random requests of every kind: each corner of
// each outline and both ends of each partial score lie on a mark of the ruler and a
// few whole papers, or where two slanted scores cross, and the outline encloses
// the paper of the panels.
func TestEveryCornerIsSetByHand(t *testing.T) {
	want := 2000
	if testing.Short() {
		want = 100
	}
	for _, k := range repertoire.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			t.Parallel()
			r := wide{rand.New(rand.NewPCG(13, uint64(len(k.Name))))}
			for solved := 0; solved < want; {
				s, err := solve.Solve(context.Background(), r.request(k))
				if err != nil {
					continue
				}
				solved++
				for i := range s.Pattern.Pieces {
					checkSettable(t, s, i)
				}
			}
		})
	}
}

// checkSettable checks what hands set of one piece.
func checkSettable(t *testing.T, s *solve.Solution, piece int) {
	p := &s.Pattern.Pieces[piece]
	side, regular := p.Regular()
	round := s.Step.Nearest(side).Sub(side).Abs()
	check := func(c solve.Corner) {
		x := c.X.Mark.Add(s.Pattern.Caliper.Times(int64(c.X.Papers))) == c.Point.X
		y := c.Y.Mark.Add(s.Pattern.Caliper.Times(int64(c.Y.Papers))) == c.Point.Y
		on := c.X.Mark.IsMultipleOf(s.Request.Ruler) && c.Y.Mark.IsMultipleOf(s.Request.Ruler)
		require.True(t, on && x && y || c.Cross[0] != "" || regular && round.Nanometres() < 9, "%s of %s at %s: %+v", s.Request.Kind.Name, p.Name, s.Step, c)
	}
	area := 0.0
	for _, ring := range p.Contours() {
		require.Greater(t, len(ring), 1)
		for i, c := range ring {
			check(s.Corner(p, c))
			n := ring[(i+1)%len(ring)]
			x0, y0 := c.Point.X.Millimetres(), c.Point.Y.Millimetres()
			x1, y1 := n.Point.X.Millimetres(), n.Point.Y.Millimetres()
			area += (x0*y1 - y0*x1) / 2
			if c.Bulge != 0 { // the segment between arc and chord
				turn, chord := 4*math.Atan(c.Bulge), math.Hypot(x1-x0, y1-y0)
				radius := chord / (2 * math.Sin(turn/2))
				area += radius * radius * (turn - math.Sin(turn)) / 2
			}
		}
	}
	require.InDelta(t, p.Area(), area, 1e-3, "%s of %+v", p.Name, s.Request)
	for partial := range s.Partials(p) {
		check(partial.Begin)
		check(partial.End)
	}
}
