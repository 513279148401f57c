package guide

import (
	"math"
	"slices"
	"strings"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// near is how far apart two places may be that count as one, in nanometres.
const near = 2.0

// along returns the places of an outline's corners along one direction, in
// order, each once.
func along(outline []pattern.Vertex, upright bool) []measure.Length {
	ends := make([]measure.Length, len(outline))
	for i, v := range outline {
		ends[i] = v.X
		if upright {
			ends[i] = v.Y
		}
	}
	slices.SortFunc(ends, measure.Length.Compare)
	return slices.Compact(ends)
}

// inside reports whether a point lies inside an outline and not on its edge.
// An arc counts as its chord.
func inside(outline []pattern.Vertex, at pattern.Point) bool {
	in := false
	for i, v := range outline {
		next := outline[(i+1)%len(outline)]
		if on(at, v.Point, next.Point) {
			return false
		}
		if at.Y.Less(v.Y) != at.Y.Less(next.Y) && crossing(at, v.Point, next.Point) {
			in = !in
		}
	}
	return in
}

// crossing reports whether the ray from a point to the right meets an edge
// whose ends lie on different sides of it.
func crossing(at, a, b pattern.Point) bool {
	rise := span(at.Y, a.Y) / span(b.Y, a.Y)
	return span(at.X, a.X) < rise*span(b.X, a.X)
}

// span returns how much greater the first length is, in nanometres.
func span(a, b measure.Length) float64 { return float64(a.Sub(b).Nanometres()) }

// on reports whether a point lies on the way from a to b.
func on(at, a, b pattern.Point) bool {
	dx, dy := span(b.X, a.X), span(b.Y, a.Y)
	px, py := span(at.X, a.X), span(at.Y, a.Y)
	length := math.Hypot(dx, dy)
	if length < near {
		return math.Hypot(px, py) < near
	}
	distance, way := (dx*py-dy*px)/length, (dx*px+dy*py)/length
	return math.Abs(distance) < near && way > -near && way < length+near
}

// box returns the lower left and the upper right corner of what an outline
// fills, an arc counting as its chord.
func box(outline []pattern.Vertex) (low, high pattern.Point) {
	low, high = outline[0].Point, outline[0].Point
	for _, v := range outline {
		low.X, low.Y = measure.Min(low.X, v.X), measure.Min(low.Y, v.Y)
		high.X, high.Y = measure.Max(high.X, v.X), measure.Max(high.Y, v.Y)
	}
	return low, high
}

// point is a place on a blank: along one of its edges, or from its lower left
// corner.
func point(p *pattern.Piece, at pattern.Point) told {
	switch {
	case at.X.IsZero():
		return told{"point.left", args{"at": at.Y}}
	case at.X == p.Width:
		return told{"point.right", args{"at": at.Y}}
	case at.Y.IsZero():
		return told{"point.bottom", args{"at": at.X}}
	case at.Y == p.Height:
		return told{"point.top", args{"at": at.X}}
	default:
		return told{"point", args{"x": at.X, "y": at.Y}}
	}
}

// middle is the place in the middle of an arc. Between ends that are level or upright
// it is told as halfway, since half of a panel often has no mark on the ruler.
func middle(p *pattern.Piece, from pattern.Vertex, to pattern.Point) told {
	at := pattern.Middle(from.Point, to, from.Bulge)
	switch edge := point(p, at); {
	case from.Y != to.Y && from.X != to.X:
		return edge
	case edge.key != "point":
		return told{key: "halfway" + strings.TrimPrefix(edge.key, "point")}
	case from.Y == to.Y:
		return told{"halfway.up", args{"at": at.Y}}
	default:
		return told{"halfway.across", args{"at": at.X}}
	}
}
