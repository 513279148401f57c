package pattern

import (
	"math"

	"creasefit/internal/measure"
)

// halfChords is how many chords stand for half of a curved crease, beside the
// short level one in its middle.
const halfChords = 8

// level is the part of the chord that the level one in the middle takes.
const level = 1e-3

// ChordEnds are the corners of the chords that stand for an arc.
type ChordEnds [2*halfChords + 2]Point

// Chords returns the corners of the chords that stand for an arc between two
// points beside one another on the blank, both ends included. They lie on the
// arc, symmetrically, evenly along the width but for a level chord in the
// middle, which is a thousandth of the whole long and touches the arc. No chord
// is farther from the arc than 1/800 of its width, as long as the arc
// is at most a quarter of a circle.
func Chords(a, b Point, bulge float64) (points ChordEnds) {
	whole := b.X.Sub(a.X)
	width := math.Abs(whole.Millimetres())
	top := width / 2 * math.Abs(bulge)
	radius := (width*width/4 + top*top) / (2 * top)
	up := bulge < 0 == (whole.Sign() > 0) // it bends to the right of its way
	for k := range halfChords + 1 {
		along, off := whole.Times(int64(k)).Over(2*halfChords), width/2*(1-float64(k)/halfChords)
		rise := top - off*off/(radius+math.Sqrt(max(0, radius*radius-off*off)))
		if k == halfChords {
			along, rise = along.Sub(whole.Over(2/level)), top
		}
		r := measure.Nanometres(int64(math.Round(rise * 1e6)))
		if !up {
			r = r.Neg()
		}
		points[k] = At(a.X.Add(along), a.Y.Add(r))
		points[len(points)-1-k] = At(b.X.Sub(along), a.Y.Add(r))
	}
	return points
}

// Slope returns the sine of the angle that the panels on both sides of a chord of a
// curved crease are inclined by: a curve of their width runs as far towards the
// crease as it rises when they are bent.
func Slope(from, to Point) float64 {
	return max(-1, min(1, to.Y.Sub(from.Y).Millimetres()/to.X.Sub(from.X).Millimetres()))
}

// Middle returns the middle of an arc between two points.
func Middle(a, b Point, bulge float64) Point {
	half := func(l measure.Length) measure.Length {
		return measure.Nanometres(int64(math.Round(float64(l.Nanometres()) * bulge / 2)))
	}
	dx, dy := b.X.Sub(a.X), b.Y.Sub(a.Y)
	return At(a.X.Add(dx.Over(2)).Add(half(dy)), a.Y.Add(dy.Over(2)).Sub(half(dx)))
}
