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
	join  *Join
	a, b  int // the panels whose folds are slit
	cut   [2]int
	whole int // the reading of how long the folds are
}

// slits adds the two slits of every such pair: half of the fold and a little, and
// what each leaves must be at least a quarter of an inch and three calipers
// (common practice).
func (p *planner) slits() {
	for i := range p.Joins {
		j := &p.Joins[i]
		if j.Type != Slits {
			continue
		}
		s := slotted{join: j, a: p.index[j.A.Panel], b: p.index[j.B.Panel], whole: p.lengthOfFold(p.index[j.A.Panel])}
		if p.lengthOfFold(s.b) != s.whole || s.whole < 0 {
			p.faults = append(p.faults, impossible(j.place, "the folds of "+j.A.Panel+" and "+j.B.Panel+" are not as long as one another", "hang both on panels of one row"))
		} else {
			p.slit(s)
		}
	}
}

// lengthOfFold is the reading of how long the fold of a panel is, -1 if it is none.
func (v *derivation) lengthOfFold(panel int) int {
	q := &v.panels[panel]
	axis, _ := q.Edge.along()
	if f := q.spans[1-axis][1].plus(-1, q.spans[1-axis][0]); len(f) == 1 && f[0].times == parts && f.has(v.first) {
		return v.of(f[0].of).reading
	}
	return -1
}

// slit adds the readings of two slits.
func (p *planner) slit(s slotted) {
	fold := &p.plan.Problem.Readings[s.whole]
	height, play := fold.Ideal, p.amount(s.join.Play).exact(p.lengths)
	if !s.join.Play.given {
		play = p.in.Little()
	}
	deepest := height.Sub(p.in.Beside())
	if deepest.Times(4).Less(height.Times(2).Add(play)) {
		p.faults = append(p.faults, impossible(s.join.place, "the folds are too short for slits past their middles: each must leave at least 1/4 in and three calipers",
			"let the panels be higher, or the play smaller"))
		return
	}
	excess := enclosure.Range{Min: play.Over(2), Max: measure.Min(play.Times(2), deepest.Times(2).Sub(height))}
	ideal := height.Over(2).Add(excess.Min.Add(excess.Max).Over(4))
	for k := range s.cut {
		s.cut[k] = len(p.plan.Sources)
		p.plan.Problem.Readings = append(p.plan.Problem.Readings, rounding.Reading{Name: s.name(k), Ideal: ideal, Max: deepest})
		p.plan.Sources = append(p.plan.Sources, "")
		form := rounding.Form{Terms: []rounding.Term{{Reading: s.cut[k], Coefficient: 2}, {Reading: s.whole, Coefficient: -1}}}
		p.plan.Problem.Windows = append(p.plan.Problem.Windows, rounding.Window{Name: "slit", Form: form, Min: excess.Min, Max: excess.Max, Weight: 1})
	}
	p.plan.Problem.Even = append(p.plan.Problem.Even, rounding.Pair{A: s.cut[0], B: s.cut[1]})
	p.slots = append(p.slots, s)
}

// name is what one of the slits is called.
func (s *slotted) name(k int) string {
	panels := [...]string{s.join.A.Panel, s.join.B.Panel}
	return cmp.Or(s.join.Cuts[k], "slit at "+panels[k])
}

// draw draws the slits of a pair on a piece: the first from the far end of its fold,
// the second from the near one.
func (s *slotted) draw(l *layout, sizes []measure.Length) {
	for k, panel := range [...]int{s.a, s.b} {
		c := &l.piece.Creases[l.crease[panel]]
		depth, axis := sizes[s.cut[k]], 0
		if c.A.X == c.B.X {
			axis = 1
		}
		edge, from := Edge(2*axis+1-k), [...]pattern.Point{c.B, c.A}[k]
		l.piece.Cuts = append(l.piece.Cuts, pattern.Cut{Name: s.name(k), Kind: pattern.Slit, On: c.Name, From: edgeNames[edge],
			At: *coordinate(&from, 1-axis), Depth: depth, Path: pattern.Polygon(from, edge.opposite().move(from, depth))})
	}
	n := len(l.piece.Cuts)
	l.piece.Joints = append(l.piece.Joints, pattern.Joint{Name: cmp.Or(s.join.Name, "slits"), A: n - 2, B: n - 1, PanelA: l.at(s.a), PanelB: l.at(s.b)})
}
