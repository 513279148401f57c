package enclosure

import (
	"strings"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// rolledBoxGrid is the shape of a box with rolled walls.
func rolledBoxGrid(piece string) grid {
	return grid{
		piece: piece,
		across: edge{[]string{"left inner wall", "left wall", "base width", "right wall", "right inner wall"},
			[]pattern.Score{valley("1", 180), valley("2", 90), valley("3", 90), valley("4", 180)}},
		up: edge{[]string{"bottom inner wall", "bottom wall", "base height", "top wall", "top inner wall"},
			[]pattern.Score{valley("5", 180), valley("6", 90), valley("7", 90), valley("8", 180)}},
		cells: append(boxCells(1), cell{"bottom inner wall", 2, 0, boxBottom}, cell{"top inner wall", 2, 4, boxTop},
			cell{"left inner wall", 0, 2, boxLeft}, cell{"right inner wall", 4, 2, boxRight}),
	}
}

// roll adds the inner walls of a box with rolled walls.
func (d *draft) roll(b *box) {
	b.allowance = d.allowance()
	inner := func(wall int) int {
		outer := &d.plan.Problem.Readings[wall]
		name := strings.Replace(outer.Name, "wall", "inner wall", 1)
		i := d.reading(name, outer.Ideal.Sub(d.in.Caliper))
		d.equal(name, measure.Length{}, times(1, i), times(1, b.allowance), times(-1, wall))
		return i
	}
	b.across = append([]int{inner(b.across[0])}, append(b.across, inner(b.across[2]))...)
	b.up = append([]int{inner(b.up[0])}, append(b.up, inner(b.up[2]))...)
}

// layInner draws the rolled walls in at their ends, so that they clear one
// another and the tabs, glues them, and brings their free edges to the base.
func (b *box) layInner(p *pattern.Piece, allowance, t measure.Length) {
	under, clear := t, t.Times(2)
	if !b.outside {
		under, clear = under.Add(t), clear.Add(t)
	}
	for i := range 4 {
		ends, in := t, under
		if i < 2 {
			ends, in = clear, t
		}
		b.shape.taper(p, boxInner+i, ends, ends)
		b.innerSeam(p, i, in, allowance)
		b.innerGlue(p, i, allowance, t)
	}
}

// innerSeam says where the free edge of a rolled wall comes to lie: the
// allowance above the base, so far in from the wall's score.
func (b *box) innerSeam(p *pattern.Piece, i int, in, allowance measure.Length) {
	o, base := p.Panels[boxInner+i].Outline, p.Panels[boxBase].Outline
	low, high := i%2, 0 // the free edge's ends
	s := pattern.Seam{Name: p.Panels[boxInner+i].Name, PanelA: boxInner + i, PanelB: boxBase, Apart: allowance}
	if i < 2 {
		s.A1, s.A2 = cornerOf(o, 0, low), cornerOf(o, 1, low)
		y := inward(cornerOf(base, high, low).Y, low == 1, in)
		s.B1, s.B2 = pattern.At(s.A1.X, y), pattern.At(s.A2.X, y)
	} else {
		s.A1, s.A2 = cornerOf(o, low, 0), cornerOf(o, low, 1)
		x := inward(cornerOf(base, low, high).X, low == 1, in)
		s.B1, s.B2 = pattern.At(x, s.A1.Y), pattern.At(x, s.A2.Y)
	}
	p.Seams = append(p.Seams, s)
}

// innerGlue glues a rolled wall to what it covers: its outer wall, or the tabs
// inside a side wall.
func (b *box) innerGlue(p *pattern.Piece, i int, allowance, t measure.Length) {
	panel := boxInner + i
	o, name := p.Panels[panel].Outline, p.Panels[panel].Name
	low, high := o[0].Point, o[2].Point
	rim, foot := t, measure.Length{} // what stays free of glue at the rim and at the free edge
	onTabs := i >= 2 && !b.outside
	if onTabs {
		rim, foot = t.Times(2), measure.Max(foot, t.Times(2).Sub(allowance))
	}
	if i%2 == 1 { // the rim of a top or right wall is its low edge
		rim, foot = foot, rim
	}
	if i < 2 {
		low.Y, high.Y = low.Y.Add(foot), high.Y.Sub(rim)
	} else {
		low.X, high.X = low.X.Add(foot), high.X.Sub(rim)
	}
	glue := func(name string, to int, y0, y1 measure.Length) {
		p.Glues = append(p.Glues, pattern.Glue{Name: name, Panel: panel, To: to, Area: pattern.Rectangle(low.X, y0, high.X, y1)})
	}
	if !onTabs {
		glue(name, boxBottom+i, low.Y, high.Y)
		return
	}
	for end := range 2 {
		tab := boxTabs + 2*end + i - 2
		long := p.Panels[tab].Outline[2].X.Sub(p.Panels[tab].Outline[0].X)
		base := p.Panels[boxBase].Outline
		y0, y1 := low.Y, base[0].Y.Add(long)
		if end == 1 {
			y0, y1 = base[2].Y.Sub(long), high.Y
		}
		glue(name+" on the "+p.Panels[tab].Name, tab, y0, y1)
	}
}
