package fold

import (
	"math"

	"creasefit/internal/pattern"
)

// chordError is the greatest distance in millimetres between an arc and the
// chords that stand for it: a quarter of a micrometre.
const chordError = 0.25e-3

// mostChords bounds the work that one arc can ask for.
const mostChords = 2048

// spot is a place on the flat blank, in millimetres.
type spot struct{ x, y float64 }

func place(p pattern.Point) spot { return spot{p.X.Millimetres(), p.Y.Millimetres()} }

func (a spot) Plus(b spot) spot     { return spot{a.x + b.x, a.y + b.y} }
func (a spot) Minus(b spot) spot    { return spot{a.x - b.x, a.y - b.y} }
func (a spot) Times(f float64) spot { return spot{a.x * f, a.y * f} }
func (a spot) Dot(b spot) float64   { return a.x*b.x + a.y*b.y }
func (a spot) Cross(b spot) float64 { return a.x*b.y - a.y*b.x }
func (a spot) Length() float64      { return math.Sqrt(a.Dot(a)) }

// trace appends the outline as spots, its arcs as chords, and returns the
// grown slab.
func trace(slab []spot, outline []pattern.Vertex) []spot {
	for i, v := range outline {
		from := place(v.Point)
		slab = append(slab, from)
		if math.Abs(v.Bulge) > 1e-12 {
			to := place(outline[(i+1)%len(outline)].Point)
			slab = arc(slab, from, to, v.Bulge)
		}
	}
	return slab
}

// arc appends the spots strictly between the ends of an arc.
func arc(slab []spot, from, to spot, bulge float64) []spot {
	chord := to.Minus(from)
	left := spot{-chord.y, chord.x}
	centre := from.Plus(chord.Times(0.5)).Plus(left.Times((1 - bulge*bulge) / (4 * bulge)))
	spoke := from.Minus(centre)
	whole := 4 * math.Atan(bulge)
	n := chords(spoke.Length(), math.Abs(whole))
	for i := 1; i < n; i++ {
		s, c := math.Sincos(whole * float64(i) / float64(n))
		slab = append(slab, centre.Plus(spot{c*spoke.x - s*spoke.y, s*spoke.x + c*spoke.y}))
	}
	return slab
}

// chords returns how many chords keep an arc within chordError.
func chords(radius, angle float64) int {
	if radius <= chordError {
		return 1
	}
	n := math.Ceil(angle / (2 * math.Acos(1-chordError/radius)))
	return int(min(n, mostChords))
}

// area returns the signed area within a ring, positive when it runs
// counterclockwise.
func area(ring []spot) float64 {
	if len(ring) == 0 {
		return 0
	}
	sum, origin := 0.0, ring[0]
	for i := 1; i+1 < len(ring); i++ {
		sum += ring[i].Minus(origin).Cross(ring[i+1].Minus(origin))
	}
	return sum / 2
}

// clip appends the part of the ring on the side of the line through a that n
// points away from (Sutherland and Hodgman, 1974, for one line).
func clip(slab, ring []spot, a, n spot) []spot {
	for i, p := range ring {
		q := next(ring, i)
		dp, dq := p.Minus(a).Dot(n), q.Minus(a).Dot(n)
		if dp <= 0 {
			slab = append(slab, p)
		}
		if (dp < 0 && dq > 0) || (dp > 0 && dq < 0) {
			slab = append(slab, p.Plus(q.Minus(p).Times(dp/(dp-dq))))
		}
	}
	return slab
}

// next is the spot of a ring after one of them; a division would take longer than
// what is done with most.
func next(ring []spot, i int) spot {
	if i++; i == len(ring) {
		i = 0
	}
	return ring[i]
}

// within reports whether p lies inside the ring, by the even-odd rule.
func within(p spot, ring []spot) bool {
	in := false
	for i, a := range ring {
		b := next(ring, i)
		if (a.y > p.y) != (b.y > p.y) && p.x < a.x+(p.y-a.y)*(b.x-a.x)/(b.y-a.y) {
			in = !in
		}
	}
	return in
}

// off returns the distance of p from the line of the ring.
func off(p spot, ring []spot) float64 {
	least := math.Inf(1)
	for i, a := range ring {
		e := next(ring, i).Minus(a)
		along := p.Minus(a).Dot(e) / max(e.Dot(e), math.SmallestNonzeroFloat64)
		least = min(least, p.Minus(a.Plus(e.Times(min(1, max(0, along))))).Length())
	}
	return least
}
