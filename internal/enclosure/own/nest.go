package own

import (
	"creasefit/internal/enclosure"
	"creasefit/internal/pattern"
)

// end is how far the plates of a piece reach along a way.
func (v *derivation) end(piece int, to way) form {
	var far form
	for _, b := range v.blocks(piece) {
		at := b.at[to.axis].high
		if to.sign < 0 {
			at = b.at[to.axis].low
		}
		if far == nil || float64(to.sign)*(at.at(v.values)-far.at(v.values)) > touching {
			far = at
		}
	}
	return far
}

// lids are the plates that lie on the rim of a piece.
func (v *derivation) lids(piece int) (all []block) {
	for i := range v.panels {
		if p := &v.panels[i]; p.lid && v.panels[p.base].piece == piece {
			all = append(all, v.block(i))
		}
	}
	return all
}

// nests finds the clearances of pieces that go over others: between the plates of the
// outer one, less the inner one's outside.
func (v *derivation) nests() (found []clearance) {
	for i := range v.panels {
		p := &v.panels[i]
		if !p.nested {
			continue
		}
		on := &v.panels[p.base]
		piece := &v.Pieces[p.piece]
		t := v.outsideOf(on)
		all, before := v.blocks(p.piece), len(found)
		for k, w := range t.ways {
			if p.lid && k == 2 {
				break // it lies on the rim
			}
			low, high := v.nearest(all, t, w.axis)
			if low == nil || high == nil {
				if p.lid {
					v.fault(piece.place, piece.Name+" has nothing that keeps "+piece.Over+" in along the "+axes[k], "hang walls on both sides of it")
				}
				continue // it slides in that way
			}
			f := high.at[w.axis].low.plus(-1, low.at[w.axis].high).plus(-1, t.sizes[k])
			found = append(found, clearance{axis: pattern.Axis(k), form: f, between: piece.nesting(),
				wanted: enclosure.FitNamed(piece.Fit, v.in.Unit), low: low.panel, high: high.panel})
		}
		if piece.Round != "" && len(found) == before {
			v.fault(piece.place, piece.Name+" has no panels on both sides of "+piece.Round, "fold panels of it up and over "+piece.Round)
		}
	}
	return found
}

// nesting is what a piece and the one inside it are called together.
func (p *Piece) nesting() string {
	if p.Round != "" {
		return p.Round + " in " + p.Name
	}
	return p.Name + " over " + p.Over
}

// outsides finds the clearances of a design that goes into something: its size, less the
// outside.
func (v *derivation) outsides() (found []clearance) {
	root := v.rootOf(0)
	t := v.outsideOf(&v.panels[root])
	for k, into := range v.Into {
		if into {
			f := v.only(width+k, parts).plus(-1, t.sizes[k])
			found = append(found, clearance{axis: pattern.Axis(k), form: f, wanted: v.in.Fit, low: root, high: root})
		}
	}
	return found
}

// outsideOf is a piece as the thing that another one goes over.
func (v *derivation) outsideOf(root *plate) *thing {
	t := &thing{ways: [3]way{root.face.across, root.face.up, root.face.inside}}
	for k, w := range t.ways {
		low, high := v.end(root.piece, way{w.axis, -1}), v.end(root.piece, way{w.axis, 1})
		t.sizes[k] = high.plus(-1, low)
		t.at[w.axis] = [2]float64{low.at(v.values), high.at(v.values)}
	}
	return t
}

// down states that a wall of a lid comes down to the table but for a little, wherever
// in that.
func (v *derivation) down(p *plate, own form, place string) {
	lid := &v.panels[p.parent]
	if !lid.lid {
		v.fault(place, p.Name+" hangs on no lid that it could come down from", "say down of the walls of a piece that goes over another one")
		return
	}
	on := &v.panels[lid.base]
	out := on.face.inside
	table := on.origin[out.axis].with(caliper, -out.sign*parts/2)
	above := lid.origin[out.axis].plus(-1, table).times(out.sign).plus(-1, own)
	v.rows = append(v.rows, row{form: above, room: enclosure.Range{Max: v.in.Little()}, name: "height of " + p.Name, place: place})
}

// rest lays the lids on the rims of what they go over, and pieces that go round others
// under them.
func (p *planner) rest(whole *pattern.Pattern, layouts []*layout) {
	for i := range p.panels {
		q := &p.panels[i]
		if !q.nested {
			continue
		}
		on := &p.panels[q.base]
		l, under := layouts[q.piece], layouts[on.piece]
		own, base := l.piece.Panels[l.at[i]].Outline, under.piece.Panels[under.at[q.base]].Outline
		out := on.face.inside
		above := q.origin[out.axis].plus(-1, on.origin[out.axis]).times(out.sign).exact(l.values)
		at := pattern.Place{Piece: q.piece, On: on.piece, Above: above, X: centre(base, false).Sub(centre(own, false)), Y: centre(base, true).Sub(centre(own, true))}
		if q.lid {
			at.Lie, at.X = pattern.FaceDown, centre(base, false).Add(centre(own, false))
		}
		whole.Places = append(whole.Places, at)
		n := pattern.Nesting{Name: p.Pieces[q.piece].nesting(), Inner: on.piece, Outer: q.piece}
		for k := range p.fits {
			if p.fits[k].between == n.Name {
				n.Axes = append(n.Axes, p.fits[k].axis)
			}
		}
		whole.Nests = append(whole.Nests, n)
	}
}
