package own

import (
	"slices"

	"creasefit/internal/pattern"
)

// touching is how near in nanometres two faces lie that are in contact; forms are
// exact, so that it is above all rounding of their values alone.
const touching = 2.0

// stretch is where a plate begins and ends along an axis of space.
type stretch struct{ low, high form }

// block is a plate with its thickness.
type block struct {
	panel int
	spine bool // the spine of the fold that the panel hangs by
	at    [3]stretch
	flat  int // the axis that it is square to
}

// fold places every panel, in the order they are folded in, at the values known.
func (v *derivation) fold() {
	for n, i := range v.order {
		v.place(i, v.order[:n])
	}
}

// place turns a panel about its fold. A fold of 180 degrees takes up what lies
// between the two panels, and a caliper.
func (v *derivation) place(i int, before []int) {
	p := &v.panels[i]
	p.spine = nil
	if p.parent < 0 {
		p.origin = [3]form{v.none(), v.none(), v.none()}
		if p.base >= 0 {
			v.lay(p)
		}
		return
	}
	on := &v.panels[p.parent]
	axis, _ := p.Edge.along()
	at, old, turned := v.crease(p), on.face.own(axis), p.face.own(axis)
	p.origin = on.origin
	p.move(old.axis, old.sign, at)
	p.move(turned.axis, -turned.sign, at)
	if p.Angle == 180 {
		p.spine = v.between(i, before)
		p.move(on.face.inside.axis, on.face.inside.sign*v.sense(p), p.spine)
	}
}

// sense is the side of its parent that a fold leads to: 1 for the inside.
func (v *derivation) sense(p *plate) int64 {
	if p.Fold == pattern.Mountain {
		return -1
	}
	return 1
}

// move shifts a plate along an axis of space.
func (p *plate) move(axis int, times int64, by form) { p.origin[axis] = p.origin[axis].plus(times, by) }

// crease is where on the blank the fold of a panel lies.
func (v *derivation) crease(p *plate) form {
	axis, up := p.Edge.along()
	if up {
		return p.spans[axis][0]
	}
	return p.spans[axis][1]
}

// lies returns where a coordinate on the blank comes to lie along the axis that it
// is turned to.
func (p *plate) lies(axis int, at form) (space int, where form) {
	w := p.face.own(axis)
	return w.axis, p.origin[w.axis].plus(w.sign, at)
}

// block is the plate of a panel, without what folds of 180 degrees take of it.
func (v *derivation) block(i int) block {
	p := &v.panels[i]
	spans := p.spans
	if p.spine != nil {
		axis, up := p.Edge.along()
		spans[axis] = trimmed(spans[axis], !up, p.spine)
	}
	for k := range v.panels {
		if c := &v.panels[k]; c.parent == i && c.spine != nil {
			axis, up := c.Edge.along()
			spans[axis] = trimmed(spans[axis], up, c.spine)
		}
	}
	b := block{panel: i, flat: p.face.inside.axis}
	for axis, s := range spans {
		space, low := p.lies(axis, s[0])
		_, high := p.lies(axis, s[1])
		if p.face.own(axis).sign < 0 {
			low, high = high, low
		}
		b.at[space] = stretch{low, high}
	}
	b.at[b.flat] = v.thick(p.origin[b.flat])
	return b
}

// trimmed takes half of a spine from one end of a span.
func trimmed(span [2]form, high bool, spine form) [2]form {
	if high {
		return [2]form{span[0], span[1].plus(-1, spine.half())}
	}
	return [2]form{span[0].plus(1, spine.half()), span[1]}
}

// thick is the stretch of the stock about its middle.
func (v *derivation) thick(middle form) stretch {
	return stretch{middle.with(caliper, -parts/2), middle.with(caliper, parts/2)}
}

// spineOf is the spine of a panel's fold of 180 degrees.
func (v *derivation) spineOf(i int) block {
	p := &v.panels[i]
	on := &v.panels[p.parent]
	axis, up := p.Edge.along()
	back := int64(1)
	if up {
		back = -1
	}
	b := v.block(i)
	b.spine = true
	space, middle := on.lies(axis, v.crease(p).plus(back, p.spine.half()))
	b.flat, b.at[space] = space, v.thick(middle)
	low, high := on.origin[on.face.inside.axis], p.origin[on.face.inside.axis]
	if on.face.inside.sign*v.sense(p) < 0 {
		low, high = high, low
	}
	b.at[on.face.inside.axis] = stretch{low, high}
	return b
}

// blocks lists all plates of a piece, and of those that are glued onto it.
func (v *derivation) blocks(piece int) []block {
	var all []block
	for i := range v.panels {
		if v.bodies[v.panels[i].piece] != v.bodies[piece] {
			continue
		}
		all = append(all, v.block(i))
		if v.panels[i].spine != nil {
			all = append(all, v.spineOf(i))
		}
	}
	return all
}

// between is the spine of a fold of 180 degrees: what lies on the parent where the
// panel comes down, flaps of its own that are folded in under it, and a caliper.
func (v *derivation) between(i int, before []int) form {
	p := &v.panels[i]
	on := &v.panels[p.parent]
	out := v.outOf(p)
	under := on.spine != nil && v.rolls(p) // under its parent, where room was left for it
	ground := on.origin[out.axis].with(caliper, out.sign*parts/2)
	top := ground
	if !v.goesInto() && (p.parent == v.floor && out == on.face.inside || i == v.floor && out == p.face.inside.back()) {
		top = top.with(thickness, out.sign*parts)
	}
	for again := !under; again; {
		again = false
		for _, k := range before {
			if face, ok := v.stacked(i, k, out, top); ok {
				top, again = face, true
			}
		}
	}
	papers := int64(1)
	if !under && v.foldsUnder(i) {
		papers = 2
	}
	return top.plus(-1, ground).times(out.sign).with(caliper, papers*parts)
}

// outOf is the way in which a panel that is folded by 180 degrees comes to lie off its
// parent.
func (v *derivation) outOf(p *plate) way {
	return way{p.face.inside.axis, -p.face.inside.sign * v.sense(p)}
}

// foldsUnder reports whether a panel that comes down has a flap that is
// folded flat onto its underside first and comes to lie over what it comes down on.
func (v *derivation) foldsUnder(i int) bool {
	for k := range v.panels {
		if c := &v.panels[k]; c.parent == i && c.Angle == 180 && v.rolls(c) && v.meets(c) {
			return true
		}
	}
	return false
}

// rolls reports whether a panel is folded flat to the same sense as its parent, so that
// it lies between that and what that was folded onto; one that is stuck onto the far
// side of that goes round both.
func (v *derivation) rolls(p *plate) bool {
	on := &v.panels[p.parent]
	if on.Angle != 180 || on.parent < 0 || v.outOf(p) != v.outOf(on).back() {
		return false
	}
	return !slices.ContainsFunc(v.Joins, func(j Join) bool {
		a, b := &v.panels[v.index[j.A.Panel]], &v.panels[v.index[j.B.Panel]]
		if j.Type == Clear {
			return b == p && a.Name == on.On
		}
		return (j.Type == Glue || j.Type == Lies) && (a == p && b.Name == on.On && (j.Face == pattern.Outside) == (on.Fold == pattern.Valley) ||
			b == p && a.Name == on.On && (j.Face == pattern.Inside) == (p.Fold == pattern.Valley))
	})
}

// meets reports whether a panel that is folded flat under its parent reaches what that
// was folded onto: two panels that meet edge to edge do not.
func (v *derivation) meets(p *plate) bool {
	on := &v.panels[p.parent]
	below := &v.panels[on.parent]
	axis, _ := p.Edge.along()
	if other, _ := on.Edge.along(); other != axis {
		return true
	}
	long := func(q *plate) float64 { return q.spans[axis][1].at(v.values) - q.spans[axis][0].at(v.values) }
	return long(p)+long(below) > long(on)+touching
}

// times is so many times a form.
func (f form) times(n int64) form { return make(form, len(f)).plus(n, f) }

// stacked returns the far face of a plate that lies on a pile where a panel comes
// down, or over it by no more than the room that the contents have.
func (v *derivation) stacked(i, k int, out way, top form) (face form, ok bool) {
	q := &v.panels[k]
	if k == v.panels[i].parent || q.piece != v.panels[i].piece || q.face.inside.axis != out.axis {
		return nil, false
	}
	near := q.origin[out.axis].with(caliper, -out.sign*parts/2)
	gap := float64(out.sign) * (near.at(v.values) - top.at(v.values))
	if gap < -touching || gap > touching+float64(v.in.Fit.Max.Nanometres()) || !v.comesDownOn(i, k) {
		return nil, false
	}
	return q.origin[out.axis].with(caliper, out.sign*parts/2), true
}

// comesDownOn reports whether a panel that is folded flat comes to lie over a plate.
func (v *derivation) comesDownOn(i, k int) bool {
	p, q := &v.panels[i], &v.panels[k]
	for axis := range 2 {
		space, low := p.lies(axis, p.spans[axis][0])
		_, high := p.lies(axis, p.spans[axis][1])
		for other := range 2 {
			if q.face.own(other).axis != space {
				continue
			}
			_, from := q.lies(other, q.spans[other][0])
			_, to := q.lies(other, q.spans[other][1])
			if v.overlap(low, high, from, to) <= touching {
				return false
			}
		}
	}
	return true
}

// overlap is how much two stretches have in common, in nanometres.
func (v *derivation) overlap(a, b, c, d form) float64 {
	x, y, z, w := a.at(v.values), b.at(v.values), c.at(v.values), d.at(v.values)
	return min(max(x, y), max(z, w)) - max(min(x, y), min(z, w))
}
