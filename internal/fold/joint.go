package fold

import (
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// span is a stretch of a line, in millimetres along it.
type span struct{ low, high float64 }

// joints measures every joint: how far its cuts are from one line, and how
// far they reach past one another.
func (m *model) joints(tolerance float64) (gap float64, plays []Play) {
	for i := range m.pattern.Pieces {
		p := &m.pattern.Pieces[i]
		for j := range p.Joints {
			plays = slices.Grow(plays, len(p.Joints)-j)
			off, play := m.joint(i, &p.Joints[j], tolerance)
			gap = max(gap, off)
			plays = append(plays, Play{p.Joints[j].Name, length(play)})
		}
	}
	return gap, plays
}

// joint measures one joint along the line of its first cut.
func (m *model) joint(piece int, j *pattern.Joint, tolerance float64) (gap, play float64) {
	p := &m.pattern.Pieces[piece]
	a, b := m.sleeved(piece, j.PanelA, &p.Cuts[j.A]), m.sleeved(piece, j.PanelB, &p.Cuts[j.B])
	along := a.end.Minus(a.start).unit()
	for _, q := range [...]Vec{b.start, b.end} {
		d := q.Minus(a.start)
		gap = max(gap, d.Minus(along.Times(d.Dot(along))).Length())
	}
	if gap > tolerance {
		m.find("joint", j.Name, "has its cuts on two lines, apart", gap)
	}
	sa, sb := a.along(a.start, along), b.along(a.start, along)
	play = m.reaching(j.Name, &sa, &sb)
	for _, c := range [...]*pattern.Cut{&p.Cuts[j.A], &p.Cuts[j.B]} {
		if lack := 2*m.half - c.Width.Millimetres(); c.Width.Sign() > 0 && lack > hair {
			m.find("joint", j.Name, c.Name+" is narrower than the stock", lack)
		}
	}
	return gap, play
}

// cutLine is a cut in space, and the panel's extent along its line.
type cutLine struct{ start, end, low, high Vec }

// sleeved returns the line of a cut of a panel. A slit runs from one end of
// its path to the other; other cuts along their middle line.
func (m *model) sleeved(piece, panel int, c *pattern.Cut) cutLine {
	pl := m.panel(piece, panel)
	a, b := middle(&m.pattern.Pieces[piece], c)
	along := b.Minus(a)
	along = along.Times(1 / along.Length())
	low, high := math.Inf(1), math.Inf(-1)
	for i, p := range pl.flat {
		q := pl.flat[(i+1)%len(pl.flat)]
		dp, dq := along.Cross(p.Minus(a)), along.Cross(q.Minus(a))
		if math.Abs(dp) < touch {
			low, high = min(low, p.Minus(a).Dot(along)), max(high, p.Minus(a).Dot(along))
		} else if dp*dq < 0 && math.Abs(dq) >= touch {
			d := p.Plus(q.Minus(p).Times(dp / (dp - dq))).Minus(a).Dot(along)
			low, high = min(low, d), max(high, d)
		}
	}
	if low > high {
		low, high = 0, 0
	}
	at := func(d float64) Vec { return pl.move.at(a.Plus(along.Times(d))) }
	return cutLine{pl.move.at(a), pl.move.at(b), at(low), at(high)}
}

// middle returns the ends of the middle line of a cut on the blank.
func middle(p *pattern.Piece, c *pattern.Cut) (a, b spot) {
	if c.Kind == pattern.Slit && len(c.Path) >= 2 {
		return place(c.Path[0].Point), place(c.Path[len(c.Path)-1].Point)
	}
	at, depth := c.At.Millimetres(), c.Depth.Millimetres()
	if c.Before.Sign() > 0 {
		at += c.Width.Over(2).Sub(c.Before).Millimetres()
	}
	w, h := p.Width.Millimetres(), p.Height.Millimetres()
	switch c.From {
	case "top":
		return spot{at, h}, spot{at, h - depth}
	case "left":
		return spot{0, at}, spot{depth, at}
	case "right":
		return spot{w, at}, spot{w - depth, at}
	default:
		return spot{at, 0}, spot{at, depth}
	}
}

// slitted is a plate along the line of a joint: how far it is cut, and what
// is left of it on both sides of the cut.
type slitted struct {
	cut  span
	left [2]span
}

// along measures a cut line from the origin along a direction.
func (c *cutLine) along(origin, along Vec) slitted {
	whole := order(c.low.Minus(origin).Dot(along), c.high.Minus(origin).Dot(along))
	cut := order(c.start.Minus(origin).Dot(along), c.end.Minus(origin).Dot(along))
	return slitted{cut: cut, left: [2]span{{whole.low, cut.low}, {cut.high, whole.high}}}
}

func order(a, b float64) span { return span{min(a, b), max(a, b)} }

func (s span) empty() bool { return s.high-s.low < hair }

// reaching returns the play of two slit plates: the least distance between
// what is left of one and what is left of the other. It finds cuts that do
// not let the other plate through.
func (m *model) reaching(name string, a, b *slitted) float64 {
	play := math.Inf(1)
	met := 0
	for _, p := range a.left {
		for _, q := range b.left {
			if p.empty() || q.empty() {
				continue
			}
			play = min(play, max(p.low, q.low)-min(p.high, q.high))
		}
	}
	for _, pair := range [...][2]*slitted{{a, b}, {b, a}} {
		for _, p := range pair[0].left {
			if !p.empty() && min(p.high, pair[1].cut.high)-max(p.low, pair[1].cut.low) > hair {
				met++
				break
			}
		}
	}
	switch {
	case math.IsInf(play, 1):
		m.find("joint", name, "has a cut right through a panel", 0)
		return 0
	case play < -hair:
		m.find("joint", name, "has cuts that do not reach", -play)
	case met < 2:
		m.find("joint", name, "has a cut where the other panel does not cross", 0)
	}
	return play
}
