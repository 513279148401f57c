package fold

import "creasefit/internal/pattern"

// pairing is how far the edges of two plates give way to one another.
type pairing struct {
	a, b  float64
	known bool // worked out when it is first asked for
}

// pair returns how two plates give way to one another, i the greater.
func (r *Rig) pair(i, j int) pairing {
	p := &r.pairs[i*(i-1)/2+j]
	if !p.known && i < len(r.m.plates) {
		p.a, p.b = r.m.bends(i, j)
	}
	p.known = true
	return *p
}

// Free reports whether two plates are never in one another's way: they hang
// together, lock, or bend as one piece.
func (r *Rig) Free(i, j int) bool {
	if max(i, j) >= len(r.m.plates) {
		return false
	}
	a, b := &r.m.plates[i], &r.m.plates[j]
	return a.parent == j || b.parent == i || r.Plates[i].Unit == r.Plates[j].Unit && (r.Bent(r.Plates[i].Unit) || r.m.hooked(a, b))
}

// Meet reports whether a plate passes through another one, of which it is not free, by
// more than slack, in millimetres, and than their edges give way: where it is, or
// anywhere on a way.
func (p *Pose) Meet(i, j int, way Vec, slack float64) bool {
	a, b := p.lift(i), p.lift(j)
	swept, on := a.box, (*Vec)(nil)
	if way != (Vec{}) {
		on = &way
		for k, d := range way {
			swept.low[k] += min(0, d)
			swept.high[k] += max(0, d)
		}
	}
	if apart(&swept, &b.box) {
		return false
	}
	yieldI, yieldJ := p.give(i, j, slack)
	for k := range a.parts {
		own := a.parts[k].giving(yieldI, slack)
		for l := range b.parts {
			other := b.parts[l].giving(yieldJ, slack)
			if meet(&own, &other, on) {
				return true
			}
		}
	}
	return false
}

// give returns how far the edges of two plates give way to one another.
func (p *Pose) give(i, j int, slack float64) (a, b float64) {
	pair := p.rig.pair(max(i, j), min(i, j))
	if i < j {
		pair.a, pair.b = pair.b, pair.a
	}
	return shared(pair.a+slack, pair.b+slack, len(p.at[i].parts) == 1, len(p.at[j].parts) == 1)
}

// bends returns how far the edges of two plates give way to one another while they
// are moved: also where their creases meet in a corner.
func (m *model) bends(i, j int) (a, b float64) {
	a, b = m.yields(i, j)
	if x, y := &m.plates[i], &m.plates[j]; a < m.half && !m.pattern.Stiff() && m.oneBody(x, y) && m.meetInCorner(x, y) {
		return m.half, m.half
	}
	return a, b
}

// meetInCorner reports whether the creases that two plates hang by end at
// the same corner, give or take what the folds take up there.
func (m *model) meetInCorner(x, y *plate) bool {
	if x.piece != y.piece || x.crease < 0 || y.crease < 0 || x.crease == y.crease {
		return false
	}
	creases := m.pattern.Pieces[x.piece].Creases
	c, d := &creases[x.crease], &creases[y.crease]
	near := max(x.spine, y.spine)/2 + 2*m.half + touch
	for _, p := range [...]pattern.Point{c.A, c.B} {
		for _, q := range [...]pattern.Point{d.A, d.B} {
			if place(p).Minus(place(q)).Length() < near {
				return true
			}
		}
	}
	return false
}
