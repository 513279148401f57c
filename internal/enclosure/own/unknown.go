package own

import (
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// unknown is something that the derivation looks for: how far a panel reaches, or
// how far the end of a panel lies inside its parent's corner.
type unknown struct {
	name, place string
	piece       int
	source      string // the size that fixes it
	size        measure.Length
	fixed       bool
	least       measure.Length
	axis        int  // of space, that it runs along: 0 to 2
	end         bool // comes out as papers, and is set nowhere
	reading     int  // of the plan, -1 for an end
}

// derivation is one design while it is folded for one request.
type derivation struct {
	*Design
	in       *enclosure.Input
	count    int // of unknowns, those of every design included
	unknowns []unknown
	panels   []plate
	index    map[string]int // of panels
	order    []int          // in which they are folded
	values   []float64      // of the unknowns, in nanometres, as far as they are known
	rows     []row
	bodies   []int        // by piece: the first of the pieces that it is glued together with
	floor    int          // the panel that the contents lie on
	odd      fault.Faults // with the pieces, found before
	wrong    fault.Faults // with the design, found while it is folded
}

// plate is a panel while it is folded.
type plate struct {
	*Panel
	piece, parent int // parent is -1 for a root
	spans         [2][2]form
	far, up       int // the unknowns of its extents; up is -1 but for a root
	ends          [2]int
	face          facing
	origin        [3]form // where the lower left corner of the blank comes to lie
	base          int     // of a root: the panel of another piece that it is glued onto, -1 for none
	under         bool    // it is glued onto the outside of that
	nested        bool    // its piece goes over that piece instead, or round it
	lid           bool    // it lies on the rim of that piece, face down
	spine         form    // what a fold of 180 degrees takes up, nil for others
}

// newDerivation numbers the unknowns of a design and turns its panels.
func newDerivation(d *Design, in *enclosure.Input) *derivation {
	v := &derivation{Design: d, in: in, index: map[string]int{}}
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
	for _, i := range v.treeOrder() {
		v.span(i)
	}
	v.know()
	return v
}

// number gives every reach, and every end that a glued panel hangs on, an unknown.
func (v *derivation) number() {
	for i := range v.panels {
		p := &v.panels[i]
		if p.parent < 0 {
			p.far = v.add(p, p.Across, "", p.face.across)
			continue
		}
		axis, _ := p.Edge.along()
		p.far, p.up = v.add(p, p.Reach, "", p.face.own(axis)), -1
	}
	for i := range v.panels {
		if p := &v.panels[i]; p.parent < 0 {
			p.up = v.add(p, p.Up, " height", p.face.up)
		}
	}
	for i := range v.Joins {
		if j := &v.Joins[i]; j.Type == Glue && !v.crosses(j) {
			v.loosen(&v.panels[v.index[j.A.Panel]])
			v.loosen(&v.panels[v.index[j.B.Panel]])
		}
	}
	v.count = firstReading + len(v.unknowns)
}

// loosen leaves the end of the panel that a glued one hangs on to be found, where
// that end is not how far the panel reaches.
func (v *derivation) loosen(glued *plate) {
	if glued.parent < 0 || glued.Angle != 90 {
		return
	}
	on := &v.panels[glued.parent]
	if on.parent < 0 {
		return
	}
	axis, up := glued.Edge.along()
	if reaching, _ := on.Edge.along(); reaching == axis {
		return
	}
	side := 0
	if up {
		side = 1
	}
	if on.ends[side] < 0 {
		on.ends[side] = firstReading + len(v.unknowns)
		v.unknowns = append(v.unknowns, unknown{name: "end of " + on.Name, place: on.place, end: true, reading: -1})
	}
}

// add makes an unknown of a reach. A piece that reaches as far as a panel of another one
// has that one's: both are set by one stop.
func (v *derivation) add(p *plate, to Reach, more string, along way) int {
	if as := v.extent(to.Like); as >= firstReading && !to.Less.given && v.panels[v.index[plainPanel(to.Like)]].piece < p.piece {
		return as
	}
	u := unknown{name: p.Name + more, place: p.place, piece: p.piece, axis: along.axis, least: measure.Nanometres(1)}
	if a := to.Fixed; a.given {
		u.fixed, u.source, u.size = true, a.Size, v.amount(a)
	}
	if to.Covers != "" {
		u.least = v.in.Beside()
	}
	v.unknowns = append(v.unknowns, u)
	return firstReading + len(v.unknowns) - 1
}

// amount is how long an amount is in this request.
func (v *derivation) amount(a Amount) measure.Length {
	switch {
	case a.Little:
		return v.in.Little()
	case a.Size == "":
		return a.Length
	}
	if given, ok := v.in.Given[a.Size]; ok {
		return given.Length
	}
	for i := range v.Sizes {
		if s := &v.Sizes[i]; s.Name == a.Size {
			if v.in.Unit == measure.Millimetre {
				return s.Millimetre
			}
			return s.Inch
		}
	}
	return measure.Length{}
}

// span says where on the blank a panel lies, from the lower left corner of its root.
func (v *derivation) span(i int) {
	p := &v.panels[i]
	if p.parent < 0 {
		p.spans = [2][2]form{{v.none(), v.only(p.far, parts)}, {v.none(), v.only(p.up, parts)}}
		return
	}
	on := &v.panels[p.parent]
	axis, up := p.Edge.along()
	p.spans = on.spans
	along, from := p.spans[axis], p.spans[axis][0]
	if up {
		from = along[1]
		p.spans[axis] = [2]form{from, from.with(p.far, parts)}
	} else {
		p.spans[axis] = [2]form{from.with(p.far, -parts), from}
	}
	across := &p.spans[1-axis]
	if in := parts * v.amount(p.Narrower).Nanometres(); in != 0 {
		across[0], across[1] = across[0].with(one, in), across[1].with(one, -in)
	}
	for side, end := range p.ends {
		if end >= 0 {
			across[side] = across[side].plus(1-2*int64(side), v.only(end, parts))
		}
	}
}

// know fills in what the request says.
func (v *derivation) know() {
	v.values = make([]float64, v.count)
	for i, l := range [...]measure.Length{caliper: v.in.Caliper, width: v.in.Width, height: v.in.Height, thickness: v.in.Thickness, one: measure.Nanometres(1)} {
		v.values[i] = float64(l.Nanometres())
	}
	spines := 0.0
	if slices.ContainsFunc(v.panels, func(p plate) bool { return p.Angle == 180 }) {
		spines = v.values[thickness]
	}
	for i := range v.unknowns { // a first guess, large enough for a spine at each end
		u := &v.unknowns[i]
		at := &v.values[firstReading+i]
		switch {
		case u.fixed:
			*at = float64(u.size.Nanometres())
		case !u.end:
			*at = v.values[width+u.axis] + spines + 4*v.values[caliper] + float64(v.in.Fit.Max.Add(v.in.Little()).Nanometres())
		}
	}
}
