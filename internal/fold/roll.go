package fold

import (
	"math"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// rollFacets is how many facets a panel is cut into that is rolled up.
const rollFacets = 64

// rolled cuts the panels of a roll into facets, which all bend alike: those of the
// panel that goes on are as wide as those of the one that comes round.
func (b *bender) rolled(c *pattern.Crease) {
	low, high := rectangle(b.p.Panels[c.From].Outline)
	_, end := rectangle(b.p.Panels[c.To].Outline)
	whole, turn := high.X.Sub(low.X), c.Angle*math.Pi/180/rollFacets
	for k := 0; ; k++ {
		panel, x := c.From, low.X.Add(whole.Times(int64(k)).Over(rollFacets))
		if k > rollFacets {
			panel = c.To
		}
		if k == rollFacets {
			b.lines[c.To] = []measure.Length{x}
		}
		if k > rollFacets && !x.Less(end.X) {
			x = end.X
		}
		b.lines[panel] = append(b.lines[panel], x)
		if n := len(b.lines[panel]); n > 1 {
			b.slopes[panel] = append(b.slopes[panel], float64(k)*turn)
		}
		if x == end.X {
			return
		}
	}
}

// axis returns the middle of what is rolled up along the contents' width and
// thickness, and how far from it the nearest plate is, which stands for an arc of
// the same length.
func (m *model) axis() (middle Vec, radius float64) {
	for axis := range middle {
		s := m.extent(pattern.Axis(axis), anyPiece)
		middle[axis] = (s.low + s.high) / 2
	}
	radius = math.Inf(1)
	for i := range m.plates {
		radius = min(radius, middle.Minus(m.plates[i].space[0]).Dot(m.plates[i].move.Z))
	}
	half := math.Pi / rollFacets
	return middle, radius * math.Tan(half) / half
}

// round stands round contents in the middle of what is rolled round them.
func (m *model) round() {
	_, radius := m.axis()
	left := 2*(radius-m.half) - m.pattern.Cavity.Width.Millimetres()
	m.bounded(Vec{left, math.Inf(1), left})
}

// roll is the room of round contents, a prism of as many sides as there are facets.
func (room *Room) roll(m *model) {
	c := &m.pattern.Cavity
	middle, _ := m.axis()
	across, corners := c.Width.Millimetres(), make([]Vec, rollFacets)
	for k := range corners {
		s, co := sincos(360 * float64(k) / rollFacets)
		corners[k] = middle.Plus(Vec{co * across / 2, 0, -s * across / 2})
	}
	room.outline(corners, c.Height.Millimetres()/2)
	room.Ways = [3]Vec{room.Ways[2], room.Ways[0], room.Ways[1]}
	room.Size = Vec{across, across, c.Height.Millimetres()}
}
