package assembly

import (
	"slices"

	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// taking is a closed pattern that is taken apart.
type taking struct {
	p      *pattern.Pattern
	rig    *fold.Rig
	pose   *fold.Pose
	links  []link
	group  []int    // by unit: those that have not been moved apart have one number
	offset fold.Vec // of the contents from where they were at first
	out    bool     // the contents have been taken out, or there are none
	nests  []bool   // by nesting of the pattern: it has been parted
	locks  []bool   // by lock of the pattern: it has been parted
	slack  float64  // mm by which rounded plates may press into one another
	tried  int      // poses of pairs, in all

	// Of the move that is looked at:
	flex   float64  // mm by which the stock gives way where something is moved past it
	moving []bool   // by plate
	movers []int    // the plates that move
	labels []uint64 // of each of them: which openings move it
	others []int    // what could be in their way
	duos   []duo
}

// link holds two plates together: a glue area or a joint.
type link struct {
	live  bool
	own   int // the plate that the area is stated on, or the first cut
	other int
	area  Area
	joint Joint
	glue  *pattern.Glue // nil for a joint
}

// newTaking begins with the closed pattern.
func newTaking(p *pattern.Pattern, slack float64) (*taking, bool) {
	rig, ok := fold.NewRig(p)
	if !ok {
		return nil, false
	}
	t := &taking{p: p, rig: rig, pose: rig.Closed(), slack: slack, group: make([]int, len(rig.Units)),
		nests: make([]bool, len(p.Nests)), locks: make([]bool, len(p.Locks)),
		moving: make([]bool, len(rig.Plates))}
	for u := range rig.Units {
		t.addLinks(u)
	}
	t.out = rig.Units[len(rig.Units)-1].Piece >= 0
	return t, true
}

// addLinks lists what is glued and locked in a unit, and what of it is glued to
// another one.
func (t *taking) addLinks(u int) {
	unit := &t.rig.Units[u]
	if unit.Piece < 0 {
		return
	}
	piece := &t.p.Pieces[unit.Piece]
	for k := range piece.Glues {
		t.addGlue(u, u, Area{-1, unit.Piece, k}, &piece.Glues[k])
	}
	for k, j := range piece.Joints {
		t.links = append(t.links, link{live: true, own: t.plate(u, j.PanelA), other: t.plate(u, j.PanelB), joint: Joint{unit.Piece, k}})
	}
	for b := range t.p.Bonds {
		bond := &t.p.Bonds[b]
		if bond.A != unit.Piece {
			continue
		}
		v := slices.IndexFunc(t.rig.Units, func(v fold.Unit) bool { return v.Piece == bond.B && v.Copy == unit.Copy })
		for k := range bond.Glues {
			t.addGlue(u, v, Area{b, bond.A, k}, &bond.Glues[k])
		}
	}
}

func (t *taking) addGlue(u, v int, area Area, g *pattern.Glue) {
	t.links = append(t.links, link{live: true, own: t.plate(u, g.Panel), other: t.plate(v, g.To), area: area, glue: g})
}

// plate returns the plate of a panel of a unit, the middle one if it bends.
func (t *taking) plate(unit, panel int) int {
	var plates []int
	for _, i := range t.rig.Units[unit].Plates {
		if t.rig.Plates[i].Panel == panel {
			plates = append(plates, i)
		}
	}
	slices.Sort(plates)
	return plates[len(plates)/2]
}

// crosses reports whether a link leads from the plates marked to others.
func (l *link) crosses(marked []bool) bool { return l.live && marked[l.own] != marked[l.other] }

// body returns the units that are glued together with one, or were.
func (t *taking) body(unit int) []int {
	return t.units(func(u *fold.Unit) bool { return u.Body == t.rig.Units[unit].Body })
}

// units lists those that are of a sort.
func (t *taking) units(of func(u *fold.Unit) bool) (units []int) {
	for u := range t.rig.Units {
		if of(&t.rig.Units[u]) {
			units = append(units, u)
		}
	}
	return units
}

// state is a pose that can be gone back to.
type state struct {
	turned []float64
	away   []fold.Frame
}

// keep keeps the pose.
func (t *taking) keep() state {
	return state{slices.Clone(t.pose.Turned), slices.Clone(t.pose.Away)}
}

// goBack goes back to a pose.
func (t *taking) goBack(s state) {
	copy(t.pose.Turned, s.turned)
	copy(t.pose.Away, s.away)
	t.pose.LayAll()
}
