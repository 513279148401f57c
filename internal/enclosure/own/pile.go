package own

// pile is what a panel comes down on that is folded flat, and what lies under it there.
type pile struct {
	top    int   // the panel on top, or one of those below
	papers int64 // its spine goes round
}

// What a panel comes down on where that is no other panel.
const (
	onParent   = -1
	onContents = -2
)

// spine is what the fold of a panel takes up: from its parent to what it comes down on,
// and the papers there.
func (r *derived) spine(i int) form {
	p := &r.panels[i]
	out := p.outOf()
	ground := faceOn(&r.panels[p.parent].foot, out)
	top := ground
	switch p.pile.top {
	case onParent:
	case onContents:
		top = top.with(thickness, out.sign*parts)
	default:
		top = faceOn(&r.panels[p.pile.top].foot, out)
	}
	return top.plus(-1, ground).times(out.sign).with(caliper, p.pile.papers*parts)
}

// faceOn is the face of a plate that looks in a way.
func faceOn(foot *[3]stretch, to way) form {
	if to.sign > 0 {
		return foot[to.axis].high
	}
	return foot[to.axis].low
}

// pileUnder is what lies on the parent where a panel comes down, flaps of its own that
// are folded in under it, and a caliper.
func (s *sight) pileUnder(i int, before []int) pile {
	p := &s.panels[i]
	on := &s.panels[p.parent]
	out := p.outOf()
	pile := pile{onParent, 1}
	top := s.feet[p.parent].face(out)
	if !s.goesInto() && (p.parent == s.floor && out == on.face.inside || i == s.floor && out == p.face.inside.back()) {
		pile.top, top = onContents, top+float64(out.sign)*s.values[thickness]
	}
	if on.spine != nil && s.rolls(p) { // under its parent, where room was left for it
		return pile
	}
	for again := true; again; {
		again = false
		for _, k := range before {
			if s.stacked(i, k, out, top) {
				pile.top, top, again = k, s.feet[k].face(out), true
			}
		}
	}
	if s.foldsUnder(i) {
		pile.papers = 2
	}
	return pile
}

// foldsUnder reports whether a panel that comes down has a flap that is
// folded flat onto its underside first and comes to lie over what it comes down on.
func (s *sight) foldsUnder(i int) bool {
	for k := range s.panels {
		if c := &s.panels[k]; c.parent == i && c.Angle == 180 && s.rolls(c) && s.meets(c) {
			return true
		}
	}
	return false
}

// meets reports whether a panel that is folded flat under its parent reaches what that
// was folded onto: two panels that meet edge to edge do not.
func (s *sight) meets(p *plate) bool {
	on := &s.panels[p.parent]
	below := &s.panels[on.parent]
	axis := p.Edge.axis()
	if on.Edge.axis() != axis {
		return true
	}
	long := func(q *plate) float64 { return q.spans[axis][1].at(s.values) - q.spans[axis][0].at(s.values) }
	return long(p)+long(below) > long(on)+touching
}

// stacked reports whether a plate lies on a pile where a panel comes down, or over it by
// no more than the room that the contents have.
func (s *sight) stacked(i, k int, out way, top float64) bool {
	q := &s.panels[k]
	if k == s.panels[i].parent || q.piece != s.panels[i].piece || q.face.inside.axis != out.axis {
		return false
	}
	gap := float64(out.sign) * (s.feet[k].face(out.back()) - top)
	return gap >= -touching && gap <= touching+s.values[loosest] && s.feet[i].over(&s.feet[k], out.axis)
}
