package fold

import (
	"slices"

	"creasefit/internal/pattern"
)

// bodies returns for each piece the first of the pieces that bonds make one
// body of, which is the piece itself without a bond. They lie in body, if that has room.
func bodies(body []int, p *pattern.Pattern) []int {
	body = slices.Grow(body, len(p.Pieces))[:len(p.Pieces)]
	for i := range body {
		body[i] = i
	}
	for range p.Bonds { // each pass joins at least one more piece
		for i := range p.Bonds {
			b := &p.Bonds[i]
			first := min(body[b.A], body[b.B])
			body[b.A], body[b.B] = first, first
		}
	}
	return body
}

// oneBody reports whether two plates are parts of one body of paper.
func (m *model) oneBody(a, b *plate) bool {
	return m.body[a.piece] == m.body[b.piece] && a.copy == b.copy
}

// partOf reports whether a plate is part of the body of a piece, or of any.
func (m *model) partOf(pl *plate, piece int) bool {
	return piece == anyPiece || m.body[pl.piece] == m.body[piece]
}

// bonded reports whether two panels of different pieces are glued to one another.
func (m *model) bonded(x, y *plate) bool {
	return slices.ContainsFunc(m.pattern.Bonds, func(b pattern.Bond) bool {
		return slices.ContainsFunc(b.Glues, func(g pattern.Glue) bool { return names(&b, g.Panel, g.To, x, y) })
	})
}

// met reports whether a seam brings two panels of different pieces together.
func (m *model) met(x, y *plate) bool {
	return slices.ContainsFunc(m.pattern.Bonds, func(b pattern.Bond) bool {
		return slices.ContainsFunc(b.Seams, func(s pattern.Seam) bool { return names(&b, s.PanelA, s.PanelB, x, y) })
	})
}

// names reports whether two plates are a first and a second panel that a bond names.
func names(b *pattern.Bond, first, second int, x, y *plate) bool {
	if x.piece != b.A || x.panel != first {
		x, y = y, x
	}
	return x.piece == b.A && x.panel == first && y.piece == b.B && y.panel == second
}
