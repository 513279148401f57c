package glb_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw/drawtest"
	"creasefit/internal/fold"
)

// length is how long an animation takes.
func (f *file) length(animation int) (long float64) {
	for _, s := range f.Animations[animation].Samplers {
		times := f.floats(s.Input)
		long = max(long, times[len(times)-1][0])
	}
	return long
}

// places are the corners of all bodies that are there.
func places(bodies []body) (all []drawtest.Vec) {
	for i := range bodies {
		for _, t := range bodies[i].triangles {
			if bodies[i].there {
				all = append(all, t...)
			}
		}
	}
	return all
}

func assertSame(t *testing.T, want, got []drawtest.Vec, by float64, name string, args ...any) {
	t.Helper()
	require.Len(t, got, len(want), append([]any{name}, args...)...)
	worst := 0.0
	for i := range want {
		for k := range 3 {
			worst = max(worst, math.Abs(want[i][k]-got[i][k]))
		}
	}
	assert.LessOrEqual(t, worst, by, append([]any{name}, args...)...)
}

// Each kind has an animation of the whole work and one a step of it that moves
// something; played alone, a step begins where the one before it ended, and the last
// one ends where the model stands at rest.
func TestStepsFollowOneAnother(t *testing.T) {
	for _, s := range drawtest.Every() {
		order := s.Order()
		moving := 0
		for i := range order.Steps {
			if len(order.Steps[i].Turns)+len(order.Steps[i].Travels) > 0 {
				moving++
			}
		}
		f := read(t, worked(t, &s, 1))
		if moving == 0 {
			assert.Empty(t, f.Animations, s.Name)
			continue
		}
		stood := len(f.Animations) - 1 - moving
		require.Contains(t, []int{0, 1}, stood, "%s: one more stands it up", s.Name)
		last := len(f.Animations) - 1
		assertSame(t, places(f.rest()), places(f.played(last, f.length(last))), 1e-3, "%s ends at rest", s.Name)
		assertSame(t, places(f.rest()), places(f.played(0, f.length(0))), 1e-3, "%s as a whole ends at rest", s.Name)
		begin := 0.0
		for k := 1; k <= last; k++ {
			for _, part := range []float64{0.2, 0.5, 1} {
				at := part * 1.6
				assertSame(t, places(f.played(0, begin+at)), places(f.played(k, at)), 2e-3, "%s: %s alone and in the whole, at %v", s.Name, f.Animations[k].Name, at)
			}
			begin += 2.1
		}
	}
}

// Closed, the paper of the model is as large as the fold proof says.
func TestClosedSizeIsThatOfTheProof(t *testing.T) {
	for _, s := range drawtest.Every() {
		extent := fold.Extent(&s.Solution.Pattern)
		f := read(t, worked(t, &s, 1))
		f.Nodes[1].Rotation = nil
		low, high := drawtest.Vec{1e9, 1e9, 1e9}, drawtest.Vec{-1e9, -1e9, -1e9}
		for _, b := range f.rest() {
			if b.name == "contents" {
				continue
			}
			l, h := b.bounds()
			for k := range l {
				low[k], high[k] = min(low[k], l[k]), max(high[k], h[k])
			}
		}
		for k := range 3 {
			if s.Solution.Pattern.Cavity.Turned == 0 {
				assert.InDelta(t, extent[k].Millimetres(), high[k]-low[k], 0.05, "%s %d", s.Name, k)
			}
		}
		foot := math.Inf(1)
		for _, v := range places(read(t, worked(t, &s, 1)).rest()) {
			foot = min(foot, v[2])
		}
		assert.InDelta(t, 0, foot, 0.05, "%s stands on the table", s.Name)
	}
}

// In no state that is played does a plate pass through another one, or through the
// contents, further than the stock gives way and layers press together.
func TestNoPlatePassesAnother(t *testing.T) {
	looks := 12
	if testing.Short() {
		looks = 4
	}
	for _, s := range drawtest.Every() {
		order := s.Order()
		f := read(t, worked(t, &s, 1))
		clip := 0
		for i := range order.Steps {
			step := &order.Steps[i]
			if len(step.Turns)+len(step.Travels) == 0 {
				continue
			}
			clip++
			give := s.Solution.Proof.Tolerance.Millimetres() + step.Flex + 2*s.Solution.Pattern.Caliper.Millimetres() + 1
			for k := 0; k <= looks; k++ {
				bodies := f.played(clip, float64(k)/float64(looks)*f.length(clip))
				if a, b, deep := passing(bodies, give); deep > give {
					t.Errorf("%s: in %q, at %d/%d, %s passes %s by %.2f mm, %.2f are allowed", s.Name, f.Animations[clip].Name, k, looks, a, b, deep, give)
				}
			}
		}
	}
}

// passing returns the two bodies of which one pierces the other deepest.
func passing(bodies []body, give float64) (a, b string, deepest float64) {
	for i := range bodies {
		for j := range bodies {
			if i == j || !bodies[i].there || !bodies[j].there || hangs(&bodies[i], &bodies[j]) || hangs(&bodies[j], &bodies[i]) {
				continue
			}
			if d := bodies[i].pierces(&bodies[j], give); d > deepest {
				a, b, deepest = bodies[i].name, bodies[j].name, d
			}
		}
	}
	return a, b, deepest
}

// hangs reports whether a body hangs on another one by a fold.
func hangs(b, on *body) bool { return b.parents[len(b.parents)-1] == on.node }

// pierces returns how far an edge of one body reaches through a face of another
// one: the least of what lies on either side, and of the way to the face's rim.
func (b *body) pierces(of *body, give float64) (deepest float64) {
	faces := of.inside
	if faces == nil {
		faces = of.triangles
	}
	if !b.near(of) {
		return 0
	}
	for _, face := range faces {
		n := cross(less(face[1], face[0]), less(face[2], face[0]))
		long := math.Sqrt(times(n, n))
		if long < 1e-9 {
			continue
		}
		for k := range n {
			n[k] /= long
		}
		for _, edge := range b.lines {
			from, to := times(less(edge[0], face[0]), n), times(less(edge[1], face[0]), n)
			deep := min(math.Abs(from), math.Abs(to))
			if from*to >= 0 || deep <= give || deep <= deepest {
				continue
			}
			at := edge[0]
			for k := range at {
				at[k] += (edge[1][k] - edge[0][k]) * from / (from - to)
			}
			if holds(face, n, at) {
				deepest = max(deepest, min(deep, of.rim(at)))
			}
		}
	}
	return deepest
}

// near reports whether the boxes round two bodies meet.
func (b *body) near(of *body) bool {
	low, high := b.bounds()
	l, h := of.bounds()
	for k := range low {
		if high[k] < l[k] || h[k] < low[k] {
			return false
		}
	}
	return true
}

// rim is how far a place is from the nearest edge of a body.
func (b *body) rim(at drawtest.Vec) float64 {
	least := math.Inf(1)
	for _, l := range b.lines {
		d := less(l[1], l[0])
		part := max(0, min(1, times(less(at, l[0]), d)/max(times(d, d), 1e-12)))
		for k := range d {
			d[k] = at[k] - l[0][k] - part*d[k]
		}
		least = min(least, math.Sqrt(times(d, d)))
	}
	return least
}

func holds(face []drawtest.Vec, n, at drawtest.Vec) bool {
	return !slices.ContainsFunc([]int{0, 1, 2}, func(k int) bool {
		return times(cross(less(face[(k+1)%3], face[k]), less(at, face[k])), n) < 0
	})
}

func less(a, b drawtest.Vec) drawtest.Vec { return drawtest.Vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func times(a, b drawtest.Vec) float64     { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
