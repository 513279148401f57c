package rounding

import "cmp"

// mostMarks is how many marks a ruler has at most.
const mostMarks = 7

// A solution is judged by its costs, one after the other.
const (
	missed   = 0                 // weighted distance outside the windows, doubled; zero unless relaxed
	distance = 1                 // weighted distance from the middles, doubled
	uneven   = 2                 // differences within the pairs, doubled
	marks    = 3                 // readings at each mark, the finest first
	sum      = marks + mostMarks // of the readings, in steps
	levels   = sum + 1
)

// cost is in whole numbers, so that two costs compare exactly.
type cost [levels]int64

// compare returns the first level, not before the given one, where the costs
// differ, and how.
func (c *cost) compare(d *cost, from int) (level, order int) {
	for i := from; i < levels; i++ {
		if c[i] != d[i] {
			return i, cmp.Compare(c[i], d[i])
		}
	}
	return levels, 0
}

// bound sets low to a cost that nothing in the open ranges can go below, and
// that is exact once all variables are settled.
func (s *Search) bound(p *part) {
	s.low = cost{}
	c := &s.low
	for i := range p.gauges {
		g := &p.gauges[i]
		d := s.off(g)
		if g.window {
			c[distance] += g.weight * d
			if s.relaxed {
				c[missed] += max(1, g.weight) * max(0, d-(g.max-g.min))
			}
		} else {
			c[uneven] += d
		}
	}
	for _, i := range p.readings {
		v := &s.vars[i]
		if k := s.coarsest(v); k < len(s.marks) {
			c[marks+k]++
		}
		c[sum] += v.lo
	}
}

// off returns twice the least distance of a gauge from its middle.
func (s *Search) off(g *gauge) int64 {
	v := &s.vars[g.of]
	x := s.nearest(v, g)
	d := abs(g.slope*x - g.offset)
	if x < v.hi {
		d = min(d, abs(g.slope*(x+v.stride)-g.offset))
	}
	return d
}

// nearest returns the greatest open value on the lesser side of the gauge's
// middle, or the least one if there is none.
func (s *Search) nearest(v *variable, g *gauge) int64 {
	if v.settled() {
		return v.lo
	}
	switch x := g.middle; {
	case x <= v.lo:
		return v.lo
	case x >= v.hi:
		return v.hi
	case v.stride == 1:
		return x
	default:
		return x - (x-v.lo)%v.stride
	}
}

// coarsest returns the index of the coarsest mark that a variable can lie on:
// 0 for the finest.
func (s *Search) coarsest(v *variable) int {
	for k, m := range s.marks {
		if v.stride == 1 && v.hi-v.lo >= m-1 {
			continue
		}
		if first, ok := firstMultiple(v, m); !ok || first > v.hi {
			return k
		}
	}
	return len(s.marks)
}

// firstMultiple returns the least multiple of a mark that is open to a
// variable; false means that there is none at all.
func firstMultiple(v *variable, m int64) (int64, bool) {
	if v.stride == 1 {
		return ceilDiv(v.lo, m) * m, true
	}
	if v.lo%gcd(v.stride, m) != 0 {
		return 0, false
	}
	skip, _ := congruence(v.stride, -v.lo, m)
	return v.lo + skip*v.stride, true
}

// trim cuts off what cannot beat the best solution so far, given that there is
// nothing to gain on the levels before the one given; false means that nothing
// is left.
func (s *Search) trim(p *part, from int) bool {
	level, order := s.low.compare(&s.cost, from)
	return order <= 0 && s.trimGauges(p, level) && s.trimMarks(p, level) && s.trimReadings(p, level)
}

// trimGauges: up to the level, a gauge may be off its middle by no more than
// it must and the slack allows.
func (s *Search) trimGauges(p *part, level int) bool {
	for i := range p.gauges {
		g := &p.gauges[i]
		at, weight := uneven, int64(1)
		if g.window {
			at, weight = distance, g.weight
			if s.relaxed && level == missed {
				at, weight = missed, max(1, g.weight)
			}
		}
		v := &s.vars[g.of]
		if level < at || weight == 0 || v.settled() {
			continue
		}
		d := s.off(g)
		if at == missed {
			d = max(d, g.max-g.min)
		}
		d += (s.cost[at] - s.low[at]) / weight
		if !s.shrink(g.of, ceilDiv(g.offset-d, g.slope), floorDiv(g.offset+d, g.slope)) {
			return false
		}
	}
	return true
}

// trimMarks: no reading may lie on a finer mark than it must, for the marks
// before the level.
func (s *Search) trimMarks(p *part, level int) bool {
	if level <= marks {
		return true
	}
	for _, i := range p.readings {
		v := &s.vars[i]
		if v.settled() {
			continue
		}
		k := min(s.coarsest(v), level-marks, len(s.marks))
		if k == 0 {
			continue
		}
		if skip, count := congruence(v.stride, -v.lo, s.marks[k-1]); count > 1 && !s.meet(i, skip, count) {
			return false
		}
	}
	return true
}

// trimReadings: with all else equal the first reading that differs must be smaller.
func (s *Search) trimReadings(p *part, level int) bool {
	if level <= sum {
		return true
	}
	for _, i := range p.readings {
		v := &s.vars[i]
		if !s.shrink(i, v.lo, v.best) {
			return false
		}
		if v.lo < v.best {
			return true
		}
	}
	return false
}
