package own

import (
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/pattern"
)

// strips states how the readings lie along both edges of a piece: those of its root
// and of the panels in a row with it.
func (p *planner) strips(piece int) {
	root := p.rootOf(piece)
	for axis, across := range [...]pattern.Axis{pattern.Width, pattern.Height} {
		var readings []int
		for _, u := range p.chain(root, axis) {
			readings = append(readings, p.unknowns[u-firstReading].reading)
		}
		p.plan.Strips = append(p.plan.Strips, enclosure.Strip{Piece: piece, Across: across, Readings: readings})
	}
}

// chain lists the unknowns along an axis of the blank, from the left or the bottom.
func (p *planner) chain(root, axis int) []int {
	own := p.panels[root].far
	if axis == 1 {
		own = p.panels[root].up
	}
	chain := []int{own}
	for _, e := range [...]Edge{Edge(2 * axis), Edge(2*axis + 1)} {
		for at := p.next(root, e); at >= 0; at = p.next(at, e) {
			if e == Left || e == Bottom {
				chain = slices.Insert(chain, 0, p.panels[at].far)
			} else {
				chain = append(chain, p.panels[at].far)
			}
		}
	}
	return chain
}

// next is the panel that hangs on an edge of another one, -1 for none.
func (p *planner) next(on int, e Edge) int {
	return slices.IndexFunc(p.panels, func(q plate) bool { return q.parent == on && q.Edge == e })
}
