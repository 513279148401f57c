package own

import (
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// rootOf is the panel of a piece that hangs on nothing.
func (v *derivation) rootOf(piece int) int {
	return slices.IndexFunc(v.panels, func(q plate) bool { return q.piece == piece && q.parent < 0 })
}

// crosses reports whether a join glues a piece onto another one.
func (v *derivation) crosses(j *Join) bool {
	return v.panels[v.index[j.A.Panel]].piece != v.panels[v.index[j.B.Panel]].piece
}

// bond notes which pieces are glued onto which: by their roots, onto the root of a
// piece before them, their middle on its middle.
func (v *derivation) bond() {
	v.bodies = make([]int, len(v.Pieces))
	for i := range v.bodies {
		v.bodies[i] = i
	}
	for i := range v.Pieces {
		if held := v.Pieces[i].holds(); held != "" {
			inner := slices.IndexFunc(v.Pieces, func(p Piece) bool { return p.Name == held })
			root := &v.panels[v.rootOf(i)]
			root.base, root.nested, root.lid = v.rootOf(inner), true, v.Pieces[i].Over != ""
			root.under = !root.lid
		}
	}
	for i := range v.Joins {
		j := &v.Joins[i]
		if !v.crosses(j) || j.Type == Even {
			continue
		}
		a, b := &v.panels[v.index[j.A.Panel]], &v.panels[v.index[j.B.Panel]]
		switch {
		case j.Type != Glue:
			v.odd = append(v.odd, impossible(j.place, "nothing but glue holds two pieces together", "glue one onto the other, root on root"))
		case a.On != "" || b.On != "" || b.piece > a.piece || a.base >= 0:
			v.odd = append(v.odd, impossible(j.place, "a piece is glued by its root, once, onto the root of a piece before it", "begin both pieces with the panels that are glued together"))
		default:
			a.base, a.under = v.index[j.B.Panel], j.Face == pattern.Outside
			v.bodies[a.piece] = v.bodies[b.piece]
		}
	}
}

// lay puts a piece onto its base, or under the one that it goes round: a caliper from it,
// middle on middle.
func (s *sight) lay(p *plate) {
	on := &s.panels[p.base]
	for axis := range 2 {
		w := p.face.own(axis)
		_, middle := on.lies(axis, middleOf(on.spans[axis]))
		p.origin[w.axis] = middle.plus(-w.sign, middleOf(p.spans[axis]))
	}
	out := on.face.inside
	if p.lid {
		s.show()
		p.rim = s.rimOf(p)
		p.origin[out.axis] = faceOn(&s.blockAt(p.rim).at, out).with(caliper, out.sign*parts/2)
		return
	}
	p.origin[out.axis] = on.origin[out.axis]
	if p.under {
		out = out.back()
	}
	p.move(out.axis, out.sign, only(caliper, parts))
}

// middleOf is the middle of a span.
func middleOf(span [2]form) form { return span[0].plus(1, span[1]).half() }

// places lays pieces onto others, middle on middle: those that are glued onto them, all
// over but for a window, lids on the rims of what they go over, and pieces that go round
// others under them.
func (p *planner) places(whole *pattern.Pattern, layouts []layout) {
	for i := range p.panels {
		q := &p.panels[i]
		if q.base < 0 {
			continue
		}
		on := &p.panels[q.base]
		l, under := &layouts[q.piece], &layouts[on.piece]
		own, base := l.piece.Panels[p.at(i)].Outline, &under.piece.Panels[p.at(q.base)]
		out, middle := on.face.inside, centre(base.Outline)
		at := pattern.Place{Piece: q.piece, On: on.piece, Above: q.origin[out.axis].plus(-1, on.origin[out.axis]).times(out.sign).exact(l.values),
			X: middle.X.Sub(centre(own).X), Y: middle.Y.Sub(centre(own).Y)}
		switch {
		case q.lid:
			at.Lie, at.X = pattern.FaceDown, middle.X.Add(centre(own).X)
			fallthrough
		case q.nested:
			whole.Nests = append(whole.Nests, p.nesting(p.Pieces[q.piece].nesting(), on.piece, q.piece))
		default:
			face := pattern.Inside
			if q.under {
				face = pattern.Outside
			}
			b := pattern.Bond{Name: p.Pieces[on.piece].Name, A: q.piece, B: on.piece}
			for _, area := range spread(own, base, pattern.At(at.X, at.Y)) {
				b.Glues = append(b.Glues, pattern.Glue{Name: q.Name, Panel: p.at(i), Face: 1 - face, Area: area, To: p.at(q.base), ToFace: face})
			}
			whole.Bonds = append(whole.Bonds, b)
		}
		whole.Places = append(whole.Places, at)
	}
}

// nesting is one piece in another one, with the axes along which they fit.
func (p *planner) nesting(name string, inner, outer int) pattern.Nesting {
	n := pattern.Nesting{Name: name, Inner: inner, Outer: outer}
	for k := range p.fits {
		if p.fits[k].between == name {
			n.Axes = append(n.Axes, p.fits[k].axis)
		}
	}
	return n
}

// centre is the middle of a rectangle.
func centre(o []pattern.Vertex) pattern.Point {
	return pattern.At(o[0].X.Add(o[2].X).Over(2), o[0].Y.Add(o[2].Y).Over(2))
}

// spread is where glue goes on a rectangle that lies on a panel, shifted by so much:
// all that they share, in strips round a window.
func spread(own []pattern.Vertex, base *pattern.Panel, shift pattern.Point) [][]pattern.Vertex {
	low, high := own[0].Point, own[2].Point
	o := base.Outline
	low = pattern.At(measure.Max(low.X, o[0].X.Sub(shift.X)), measure.Max(low.Y, o[0].Y.Sub(shift.Y)))
	high = pattern.At(measure.Min(high.X, o[2].X.Sub(shift.X)), measure.Min(high.Y, o[2].Y.Sub(shift.Y)))
	if len(base.Hole) == 0 {
		return [][]pattern.Vertex{pattern.Rectangle(low.X, low.Y, high.X, high.Y)}
	}
	a := pattern.At(base.Hole[0].X.Sub(shift.X), base.Hole[0].Y.Sub(shift.Y))
	b := pattern.At(base.Hole[2].X.Sub(shift.X), base.Hole[2].Y.Sub(shift.Y))
	return [][]pattern.Vertex{
		pattern.Rectangle(low.X, low.Y, high.X, a.Y), pattern.Rectangle(low.X, b.Y, high.X, high.Y),
		pattern.Rectangle(low.X, a.Y, a.X, b.Y), pattern.Rectangle(b.X, a.Y, high.X, b.Y),
	}
}
