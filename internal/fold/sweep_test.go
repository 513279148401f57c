package fold

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"creasefit/internal/pattern"
)

// randomDisc draws a regular plate near the origin, and the same a little larger
// all round.
func randomDisc(t *rapid.T, name string) (own, larger part) {
	const half, more = 0.4, 0.1
	n, r := rapid.IntRange(3, 6).Draw(t, name+" corners"), rapid.Float64Range(2, 6).Draw(t, name+" radius")
	pl := randomPlate(t, name, half)
	own, larger = part{normal: pl.move.Z, half: half}, part{normal: pl.move.Z, half: half + more}
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		own.corners = append(own.corners, pl.move.at(spot{r * c, r * s}))
		larger.corners = append(larger.corners, pl.move.at(spot{(r + 2*more) * c, (r + 2*more) * s}))
	}
	return own, larger
}

// moved is a plate in another place.
func (p part) moved(by Vec) part {
	corners := p.corners
	p.corners = nil
	for _, c := range corners {
		p.corners = append(p.corners, c.Plus(by))
	}
	return p
}

// TestSweepEqualsSteps compares a plate on its way with the same plate step by step:
// what it meets at any step is met, and what is met comes near at some step.
func TestSweepEqualsSteps(t *testing.T) {
	const steps = 100
	rapid.Check(t, func(t *rapid.T) {
		a, largerA := randomDisc(t, "a")
		b, largerB := randomDisc(t, "b")
		var way Vec
		for k := range way {
			way[k] = rapid.Float64Range(-8, 8).Draw(t, "way")
		}
		met, near := false, false
		for k := range steps + 1 {
			by := way.Times(float64(k) / steps)
			there, about := a.moved(by), largerA.moved(by)
			met, near = met || meet(&there, &b, nil), near || meet(&about, &largerB, nil)
		}
		swept := meet(&a, &b, &way)
		assert.False(t, met && !swept, "a plate on the way was missed")
		assert.False(t, swept && !near, "a plate beside the way was said to be met")
	})
}

// Plates of one body press into one another by the tolerance of the closures, and
// by half of the caliper at the most; those of separate bodies do not.
func TestPlatesPressByTheTolerance(t *testing.T) {
	const half = 0.4
	flat := []spot{{-50, -50}, {50, -50}, {50, 50}, {-50, 50}}
	for _, c := range []struct {
		tolerance, pressed float64
		bodies             []int
		passes             bool
	}{
		{0.2, 0.19, []int{0, 0}, false}, {0.2, 0.21, []int{0, 0}, true}, {1, 0.39, []int{0, 0}, false}, {1, 0.41, []int{0, 0}, true},
		{0.2, 0.01, []int{0, 1}, true}, {0, -0.01, []int{0, 1}, false},
	} {
		m := model{pattern: &pattern.Pattern{}, half: half, body: c.bodies}
		for k := range 2 {
			pl := plate{piece: k, parent: -1, crease: -1, flat: flat, move: hinge(spot{}, spot{1, 0}, 0)}
			pl.move.Origin[2] = float64(k) * (2*half - c.pressed)
			pl.space = pl.lift(nil, pl.flat)
			pl.bound(half)
			pl.shape()
			m.plates = append(m.plates, pl)
		}
		assert.Equal(t, c.passes, m.passes(0, 1, c.tolerance), "%+v", c)
	}
}

// The edge of a plate presses into the face of another of its body by the tolerance,
// and by the half of it that the face gives, whichever of the two is asked first.
func TestEdgesPressByTheTolerance(t *testing.T) {
	const half, tolerance = 0.4, 0.2
	flat := []spot{{-50, -50}, {50, -50}, {50, 50}, {-50, 50}}
	for pressed, passes := range map[float64]bool{0.29: false, 0.31: true} {
		lying, standing := plate{move: hinge(spot{}, spot{1, 0}, 0)}, plate{piece: 1, move: hinge(spot{}, spot{1, 0}, 90)}
		standing.move.Origin[2] = 50 + half - pressed
		for _, order := range [...][2]plate{{lying, standing}, {standing, lying}} {
			m := model{pattern: &pattern.Pattern{}, half: half, body: []int{0, 0}}
			for _, pl := range order {
				pl.parent, pl.crease, pl.flat = -1, -1, flat
				pl.space = pl.lift(nil, pl.flat)
				pl.bound(half)
				pl.shape()
				m.plates = append(m.plates, pl)
			}
			assert.Equal(t, passes, m.passes(0, 1, tolerance), "%v", pressed)
		}
	}
}

// Glued panels that bend lie from none to one caliper apart, flat ones exactly one:
// what is more or less is how far they are off.
func TestGluedPanelsLieApart(t *testing.T) {
	m := model{half: 0.2, facets: [][]int{{0}, nil}}
	for apart, off := range map[float64][2]float64{0: {0, 0.4}, 0.3: {0, 0.1}, 0.4: {0, 0}, 0.45: {0.05, 0.05}, -0.1: {0.5, 0.5}} {
		assert.InDelta(t, off[0], m.lift(0, apart), 1e-12, "bent, %v", apart)
		assert.InDelta(t, off[1], m.lift(1, apart), 1e-12, "flat, %v", apart)
	}
}
