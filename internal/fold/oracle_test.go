package fold

import (
	"cmp"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"creasefit/internal/pattern"
)

// matrix is a 4 x 4 matrix for points as columns (x, y, z, 1).
type matrix [4][4]float64

func (a matrix) times(b matrix) (c matrix) {
	for i := range 4 {
		for j := range 4 {
			for k := range 4 {
				c[i][j] += a[i][k] * b[k][j]
			}
		}
	}
	return c
}

func (a matrix) point(v Vec) (w Vec) {
	for i := range 3 {
		w[i] = a[i][0]*v[0] + a[i][1]*v[1] + a[i][2]*v[2] + a[i][3]
	}
	return w
}

func shift(v Vec) matrix {
	return matrix{{1, 0, 0, v[0]}, {0, 1, 0, v[1]}, {0, 0, 1, v[2]}, {0, 0, 0, 1}}
}

// about is the turn about the line through a along a unit vector (Rodrigues).
func about(a, u Vec, degrees float64) matrix {
	s, c := math.Sincos(degrees * math.Pi / 180)
	d := 1 - c
	r := matrix{
		{c + u[0]*u[0]*d, u[0]*u[1]*d - u[2]*s, u[0]*u[2]*d + u[1]*s, 0},
		{u[1]*u[0]*d + u[2]*s, c + u[1]*u[1]*d, u[1]*u[2]*d - u[0]*s, 0},
		{u[2]*u[0]*d - u[1]*s, u[2]*u[1]*d + u[0]*s, c + u[2]*u[2]*d, 0},
		{0, 0, 0, 1},
	}
	return shift(a).times(r).times(shift(a.Times(-1)))
}

// slowMatrix folds one panel of a piece by going from it to the root. A crease
// of 180 degrees turns the panel over and lifts it by the spine.
func slowMatrix(p *pattern.Pattern, panel int) matrix {
	piece := &p.Pieces[0]
	if panel == piece.Root {
		return shift(Vec{})
	}
	for i := range piece.Creases {
		c := &piece.Creases[i]
		if c.To != panel {
			continue
		}
		a := Vec{c.A.X.Millimetres(), c.A.Y.Millimetres(), 0}
		b := Vec{c.B.X.Millimetres(), c.B.Y.Millimetres(), 0}
		along := b.Minus(a).unit()
		var middle Vec // of the panel: it must rise in a valley fold
		for _, v := range piece.Panels[panel].Outline {
			middle = middle.Plus(Vec{v.X.Millimetres(), v.Y.Millimetres(), 0}.Times(1 / float64(len(piece.Panels[panel].Outline))))
		}
		angle, lift := c.Angle, 0.0
		if c.Angle > 179.9 {
			lift = c.Round.Millimetres() + p.Caliper.Millimetres()
		}
		if c.Fold == pattern.Mountain {
			angle, lift = -angle, -lift
		}
		if about(a, along, 1).point(middle)[2] < 0 {
			along = along.Times(-1)
		}
		return slowMatrix(p, c.From).times(shift(Vec{0, 0, lift})).times(about(a, along, angle))
	}
	panic("the panel hangs on nothing")
}

// TestFoldEqualsMatrices compares every panel with the slow folding.
func TestFoldEqualsMatrices(t *testing.T) {
	compare := func(t assert.TestingT, p *pattern.Pattern) {
		flat, folded := Fold(p, 0), Fold(p, 1)
		for i, v := range flat.Plates {
			if v.Panel < 0 {
				continue
			}
			slow := slowMatrix(p, v.Panel)
			for k, corner := range v.Outline {
				assert.InDelta(t, 0, slow.point(corner).Minus(folded.Plates[i].Outline[k]).Length(), 1e-9)
			}
		}
	}
	for _, p := range []*pattern.Pattern{rightWrap().pattern(), rightBand().pattern(), rightTray().pattern(),
		rightEnvelope().pattern(), rightDiagonal().pattern(), rightLetter().pattern()} {
		compare(t, p)
	}
	rapid.Check(t, func(t *rapid.T) { compare(t, randomStrip(t)) })
}

// randomPlate draws a plate with 3 to 6 corners, convex or not, in any pose
// near the origin.
func randomPlate(t *rapid.T, name string, half float64) plate {
	n := rapid.IntRange(3, 6).Draw(t, name+" corners")
	var pl plate
	for i := range n {
		r := rapid.Float64Range(2, 6).Draw(t, name+" radius")
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		pl.flat = append(pl.flat, spot{r * c, r * s})
	}
	a, b := rapid.Float64Range(0, 360).Draw(t, name+" a"), rapid.Float64Range(0, 360).Draw(t, name+" b")
	if rapid.Bool().Draw(t, name+" square") {
		a, b = 90*math.Floor(a/90), 90*math.Floor(b/90)
	}
	x, y := hinge(spot{}, spot{1, 0}, a), hinge(spot{}, spot{0, 1}, b)
	pl.move = x.after(&y)
	for k := range pl.move.Origin {
		pl.move.Origin[k] = rapid.Float64Range(-5, 5).Draw(t, name+" place")
	}
	pl.space = pl.lift(nil, pl.flat)
	pl.bound(half)
	pl.shape()
	return pl
}

// contains reports whether a point lies in a plate that is larger by grow all
// round.
func contains(pl *plate, half, grow float64, p Vec) bool {
	home := pl.move.back()
	q := home.turn(p).Plus(home.Origin)
	s := spot{q[0], q[1]}
	if math.Abs(q[2]) > half+grow {
		return false
	}
	if grow < 0 {
		return within(s, pl.flat) && off(s, pl.flat) >= -grow
	}
	return within(s, pl.flat) || off(s, pl.flat) <= grow
}

// grid calls f with points throughout a plate that is larger by one step,
// until it returns true.
func grid(pl *plate, half, step float64, f func(Vec) bool) bool {
	low, high := bounds(pl.flat)
	for x := low.x - step; x <= high.x+step; x += step {
		for y := low.y - step; y <= high.y+step; y += step {
			for z := -half - step; z <= half+step; z += step {
				if f(pl.move.at(spot{x, y}).Plus(pl.move.Z.Times(z))) {
					return true
				}
			}
		}
	}
	return false
}

// TestCrossingEqualsSampling compares the search for crossing plates with
// points sampled throughout them: points well inside both mean a crossing,
// and a crossing means points near both.
func TestCrossingEqualsSampling(t *testing.T) {
	const half, step = 0.4, 0.2
	rapid.Check(t, func(t *rapid.T) {
		a, b := randomPlate(t, "a", half), randomPlate(t, "b", half)
		a.parent, b.parent, a.crease, b.crease, a.piece = -1, -1, -1, -1, 1
		m := model{half: half, body: []int{0, 1}, plates: []plate{a, b}}
		crosses := !apart(&a.box, &b.box) && m.passes(0, 1, 0)
		deep := grid(&a, half, step, func(p Vec) bool {
			return contains(&a, half, -0.05, p) && contains(&b, half, -0.05, p)
		})
		near := grid(&a, half, step, func(p Vec) bool { return contains(&a, half, step, p) && contains(&b, half, step, p) })
		assert.False(t, deep && !crosses, "a crossing was missed")
		assert.False(t, crosses && !near, "plates that are apart were said to cross")
	})
}

// TestShadowEqualsSampling compares what a plate takes up of a beam with
// points sampled throughout it.
func TestShadowEqualsSampling(t *testing.T) {
	const half, step = 0.4, 0.2
	rapid.Check(t, func(t *rapid.T) {
		pl := randomPlate(t, "plate", half)
		axis := rapid.IntRange(0, 2).Draw(t, "axis")
		var box [3]span
		for k := range box {
			low := rapid.Float64Range(-4, 3).Draw(t, "low")
			box[k] = span{low, low + rapid.Float64Range(0, 4).Draw(t, "size")}
		}
		m := model{half: half}
		got, ok := m.shadow(&pl, axis, &box)
		least, most := span{math.Inf(1), math.Inf(-1)}, span{math.Inf(1), math.Inf(-1)}
		grid(&pl, half, step, func(p Vec) bool {
			if contains(&pl, half, -1e-6, p) && inBeam(p, axis, &box, -2*hair) {
				least = span{min(least.low, p[axis]), max(least.high, p[axis])}
			}
			if contains(&pl, half, step, p) && inBeam(p, axis, &box, step) {
				most = span{min(most.low, p[axis]), max(most.high, p[axis])}
			}
			return false
		})
		if least.low <= least.high {
			assert.True(t, ok && got.low <= least.low && got.high >= least.high, "paper was missed: %v, %v", got, least)
		}
		if ok {
			assert.True(t, got.low >= most.low-step && got.high <= most.high+step, "too much was found: %v, %v", got, most)
		}
	})
}

// TestNothingPassedOverCounts traces beams past every edge and along every line, without
// looking first what lies beside the beam: what is found is the same.
func TestNothingPassedOverCounts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		half := rapid.Float64Range(0.1, 3).Draw(t, "half")
		pl := randomPlate(t, "plate", half)
		var beam [3]span
		for k := range beam {
			low := rapid.Float64Range(-4, 3).Draw(t, "low")
			beam[k] = span{low, low + rapid.Float64Range(0, 2).Draw(t, "size")}
		}
		quick := tracer{pl: &pl, half: half, axis: rapid.IntRange(0, 2).Draw(t, "axis"), beam: &beam, found: span{math.Inf(1), math.Inf(-1)}}
		all := quick
		quick.trace()
		all.lines = quick.lines
		n := pl.move.Z
		for i, p := range pl.flat {
			a, b := pl.move.at(p), pl.move.at(pl.flat[(i+1)%len(pl.flat)])
			for _, side := range [...]float64{-half, half} {
				all.edge(a.Plus(n.Times(side)), b.Plus(n.Times(side)))
			}
			all.edge(a.Minus(n.Times(half)), a.Plus(n.Times(half)))
			all.wall(a, b.Minus(a))
		}
		for _, p := range all.lines {
			for _, side := range [...]float64{-half, half} {
				if math.Abs(n[all.axis]) < 1e-12 {
					continue
				}
				p[all.axis] = 0
				p[all.axis] = (pl.move.Origin.Minus(p).Dot(n) + side) / n[all.axis]
				if pl.covers(pl.move.spot(p)) {
					all.mark(p[all.axis])
				}
			}
		}
		assert.InDelta(t, 0, cmp.Compare(all.found.low, all.found.high)-cmp.Compare(quick.found.low, quick.found.high), 0)
		if all.found.low <= all.found.high {
			assert.InDelta(t, all.found.low, quick.found.low, 1e-9)
			assert.InDelta(t, all.found.high, quick.found.high, 1e-9)
		}
	})
}

// inBeam reports whether a point lies in a beam that is wider by grow.
func inBeam(p Vec, axis int, box *[3]span, grow float64) bool {
	for k, s := range box {
		if k != axis && (p[k] < s.low-grow || p[k] > s.high+grow) {
			return false
		}
	}
	return true
}

// TestOnlyOneEdgeParts lays a corner of one plate before an edge of another in
// the same plane: no edge of the first parts them, and no box round them.
func TestOnlyOneEdgeParts(t *testing.T) {
	wall := []spot{{0, 0}, {-9, 9}, {-18, 0}, {-9, -9}, {9, -9}} // its edge from (9, -9) to (0, 0) faces the corner
	for gap, want := range map[float64]bool{0.1: false, -0.1: true} {
		tip := []spot{{4 + gap, -4 + gap}, {14, -3}, {5, 4}}
		a := part{corners: lifted(wall), normal: Vec{0, 0, 1}, half: 0.2}
		b := part{corners: lifted(tip), normal: Vec{0, 0, 1}, half: 0.2}
		assert.Equal(t, want, meet(&a, &b, nil), gap)
		assert.Equal(t, want, meet(&b, &a, nil), gap)
	}
}

// TestOnlyAnEdgeUprightOnAFaceParts lays a thin plate on a slant before the corner of a
// thicker one: its edge, from (0.15, 0, 0) along (0, 1, 1), and the upright edge of the
// corner at the origin are parted by the plane x = 0.1 alone.
func TestOnlyAnEdgeUprightOnAFaceParts(t *testing.T) {
	corner := part{corners: lifted([]spot{{0, 0}, {-9, 9}, {-18, 0}, {-9, -9}}), normal: Vec{0, 0, 1}, half: 0.4}
	for x, want := range map[float64]bool{0.15: false, -0.05: true} {
		slant := part{normal: Vec{1, 1, -1}.unit(), half: 0.05, corners: []Vec{{x, -9, -9}, {x, 9, 9}, {x + 9, 9, 18}, {x + 9, -9, 0}}}
		assert.Equal(t, want, meet(&slant, &corner, nil), "%v", x)
		assert.Equal(t, want, meet(&corner, &slant, nil), "%v", x)
	}
}

func lifted(ring []spot) (corners []Vec) {
	for _, p := range ring {
		corners = append(corners, Vec{p.x, p.y, 0})
	}
	return corners
}
