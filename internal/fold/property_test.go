package fold

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// randomStrip draws a strip of 2 to 7 panels with any turns between them.
func randomStrip(t *rapid.T) *pattern.Pattern {
	n := rapid.IntRange(2, 7).Draw(t, "panels")
	names, sizes, scores := make([]string, n), make([]float64, n), make([]score, n-1)
	for i := range sizes {
		names[i] = string(rune('a' + i))
		sizes[i] = float64(rapid.IntRange(20_000, 90_000).Draw(t, "size")) / 1000
	}
	for i := range scores {
		scores[i].fold = rapid.SampledFrom([]pattern.Fold{pattern.Valley, pattern.Mountain}).Draw(t, "fold")
		scores[i].angle = rapid.SampledFrom([]float64{30, 45, 90, 121.5, 180, 180}).Draw(t, "angle")
		scores[i].round = float64(rapid.IntRange(0, 3000).Draw(t, "round")) / 1000
	}
	root := rapid.IntRange(0, n-1).Draw(t, "root")
	p := strip(root, 40, names, sizes, scores...)
	return &pattern.Pattern{Caliper: mm(0.3), Pieces: []pattern.Piece{p}, Cavity: cavity(root, 1, 1, 0)}
}

// TestFoldingKeepsShapes compares every folded plate with its flat self.
func TestFoldingKeepsShapes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := randomStrip(t)
		closed := rapid.Float64Range(0, 1).Draw(t, "closed")
		flat, folded := Fold(p, 0), Fold(p, closed)
		require.Len(t, folded.Plates, len(flat.Plates))
		for i, a := range flat.Plates {
			b := folded.Plates[i]
			assert.InDelta(t, 1, b.Inside.Length(), 1e-12)
			for j := range a.Outline {
				assert.InDelta(t, 0, b.Outline[j].Minus(b.Outline[0]).Dot(b.Inside), 1e-9)
				for k := range j {
					assert.InDelta(t, a.Outline[j].Minus(a.Outline[k]).Length(), b.Outline[j].Minus(b.Outline[k]).Length(), 1e-9)
				}
			}
		}
	})
}

// TestFlatModelIsTheBlank adds up the plates of an unfolded strip: they lie in
// the blank's plane, inside up, and cover it once.
func TestFlatModelIsTheBlank(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := randomStrip(t)
		covered := 0.0
		for _, plate := range Fold(p, 0).Plates {
			assert.Equal(t, Vec{0, 0, 1}, plate.Inside)
			var ring []spot
			for _, v := range plate.Outline {
				assert.InDelta(t, 0, v[2], 1e-12)
				ring = append(ring, spot{v[0], v[1]})
			}
			covered += area(ring)
		}
		assert.InDelta(t, p.Pieces[0].Width.Millimetres()*40, covered, 1e-8)
	})
}

// TestRootDoesNotMatter measures the same wrap from every root.
func TestRootDoesNotMatter(t *testing.T) {
	w := rightWrap()
	want := Prove(w.pattern(), measure.Length{})
	for root := range 5 {
		p := w.pattern()
		creases := strip(root, 40, make([]string, 5), []float64{w.front, w.side1, w.back, w.side2, w.lap},
			square, square, square, square).Creases
		p.Pieces[0].Root, p.Pieces[0].Creases = root, creases
		assert.Equal(t, want, Prove(p, measure.Length{}), "root %d", root)
	}
}

// TestTurnedBlank measures a wrap and an envelope that lie on a larger blank
// turned by any angle. Their corners are rounded to the nanometre there, which
// moves what is measured by a few nanometres.
func TestTurnedBlank(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		make := rapid.SampledFrom([]func() *pattern.Pattern{
			func() *pattern.Pattern { return rightWrap().pattern() },
			func() *pattern.Pattern { return rightEnvelope().pattern() },
			func() *pattern.Pattern { return rightTray().pattern() },
			func() *pattern.Pattern { return notched(rightWrap()).pattern },
		}).Draw(t, "pattern")
		degrees := float64(rapid.IntRange(-180, 180).Draw(t, "degrees"))
		want, got := Prove(make(), mm(0.0001)), Prove(turned(make(), degrees), mm(0.0001))
		assert.Empty(t, got.Faults)
		for i := range want.Clearances {
			assert.InDelta(t, want.Clearances[i].Clearance.Nanometres(), got.Clearances[i].Clearance.Nanometres(), 10)
		}
	})
}

// turned turns everything on the blank about the origin.
func turned(p *pattern.Pattern, degrees float64) *pattern.Pattern {
	s, c := math.Sincos(degrees * math.Pi / 180)
	move := func(q *pattern.Point) {
		x, y := q.X.Millimetres(), q.Y.Millimetres()
		*q = pt(c*x-s*y, s*x+c*y)
	}
	outline := func(vs []pattern.Vertex) {
		for i := range vs {
			move(&vs[i].Point)
		}
	}
	piece := &p.Pieces[0]
	for i := range piece.Panels {
		outline(piece.Panels[i].Outline)
		outline(piece.Panels[i].Hole)
	}
	for i := range piece.Creases {
		move(&piece.Creases[i].A)
		move(&piece.Creases[i].B)
	}
	for i := range piece.Glues {
		outline(piece.Glues[i].Area)
	}
	for i := range piece.Seams {
		for _, q := range []*pattern.Point{&piece.Seams[i].A1, &piece.Seams[i].A2, &piece.Seams[i].B1, &piece.Seams[i].B2} {
			move(q)
		}
	}
	p.Cavity.Turned = degrees
	return p
}

// TestArcs keeps chords within a quarter of a micrometre of their circle.
func TestArcs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bulge := rapid.Float64Range(-2, 2).Draw(t, "bulge")
		radiusOf := 30 * (1 + bulge*bulge) / (4 * math.Abs(bulge))
		if math.Abs(bulge) < 1e-3 || radiusOf > 1e4 {
			t.Skip("nearly straight")
		}
		ring := trace(nil, []pattern.Vertex{{Point: pt(0, 0), Bulge: bulge}, {Point: pt(30, 0)}})
		centre := spot{15, 15 * (1 - bulge*bulge) / (2 * bulge)}
		for i, p := range ring {
			assert.InDelta(t, radiusOf, p.Minus(centre).Length(), 1e-8)
			if i > 0 {
				mid := p.Plus(ring[i-1]).Times(0.5)
				assert.InDelta(t, radiusOf, mid.Minus(centre).Length(), 1.001*chordError)
			}
		}
		angle := 4 * math.Atan(bulge)
		segment := radiusOf * radiusOf * (angle - math.Sin(angle)) / 2
		assert.InDelta(t, segment, area(ring), math.Abs(angle)*radiusOf*chordError)
	})
}
