package rounding

import "cmp"

// maxMarks is more than the marks that a ruler has beside the finest.
const maxMarks = 7

// cost is what a solution is judged by, in the order of the members. All are
// whole numbers, so that two costs compare exactly.
type cost struct {
	missed   int64           // weighted distance outside the windows; zero unless relaxed
	distance int64           // weighted, doubled distance from the middles
	uneven   int64           // differences within the pairs, in steps
	marks    [maxMarks]int64 // readings at each mark, the finest first
	sum      int64           // of the readings, in steps
}

func (c *cost) compare(d *cost) int {
	if k := cmp.Or(cmp.Compare(c.missed, d.missed), cmp.Compare(c.distance, d.distance), cmp.Compare(c.uneven, d.uneven)); k != 0 {
		return k
	}
	for i := range c.marks {
		if k := cmp.Compare(c.marks[i], d.marks[i]); k != 0 {
			return k
		}
	}
	return cmp.Compare(c.sum, d.sum)
}

// narrow shrinks the ranges to what the rows leave possible; false means that
// they leave nothing.
func (s *Search) narrow(p *part) bool {
	for again := true; again; {
		again = false
		for i := range p.rows {
			if s.relaxed && p.rows[i].weight > 0 {
				continue
			}
			changed, ok := s.narrowBy(&p.rows[i])
			if !ok {
				return false
			}
			again = again || changed
		}
	}
	return true
}

// narrowBy shrinks the ranges by one row: each reading may be no further off
// than the others can make good.
func (s *Search) narrowBy(r *row) (changed, ok bool) {
	low, high := s.span(r)
	if low > r.max || high < r.min {
		return false, false
	}
	roomUp, roomDown := r.max-low, high-r.min
	for _, t := range r.terms {
		per := t.Coefficient * s.step
		up, down := roomUp, roomDown
		if per < 0 {
			per, up, down = -per, roomDown, roomUp
		}
		lo, hi := s.lo[t.Reading], s.hi[t.Reading]
		newLo, newHi := max(lo, hi-down/per), min(hi, lo+up/per)
		if newLo > newHi {
			return false, false
		}
		if newLo != lo || newHi != hi {
			s.set(t.Reading, newLo, newHi)
			return true, true // the rooms have changed: the caller comes again
		}
	}
	return false, true
}

// span returns the least and the greatest value of a row in the open ranges.
func (s *Search) span(r *row) (low, high int64) {
	low, high = r.constant, r.constant
	for _, t := range r.terms {
		per := t.Coefficient * s.step
		a, b := per*s.lo[t.Reading], per*s.hi[t.Reading]
		low += min(a, b)
		high += max(a, b)
	}
	return low, high
}

// bound returns a cost that no solution in the open ranges can go below, and
// that is exact once all are settled; false means that there is none.
func (s *Search) bound(p *part) (c cost, ok bool) {
	for i := range p.rows {
		missed, distance, ok := s.rowCost(&p.rows[i])
		if !ok {
			return c, false
		}
		c.missed += missed
		c.distance += distance
	}
	for _, e := range p.pairs {
		aLo, aHi := s.rangeOf(e.A)
		bLo, bHi := s.rangeOf(e.B)
		c.uneven += max(0, aLo-bHi, bLo-aHi)
	}
	for _, i := range p.readings {
		c.marks[s.coarsest(s.lo[i], s.hi[i])]++
		c.sum += s.lo[i]
	}
	c.marks[len(s.marks)] = 0 // at the coarsest mark a reading costs nothing
	return c, true
}

// rangeOf returns the open range of a reading in steps, or where it is fixed.
func (s *Search) rangeOf(i int) (lo, hi int64) {
	if r := &s.problem.Readings[i]; r.Fixed {
		at := r.Ideal.Nanometres() / s.step
		return at, at
	}
	return s.lo[i], s.hi[i]
}

// rowCost bounds how far a row must lie outside its window and from its
// middle. A row only takes values on a lattice: its constant plus multiples of
// its coefficients' greatest common divisor.
func (s *Search) rowCost(r *row) (missed, distance int64, ok bool) {
	low, high := s.span(r)
	if !s.relaxed || r.weight == 0 {
		low, high = max(low, r.min), min(high, r.max)
	}
	middle := r.min + r.max // doubled
	below, above := around(r, s.step, middle)
	below, above = min(below, lattice(r, s.step, high)), max(above, latticeUp(r, s.step, low))
	distance = -1
	for _, v := range [2]int64{below, above} {
		if v < low || v > high {
			continue
		}
		if d := max(2*v-middle, middle-2*v); distance < 0 || d < distance {
			distance, missed = d, max(0, r.min-v, v-r.max)
		}
	}
	return missed * r.weight, distance * r.weight, distance >= 0
}

// around returns the row's lattice values next to half of the doubled middle.
func around(r *row, step, middle int64) (below, above int64) {
	half := middle >> 1 // rounds down
	below = lattice(r, step, half)
	if r.gcd == 0 {
		return below, below
	}
	return below, below + r.gcd*step
}

// lattice returns the greatest value that the row can take at most v.
func lattice(r *row, step, v int64) int64 {
	per := r.gcd * step
	if per == 0 {
		return r.constant
	}
	off := (v - r.constant) % per
	if off < 0 {
		off += per
	}
	return v - off
}

// latticeUp returns the least value that the row can take at least v.
func latticeUp(r *row, step, v int64) int64 {
	below := lattice(r, step, v)
	if below < v {
		below += r.gcd * step
	}
	return below
}

// coarsest returns the index of the coarsest mark that lies in a range of
// steps: 0 for the finest.
func (s *Search) coarsest(lo, hi int64) int {
	for k, m := range s.marks { // coarsest first
		if floorDiv(hi, m)*m >= lo {
			return len(s.marks) - k
		}
	}
	return 0
}

func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}
