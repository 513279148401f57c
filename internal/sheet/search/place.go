package search

import (
	"math"

	"creasefit/internal/sheet"
)

// placing looks for the place of one piece that loses the least, more or less.
type placing struct {
	*rework
	draft  *draft
	at     place // tried last
	faces  []int16
	best   place
	least  float64
	looked int // knots
}

// find returns a place for a piece.
func (r *rework) find(kind int32) (place, bool) {
	p := placing{rework: r, least: math.MaxFloat64}
	for i := range r.drafts {
		t := &r.drafts[i]
		if t.free < r.kinds[kind].area {
			continue
		}
		p.draft, p.at.draft, p.faces = t, int16(i), r.faces[t.board.stock][kind]
		if t.root == none {
			p.start()
		} else {
			p.under(t.root)
		}
	}
	r.spend(5 * (p.looked + len(r.drafts)))
	return p.best, p.least < math.MaxFloat64
}

// start tries the piece as the first of a draft.
func (p *placing) start() {
	p.at.knot = none
	for _, p.at.face = range p.faces {
		p.offer(p.draft.free / 4)
	}
}

// under tries the piece at a knot and all below it, which have no more room.
func (p *placing) under(knot int16) {
	n := &p.draft.knots[knot]
	p.looked++
	fits := false
	for _, face := range p.faces {
		f := &p.draft.board.faces[face]
		if f.w <= n.room.w && f.h <= n.room.h {
			fits = true
			p.at.knot, p.at.face = knot, face
			p.beside(n, f)
		}
	}
	if fits && n.face == none {
		p.under(n.low)
		p.under(n.high)
	}
}

// beside tries a face on both sides of a knot.
func (p *placing) beside(n *knot, f *face) {
	if rest := n.room.w - n.need.w - f.w; rest >= 0 && p.draft.board.crossable(max(n.need.h, f.h)) {
		p.at.axis = sheet.Width
		p.offer(loss(n.need.h, n.need.w, f.h, f.w, rest))
	}
	if rest := n.room.h - n.need.h - f.h; rest >= 0 && p.draft.board.crossable(max(n.need.w, f.w)) {
		p.at.axis = sheet.Height
		p.offer(loss(n.need.w, n.need.h, f.w, f.h, rest))
	}
}

// loss is the area that a join of two edges leaves beside the shorter one, and
// part of the room that is left behind them.
func loss(edge, long, otherEdge, otherLong, rest int32) int64 {
	behind := int64(rest) * int64(min(edge, otherEdge)) / 8
	if edge > otherEdge {
		return behind + int64(edge-otherEdge)*int64(otherLong)
	}
	return behind + int64(otherEdge-edge)*int64(long)
}

// offer keeps the place tried last if it loses less, give or take a third.
func (p *placing) offer(loss int64) {
	l := float64(loss + 1)
	if 0.7*l >= p.least {
		return
	}
	if l *= 0.7 + 0.6*p.random.Float64(); l < p.least {
		p.best, p.least = p.at, l
	}
}
