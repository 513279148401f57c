package own

import (
	"cmp"
	"math"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// sewn is a join of two panels of a piece that glue or an edge holds together.
type sewn struct {
	*Join
	a, b   int       // the panels
	blocks [2]*block // of these
	name   string
	run    int     // the axis that lines run along which meet
	apart  [2]form // how far they lie from one another along the others
	allows bool    // one of which is the allowance
}

// sew lists what holds the panels of each piece together.
func (s *stated) sew(r *derived) {
	for i := range r.Joins {
		j := &r.Joins[i]
		if !r.holdsTogether(j) || r.crosses(j) {
			continue
		}
		x := sewn{Join: j, a: r.index[j.A.Panel], b: r.index[j.B.Panel], name: j.Name}
		if x.blocks = [2]*block{r.blockAt(rim{panel: x.a}), r.blockAt(rim{panel: x.b})}; j.Type == Glue {
			x.name = cmp.Or(x.name, j.A.Panel)
		} else {
			first, second := r.line(j.A), r.line(j.B)
			x.name, x.run = cmp.Or(x.name, j.A.words()), first.run
			for k := range x.apart {
				axis := (x.run + 1 + k) % 3
				if j.Type == Clear && axis != r.panels[x.a].face.inside.axis {
					continue // it comes to lie beside that line
				}
				if x.apart[k] = first.where[axis].plus(-1, second.where[axis]); axis == first.ends.axis && (j.Short.Allowance || j.Past.Allowance) {
					x.apart[k], x.allows = nil, true
				}
			}
		}
		s.sewn = append(s.sewn, x)
	}
}

// holdsTogether reports whether a join is glued or sewn: what misses its place by a little
// is if it has a name.
func (v *derivation) holdsTogether(j *Join) bool {
	switch j.Type {
	case Glue:
		return true
	case Clear:
		return j.Name != ""
	case Meet:
		return !j.Loose && (j.Name != "" || j.Short.Little+j.Past.Little == 0)
	}
	return false
}

// glueArea sticks what lies over the other panel onto it.
func (l *layout) glueArea(j *sewn) {
	a, b := j.a, j.b
	lowA, highA := l.box(j.blocks[0])
	lowB, highB := l.box(j.blocks[1])
	q := &l.panels[a]
	var from, to [2]measure.Length
	for axis := range 2 {
		w := q.face.own(axis)
		low, high := measure.Max(lowA[w.axis], lowB[w.axis]), measure.Min(highA[w.axis], highB[w.axis])
		from[axis], to[axis] = l.back(q, axis, low), l.back(q, axis, high)
		if to[axis].Less(from[axis]) {
			from[axis], to[axis] = to[axis], from[axis]
		}
	}
	face := pattern.Outside
	same := q.face.inside == l.panels[b].face.inside
	if same == (j.Face == pattern.Outside) {
		face = pattern.Inside
	}
	l.piece.Glues = append(l.piece.Glues, pattern.Glue{Name: j.name, Panel: l.at(a), Face: face, To: l.at(b), ToFace: j.Face,
		Area: l.laid.Rectangle(from[0], from[1], to[0], to[1])})
}

// back is where on the blank a place in space lies that a panel covers.
func (l *layout) back(q *plate, axis int, where measure.Length) measure.Length {
	w := q.face.own(axis)
	return where.Sub(q.origin[w.axis].exact(l.values)).Times(w.sign).Sub(*coordinate(&l.corner, axis))
}

// seam brings the line of one panel to that of another: as far apart as they lie at
// the ideal sizes, where a layer is a paper.
func (l *layout) seam(j *sewn, readings []measure.Length) {
	qa, a := l.ends(j.A)
	qb, b := l.ends(j.B)
	if j.Type == Clear {
		b[0] = l.panels[l.index[j.B.Panel]].Edge.opposite().move(b[0], readings[l.further[j.place]])
	}
	sizes := l.planner.values
	if j.Short.Little+j.Past.Little > 0 { // it lies where its panel has come to end
		sizes = values(l.values, nil)
	}
	run, apart := j.run, math.Hypot(j.apart[0].at(sizes), j.apart[1].at(sizes))
	if j.allows {
		apart = math.Hypot(apart, float64(l.values[l.allowanceOf()].Nanometres()))
	}
	var met [2]pattern.Point
	for k := range 2 { // the points of the other line beside those of this one
		met[k] = l.beside(qb, b, l.along(qa, a[k], run), run)
	}
	l.piece.Seams = append(l.piece.Seams, pattern.Seam{Name: j.name, PanelA: l.at(qa), A1: a[0], A2: a[1], PanelB: l.at(qb), B1: met[0], B2: met[1],
		Apart: measure.Nanometres(int64(math.Round(apart)))})
}

// ends are the ends of a line on the blank, and the panel that it belongs to.
func (l *layout) ends(line Line) (panel int, at [2]pattern.Point) {
	i := l.index[line.Panel]
	q := &l.panels[i]
	o := l.piece.Panels[l.at(i)].Outline
	if line.hangs() && q.parent >= 0 {
		c := &l.piece.Creases[l.crease[i]]
		return q.parent, [2]pattern.Point{c.A, c.B}
	}
	return i, l.side(line).ends(o)
}

// along is where a point of the blank comes to lie along an axis of space that its
// panel runs along.
func (l *layout) along(panel int, at pattern.Point, axis int) measure.Length {
	q := &l.panels[panel]
	k := q.face.blank(axis)
	return q.origin[axis].exact(l.values).Add(coordinate(&at, k).Add(*coordinate(&l.corner, k)).Times(q.face.own(k).sign))
}

// beside is the point of a line on the blank whose place in space along an axis is
// given.
func (l *layout) beside(panel int, line [2]pattern.Point, where measure.Length, axis int) pattern.Point {
	p, k := line[0], l.panels[panel].face.blank(axis)
	*coordinate(&p, k) = l.back(&l.panels[panel], k, where)
	return p
}
