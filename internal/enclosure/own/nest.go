package own

import (
	"slices"

	"creasefit/internal/pattern"
)

// rim is a plate, or the spine that it hangs by.
type rim struct {
	panel int
	spine bool
}

// rimOf is what a lid lies on: what reaches farthest of the piece that it goes over.
func (s *sight) rimOf(lid *plate) rim {
	on := &s.panels[lid.base]
	b := &s.blocks[s.farthest(s.pieces[on.piece], on.face.inside)]
	return rim{b.panel, b.spine}
}

// farthest is the one of several blocks that reaches farthest in a way: of some that reach
// as far the first, before all that of the panel that the contents lie on.
func (s *sight) farthest(all []int, to way) int {
	far := all[0]
	for _, i := range all[1:] {
		by := float64(to.sign) * (s.spots[i].face(to) - s.spots[far].face(to))
		if by > touching || by > -touching && s.ofFloor(i) && !s.ofFloor(far) {
			far = i
		}
	}
	return far
}

// ofFloor reports whether a block is the panel that the contents lie on, or a spine at it.
func (r *derived) ofFloor(block int) bool {
	b := &r.blocks[block]
	return b.panel == r.floor || b.spine && r.panels[b.panel].parent == r.floor
}

// around are the blocks of what the contents lie in, and the lids on its rim.
func (r *derived) around() []int {
	piece := r.panels[r.floor].piece
	all := slices.Clip(r.pieces[piece])
	for i := range r.blocks {
		if p := &r.panels[r.blocks[i].panel]; p.lid && r.panels[p.base].piece == piece {
			all = append(all, i)
		}
	}
	return all
}

// outside is how far the piece of a root reaches, and the piece as the thing that another
// one goes over.
func (s *sight) outside(root int) (reach pairs, t thing) {
	p := &s.panels[root]
	t.ways = p.ways()
	all := s.pieces[p.piece]
	for k, w := range t.ways {
		reach[k] = [2]int{s.farthest(all, way{w.axis, -1}), s.farthest(all, way{w.axis, 1})}
		t.at[w.axis] = [2]float64{s.spots[reach[k][0]][w.axis][0], s.spots[reach[k][1]][w.axis][1]}
	}
	return reach, t
}

// sizes are those of what is shown to reach so far.
func (r *derived) sizes(ways [3]way, reach pairs) (sizes [3]form) {
	for k, w := range ways {
		sizes[k] = r.blocks[reach[k][1]].at[w.axis].high.plus(-1, r.blocks[reach[k][0]].at[w.axis].low)
	}
	return sizes
}

// fitted finds the clearances of a design: of the contents, or of its outside in what it
// goes into, and of its pieces between one another.
func (r *derived) fitted() (found []clearance) {
	var contents [3]form
	for k := range contents {
		contents[k] = only(width+k, parts)
	}
	root := r.rootOf(0)
	if !r.goesInto() {
		found = r.clearances(r.shown.walls, r.panels[r.floor].ways(), contents, clearance{})
		papers := func(c clearance) bool { return !c.form.has(r.first) } // alone need no fit
		return append(slices.DeleteFunc(found, papers), r.nests()...)
	}
	outside := r.sizes(r.panels[root].ways(), r.shown.pieces[0][0])
	for along, size := range outside {
		k := along
		if r.Turned && along < 2 {
			k = 1 - along
		}
		if r.Into[k] {
			found = append(found, clearance{axis: pattern.Axis(k), form: contents[k].plus(-1, size), low: root})
		}
	}
	return found
}

// nests finds the clearances of pieces that go over others: between the plates of the
// outer one, less the inner one's outside.
func (r *derived) nests() (found []clearance) {
	for i, n := 0, 0; i < len(r.panels); i++ {
		p := &r.panels[i]
		if !p.nested {
			continue
		}
		seen := r.shown.pieces[n]
		n++
		piece, on := &r.Pieces[p.piece], &r.panels[p.base]
		between, ways := seen[1], on.ways()
		if p.lid { // it lies on the rim
			between[2] = [2]int{-1, -1}
		}
		for k := range ways[:2] {
			if p.lid && (between[k][0] < 0 || between[k][1] < 0) {
				r.fault(piece.place, piece.Name+" has nothing that keeps "+piece.Over+" in along the "+axes[k], "hang walls on both sides of it")
			}
		}
		own := r.clearances(between, ways, r.sizes(ways, seen[0]), clearance{between: piece.nesting(), fit: piece.Fit})
		if piece.Round != "" && len(own) == 0 {
			r.fault(piece.place, piece.Name+" has no panels on both sides of "+piece.Round, "fold panels of it up and over "+piece.Round)
		}
		found = append(found, own...)
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

// down states that a wall of a lid comes down to the table but for a little, wherever
// in that.
func (r *derived) down(p *plate, own form, place string) {
	lid := &r.panels[p.parent]
	if !lid.lid {
		r.fault(place, p.Name+" hangs on no lid that it could come down from", "say down of the walls of a piece that goes over another one")
		return
	}
	on := &r.panels[lid.base]
	out := on.face.inside
	above := lid.origin[out.axis].plus(-1, faceOn(&on.foot, out.back())).times(out.sign).plus(-1, own)
	r.rows = append(r.rows, row{form: above, room: [2]form{nil, only(little, parts)}, name: "height of " + p.Name, place: place})
}
