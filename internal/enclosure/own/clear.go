package own

import "slices"

// allowanceName is what the allowance for the caliper is called.
const allowanceName = "allowance"

// allows reports whether anything is stated with an allowance for the caliper.
func (d *Design) allows() bool {
	return slices.ContainsFunc(d.Joins, func(j Join) bool { return j.Short.Allowance || j.Past.Allowance || j.Play.Allowance }) ||
		slices.ContainsFunc(d.panels(), func(p *Panel) bool { return p.Narrower.Allowance || p.Reach.Less.Allowance })
}

// allowanceOf is the unknown of the allowance.
func (v *derivation) allowanceOf() int {
	return v.first + slices.IndexFunc(v.unknowns, func(u unknown) bool { return u.allows })
}

// allowing states that an allowance is a caliper at the least, and as little more as a
// ruler asks for.
func (r *derived) allowing() {
	if r.allows() {
		own, least := only(caliper, parts), only(caliper, parts).plus(-1, only(more, parts))
		r.within(only(r.allowanceOf(), parts), [2]form{least, own.with(more, parts)}, allowanceName, "")
	}
}

// besides are the plates that the sides of a panel end before which are to be clear: the
// nearest on each side that stand in their way, but for those of panels that are folded later
// and end before this one.
func (s *sight) besides(i int) [2]int {
	p := &s.panels[i]
	if !p.Clear {
		return [2]int{-1, -1}
	}
	w, later := p.sideways(), s.order[slices.Index(s.order, i):]
	var all []int
	for _, b := range s.pieces[p.piece] {
		k := s.blocks[b].panel
		if q := &s.panels[k]; !(slices.Contains(later, k) && q.Clear && q.sideways().axis == p.face.inside.axis) {
			all = append(all, b)
		}
	}
	own := slices.IndexFunc(s.blocks, func(b block) bool { return b.panel == i && !b.spine })
	low, high := s.nearestAlong(&thing{at: s.spots[own]}, all, w.axis)
	beside := [2]int{low, high}
	if w.sign < 0 {
		beside = [2]int{high, low}
	}
	for side, b := range beside {
		if b >= 0 && s.beyond(p, side, b).at(s.values) < touching {
			beside[side] = -1
		}
	}
	return beside
}

// sideways is the way in which the sides of a panel lie apart.
func (p *plate) sideways() way {
	return p.face.own(1 - p.Edge.axis())
}

// beyond is how far a side of a panel would reach beyond half a paper before a plate, did
// it end where its parent does.
func (r *derived) beyond(p *plate, side, block int) form {
	across, out := 1-p.Edge.axis(), p.sideways().to(side)
	_, at := p.lies(across, p.spans[across][side].with(p.ends[side], outward(side)*parts))
	return at.plus(-1, faceOn(&r.blocks[block].at, out.back())).times(out.sign).with(caliper, parts/2)
}

// ending ends the sides of a panel half a paper before what is beside them, or where its
// parent does.
func (r *derived) ending(p *plate) {
	for side, b := range p.beside {
		end := only(p.ends[side], parts)
		if b >= 0 {
			end = end.plus(-1, r.beyond(p, side, b))
		}
		r.must(end, p.Name+" is clear of what is beside it", p.place)
	}
}
