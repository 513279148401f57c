package fold

import (
	"fmt"

	"creasefit/internal/pattern"
)

// unsound returns what makes a pattern impossible to fold at all: indices
// that point nowhere, creases without a length, panels without an outline.
func unsound(p *pattern.Pattern) []Finding {
	var s soundness
	s.check("pattern", "", p.Caliper.Sign() >= 0, "has a negative caliper")
	for i := range p.Pieces {
		s.piece(&p.Pieces[i])
	}
	for _, place := range p.Places {
		ok := place.On >= 0 && place.On <= place.Piece && place.Piece < len(p.Pieces)
		s.check("place", "", ok, "does not lay a piece on an earlier one or on the floor")
		s.check("place", "", place.Lie <= pattern.AlongHeight, "does not say how its piece lies")
	}
	for i := range p.Nests {
		s.nesting(&p.Nests[i], len(p.Pieces), p.Cavity.Sides > 0)
	}
	for _, l := range p.Locks {
		s.both("lock", l.Name, "piece", l.A, l.B, len(p.Pieces), len(p.Pieces))
	}
	for i := range p.Bonds {
		s.bond(p, &p.Bonds[i])
	}
	c := p.Cavity
	if s.within("cavity", "", "piece", c.Piece, len(p.Pieces)) {
		s.within("cavity", "", "panel", c.Panel, len(p.Pieces[c.Piece].Panels))
	}
	s.check("cavity", "", c.Sides == 0 || c.Sides >= 3 && c.Sides <= mostSides, "has too few or too many sides")
	for _, axis := range c.Bounded {
		s.check("cavity", "", c.Sides == 0 || axis != pattern.Height, "is bounded along an axis that prisms are not")
		s.check("cavity", "", axis <= pattern.Thickness, "is bounded along an axis that contents do not have")
	}
	return s.findings
}

type soundness struct{ findings []Finding }

func (s *soundness) check(part, name string, ok bool, problem string) bool {
	if !ok {
		s.findings = append(s.findings, Finding{Part: part, Name: name, Problem: problem})
	}
	return ok
}

// within checks that an index has something to point at.
func (s *soundness) within(part, name, what string, i, n int) bool {
	if i >= 0 && i < n {
		return true
	}
	return s.check(part, name, false, fmt.Sprintf("points at %s %d of %d", what, i, n))
}

// both checks two indices.
func (s *soundness) both(part, name, what string, i, j, n, m int) bool {
	first := s.within(part, name, what, i, n)
	return s.within(part, name, what, j, m) && first
}

// nesting checks that two pieces are nested, along axes that contents have.
func (s *soundness) nesting(n *pattern.Nesting, pieces int, prisms bool) {
	s.both("nesting", n.Name, "piece", n.Inner, n.Outer, pieces, pieces)
	for _, axis := range n.Axes {
		s.check("nesting", n.Name, axis <= pattern.Thickness, "is held along an axis that contents do not have")
		s.check("nesting", n.Name, !prisms || axis == pattern.Width, "is held along an axis that prisms are not measured along")
	}
}

// bond checks that two pieces are glued together, and that neither bends.
func (s *soundness) bond(p *pattern.Pattern, b *pattern.Bond) {
	if !s.both("bond", "", "piece", b.A, b.B, len(p.Pieces), len(p.Pieces)) {
		return
	}
	first, second := &p.Pieces[b.A], &p.Pieces[b.B]
	for _, g := range b.Glues {
		s.glue(&g, first, second)
	}
	for _, m := range b.Seams {
		s.both("seam", m.Name, "panel", m.PanelA, m.PanelB, len(first.Panels), len(second.Panels))
	}
	s.check("bond", "", !curved(first) && !curved(second), "glues a piece that bends to another one")
}

// glue checks a glue area of one piece that is stuck onto another, or onto itself.
func (s *soundness) glue(g *pattern.Glue, own, other *pattern.Piece) {
	s.both("glue", g.Name, "panel", g.Panel, g.To, len(own.Panels), len(other.Panels))
	s.check("glue", g.Name, len(g.Area) >= 2, "has no area")
}

func (s *soundness) piece(p *pattern.Piece) {
	n := len(p.Panels)
	s.within("piece", p.Name, "panel", p.Root, n)
	for i := range p.Panels {
		s.check("panel", p.Panels[i].Name, len(p.Panels[i].Outline) >= 2, "has no outline")
	}
	for i := range p.Creases {
		s.crease(p, i)
	}
	for _, g := range p.Glues {
		s.glue(&g, p, p)
	}
	for _, m := range p.Seams {
		s.both("seam", m.Name, "panel", m.PanelA, m.PanelB, n, n)
	}
	for _, j := range p.Joints {
		s.both("joint", j.Name, "panel", j.PanelA, j.PanelB, n, n)
		for _, cut := range [...]int{j.A, j.B} {
			if s.within("joint", j.Name, "cut", cut, len(p.Cuts)) {
				a, b := middle(p, &p.Cuts[cut])
				s.check("joint", j.Name, b.Minus(a).Length() > hair, "has a cut without a depth")
			}
		}
	}
}

// crease checks that a crease has a length and is the only one to turn its
// far panel, which makes the panels a tree.
func (s *soundness) crease(p *pattern.Piece, i int) {
	c := &p.Creases[i]
	s.both("crease", c.Name, "panel", c.From, c.To, len(p.Panels), len(p.Panels))
	s.check("crease", c.Name, c.A != c.B, "has no length")
	s.check("crease", c.Name, c.Angle >= 0 && (c.Angle <= 180 || c.Rolls() && c.Angle <= 360), "turns by an angle that is not between 0 and 180 degrees")
	s.check("crease", c.Name, c.Round.Sign() >= 0, "goes round a negative thickness")
	s.check("crease", c.Name, c.To != p.Root, "turns the root")
	for j := range p.Creases[:i] {
		s.check("crease", c.Name, p.Creases[j].To != c.To, "turns a panel that another crease turns too")
	}
}
