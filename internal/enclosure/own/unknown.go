package own

import (
	"slices"
	"sync"

	"creasefit/internal/fault"
)

// unknown is something that the derivation looks for: how far a panel reaches, or
// how far the end of a panel lies inside its parent's corner.
type unknown struct {
	name, place string
	piece       int
	fixed       Amount // that the design gives it
	wide        bool   // it covers something or is folded flat, and is as wide as what a cut leaves
	least       []form // how far at the least, in place of what is usual
	axis        int    // of space, that it runs along: 0 to 2
	end         bool   // comes out as papers, and is set nowhere
	allows      bool   // it is the allowance for the caliper
	reading     int    // of the plan, -1 for an end
}

// derivation is a design in forms, as far as no folding is asked for.
type derivation struct {
	*Design
	first    int // of the unknowns
	unknowns []unknown
	panels   []plate // not folded
	index    map[string]int
	order    []int // in which the panels are folded
	bodies   []int // by piece: the first of the pieces that it is glued together with
	blanks   []blank
	readings int            // how many there are
	further  map[string]int // readings that are no unknowns, by what they are called
	crease   []int          // by panel: the place of its fold in its piece
	floor    int            // the panel that the contents lie on
	odd      fault.Faults   // with the pieces
	tried    sync.Once
	begin    *derived // what its trial came to, nil before and where that came to nothing

	lock   sync.Mutex
	folded []*derived // that were come to lately
}

// plate is a panel while it is folded.
type plate struct {
	*Panel
	piece, parent int // parent is -1 for a root
	spans         [2][2]form
	far, up       int // the unknowns of its extents; up is -1 but for a root
	ends          [2]int
	face          facing
	beside        [2]int // of one whose sides are clear: the blocks that they end before, -1 for none
	base          int    // of a root: the panel of another piece that it is glued onto, -1 for none
	under         bool   // it is glued onto the outside of that
	nested        bool   // its piece goes over that piece instead, or round it
	lid           bool   // it lies on the rim of that piece, face down

	// Once it is folded:
	origin [3]form    // where the lower left corner of the blank comes to lie
	foot   [3]stretch // where it lies, what folds of 180 degrees take of it included
	spine  form       // what a fold of 180 degrees takes up, nil for others
	pile   pile       // what that comes down on
	rim    rim        // of a lid: what it lies on
}

// newDerivation numbers the unknowns of a design and turns its panels.
func newDerivation(d *Design) *derivation {
	v := &derivation{Design: d, first: firstSize + len(d.Options), index: map[string]int{}}
	for i := range d.Pieces {
		for k := range d.Pieces[i].Panels {
			p := &d.Pieces[i].Panels[k]
			v.index[p.Name] = len(v.panels)
			v.panels = append(v.panels, plate{Panel: p, piece: i, parent: -1, base: -1, ends: [2]int{-1, -1}})
		}
	}
	for i := range v.panels {
		if on := v.panels[i].On; on != "" {
			v.panels[i].parent = v.index[on]
		}
	}
	if v.floor = v.rootOf(0); d.Holds != "" {
		v.floor = v.index[d.Holds]
	}
	v.bond()
	v.orderFolds()
	for _, i := range v.order {
		v.turn(i)
	}
	v.number()
	for _, i := range afterThose(v.inTurn(), v.parents()) {
		v.span(i)
	}
	v.layBlanks()
	v.set()
	return v
}

// number gives every reach, and every end that a glued panel hangs on, an unknown.
func (v *derivation) number() {
	if v.allows() {
		v.unknowns = append(v.unknowns, unknown{name: allowanceName, allows: true})
	}
	for i := range v.panels {
		p := &v.panels[i]
		to := p.Across
		if p.parent >= 0 {
			to = p.Reach
		}
		p.far, p.up = v.add(p, to, "", p.face.own(p.Edge.axis())), -1
	}
	for i := range v.panels {
		if p := &v.panels[i]; p.parent < 0 {
			p.up = v.add(p, p.Up, " height", p.face.up)
			if high := v.Pieces[p.piece].High; high != "" {
				v.of(p.up).name = high
			}
		}
	}
	for i := range v.panels {
		for side := range 2 {
			if v.panels[i].Clear {
				v.freeEnd(&v.panels[i], side)
			}
		}
	}
	for i := range v.Joins {
		if j := &v.Joins[i]; j.Type == Glue && !v.crosses(j) {
			v.loosen(&v.panels[v.index[j.A.Panel]])
			v.loosen(&v.panels[v.index[j.B.Panel]])
		}
	}
}

// loosen leaves the end of the panel that a glued one hangs on to be found, where
// that end is not how far the panel reaches.
func (v *derivation) loosen(glued *plate) {
	if glued.parent < 0 || glued.Angle != 90 {
		return
	}
	on := &v.panels[glued.parent]
	if on.parent >= 0 && on.Edge.axis() != glued.Edge.axis() {
		v.freeEnd(on, glued.Edge.side())
	}
}

// freeEnd leaves an end of a panel to be found.
func (v *derivation) freeEnd(p *plate, side int) {
	if p.ends[side] < 0 {
		p.ends[side] = v.first + len(v.unknowns)
		v.unknowns = append(v.unknowns, unknown{name: "end of " + p.Name, place: p.place, end: true, reading: -1})
	}
}

// add makes an unknown of a reach. A piece that reaches as far as a panel of another one
// has that one's: both are set by one stop.
func (v *derivation) add(p *plate, to Reach, more string, along way) int {
	if as := v.extent(to.Like); as >= v.first && !to.Less.given && v.panels[v.index[plainPanel(to.Like)]].piece < p.piece {
		return as
	}
	v.unknowns = append(v.unknowns, unknown{name: p.Name + more, place: p.place, piece: p.piece, axis: along.axis, fixed: to.Fixed, least: p.Least, wide: to.Covers != "" || p.Angle == 180})
	return v.first + len(v.unknowns) - 1
}

// at is the place of a panel in its piece.
func (v *derivation) at(panel int) int { return panel - v.blanks[v.panels[panel].piece].first }

// of is the unknown of a number.
func (v *derivation) of(u int) *unknown { return &v.unknowns[u-v.first] }

// amount is an amount as a form.
func (v *derivation) amount(a Amount) form {
	switch {
	case a.Little > 0:
		return only(little, parts*a.Little)
	case a.Allowance:
		return only(v.allowanceOf(), parts)
	case a.Size == "":
		return length(a.Length)
	}
	return only(v.size(a), parts)
}

// size is the number of the size that an amount names.
func (v *derivation) size(a Amount) int {
	return firstSize + slices.IndexFunc(v.Options, func(o Option) bool { return o.Name == a.Size })
}

// span says where on the blank a panel lies, from the lower left corner of its root.
func (v *derivation) span(i int) {
	p := &v.panels[i]
	if p.parent < 0 {
		p.spans = [2][2]form{{nil, only(p.far, parts)}, {nil, only(p.up, parts)}}
		return
	}
	on := &v.panels[p.parent]
	axis, side := p.Edge.axis(), p.Edge.side()
	p.spans = on.spans
	fold := on.spans[axis][side]
	p.spans[axis][side], p.spans[axis][1-side] = fold.with(p.far, outward(side)*parts), fold
	across, in := &p.spans[1-axis], v.amount(p.Narrower)
	for side, end := range p.ends {
		across[side] = across[side].plus(-outward(side), in)
		if end >= 0 {
			across[side] = across[side].with(end, -outward(side)*parts)
		}
	}
}
