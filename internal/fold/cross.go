package fold

import (
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// crossing finds plates that pass through one another. Plates may touch, and
// press into one another by the tolerance of the closures; those of a body that
// bends are not asked.
func (m *model) crossing(tolerance float64) bool {
	found, first := false, 0 // of the plates of the same piece
	for i := range m.plates {
		a := &m.plates[i]
		if b := &m.plates[first]; a.piece != b.piece || a.copy != b.copy {
			first = i
		}
		others := m.plates[:i]
		if m.facets[a.piece] != nil {
			others = m.plates[:first]
		}
		for j := range others {
			b := &others[j]
			if apart(&a.box, &b.box) || m.together(i, j) || !m.passes(i, j, tolerance) {
				continue
			}
			m.find("panel", m.name(b), "passes through "+m.name(a), 0)
			found = true
		}
	}
	return found
}

// apart reports whether two boxes are in contact at most.
func apart(a, b *box) bool {
	for k := range a.low {
		if a.low[k] > b.high[k]-touch || b.low[k] > a.high[k]-touch {
			return true
		}
	}
	return false
}

// together reports whether two plates share the place where they meet: at
// their crease, at a glue area, which is measured by itself, or in a joint.
func (m *model) together(i, j int) bool {
	a, b := &m.plates[i], &m.plates[j]
	if a.parent == j || b.parent == i {
		return true
	}
	if !m.oneBody(a, b) || a.panel < 0 || b.panel < 0 {
		return false
	}
	if a.piece != b.piece {
		return m.bonded(a, b)
	}
	glued := func(g pattern.Glue) bool { return pair(g.Panel, g.To, a.panel, b.panel) }
	return slices.ContainsFunc(m.pattern.Pieces[a.piece].Glues, glued) || m.hooked(a, b)
}

func pair(a, b, x, y int) bool { return a == x && b == y || a == y && b == x }

// hooked reports whether one panel of a piece has the first cut of a joint in it or
// along its edge, and the other panel the second.
func (m *model) hooked(a, b *plate) bool {
	p := &m.pattern.Pieces[a.piece]
	return a.panel >= 0 && b.panel >= 0 && slices.ContainsFunc(p.Joints, func(j pattern.Joint) bool {
		return holdsCut(p, j.A, j.PanelA, a.panel) && holdsCut(p, j.B, j.PanelB, b.panel) ||
			holdsCut(p, j.A, j.PanelA, b.panel) && holdsCut(p, j.B, j.PanelB, a.panel)
	})
}

// holdsCut reports whether a panel is the cut's own or joined to it by the
// crease that the cut lies on.
func holdsCut(p *pattern.Piece, cut, own, panel int) bool {
	if panel == own {
		return true
	}
	return slices.ContainsFunc(p.Creases, func(c pattern.Crease) bool {
		return pair(c.From, c.To, own, panel) && onCrease(p, &c, &p.Cuts[cut])
	})
}

// onCrease reports whether a cut lies on the line of a crease.
func onCrease(p *pattern.Piece, c *pattern.Crease, cut *pattern.Cut) bool {
	a := place(c.A)
	along := place(c.B).Minus(a)
	along = along.Times(1 / along.Length())
	u, v := middle(p, cut)
	return math.Abs(along.Cross(u.Minus(a))) < touch && math.Abs(along.Cross(v.Minus(a))) < touch
}

// passes reports whether two plates pass through one another by more than
// the paper gives way where they are hung up together. Separate pieces do not
// give way at all.
func (m *model) passes(i, j int, tolerance float64) bool {
	a, b := &m.plates[i], &m.plates[j]
	if !m.oneBody(a, b) {
		tolerance = 0
	}
	yieldA, yieldB := m.yields(i, j)
	if math.Abs(a.move.Z.Dot(b.move.Z)) > 1-1e-9 { // in one plane nothing is pressed in
		yieldA, yieldB = 0, 0
	}
	thin := min(tolerance/2, m.half/2)
	pa := part{a.space, a.move.Z, m.half - thin, yieldA + tolerance}
	pb := part{b.space, b.move.Z, m.half - thin, yieldB + tolerance}
	if a.convex && b.convex {
		return meet(&pa, &pb, nil)
	}
	if m.oneBody(a, b) && facesPart(&pa, &pb, nil) { // the boxes round separate pieces have told that
		return false
	}
	return m.partsOverlap(a, b, pa, pb)
}

// yields returns how far the edges of two plates give way to one another.
// Rigid plates that are hung one beside the other, or meet in a corner, meet at
// mid-caliper, half a caliper too deep: there an edge of paper is pressed in, or
// mitred. Board is not.
func (m *model) yields(i, j int) (a, b float64) {
	x, y := &m.plates[i], &m.plates[j]
	if !m.oneBody(x, y) || m.pattern.Stiff() {
		return 0, 0
	}
	near := x.parent >= 0 && x.parent == y.parent || x.parent >= 0 && m.plates[x.parent].parent == j ||
		y.parent >= 0 && m.plates[y.parent].parent == i
	if near || m.seamed(x, y) {
		return m.half, m.half
	}
	return 0, 0
}

// seamed reports whether a seam brings two panels together.
func (m *model) seamed(x, y *plate) bool {
	if x.panel < 0 || y.panel < 0 {
		return false
	}
	if x.piece != y.piece {
		return m.met(x, y)
	}
	meets := func(s pattern.Seam) bool { return pair(s.PanelA, s.PanelB, x.panel, y.panel) }
	return slices.ContainsFunc(m.pattern.Pieces[x.piece].Seams, meets)
}
