package rounding

// solve finds the optimum of one part and leaves it in the variables' best.
func (s *Search) solve(p *part) bool {
	s.found = false
	if p.rising {
		s.solveNear(p)
	}
	s.touch(p)
	if s.found { // most of the rest is cut off before any row is looked at
		s.bound(p)
		s.trim(p, 0)
	}
	s.branch(p)
	return s.found && s.err == nil
}

// solveNear looks for the optimum among readings next to their ideals. Where many of
// them are to be equal it mostly lies there, and then cuts off nearly all of the rest.
func (s *Search) solveNear(p *part) {
	mark := len(s.trail)
	s.touch(p)
	near := true
	for _, i := range p.readings {
		ideal := s.problem.Readings[i].Ideal.Nanometres()
		near = near && s.shrink(i, floorDiv(ideal, s.step), ceilDiv(ideal, s.step))
	}
	if near {
		s.branch(p)
	}
	s.rewind(mark)
}

// touch has all rows of a part looked at, and no others.
func (s *Search) touch(p *part) {
	s.dirty = 0
	for i := range p.rows {
		s.dirty |= bit(i)
	}
}

// tired reports whether the context has ended, for which it looks now and then.
func (s *Search) tired() bool {
	if s.rest--; s.rest < 0 {
		s.rest, s.err = contextEvery, s.ctx.Err()
	}
	return s.err != nil
}

// branch searches what is open: it narrows and bounds it, and splits what is
// left, the more promising piece first. What decides most is settled first: the
// windows, the pairs, the marks from the finest on, the sum, the readings.
func (s *Search) branch(p *part) {
	if s.nodes++; s.tired() || !s.settle(p) {
		return
	}
	if k := s.narrowest(p.readings); k < 0 {
		s.keep(p)
	} else if s.summing {
		s.bisect(p, p.readings[k], false)
	} else if s.nodes > stubborn && !s.whole(p) {
		return
	} else if k := s.narrowest(p.gauged[:p.windows]); k >= 0 {
		s.splitGauge(p, &p.gauges[k])
	} else if k := s.narrowest(p.gauged[p.windows:]); k >= 0 {
		s.splitGauge(p, &p.gauges[p.windows+k])
	} else if reading, mark := s.undecided(p); reading >= 0 {
		s.splitMark(p, reading, mark)
	} else {
		s.ascend(p)
	}
}

// narrowest returns which of some variables has the fewest values open, so that what
// cannot be is seen early; -1 if all are settled.
func (s *Search) narrowest(these []int) int {
	best, fewest := -1, int64(0)
	for k, i := range these {
		if n := s.vars[i].open(); n > 0 && (best < 0 || n < fewest) {
			best, fewest = k, n
		}
	}
	return best
}

// undecided returns the first reading that may lie on the finest mark or off
// it, or if there is none on the next coarser mark, and so on; -1 for none.
func (s *Search) undecided(p *part) (reading int, mark int64) {
	for _, m := range s.marks {
		for _, i := range p.readings {
			v := &s.vars[i]
			if v.settled() || v.stride%m == 0 {
				continue
			}
			if first, ok := firstMultiple(v, m); ok && first <= v.hi {
				return i, m
			}
		}
	}
	return -1, 0
}

// settle narrows and trims until nothing changes; false means that nothing is
// left.
func (s *Search) settle(p *part) bool {
	for {
		if !s.narrow(p) {
			return false
		}
		s.bound(p)
		before := len(s.trail)
		if s.summing && !s.lift(p) {
			return false
		}
		if s.found && !s.trim(p, 0) {
			return false
		}
		if len(s.trail) == before {
			return true
		}
	}
}

// splitGauge splits at the open value nearest to the gauge's middle: that
// value, what lies below and what lies above; or in halves if there is nothing
// on one side, unless that is all that a rising pair leaves.
func (s *Search) splitGauge(p *part, g *gauge) {
	v := s.vars[g.of]
	x := s.nearest(&v, g)
	if x < v.hi && abs(g.slope*(x+v.stride)-g.offset) < abs(g.slope*x-g.offset) {
		x += v.stride
	}
	if (x == v.lo || x == v.hi) && !(g.rising && x == g.middle) {
		s.bisect(p, g.of, x == v.hi)
		return
	}
	s.try(p, g.of, x, x)
	if s.found { // most of the rest may be cut off at once
		if s.bound(p); !s.trim(p, 0) || !s.narrow(p) {
			return
		}
		v = s.vars[g.of]
	}
	s.try(p, g.of, v.lo, x-1)
	s.try(p, g.of, x+1, v.hi)
}

// bisect splits in halves, the lower one first unless the upper is wanted.
func (s *Search) bisect(p *part, of int, upper bool) {
	v := s.vars[of]
	half := floorDiv(v.lo+v.hi, 2)
	if upper {
		s.try(p, of, half+1, v.hi)
		s.try(p, of, v.lo, half)
	} else {
		s.try(p, of, v.lo, half)
		s.try(p, of, half+1, v.hi)
	}
}

// splitMark splits into the multiples of a mark and the rest.
func (s *Search) splitMark(p *part, of int, m int64) {
	v := &s.vars[of]
	skip, count := congruence(v.stride, -v.lo, m)
	for k := range count {
		mark := len(s.trail)
		if s.meet(of, (skip+k)%count, count) {
			s.branch(p)
		}
		s.rewind(mark)
	}
}

// try searches with a variable kept from lo to hi.
func (s *Search) try(p *part, of int, lo, hi int64) {
	mark := len(s.trail)
	if lo <= hi && s.shrink(of, lo, hi) {
		s.branch(p)
	}
	s.rewind(mark)
}

// keep makes the settled variables the best so far.
func (s *Search) keep(p *part) {
	s.found, s.cost = true, s.low
	for _, i := range p.readings {
		s.vars[i].best = s.vars[i].lo
	}
}
