package mail

import (
	"cmp"
	"slices"
)

// spread is an amount with its tolerance.
type spread struct{ low, nominal, high int64 }

// around returns an amount plus or minus its tolerance; what is there is never
// nothing.
func around(n, tolerance int64) spread { return spread{max(1, n-tolerance), n, n + tolerance} }

// measured is a piece as a post looks at it.
type measured struct {
	length, height, thickness, mass spread
	longer, shorter                 spread // of length and height, whichever way the address reads
	traits                          Trait
}

// seenBy turns the piece so that its length is the longest side and its
// thickness the shortest. An address keeps the face that it is on, and its
// lines run along the length if the post goes by that.
func (q *Piece) seenBy(p *Post) measured {
	tolerance := q.SizeTolerance.Nanometres()
	sides := []spread{around(q.Width.Nanometres(), tolerance), around(q.Height.Nanometres(), tolerance),
		around(q.Thickness.Nanometres(), q.ThicknessTolerance.Nanometres())}
	turned := sides[:2]
	if q.Address == LongerSide {
		turned = sides
	}
	slices.SortStableFunc(turned, func(a, b spread) int { return cmp.Compare(b.nominal, a.nominal) })
	m := measured{sides[0], sides[1], sides[2], around(q.Mass.picograms, q.MassTolerance.picograms), sides[0], sides[1], q.Traits}
	across := q.Address == WidthSide && q.Width.Less(q.Height) || q.Address == HeightSide && q.Height.Less(q.Width)
	if p.ByAddress && across {
		m.length, m.height, m.traits = m.height, m.length, m.traits|addressAcross
	}
	return m
}

// of returns how much the piece has of a quantity, or false if that is not
// known. least says that it is for a least bound, see ratio.
func (m *measured) of(q Quantity, least bool) (spread, bool) {
	switch q {
	case OfLength:
		return m.length, true
	case OfHeight:
		return m.height, true
	case OfLongerSide:
		return m.longer, true
	case OfShorterSide:
		return m.shorter, true
	case OfThickness:
		return m.thickness, m.thickness.nominal > 0
	case OfSum:
		return m.sum(), m.thickness.nominal > 0
	case OfMass:
		return m.mass, m.mass.nominal > 0
	default:
		return m.ratio(least), true
	}
}

// sum adds the three sizes up.
func (m *measured) sum() spread {
	l, h, t := m.length, m.height, m.thickness
	return spread{l.low + h.low + t.low, l.nominal + h.nominal + t.nominal, l.high + h.high + t.high}
}

// ratio divides the length by the height. Millionths are rounded down for a
// least bound and up for a greatest one: since bounds are whole millionths the
// comparison is as exact as that of fractions.
func (m *measured) ratio(least bool) spread {
	down := func(a, b int64) int64 { return a * ratioUnit / max(1, b) }
	up := func(a, b int64) int64 { return (a*ratioUnit + b - 1) / max(1, b) }
	r := spread{down(m.length.low, m.height.high), up(m.length.nominal, m.height.nominal), up(m.length.high, m.height.low)}
	if least {
		r.nominal = down(m.length.nominal, m.height.nominal)
	}
	return r
}
