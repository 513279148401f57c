package own

import (
	"cmp"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/rounding"
)

// slotted is a pair of folds that are slit from opposite ends, each past its
// middle, and locked into one another.
type slotted struct {
	place  string
	a, b   int // the panels whose folds are slit
	whole  int // the reading of how long the folds are
	first  int // the readings of the slits begin here
	window int // and their windows
	play   form
	names  [2]string
	joint  string
}

// slits adds the two slits of every such pair: half of the fold and a little.
func (s *stated) slits(r *derived) {
	for i := range r.Joins {
		j := &r.Joins[i]
		if j.Type != Slits {
			continue
		}
		x := slotted{place: j.place, a: r.index[j.A.Panel], b: r.index[j.B.Panel], first: len(s.readings), window: len(s.windows), play: only(little, parts),
			names: [...]string{cmp.Or(j.Cuts[0], "slit at "+j.A.Panel), cmp.Or(j.Cuts[1], "slit at "+j.B.Panel)}, joint: cmp.Or(j.Name, "slits")}
		if x.whole = r.lengthOfFold(x.a); r.lengthOfFold(x.b) != x.whole || x.whole < 0 {
			s.wrong = append(s.wrong, impossible(j.place, "the folds of "+j.A.Panel+" and "+j.B.Panel+" are not as long as one another", "hang both on panels of one row"))
			continue
		}
		if j.Play.given {
			x.play = r.amount(j.Play)
		}
		for k, name := range x.names {
			s.readings, s.sources = append(s.readings, setting{name: name, ideal: form{}}), append(s.sources, "")
			s.windows = append(s.windows, clause{name: "slit", terms: []rounding.Term{{Reading: x.first + k, Coefficient: 2}, {Reading: x.whole, Coefficient: -1}}, weight: 1})
		}
		s.even, s.slots = append(s.even, rounding.Pair{A: x.first, B: x.first + 1}), append(s.slots, x)
	}
}

// lengthOfFold is the reading of how long the fold of a panel is, -1 if it is none.
func (v *derivation) lengthOfFold(panel int) int {
	q := &v.panels[panel]
	axis := q.Edge.axis()
	if f := q.spans[1-axis][1].plus(-1, q.spans[1-axis][0]); len(f) == 1 && f[0].times == parts && f.has(v.first) {
		return v.of(f[0].of).reading
	}
	return -1
}

// slit says how deep two slits are: what each leaves must be at least a quarter of an inch
// and three calipers (common practice).
func (p *planner) slit(s *slotted) {
	q := &p.plan.Problem
	height, play, deepest := q.Readings[s.whole].Ideal, s.play.exact(p.lengths), q.Readings[s.whole].Ideal.Sub(p.in.Beside())
	if deepest.Times(4).Less(height.Times(2).Add(play)) {
		p.faults = append(p.faults, impossible(s.place, "the folds are too short for slits past their middles: each must leave at least 1/4 in (6.4 mm) and three calipers",
			"let the panels be higher, or the play smaller"))
		return
	}
	excess := enclosure.Range{Min: play.Over(2), Max: measure.Min(play.Times(2), deepest.Times(2).Sub(height))}
	for k := range s.names {
		r, w := &q.Readings[s.first+k], &q.Windows[s.window+k]
		r.Ideal, r.Max = height.Over(2).Add(excess.Min.Add(excess.Max).Over(4)), deepest
		w.Min, w.Max = excess.Min, excess.Max
	}
}

// draw draws the slits of a pair on a piece: the first from the far end of its fold,
// the second from the near one.
func (s *slotted) draw(l *layout, sizes []measure.Length) {
	for k, panel := range [...]int{s.a, s.b} {
		c := &l.piece.Creases[l.crease[panel]]
		depth, axis := sizes[s.first+k], 0
		if c.A.X == c.B.X {
			axis = 1
		}
		edge, from := Edge(2*axis+1-k), [...]pattern.Point{c.B, c.A}[k]
		l.piece.Cuts = append(l.piece.Cuts, pattern.Cut{Name: s.names[k], Kind: pattern.Slit, On: c.Name, From: edgeNames[edge],
			At: *coordinate(&from, 1-axis), Depth: depth, Path: l.laid.Polygon(from, edge.opposite().move(from, depth))})
	}
	n := len(l.piece.Cuts)
	l.piece.Joints = append(l.piece.Joints, pattern.Joint{Name: s.joint, A: n - 2, B: n - 1, PanelA: l.at(s.a), PanelB: l.at(s.b)})
}
