package enclosure

import (
	"math"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// lens is the cross-section of two bent faces, above its middle line: how far
// the ends of the chords of their curved scores are from the left edge and from
// the middle line, in millimetres. A face that is D wide in the flat and whose
// score is an arc of chord D and rise h bends so that it rises as the score
// does: where the score rises at a slope g', the folded width grows by
// sqrt(1 - g'^2) of the flat one. The two faces meet at the middle line.
type lens struct {
	along, rise [len(pattern.ChordEnds{})]float64
}

// newLens works out the cross-section of faces of a width whose scores rise by
// half of the middle height.
func newLens(width, middle measure.Length) lens {
	chords := curvedScore(pattern.Point{}, width, middle)
	var l lens
	for i := 1; i < len(chords); i++ {
		slope := pattern.Slope(chords[i-1], chords[i])
		l.along[i] = l.along[i-1] + chords[i].X.Sub(chords[i-1].X).Millimetres()*math.Sqrt(1-slope*slope)
		l.rise[i] = chords[i].Y.Millimetres()
	}
	return l
}

// curvedScore returns the chords of a score that begins at a corner and rises
// by half of the middle height.
func curvedScore(corner pattern.Point, width, middle measure.Length) pattern.ChordEnds {
	return pattern.Chords(corner, pattern.At(corner.X.Add(width), corner.Y), -curveBulge(width, middle))
}

// curveBulge is the bulge of an arc of the given chord, twice whose rise is
// the middle height.
func curveBulge(width, middle measure.Length) float64 {
	return middle.Millimetres() / width.Millimetres()
}

// folded returns how wide the lens is from edge to edge.
func (l *lens) folded() float64 { return l.along[len(l.along)-1] }

// inside returns how wide the lens is between the inner faces of stock of a
// caliper, at a distance from the middle line: the inner face of each facet
// lies half a caliper inside it, and the nearest bounds the width.
func (l *lens) inside(from, caliper float64) float64 {
	left := 0.0
	for i := 1; i < len(l.along)/2; i++ {
		dx, dz := l.along[i]-l.along[i-1], l.rise[i]-l.rise[i-1]
		size := math.Hypot(dx, dz)
		x, z := l.along[i]+caliper/2*dz/size, l.rise[i]-caliper/2*dx/size
		left = max(left, x+(from-z)*dx/dz)
	}
	return l.folded() - 2*left
}
