package guide

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"creasefit/internal/pattern"
)

// outline says how the outline is cut: the ways of a blade from edge to edge of the
// blank, and slits between panels. What lies alike elsewhere is told once.
func (w *writer) outline(p *pattern.Piece) (lines []string) {
	if side, ok := p.Regular(); ok {
		return []string{w.say("outline.regular", args{"side": side})}
	}
	ways := append(runs(p), slits(p)...)
	slices.SortStableFunc(ways, func(a, b []pattern.Vertex) int { // the image at the lower left is told
		low, _ := box(a)
		other, _ := box(b)
		return cmp.Or(low.Y.Compare(other.Y), low.X.Compare(other.X))
	})
	all := families(p, ways)
	for i, f := range all {
		text := sentence(w.path(p, ways[f.members[0]]))
		if f.how != "" && i > 0 && all[i-1].how == f.how {
			lines[len(lines)-1] += " " + text
		} else {
			lines = append(lines, text)
		}
		if f.how != "" && (i+1 == len(all) || all[i+1].how != f.how) {
			lines[len(lines)-1] += " " + w.also(&f)
		}
	}
	return lines
}

// path writes the way of a blade from place to place: of each only what changes.
func (w *writer) path(p *pattern.Piece, way []pattern.Vertex) string {
	moves := make([]string, 0, len(way))
	start := w.tell(point(p, way[0].Point))
	for i := 1; i < len(way); i++ {
		moves = append(moves, w.tell(moveTo(p, way[i-1], way[i].Point)))
	}
	return w.say("path", args{"start": start, "moves": strings.Join(moves, ", ")})
}

// moveTo says how a blade goes on to a place.
func moveTo(p *pattern.Piece, from pattern.Vertex, to pattern.Point) told {
	if from.Bulge < 0 || from.Bulge > 0 {
		return told{"path.arc", args{"through": middle(p, from, to), "point": point(p, to)}}
	}
	level, upright := from.Y == to.Y, from.X == to.X
	switch {
	case level && to.X.IsZero():
		return told{key: "path.left"}
	case level && to.X == p.Width:
		return told{key: "path.right"}
	case upright && to.Y.IsZero():
		return told{key: "path.bottom"}
	case upright && to.Y == p.Height:
		return told{key: "path.top"}
	case level:
		return told{"path.across", args{"at": to.X}}
	case upright && from.Y.Less(to.Y):
		return told{"path.up", args{"at": to.Y}}
	case upright:
		return told{"path.down", args{"at": to.Y}}
	default:
		return told{"path.straight", args{"point": point(p, to)}}
	}
}

// runs returns the parts of a piece's outline that a blade cuts: what is no edge of
// the blank and no cut that is told by its depth.
func runs(p *pattern.Piece) (all [][]pattern.Vertex) {
	for _, ring := range p.Contours() {
		n, start := len(ring), 0
		for start < n && isCut(p, ring, start) {
			start++
		}
		if start == n { // nothing of it is at an edge
			all = append(all, append(ring[:n:n], ring[0]))
			continue
		}
		open := false
		for k := range n {
			i := (start + k) % n
			if !isCut(p, ring, i) {
				open = false
				continue
			}
			if !open {
				all = append(all, []pattern.Vertex{ring[i]})
				open = true
			}
			last := &all[len(all)-1]
			*last = append(*last, pattern.Vertex{Point: ring[(i+1)%n].Point})
			(*last)[len(*last)-2].Bulge = ring[i].Bulge
		}
	}
	return all
}

// isCut reports whether the edge that leaves a corner of an outline is to be cut.
func isCut(p *pattern.Piece, outline []pattern.Vertex, corner int) bool {
	a, b := outline[corner].Point, outline[(corner+1)%len(outline)].Point
	return !onEdge(p, a, b) && !toldByDepth(p, a, b)
}

// onEdge reports whether a way runs along an edge of the blank.
func onEdge(p *pattern.Piece, a, b pattern.Point) bool {
	return a.X == b.X && (a.X.IsZero() || a.X == p.Width) || a.Y == b.Y && (a.Y.IsZero() || a.Y == p.Height)
}

// toldByDepth reports whether a way is that of a cut which is told by itself.
func toldByDepth(p *pattern.Piece, a, b pattern.Point) bool {
	for i := range p.Cuts {
		c := &p.Cuts[i]
		for j := 1; j < len(c.Path) && !byPoints(c); j++ {
			if overlap(a, b, c.Path[j-1].Point, c.Path[j].Point) {
				return true
			}
		}
		if n := len(c.Path); c.Kind == pattern.Window && overlap(a, b, c.Path[n-1].Point, c.Path[0].Point) {
			return true
		}
	}
	return false
}

// slits returns the slits that leave no outline: those that are told by no depth, and
// common edges of panels that no crease joins.
func slits(p *pattern.Piece) (all [][]pattern.Vertex) {
	for i := range p.Cuts {
		if c := &p.Cuts[i]; c.Kind == pattern.Slit && byPoints(c) {
			all = append(all, c.Path)
		}
	}
	known := func(a, b pattern.Point) bool {
		return slices.ContainsFunc(all, func(way []pattern.Vertex) bool { return overlap(a, b, way[0].Point, way[1].Point) })
	}
	for i := range p.Panels {
		ring := p.Panels[i].Outline
		for k, v := range ring {
			to := ring[(k+1)%len(ring)].Point
			if !isCut(p, ring, k) || creased(p, i, v, to) || known(v.Point, to) {
				continue
			}
			if slit := besideLater(p, i, v.Point, to); slit != nil {
				all = append(all, slit)
			}
		}
	}
	return all
}

// creased reports whether an edge of a panel is one of its creases.
func creased(p *pattern.Piece, panel int, v pattern.Vertex, to pattern.Point) bool {
	for i := range p.Creases {
		c := &p.Creases[i]
		if (c.From == panel || c.To == panel) && overlap(v.Point, to, c.A, c.B) && bentAlike(&v, c) {
			return true
		}
	}
	return false
}

// besideLater returns what an edge of a panel has in common with one of a later
// panel; nil for nothing.
func besideLater(p *pattern.Piece, panel int, a, b pattern.Point) []pattern.Vertex {
	for j := panel + 1; j < len(p.Panels); j++ {
		ring := p.Panels[j].Outline
		for k, v := range ring {
			switch c, d := v.Point, ring[(k+1)%len(ring)].Point; {
			case on(a, c, d) && on(b, c, d):
				return pattern.Polygon(a, b)
			case on(c, a, b) && on(d, a, b):
				return pattern.Polygon(c, d)
			}
		}
	}
	return nil
}

// bentAlike reports whether an edge that begins at a corner bends as a crease
// between the same ends does.
func bentAlike(v *pattern.Vertex, c *pattern.Crease) bool {
	bulge := c.Bulge
	if v.Point != c.A {
		bulge = -bulge
	}
	return math.Abs(v.Bulge-bulge) < 1e-9
}

// overlap reports whether one of two straight edges lies on the other.
func overlap(a, b, c, d pattern.Point) bool {
	return on(a, c, d) && on(b, c, d) || on(c, a, b) && on(d, a, b)
}
