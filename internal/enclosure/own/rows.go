package own

import (
	"cmp"
	"slices"
	"strings"
)

// row is one thing that is stated, as a form. A hard row is zero; a soft one lies
// in a range, best in its middle.
type row struct {
	form   form
	hard   bool
	layer  bool    // a soft row that papers made of a hard one: the outer reading holds what the inner one does
	creep  string  // of a soft row that is best at its least: the reading that it is by itself
	room   [2]form // of a soft row: the least and the greatest
	weight int64
	gap    Amount // that a hard row leaves open: a size of its own, so that nothing rests across it
	name   string // in words, for what contradicts it
	place  string
}

// state lists what the design states, as forms of this folding.
func (r *derived) state() {
	r.rows = r.rows[:0]
	for i := range r.Joins {
		r.join(&r.Joins[i])
	}
	for i := range r.panels {
		p := &r.panels[i]
		if p.parent < 0 {
			r.reaches(p, p.far, &p.Across, p.Name)
			r.reaches(p, p.up, &p.Up, p.Name+" height")
		} else {
			r.reaches(p, p.far, &p.Reach, p.Name)
		}
		if p.Clear {
			r.ending(p)
		}
	}
	r.allowing()
}

// must adds a hard row.
func (r *derived) must(f form, name, place string) {
	r.rows = append(r.rows, row{form: f, hard: true, name: name, place: place})
}

// within adds a soft row.
func (r *derived) within(f form, room [2]form, name, place string) {
	r.rows = append(r.rows, row{form: f, room: room, weight: 1, name: name, place: place})
}

// join adds what a join states.
func (r *derived) join(j *Join) {
	a, b := &r.panels[r.index[j.A.Panel]], &r.panels[r.index[j.B.Panel]]
	if r.crosses(j) {
		return // it says where a piece lies, and nothing of its sizes
	}
	before := len(r.rows)
	switch j.Type {
	case Glue:
		r.glue(j, a, b)
	case Meet:
		r.meet(j)
	case Level:
		r.level(j, a, b)
	case Lies:
		r.lie(j, a, b)
	case Clear:
		r.clear(j)
	}
	for i := range r.rows[before:] {
		w := &r.rows[before+i]
		w.name = cmp.Or(j.Sum, w.name)
	}
}

// clear ends a panel half a paper before the inside of what a fold goes round, or as
// little more as the ruler asks for: the creep.
func (r *derived) clear(j *Join) {
	if short := r.short(j); short != nil {
		r.rows = append(r.rows, row{form: short.with(caliper, -parts/2), creep: j.creep(), room: [2]form{nil, only(little, 2*parts)},
			name: j.creep(), place: j.place})
	}
}

// creep is what the creep of a panel is called.
func (j *Join) creep() string { return cmp.Or(j.Name, "creep of "+j.A.Panel) }

// level brings two panels into one plane.
func (r *derived) level(j *Join, a, b *plate) {
	axis := b.face.inside.axis
	if a.face.inside.axis != axis {
		r.fault(j.place, a.Name+" and "+b.Name+" do not lie the same way when all is folded", "fold one of them another way")
		return
	}
	r.must(a.origin[axis].plus(-1, b.origin[axis]), a.Name+" is level with "+b.Name, j.place)
}

// glue lays a panel on a face of another one.
func (r *derived) glue(j *Join, a, b *plate) {
	if apart := r.apart(j, a, b); apart != nil {
		r.must(apart.with(caliper, -parts), a.Name+" lies on "+b.Name, j.place)
	}
}

// lie lays a panel on a face of another one without glue: as near as the allowance
// of cartons says.
func (r *derived) lie(j *Join, a, b *plate) {
	if apart := r.apart(j, a, b); apart != nil {
		r.within(apart, [2]form{only(caliper, parts), only(caliper, parts).with(more, parts)}, a.Name+" lies on "+b.Name, j.place)
	}
}

// apart is how far a panel lies from a face of another one that it lies flat on, nil
// if it does not.
func (r *derived) apart(j *Join, a, b *plate) form {
	out := b.face.inside
	if j.Face != 0 {
		out = out.back()
	}
	if a.face.inside.axis != out.axis {
		r.fault(j.place, a.Name+" does not lie flat on "+b.Name+" when all is folded", "fold one of them another way")
		return nil
	}
	return a.origin[out.axis].plus(-1, b.origin[out.axis]).times(out.sign)
}

// meet brings one line to another, along the panel that the first one ends.
func (r *derived) meet(j *Join) {
	short := r.short(j)
	if short == nil {
		return
	}
	name := "the " + j.A.words() + " meets the " + j.B.words()
	switch {
	case j.Short.Little > 0:
		r.within(short, [2]form{nil, r.amount(j.Short)}, name, j.place)
	case j.Past.Little > 0:
		r.within(short.times(-1), [2]form{nil, r.amount(j.Past)}, name, j.place)
	default:
		short = short.plus(-1, r.amount(j.Short)).plus(1, r.amount(j.Past))
		r.must(short, name, j.place)
		r.rows[len(r.rows)-1].gap = j.Short
	}
}

// short is by how much the first line of a join ends before the second one, nil if they
// do not run the same way.
func (r *derived) short(j *Join) form {
	a, b := r.line(j.A), r.line(j.B)
	if a.run != b.run {
		r.fault(j.place, "the "+j.A.words()+" and the "+j.B.words()+" lie across one another", "name two lines that run the same way")
		return nil
	}
	return b.where[a.ends.axis].plus(-1, a.where[a.ends.axis]).times(a.ends.sign)
}

// words says which line is meant.
func (l Line) words() string {
	return [...]string{FreeEdge: "edge", Crease: "fold", OutsideFold: "outside of the fold", InsideFold: "inside of the fold", SideEdge: edgeNames[l.Side] + " edge"}[l.Of] + " of " + l.Panel
}

// placed is a line in space: where it lies but for the axis that it runs along, and
// which way the panel runs that ends there.
type placed struct {
	where [3]form
	run   int
	ends  way
}

// hangs reports whether a line belongs to the fold that a panel hangs by.
func (l Line) hangs() bool { return l.Of != FreeEdge && l.Of != SideEdge }

// side is the edge of a panel that a line lies along; the free one of a root is the right.
func (v *derivation) side(l Line) Edge {
	switch p := &v.panels[v.index[l.Panel]]; {
	case l.Of == SideEdge:
		return l.Side
	case p.parent < 0:
		return Right
	default:
		return p.Edge
	}
}

// line finds a line at the values known.
func (r *derived) line(l Line) (at placed) {
	p := &r.panels[r.index[l.Panel]]
	axis, side := r.side(l).axis(), r.side(l).side()
	holder, end := p, p.spans[axis][side]
	if l.hangs() && p.parent >= 0 {
		holder, end = &r.panels[p.parent], p.crease()
		switch l.Of {
		case OutsideFold:
			end = r.faceOf(p, end, side, 1)
		case InsideFold:
			end = r.faceOf(p, end, side, -1)
		}
	}
	at.ends = holder.face.own(axis).to(side)
	thick := holder.face.inside.axis
	_, at.where[at.ends.axis] = holder.lies(axis, end)
	at.where[thick] = holder.origin[thick]
	at.run = 3 - at.ends.axis - thick
	return at
}

// faceOf is where a face of what a fold goes round lies on the parent: the outer one, or
// with -1 the inner one.
func (r *derived) faceOf(p *plate, at form, side int, outer int64) form {
	if p.spine != nil {
		at = at.plus(-outward(side), p.spine.half())
	}
	return at.with(caliper, outward(side)*outer*parts/2)
}

// reaches adds what is stated about how far a panel goes.
func (r *derived) reaches(p *plate, unknown int, to *Reach, name string) {
	own, less := only(unknown, parts), r.amount(to.Less)
	place := under(p.place, "reach")
	about := func(times int64) [2]form { return [2]form{only(little, -times*parts), only(little, times*parts)} }
	switch {
	case to.Like != "":
		r.must(own.with(r.extent(to.Like), -parts).plus(1, less), name+" reaches as far as "+to.Like, place)
	case to.Covers != "":
		own = own.with(axisOf(to.Covers), -parts).plus(1, less)
		r.within(own, about(1), to.Covers, place)
	case to.Stands != "":
		own = own.with(axisOf(to.Stands), -parts).with(caliper, -parts/2)
		r.within(own, [2]form{nil, only(little, 2*parts)}, "height of "+name, place)
	case to.Down:
		r.down(p, own, place)
	case to.Of != "":
		whole := only(r.extent(to.Of), parts*to.Share[0])
		r.within(own.times(to.Share[1]).plus(-1, whole), about(to.Share[1]), "share of "+name, place)
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
func (w *row) best() form {
	if w.creep != "" {
		return w.room[0]
	}
	return w.room[0].plus(1, w.room[1]).half()
}
