package own

import "creasefit/internal/pattern"

// facing says where a plate's own directions point in space.
type facing struct{ across, up, inside way }

// way is a direction along an axis of space.
type way struct {
	axis int
	sign int64
}

func (w way) back() way { return way{w.axis, -w.sign} }

// to is the way to a side of what runs in a way.
func (w way) to(side int) way { return way{w.axis, w.sign * outward(side)} }

// turn says where a panel's directions point once it is folded; roots lie as they
// are, lids face down.
func (v *derivation) turn(i int) {
	p := &v.panels[i]
	if p.parent < 0 {
		p.face = facing{way{0, 1}, way{1, 1}, way{2, 1}}
		if p.base >= 0 {
			p.face = v.panels[p.base].face
		}
		if p.lid {
			p.face.across, p.face.inside = p.face.across.back(), p.face.inside.back()
		}
		return
	}
	on := v.panels[p.parent].face
	axis, side := p.Edge.axis(), p.Edge.side()
	out := on.own(axis).to(side)
	turned, inside := out, on.inside
	switch {
	case p.Fold == pattern.Flat:
	case p.Angle == 180:
		turned, inside = out.back(), on.inside.back()
	case p.Fold == pattern.Valley:
		turned, inside = on.inside, out.back()
	default:
		turned, inside = on.inside.back(), out
	}
	p.face = on
	p.face.inside = inside
	if turned = turned.to(side); axis == 0 {
		p.face.across = turned
	} else {
		p.face.up = turned
	}
}

// own is the direction of a panel along a side of its blank.
func (f *facing) own(axis int) way {
	if axis == 0 {
		return f.across
	}
	return f.up
}

// blank is the side of a panel's blank that runs along an axis of space, up if not across.
func (f *facing) blank(axis int) int {
	if f.across.axis == axis {
		return 0
	}
	return 1
}

// orderFolds lists the panels so that what lies inside is folded first: a panel
// after its parent and after what is glued inside it or what its fold goes round, else as
// they are listed.
func (v *derivation) orderFolds() {
	before := v.parents()
	for i := range v.panels {
		if p := &v.panels[i]; p.nested {
			for k := range v.panels {
				if v.bodies[v.panels[k].piece] == v.bodies[v.panels[p.base].piece] {
					before[i] = append(before[i], k)
				}
			}
		}
	}
	for i := range v.Joins {
		j := &v.Joins[i]
		if j.Type != Glue && j.Type != Lies && j.Type != Clear {
			continue
		}
		a, b := v.index[j.A.Panel], v.index[j.B.Panel]
		if (j.Face == pattern.Outside) != v.crosses(j) {
			a, b = b, a
		}
		before[b] = append(before[b], a)
	}
	v.order = afterThose(afterThose(v.inTurn(), before), v.parents())
}

// parents lists what panels come after at the least: the one that each hangs on.
func (v *derivation) parents() [][]int {
	before := make([][]int, len(v.panels))
	for i := range v.panels {
		if p := v.panels[i].parent; p >= 0 {
			before[i] = []int{p}
		}
	}
	return before
}

// afterThose keeps an order but for panels that come before those that come before them.
func afterThose(order []int, before [][]int) []int {
	sorted, seen := make([]int, 0, len(before)), make([]bool, len(before))
	var visit func(i int)
	visit = func(i int) {
		if seen[i] {
			return
		}
		seen[i] = true
		for _, k := range before[i] {
			visit(k)
		}
		sorted = append(sorted, i)
	}
	for _, i := range order {
		visit(i)
	}
	return sorted
}

// inTurn lists the panels as they are given.
func (v *derivation) inTurn() []int {
	all := make([]int, len(v.panels))
	for i := range all {
		all[i] = i
	}
	return all
}
