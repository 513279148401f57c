package own

import (
	"slices"
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
)

// row is one thing that is stated, as a form. A hard row is zero; a soft one lies
// in a range, best in its middle.
type row struct {
	form   form
	hard   bool
	layer  bool            // a soft row that papers made of a hard one: the outer reading holds what the inner one does
	creep  bool            // a soft row that is best at its least, and a reading by itself
	room   enclosure.Range // of a soft row
	weight int64
	gap    Amount // that a hard row leaves open: a size of its own, so that nothing rests across it
	name   string // in words, for what contradicts it
	place  string
}

// state lists what the design states, as forms of this folding.
func (v *derivation) state() {
	v.rows = v.rows[:0]
	for i := range v.Joins {
		v.join(&v.Joins[i])
	}
	for i := range v.panels {
		p := &v.panels[i]
		if p.parent < 0 {
			v.reaches(p, p.far, &p.Across, p.Name)
			v.reaches(p, p.up, &p.Up, p.Name+" height")
		} else {
			v.reaches(p, p.far, &p.Reach, p.Name)
		}
	}
}

// must adds a hard row.
func (v *derivation) must(f form, name, place string) {
	v.rows = append(v.rows, row{form: f, hard: true, name: name, place: place})
}

// within adds a soft row.
func (v *derivation) within(f form, room enclosure.Range, name, place string) {
	v.rows = append(v.rows, row{form: f, room: room, weight: 1, name: name, place: place})
}

// join adds what a join states.
func (v *derivation) join(j *Join) {
	a, b := &v.panels[v.index[j.A.Panel]], &v.panels[v.index[j.B.Panel]]
	if v.crosses(j) {
		return // it says where a piece lies, and nothing of its sizes
	}
	switch j.Type {
	case Glue:
		v.glue(j, a, b)
	case Meet:
		v.meet(j)
	case Level:
		v.level(j, a, b)
	case Lies:
		v.lie(j, a, b)
	case Clear:
		v.clear(j)
	}
}

// clear ends a panel half a paper before the inside of what a fold goes round, or as
// little more as the ruler asks for: the creep.
func (v *derivation) clear(j *Join) {
	if short := v.short(j); short != nil {
		v.rows = append(v.rows, row{form: short.with(caliper, -parts/2), creep: true, room: enclosure.Range{Max: v.in.Little().Times(2)},
			name: "creep of " + j.A.Panel, place: j.place})
	}
}

// level brings two panels into one plane.
func (v *derivation) level(j *Join, a, b *plate) {
	axis := b.face.inside.axis
	if a.face.inside.axis != axis {
		v.fault(j.place, a.Name+" and "+b.Name+" do not lie the same way when all is folded", "fold one of them another way")
		return
	}
	v.must(a.origin[axis].plus(-1, b.origin[axis]), a.Name+" is level with "+b.Name, j.place)
}

// glue lays a panel on a face of another one.
func (v *derivation) glue(j *Join, a, b *plate) {
	if apart := v.apart(j, a, b); apart != nil {
		v.must(apart.with(caliper, -parts), a.Name+" lies on "+b.Name, j.place)
	}
}

// lie lays a panel on a face of another one without glue: as near as the allowance
// of cartons says.
func (v *derivation) lie(j *Join, a, b *plate) {
	if apart := v.apart(j, a, b); apart != nil {
		v.within(apart, v.in.Allowance(), a.Name+" lies on "+b.Name, j.place)
	}
}

// apart is how far a panel lies from a face of another one that it lies flat on, nil
// if it does not.
func (v *derivation) apart(j *Join, a, b *plate) form {
	out := b.face.inside
	if j.Face != 0 {
		out = out.back()
	}
	if a.face.inside.axis != out.axis {
		v.fault(j.place, a.Name+" does not lie flat on "+b.Name+" when all is folded", "fold one of them another way")
		return nil
	}
	return a.origin[out.axis].plus(-1, b.origin[out.axis]).times(out.sign)
}

// meet brings one line to another, along the panel that the first one ends.
func (v *derivation) meet(j *Join) {
	short := v.short(j)
	if short == nil {
		return
	}
	name := "the " + j.A.words() + " meets the " + j.B.words()
	switch {
	case j.Short.Little:
		v.within(short, enclosure.Range{Max: v.in.Little()}, name, j.place)
	case j.Past.Little:
		v.within(short.times(-1), enclosure.Range{Max: v.in.Little()}, name, j.place)
	default:
		short = short.plus(-1, v.length(v.amount(j.Short))).plus(1, v.length(v.amount(j.Past)))
		v.must(short, name, j.place)
		v.rows[len(v.rows)-1].gap = j.Short
	}
}

// short is by how much the first line of a join ends before the second one, nil if they
// do not run the same way.
func (v *derivation) short(j *Join) form {
	a, b := v.line(j.A), v.line(j.B)
	if a.run != b.run {
		v.fault(j.place, "the "+j.A.words()+" and the "+j.B.words()+" lie across one another", "name two lines that run the same way")
		return nil
	}
	return b.where[a.ends.axis].plus(-1, a.where[a.ends.axis]).times(a.ends.sign)
}

// words says which line is meant.
func (l Line) words() string {
	return [...]string{FreeEdge: "edge", Crease: "fold", OutsideFold: "outside of the fold", InsideFold: "inside of the fold"}[l.Of] + " of " + l.Panel
}

// placed is a line in space: where it lies but for the axis that it runs along, and
// which way the panel runs that ends there.
type placed struct {
	where [3]form
	run   int
	ends  way
}

// line finds a line at the values known.
func (v *derivation) line(l Line) (at placed) {
	p := &v.panels[v.index[l.Panel]]
	axis, up := p.Edge.along()
	holder, end := p, p.spans[axis][0]
	if up || p.parent < 0 {
		up, end = true, p.spans[axis][1]
	}
	if l.Of != FreeEdge && p.parent >= 0 {
		holder, end = &v.panels[p.parent], v.crease(p)
		switch l.Of {
		case OutsideFold:
			end = v.faceOf(p, end, up, 1)
		case InsideFold:
			end = v.faceOf(p, end, up, -1)
		}
	}
	if at.ends = holder.face.own(axis); !up {
		at.ends = at.ends.back()
	}
	thick := holder.face.inside.axis
	_, at.where[at.ends.axis] = holder.lies(axis, end)
	at.where[thick] = holder.origin[thick]
	at.run = 3 - at.ends.axis - thick
	return at
}

// faceOf is where a face of what a fold goes round lies on the parent: the outer one, or
// with -1 the inner one.
func (v *derivation) faceOf(p *plate, at form, up bool, outer int64) form {
	back := int64(1)
	if up {
		back = -1
	}
	if p.spine != nil {
		at = at.plus(back, p.spine.half())
	}
	return at.with(caliper, -back*outer*parts/2)
}

// reaches adds what is stated about how far a panel goes.
func (v *derivation) reaches(p *plate, unknown int, to *Reach, name string) {
	own := v.only(unknown, parts)
	place := under(p.place, "reach")
	little := v.in.Little()
	less := v.length(v.amount(to.Less))
	switch {
	case to.Like != "":
		v.must(own.with(v.extent(to.Like), -parts).plus(1, less), name+" reaches as far as "+to.Like, place)
	case to.Covers != "":
		own = own.with(axisOf(to.Covers), -parts).plus(1, less)
		v.within(own, enclosure.Range{Min: little.Neg(), Max: little}, to.Covers, place)
	case to.Stands != "":
		own = own.with(axisOf(to.Stands), -parts).with(caliper, -parts/2)
		v.within(own, enclosure.Range{Max: little.Times(2)}, "height of "+name, place)
	case to.Down:
		v.down(p, own, place)
	case to.Of != "":
		whole := v.only(v.extent(to.Of), parts*to.Share[0])
		room := little.Times(to.Share[1])
		v.within(own.times(to.Share[1]).plus(-1, whole), enclosure.Range{Min: room.Neg(), Max: room}, "share of "+name, place)
	}
}

// extent is the unknown that a panel's name stands for: how far it reaches, across
// of a root, whose height is "height of" it.
func (v *derivation) extent(name string) int {
	p := &v.panels[v.index[plainPanel(name)]]
	switch {
	case name == "":
		return -1
	case strings.HasPrefix(name, heightOf):
		return p.up
	}
	return p.far
}

// plainPanel is the panel whose reach or height is meant.
func plainPanel(name string) string { return strings.TrimPrefix(name, heightOf) }

// heightOf is how the height of a root is meant.
const heightOf = "height of "

func axisOf(size string) int {
	return width + slices.Index(axes[:], size)
}

// best is the best value of a soft row: its middle, or of a creep the least.
func (r *row) best() measure.Length {
	if r.creep {
		return r.room.Min
	}
	return r.room.Min.Add(r.room.Max).Over(2)
}
