package own

import (
	"slices"
	"sync"
)

// touching is how near in nanometres two faces lie that are in contact; forms are
// exact, so that it is above all rounding of their values alone.
const touching = 2.0

// sight is where the plates of a folding lie at some values of its unknowns. What
// depends on that is told by it alone, once when the folding is made, and again for
// every request that it may stand for.
type sight struct {
	*derived
	values []float64
	feet   []spot    // by panel
	spots  []spot    // by block
	stood  []float64 // the values that the hard rows led to
}

// sights are those whose memory the next looks can have.
var sights = sync.Pool{New: func() any { return new(sight) }}

// spot is where a plate begins and ends along the axes of space.
type spot [3][2]float64

// where is where stretches lie.
func (s *sight) where(at *[3]stretch) (w spot) {
	for k := range at {
		w[k] = [2]float64{at[k].low.at(s.values), at[k].high.at(s.values)}
	}
	return w
}

// face is where the face of a plate lies that looks in a way.
func (w *spot) face(to way) float64 {
	if to.sign > 0 {
		return w[to.axis][1]
	}
	return w[to.axis][0]
}

// over reports whether two plates share some of their cross-section along an axis.
func (w *spot) over(o *spot, along int) bool {
	for k := range w {
		if k != along && shared(w[k], o[k]) <= touching {
			return false
		}
	}
	return true
}

// shared is how much two stretches have in common, in nanometres.
func shared(a, b [2]float64) float64 {
	a, b = upwards(a), upwards(b)
	if b[0] > a[0] {
		a[0] = b[0]
	}
	if b[1] < a[1] {
		a[1] = b[1]
	}
	return a[1] - a[0]
}

// upwards is a stretch with its lower end first.
func upwards(s [2]float64) [2]float64 {
	if s[1] < s[0] {
		return [2]float64{s[1], s[0]}
	}
	return s
}

// spot works out where the blocks lie.
func (s *sight) spot() {
	s.spots = room(s.spots, len(s.blocks))
	for i := range s.blocks {
		s.spots[i] = s.where(&s.blocks[i].at)
	}
}

// standing is what the plates show at the values that the hard rows lead to.
func (s *sight) standing(values []float64) shown {
	s.stood = append(s.stood[:0], values...)
	s.hard.settle(s.stood)
	s.values = s.stood
	s.spot()
	return s.look()
}

// holds reports whether a folding is what comes of some values: the same plates lie on
// one another, and bound the same.
func (r *derived) holds(values []float64) bool {
	s := sights.Get().(*sight)
	defer sights.Put(s)
	s.derived, s.values = r, values
	return s.liesAlike() && r.shown.is(s.standing(values))
}

// liesAlike reports whether the same plates lie on one another.
func (s *sight) liesAlike() bool {
	if !s.piles {
		return true
	}
	if s.ends {
		s.spot()
	}
	s.feet = room(s.feet, len(s.panels))
	for i := range s.panels {
		s.feet[i] = s.where(&s.panels[i].foot)
	}
	for n, i := range s.order {
		p := &s.panels[i]
		if p.Angle == 180 && s.pileUnder(i, s.order[:n]) != p.pile ||
			s.ends && (p.lid && s.rimOf(p) != p.rim || s.besides(i) != p.beside) {
			return false
		}
	}
	return true
}

// shown is what the plates of a folding show: by their blocks, what bounds the contents,
// and of each piece that goes over another one how far that reaches and what bounds it.
type shown struct {
	walls  pairs
	pieces [][2]pairs
}

// pairs are two blocks along every axis, the lower first, -1 for none.
type pairs [3][2]int

func (s *shown) is(o shown) bool { return s.walls == o.walls && slices.Equal(s.pieces, o.pieces) }
