package enclosure

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Parameters of a thumb notch.
var notchParams = []Param{
	lengthParam("notch", 3, 300, "Radius of a half-round thumb notch in the middle of the open edge; none if not given."),
	{Name: "notch_faces", Type: ChoiceParam, Advanced: true, Choices: []string{"both", "front"}, Help: "Which faces the notch is cut in."},
}

// thumb is a half-round thumb notch: its radius and what lies along the edge on both
// sides of its middle, by reading. Without one, radius is -1.
type thumb struct{ radius, before, after int }

// notched adds the readings of a notch in the middle of an edge, if one is
// asked for. It keeps away from the ends of the edge as far as said, and is cut
// into a face of the given depth.
func (d *draft) notched(edge int, before, after, depth measure.Length) (thumb, error) {
	if !d.in.given("notch") {
		return thumb{radius: -1}, d.in.needless("notch_faces", "notch")
	}
	n, radius, half := thumb{radius: d.fixed("notch", "notch")}, d.in.length("notch"), d.plan.Problem.Readings[edge].Ideal.Over(2)
	n.before, n.after = d.parted("edge with the notch", edge, "before the notch", "after the notch", before.Add(radius), after.Add(radius))
	most := measure.Min(half.Sub(measure.Max(before, after)), depth.Sub(d.in.Beside()))
	return n, d.in.bounded("notch", Range{Max: most}, "the notch is deeper than the face that it is cut in, or wider than its edge", "make the notch smaller")
}

// The edges of a rectangle, each by the corner that it begins at.
const (
	rightEdge = 1
	topEdge   = 2
	leftEdge  = 3
)

var edgeNames = [...]string{rightEdge: "right", topEdge: "top", leftEdge: "left"}

// bite cuts a half-round notch into an edge of a rectangular panel: along it at
// the given place, from the left or the bottom of the blank.
func bite(p *pattern.Piece, panel, edge int, name string, at, radius measure.Length) {
	o := p.Panels[panel].Outline
	first, last := o[edge].Point, o[edge].Point
	switch from := at.Add(radius); edge { // counterclockwise
	case topEdge:
		first.X, last.X = from, at.Sub(radius)
	case leftEdge:
		first.Y, last.Y = from, at.Sub(radius)
	default:
		first.Y, last.Y = at.Sub(radius), from
	}
	bitten := make([]pattern.Vertex, 0, len(o)+2)
	bitten = append(append(bitten, o[:edge+1]...), pattern.Vertex{Point: first, Bulge: -1}, pattern.Vertex{Point: last})
	p.Panels[panel].Outline = append(bitten, o[edge+1:]...)
	p.Cuts = append(p.Cuts, pattern.Cut{
		Name: name, Kind: pattern.Notch, From: edgeNames[edge], At: at, Depth: radius, Width: radius.Times(2),
		Path: []pattern.Vertex{{Point: last, Bulge: 1}, {Point: first}},
	})
}
