package pattern

import (
	"math"
	"slices"

	"creasefit/internal/measure"
)

// MostPapers is how many paper thicknesses a hand sets off a mark at the most.
const MostPapers = 3

// Set is a length as a hand sets it: a mark of a ruler, and so many paper
// thicknesses beyond it (short of it if negative). A stop is moved by scraps of
// the stock; one paper less is a cut just inside the line.
type Set struct {
	Mark   measure.Length
	Papers int
}

// SetOf returns the plainest way to set a length in stock of a caliper: a mark of
// the answer's step with the fewest papers, or else a mark of the ruler, which is
// finer or the same. It is false for a length that neither comes to; the mark is then
// the nearest of the step.
func SetOf(l, caliper measure.Length, step, ruler measure.Step) (Set, bool) {
	for n := range MostPapers + 1 {
		for _, papers := range [...]int{n, -n} {
			mark := l.Sub(caliper.Times(int64(papers)))
			if mark.IsMultipleOf(step) && mark.Sign() >= 0 {
				return Set{mark, papers}, true
			}
		}
	}
	if l.IsMultipleOf(ruler) && l.Sign() >= 0 {
		return Set{Mark: l}, true
	}
	return Set{Mark: step.Nearest(l)}, false
}

// OnEdge reports whether a point lies on the edge of the blank.
func (p *Piece) OnEdge(at Point) bool {
	return at.X.IsZero() || at.Y.IsZero() || at.X == p.Width || at.Y == p.Height
}

// Inner reports whether a cut is a slit that meets no edge.
func (p *Piece) Inner(c *Cut) bool {
	return c.Kind == Slit && len(c.Path) == 2 && !p.OnEdge(c.Path[0].Point) && !p.OnEdge(c.Path[1].Point)
}

// Beside is the edge that the place of a cut along another edge is measured from.
func Beside(edge string) string {
	if edge == "left" || edge == "right" {
		return "bottom"
	}
	return "left"
}

// Within returns how long an inner slit is that runs along the edge that it is
// measured from; it is false for other cuts.
func (p *Piece) Within(c *Cut) (long measure.Length, ok bool) {
	if !p.Inner(c) || c.From == "" {
		return long, false
	}
	along, away := c.Path[1].X.Sub(c.Path[0].X), c.Path[1].Y.Sub(c.Path[0].Y)
	if c.From == "left" || c.From == "right" {
		along, away = away, along
	}
	return along.Abs(), away.IsZero()
}

// Crossing returns the names of two scores whose lines cross at a point, at
// least one of them slanted, or of a slanted score and the cut that meets it.
func (p *Piece) Crossing(at Point) (names [2]string, ok bool) {
	for i := range p.Creases {
		a := &p.Creases[i]
		if !a.touches(at) {
			continue
		}
		for j := range p.Creases[:i] {
			if b := &p.Creases[j]; b.Name != a.Name && b.touches(at) && (a.slanted() || b.slanted()) {
				return [2]string{b.Name, a.Name}, true
			}
		}
		for j := range p.Cuts {
			if c := &p.Cuts[j]; a.slanted() && slices.ContainsFunc(c.Path, func(v Vertex) bool { return v.Point == at }) {
				return [2]string{a.Name, c.Name}, true
			}
		}
	}
	return names, false
}

// touches reports whether a point lies on the line of a straight crease, to the
// nanometre.
func (c *Crease) touches(at Point) bool {
	if c.Bulge != 0 {
		return false
	}
	ax, ay := at.X.Sub(c.A.X).Millimetres(), at.Y.Sub(c.A.Y).Millimetres()
	bx, by := c.B.X.Sub(c.A.X).Millimetres(), c.B.Y.Sub(c.A.Y).Millimetres()
	return math.Abs(ax*by-ay*bx) <= 2e-6*math.Hypot(bx, by)
}

// slanted reports whether a crease runs along neither side of the blank.
func (c *Crease) slanted() bool { return c.A.X != c.B.X && c.A.Y != c.B.Y }

// Regular returns the side of a piece that has sides of one length and no folds: a
// regular polygon, whose corners need no marks, since it is drawn round what it
// closes.
func (p *Piece) Regular() (side measure.Length, ok bool) {
	if len(p.Panels) != 1 || len(p.Panels[0].Outline) < 3 {
		return side, false
	}
	o := p.Panels[0].Outline
	for i, v := range o {
		w := o[(i+1)%len(o)]
		long := math.Hypot(w.X.Sub(v.X).Millimetres(), w.Y.Sub(v.Y).Millimetres())
		l := measure.Nanometres(int64(math.Round(long * 1e6)))
		if i == 0 {
			side = l
		}
		if v.Bulge != 0 || l.Sub(side).Abs().Nanometres() > 4 {
			return measure.Length{}, false
		}
	}
	return side, true
}
