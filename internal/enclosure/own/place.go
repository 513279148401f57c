package own

import (
	"slices"

	"creasefit/internal/pattern"
)

// stretch is where a plate begins and ends along an axis of space.
type stretch struct{ low, high form }

// block is a plate with its thickness.
type block struct {
	panel int
	spine bool // the spine of the fold that the panel hangs by
	at    [3]stretch
	flat  int // the axis that it is square to
}

// fold places every panel, in the order they are folded in, and shows where it lies.
func (s *sight) fold() {
	for n, i := range s.order {
		s.place(i, s.order[:n])
		s.feet[i] = s.where(&s.panels[i].foot)
	}
	s.show()
}

// show lists the plates with their thickness, and where they lie.
func (s *sight) show() {
	s.blocks, s.pieces = nil, make([][]int, len(s.Pieces))
	add := func(b block) {
		for piece, body := range s.bodies {
			if body == s.bodies[s.panels[b.panel].piece] {
				s.pieces[piece] = append(s.pieces[piece], len(s.blocks))
			}
		}
		s.blocks = append(s.blocks, b)
	}
	for i := range s.panels {
		add(s.block(i))
		if s.panels[i].spine != nil {
			add(s.spineOf(i))
		}
	}
	s.spot()
}

// place turns a panel about its fold. A fold of 180 degrees takes up what lies
// between the two panels, and a caliper.
func (s *sight) place(i int, before []int) {
	p := &s.panels[i]
	if p.parent < 0 {
		p.origin = [3]form{}
		if p.base >= 0 {
			s.lay(p)
		}
		p.lieDown()
		return
	}
	on := &s.panels[p.parent]
	axis := p.Edge.axis()
	at, old, turned := p.crease(), on.face.own(axis), p.face.own(axis)
	p.origin = on.origin
	p.move(old.axis, old.sign, at)
	p.move(turned.axis, -turned.sign, at)
	p.lieDown()
	if p.Angle == 180 {
		s.feet[i] = s.where(&p.foot)
		p.pile = s.pileUnder(i, before)
		p.spine = s.spine(i)
		p.move(on.face.inside.axis, on.face.inside.sign*p.sense(), p.spine)
		p.foot[p.face.inside.axis] = thick(p.origin[p.face.inside.axis])
	}
}

// sense is the side of its parent that a fold leads to: 1 for the inside.
func (p *plate) sense() int64 {
	if p.Fold == pattern.Mountain {
		return -1
	}
	return 1
}

// move shifts a plate along an axis of space.
func (p *plate) move(axis int, times int64, by form) { p.origin[axis] = p.origin[axis].plus(times, by) }

// crease is where on the blank the fold of a panel lies.
func (p *plate) crease() form { return p.spans[p.Edge.axis()][1-p.Edge.side()] }

// lies returns where a coordinate on the blank comes to lie along the axis that it
// is turned to.
func (p *plate) lies(axis int, at form) (space int, where form) {
	w := p.face.own(axis)
	return w.axis, p.origin[w.axis].plus(w.sign, at)
}

// lieDown notes where a panel lies.
func (p *plate) lieDown() { p.foot = p.stretches(p.spans) }

// stretches is where a part of a panel lies.
func (p *plate) stretches(spans [2][2]form) (at [3]stretch) {
	for axis, s := range spans {
		space, low := p.lies(axis, s[0])
		_, high := p.lies(axis, s[1])
		if p.face.own(axis).sign < 0 {
			low, high = high, low
		}
		at[space] = stretch{low, high}
	}
	flat := p.face.inside.axis
	at[flat] = thick(p.origin[flat])
	return at
}

// block is the plate of a panel, without what folds of 180 degrees take of it.
func (r *derived) block(i int) block {
	p := &r.panels[i]
	b := block{panel: i, flat: p.face.inside.axis, at: p.foot}
	spans, whole := p.spans, true
	trim := func(q *plate, side int) { // half of a spine
		if q.spine != nil {
			end := &spans[q.Edge.axis()][side]
			*end, whole = end.plus(-outward(side), q.spine.half()), false
		}
	}
	trim(p, 1-p.Edge.side())
	for k := range r.panels {
		if c := &r.panels[k]; c.parent == i {
			trim(c, c.Edge.side())
		}
	}
	if !whole {
		b.at = p.stretches(spans)
	}
	return b
}

// blockAt is the block of a plate, or of its spine.
func (r *derived) blockAt(at rim) *block {
	i := slices.IndexFunc(r.blocks, func(b block) bool { return b.panel == at.panel && b.spine == at.spine })
	return &r.blocks[i]
}

// thick is the stretch of the stock about its middle.
func thick(middle form) stretch {
	return stretch{middle.with(caliper, -parts/2), middle.with(caliper, parts/2)}
}

// spineOf is the spine of a panel's fold of 180 degrees.
func (r *derived) spineOf(i int) block {
	p := &r.panels[i]
	on := &r.panels[p.parent]
	b := r.block(i)
	b.spine = true
	space, middle := on.lies(p.Edge.axis(), p.crease().plus(-outward(p.Edge.side()), p.spine.half()))
	b.flat, b.at[space] = space, thick(middle)
	inside := on.face.inside
	low, high := on.origin[inside.axis], p.origin[inside.axis]
	if inside.sign*p.sense() < 0 {
		low, high = high, low
	}
	b.at[inside.axis] = stretch{low, high}
	return b
}

// outOf is the way in which a panel that is folded by 180 degrees comes to lie off its
// parent.
func (p *plate) outOf() way { return way{p.face.inside.axis, -p.face.inside.sign * p.sense()} }

// rolls reports whether a panel is folded flat to the same sense as its parent, so that
// it lies between that and what that was folded onto; one that is stuck onto the far
// side of that goes round both.
func (v *derivation) rolls(p *plate) bool {
	on := &v.panels[p.parent]
	if on.Angle != 180 || on.parent < 0 || p.outOf() != on.outOf().back() {
		return false
	}
	return !slices.ContainsFunc(v.Joins, func(j Join) bool {
		a, b := j.A.Panel, j.B.Panel
		if j.Type == Clear {
			return b == p.Name && a == on.On
		}
		return (j.Type == Glue || j.Type == Lies) && (a == p.Name && b == on.On && (j.Face == pattern.Outside) == (on.Fold == pattern.Valley) ||
			b == p.Name && a == on.On && (j.Face == pattern.Inside) == (p.Fold == pattern.Valley))
	})
}
