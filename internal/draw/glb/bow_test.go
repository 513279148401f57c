package glb_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/assembly"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// A long tuck is drawn bowed as it slides in, as far as its order says, and flat
// before and after; it stays as long as it is, and passes the contents and the dust
// flaps (drawn rigid, it runs 2.9 mm into them). A tuck that need not bow is one plate.
func TestLongTuckBows(t *testing.T) {
	for tuck, bows := range map[string]bool{"15": false, "60": true} {
		solution, err := solve.Solve(context.Background(), drawtest.Asked(t, "tuck-carton",
			map[string]string{"unit": "mm", "width": "93", "height": "157", "thickness": "62.5", "caliper": "0.165", "fit": "snug", "ruler": "0.5 mm", "tuck": tuck}))
		require.NoError(t, err)
		s := drawtest.Sample{Name: "long tuck", Solution: solution}
		order, f := s.Order(), read(t, worked(t, &s, 1))
		if !bows {
			assert.Len(t, bodiesNamed(f.rest(), "top tuck"), 1)
			continue
		}
		assert.Len(t, bodiesNamed(f.rest(), "top tuck"), 8)
		clip, bowed := 0, 0
		for i := range order.Steps {
			step := &order.Steps[i]
			if len(step.Turns)+len(step.Travels) == 0 {
				continue
			}
			clip++
			for k := 0; step.Flex > 0 && k <= 20; k++ {
				a, b, deep := passing(f.played(clip, 1.6*float64(k)/20), 0.05)
				assert.LessOrEqual(t, deep, 1.1, "%s passes %s in step %d", a, b, i)
			}
			for at, part := range map[float64]float64{0: 0, 0.5: 1, 1: 0} {
				for _, name := range []string{"top tuck", "bottom tuck"} {
					strips := bodiesNamed(f.played(clip, at*1.6), name)
					if !strips[0].there {
						continue
					}
					sag, long := rise(strips)
					want := 0.0
					if step.Flex > 0.165 && turns(step.Turns, solution.Pattern.Pieces[0].Panels, name) {
						want, bowed = part*step.Flex, bowed+1
					}
					assert.InDelta(t, want, sag, 0.03*step.Flex+0.01, "%s in step %d at %v", name, i, at)
					assert.InDelta(t, long, 60, 0.1, name)
				}
			}
		}
		assert.Positive(t, bowed)
	}
}

// bodiesNamed are the bodies of a name, in the order of their nodes.
func bodiesNamed(all []body, name string) (named []body) {
	for _, b := range all {
		if b.name == name {
			named = append(named, b)
		}
	}
	return named
}

// rise is how high the parabola is that eight strips follow, and how long they are
// together: a part of nine sixteenths of it lies between the line through the feet of
// the second and the last and the foot of the one in the middle.
func rise(strips []body) (high, long float64) {
	first, last, middle := strips[1].at, strips[7].at, strips[4].at
	along := less(last, first)
	across := cross(along, less(middle, first))
	for k := range 7 {
		d := less(strips[k+1].at, strips[k].at)
		long += math.Sqrt(times(d, d))
	}
	return math.Sqrt(times(across, across)/times(along, along)) * 16 / 9, long * 8 / 7
}

// turns reports whether a panel is turned along a way of its own.
func turns(all []assembly.Turn, panels []pattern.Panel, name string) bool {
	for _, t := range all {
		if t.Path != nil && panels[t.Panel].Name == name {
			return true
		}
	}
	return false
}
