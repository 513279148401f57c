package solve_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

func TestRandomPillowPacksFoldUp(t *testing.T) {
	checkRandom(t, "pillow-pack", measure.Millimetres(60))
}

func TestEveryCaliperOfAPillowPackCounts(t *testing.T) { checkMutants(t, soap(t)) }

// soap is a request for a bar of soap.
func soap(t testing.TB) *solve.Request {
	r := thick(t, "pillow-pack")
	r.Thickness = measure.MustParse("1/2 in")
	return r
}

// edge is how long an edge of a folded plate is.
func edge(p *fold.Plate, i int) float64 {
	var d [3]float64
	for k := range d {
		d[k] = p.Outline[(i+1)%len(p.Outline)][k] - p.Outline[i][k]
	}
	return math.Sqrt(d[0]*d[0] + d[1]*d[1] + d[2]*d[2])
}

// Both sides of a curved score are as long as the arc on the blank, and the
// folded pack is as high in the middle as was asked.
func TestPillowPackKeepsItsLengths(t *testing.T) {
	for _, middle := range []string{"3/4 in", "1 in", "1 1/4 in"} {
		r := soap(t)
		r.Options["middle_height"] = enclosure.Value{Length: measure.MustParse(middle)}
		s, err := solve.Solve(context.Background(), r)
		require.NoError(t, err)
		high, front := measure.MustParse(middle).Millimetres(), s.Ideal.Pieces[0].Strips[0].Cells[1].Size.Millimetres()
		radius := (front*front/4 + high*high/4) / high
		arc := 2 * radius * math.Asin(front/2/radius)
		face, flap := 0.0, 0.0
		model := fold.Fold(&s.Ideal, 1)
		for i := range model.Plates {
			p := &model.Plates[i]
			switch {
			case p.Name == "front":
				face += edge(p, 0) // the lower one
			case p.Name == "lower flap of the front":
				flap += edge(p, len(p.Outline)-2) // the upper one
			}
		}
		assert.InEpsilon(t, arc, face, 0.0025, "the chords of the arc")
		assert.InDelta(t, face, flap, 1e-9, "both sides of the score")
		proof := fold.Prove(&s.Ideal, measure.Length{})
		assert.InDelta(t, high, proof.Extent[2].Sub(r.Caliper).Millimetres(), high/100)
		assert.InDelta(t, high, proof.Extent[2].Sub(r.Caliper).Millimetres(), 1e-5)
	}
}

// A pattern whose score does not belong to its height does not close: the
// facets of the flaps come apart.
func TestPillowPackNeedsItsCurve(t *testing.T) {
	s, err := solve.Solve(context.Background(), soap(t))
	require.NoError(t, err)
	p := s.Ideal
	p.Pieces[0].Creases[0].Angle -= 1
	proof := fold.Prove(&p, measure.Length{})
	assert.False(t, proof.Closes)
	s, err = solve.Solve(context.Background(), soap(t))
	require.NoError(t, err)
	p = s.Ideal
	for _, v := range []int{0, 2} {
		p.Pieces[0].Panels[0].Outline[v].Bulge *= 0.9
	}
	for i := range p.Pieces[0].Creases {
		if c := &p.Pieces[0].Creases[i]; c.From == 0 {
			c.Bulge *= 0.9
		}
	}
	proof = fold.Prove(&p, measure.Length{})
	require.False(t, proof.Closes)
	assert.True(t, strings.Contains(proof.Faults[0].String(), "seam") || strings.Contains(proof.Faults[0].String(), "glue"), "%v", proof.Faults)
}

// By hand: 1.25 x 1/2 + 2 x 0.012 = 0.649 in, and up to the height whose scores
// begin at 45 degrees, where middle height / face = tan 22.5 degrees: 1.6387 in by a
// numerical solution apart from this program.
func TestPillowPackRefusals(t *testing.T) {
	for value, want := range map[string]string{"1/2 in": "from 3/4 in to 1 5/8 in", "4 in": "from 3/4 in to 1 5/8 in"} {
		r := soap(t)
		r.Options["middle_height"] = enclosure.Value{Length: measure.MustParse(value)}
		_, err := solve.Solve(context.Background(), r)
		var faults fault.Faults
		require.True(t, errors.As(err, &faults), "%v", err)
		assert.Equal(t, fault.Impossible, faults[0].Code)
		assert.Equal(t, "middle_height: "+want, faults[0].Field+": "+faults[0].Expected)
	}
	r := soap(t)
	r.Options["lap"] = enclosure.Value{Length: measure.MustParse("2 in")}
	_, err := solve.Solve(context.Background(), r)
	assert.ErrorContains(t, err, "lap")
}

func BenchmarkSolvePillowPack(b *testing.B) {
	r := soap(b)
	benchmarkSolve(b, r)
}
