package fold

import (
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Follower measures patterns that are laid out as one that was folded up before, with
// other sizes. Where the same panels hang by the same creases, which turn as far about
// lines that run the same way, only places differ and no plate is turned again; each panel
// must lie on the side of its crease that it lay on.
type Follower struct {
	m     *model // nil for a pattern that is folded up anew each time
	base  *pattern.Pattern
	order []int // of the plates but for copies, each after the one that it hangs on
}

// Follow folds a pattern up that others will be like. It must not change meanwhile.
func Follow(p *pattern.Pattern) *Follower {
	f := &Follower{base: p}
	if anyCurved(p) || len(unsound(p)) > 0 {
		return f
	}
	m := build(p, 1)
	depths := make([]int, 0, len(m.plates))
	for i := 0; i < len(m.plates) && m.plates[i].copy == 0; i++ {
		depth := 0
		for at := i; m.plates[at].parent >= 0; at = m.plates[at].parent {
			depth++
		}
		depths, f.order = append(depths, depth), append(f.order, i)
	}
	slices.SortStableFunc(f.order, func(a, b int) int { return depths[a] - depths[b] })
	if spine := func(i int) bool { return m.plates[i].panel < 0 }; !m.lies() || slices.ContainsFunc(f.order, spine) {
		m.done()
		return f
	}
	f.m = m
	return f
}

// Done gives the follower's memory back; it must not be used any more.
func (f *Follower) Done() {
	if f.m != nil {
		f.m.done()
	}
}

// Extent returns what the function of that name does.
func (f *Follower) Extent(p *pattern.Pattern) [3]measure.Length {
	if f.m == nil || !f.alike(p) {
		return Extent(p)
	}
	m := f.m
	m.pattern, m.half = p, p.Caliper.Millimetres()/2
	m.plates, m.spots, m.corners = m.plates[:len(f.order)], m.spots[:0], m.corners[:0]
	for _, i := range f.order {
		pl := &m.plates[i]
		piece := &p.Pieces[pl.piece]
		pl.flat = m.pressOpen(pl.piece, m.ring(piece.Panels[pl.panel].Outline))
		if pl.parent < 0 {
			pl.move = m.ground(pl.piece)
			continue
		}
		a := place(piece.Creases[pl.crease].A)
		pl.move.Origin = m.plates[pl.parent].move.at(a).Minus(pl.move.X.Times(a.x)).Minus(pl.move.Y.Times(a.y))
	}
	m.addCopies()
	m.standOn()
	return m.extents()
}

// alike reports whether a pattern differs from the followed one in places alone.
func (f *Follower) alike(p *pattern.Pattern) bool {
	b, c, d := f.base, &p.Cavity, &f.base.Cavity
	like := len(p.Pieces) == len(b.Pieces) && c.Piece == d.Piece && c.Panel == d.Panel && c.Turned == d.Turned && c.Round == d.Round &&
		slices.EqualFunc(p.Places, b.Places, func(x, y pattern.Place) bool { return x.Piece == y.Piece && x.On == y.On && x.Lie == y.Lie })
	for i := 0; like && i < len(p.Pieces); i++ {
		x, y := &p.Pieces[i], &b.Pieces[i]
		like = x.Root == y.Root && len(x.Panels) == len(y.Panels) && len(x.Creases) == len(y.Creases)
		for k := 0; like && k < len(x.Creases); k++ {
			like = turnAlike(&x.Creases[k], &y.Creases[k])
		}
	}
	return like
}

// turnAlike reports whether two creases turn the same panels as far, about lines that
// run the same way.
func turnAlike(x, y *pattern.Crease) bool {
	a, b := place(x.B).Minus(place(x.A)), place(y.B).Minus(place(y.A))
	return x.From == y.From && x.To == y.To && x.Fold == y.Fold && x.Angle == y.Angle && a.Cross(b) == 0 && a.Dot(b) > 0
}
