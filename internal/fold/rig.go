package fold

import (
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// Rig is a pattern ready to be posed: its creases turned one by one, its pieces
// and its contents moved as wholes. What stands still lies as in Fold: the root of
// the first piece stays where it is on the blank.
//
// A piece with curved creases bends as far as the one of them that is turned
// farthest. Its straight creases turn on meanwhile, so that a tube of it stays
// closed while it is pressed flat.
type Rig struct {
	Plates []Part  // those of Fold in its order, then the contents if there are any
	Hinges []Hinge // every crease of every copy of a piece
	Units  []Unit  // every copy of a piece, then the contents
	Room   Room    // of the contents
	Half   float64 // of the caliper, mm

	m     *model
	order []int // plates, each after the one that it hangs on
	flat  []flatPlate
	pairs []pairing // by pair of plates
}

// Part is one plate of a rig: a panel, a facet of one, a spine, or the contents.
type Part struct {
	Name   string
	Panel  int // of the pattern; -1 for a spine and for the contents
	Hinge  int // that it turns about; -1 for a root and for a facet that bends with its panel
	Parent int // the plate that it hangs on; -1 for a root
	Unit   int
}

// Hinge is one crease of one copy of a piece.
type Hinge struct {
	Unit, Crease int
	From, To     int     // plates, the middle ones where panels bend
	Far          []int   // the plates that it turns, each after the one that it hangs on
	Degrees      float64 // turned when closed; less than zero for a mountain
}

// Unit is one copy of a piece, or the contents.
type Unit struct {
	Piece, Copy int   // Piece is -1 for the contents
	Body        int   // the first of the units that are glued together
	Root        int   // plate
	Plates      []int // each after the one that it hangs on
}

// flatPlate is a plate on the blank and how it turns about its hinge.
type flatPlate struct {
	turning
	half    float64
	still   Frame    // of a root: where it is when closed
	rings   [][]spot // its convex parts
	curved  bool     // its hinge is curved: it bends the unit
	bends   bool     // it turns as far as its unit bends
	unbowed float64  // degrees that its hinge turns beyond its own while the unit lies flat
	share   float64  // of the hinge's turn: half beside a spine
}

// NewRig makes a pattern ready to be posed; it is false for a pattern whose
// indices point nowhere.
func NewRig(p *pattern.Pattern) (*Rig, bool) {
	if len(unsound(p)) > 0 {
		return nil, false
	}
	m := build(p, 1)
	r := &Rig{m: m, Half: m.half, Plates: make([]Part, len(m.plates)), flat: make([]flatPlate, len(m.plates))}
	for i := range m.plates {
		r.addUnit(i)
	}
	for i := range m.plates {
		r.addPlate(p, i)
	}
	r.sortPlates()
	for _, i := range r.order {
		u := &r.Units[r.Plates[i].Unit]
		u.Plates = append(u.Plates, i)
	}
	for h := range r.Hinges {
		r.Hinges[h].Far = r.far(h)
	}
	if !p.Cavity.Into {
		r.addContents()
	}
	r.pairs = make([]pairing, len(r.Plates)*(len(r.Plates)-1)/2)
	return r, true
}

// addUnit begins a unit at its first plate, or takes the plate into it.
func (r *Rig) addUnit(i int) {
	pl := &r.m.plates[i]
	u := slices.IndexFunc(r.Units, func(u Unit) bool { return u.Piece == pl.piece && u.Copy == pl.copy })
	if u < 0 {
		u = len(r.Units)
		body := slices.IndexFunc(r.Units, func(v Unit) bool { return v.Copy == pl.copy && r.m.body[v.Piece] == r.m.body[pl.piece] })
		if body < 0 {
			body = u
		}
		r.Units = append(r.Units, Unit{Piece: pl.piece, Copy: pl.copy, Body: body})
	}
	if pl.parent < 0 {
		r.Units[u].Root = i
	}
	r.Plates[i] = Part{Name: r.m.name(pl), Panel: r.m.whole(pl), Hinge: -1, Parent: pl.parent, Unit: u}
}

// addPlate works out how a plate hangs on the one before it.
func (r *Rig) addPlate(p *pattern.Pattern, i int) {
	pl, f := &r.m.plates[i], &r.flat[i]
	pl.convex = len(pl.hole) == 0 && convex(pl.flat)
	if f.rings = [][]spot{pl.flat}; !pl.convex {
		f.rings = trapezoids(pl)
	}
	f.half, f.still = r.m.half, pl.move
	if pl.parent < 0 {
		return
	}
	f.turning, f.share = r.m.turningOf(pl), 1
	if pl.panel < 0 || r.m.plates[pl.parent].panel < 0 { // a spine, or beyond one
		f.share = 0.5
	}
	crease, curved := r.crease(p, pl)
	f.curved, f.bends = curved, crease < 0
	if crease < 0 {
		return
	}
	if bow := r.bow(pl.piece, &r.m.pattern.Pieces[pl.piece].Creases[pl.crease]); !curved {
		f.unbowed = math.Copysign(bow, f.degrees)
	}
	r.Plates[i].Hinge = r.hinge(i, crease, f.degrees)
}

// crease returns the pattern's crease that a plate hangs by, -1 for a bend of its
// panel, and whether it is curved.
func (r *Rig) crease(p *pattern.Pattern, pl *plate) (crease int, curved bool) {
	facets := r.m.facets[pl.piece]
	if facets == nil {
		return pl.crease, false
	}
	c := &r.m.pattern.Pieces[pl.piece].Creases[pl.crease]
	from, to := facets[c.From], facets[c.To]
	own := p.Pieces[pl.piece].Creases
	crease = slices.IndexFunc(own, func(c pattern.Crease) bool { return c.From == from && c.To == to && from != to })
	return crease, crease >= 0 && own[crease].Bends()
}

// bow returns by how many degrees in all a bent panel turns from side to side
// when it is closed; zero for a crease beside no bent panel.
func (r *Rig) bow(piece int, c *pattern.Crease) (degrees float64) {
	facets := r.m.facets[piece]
	if facets == nil {
		return 0
	}
	for k := range r.m.pattern.Pieces[piece].Creases {
		d := &r.m.pattern.Pieces[piece].Creases[k]
		if facets[d.From] == facets[c.From] && facets[d.To] == facets[c.From] {
			degrees += d.Angle
		}
	}
	return degrees
}

// hinge returns the hinge of a plate; degrees is what its crease turns.
func (r *Rig) hinge(i, crease int, degrees float64) int {
	unit := r.Plates[i].Unit
	h := slices.IndexFunc(r.Hinges, func(h Hinge) bool { return h.Unit == unit && h.Crease == crease })
	if h < 0 {
		h = len(r.Hinges)
		from := r.Plates[i].Parent
		if r.m.plates[from].panel < 0 { // beyond a spine
			from = r.Plates[from].Parent
		}
		r.Hinges = append(r.Hinges, Hinge{Unit: unit, Crease: crease, From: from, Degrees: degrees})
	}
	if r.m.plates[i].panel >= 0 {
		r.Hinges[h].To = i
	}
	return h
}

// sortPlates orders the plates so that each comes after the one it hangs on.
func (r *Rig) sortPlates() {
	done := make([]bool, len(r.Plates))
	for len(r.order) < len(r.Plates) {
		before := len(r.order)
		for i := range r.Plates {
			if at := r.Plates[i].Parent; !done[i] && (at < 0 || done[at]) {
				done[i], r.order = true, append(r.order, i)
			}
		}
		if len(r.order) == before {
			return // what hangs on nothing stays where it is
		}
	}
}

// far returns the plates that a hinge turns.
func (r *Rig) far(hinge int) (far []int) {
	turned := make([]bool, len(r.Plates))
	for _, i := range r.order {
		pl := &r.Plates[i]
		if pl.Hinge == hinge || pl.Parent >= 0 && turned[pl.Parent] {
			turned[i], far = true, append(far, i)
		}
	}
	return far
}

// Bent reports whether a unit is made of panels that bend.
func (r *Rig) Bent(unit int) bool {
	piece := r.Units[unit].Piece
	return piece >= 0 && r.m.facets[piece] != nil
}
