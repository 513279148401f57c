package rounding

import "math"

const (
	fine  = 1 << 12       // what a slope of one is counted as
	never = math.MaxInt64 // above every sum
	// The farthest from zero that a row times its share may be. With it the readings, whose
	// sum is within 2^44 steps, and a thousand rows stay within 2^62.
	farthest = 1 << 50
)

// ascend searches for the least sum, all before it being settled: first for one that is hardly more
// than it must be, which cuts off most, then ever farther above.
func (s *Search) ascend(p *part) {
	low := s.low
	s.summing, s.above = true, low[sum]
	for room := int64(0); ; room = 2*room + 1 {
		s.cap, s.above = s.above+room, never
		mark := len(s.trail)
		s.branch(p)
		s.rewind(mark)
		if s.above == never || s.alike(&low) && s.cost[sum] <= s.cap {
			break
		}
	}
	s.summing = false
}

// alike reports whether the best so far is as good as a cost up to the sum.
func (s *Search) alike(c *cost) bool {
	level, _ := c.compare(&s.cost, 0)
	return s.found && level >= sum
}

// lift raises the lower bound of the sum to what the rows make of it together, and cuts off what
// would bring it above the cap; false means that nothing is left. Of each row a share is taken from
// the sum. Since a row comes to its goal, the sum is the goals' shares and what is left, which is
// the slopes times the variables.
func (s *Search) lift(p *part) bool {
	clear(s.slopes)
	for _, i := range p.readings {
		s.slopes[i] = fine
	}
	var low int64
	for i := range p.rows[:p.stated] {
		low += s.share(&p.rows[i])
	}
	for i, slope := range s.slopes {
		low += least(slope, &s.vars[i])
	}
	s.low[sum] = max(s.low[sum], ceilDiv(low, fine))
	most := s.cap
	if s.alike(&s.low) {
		most = min(most, s.cost[sum])
	}
	slack := most*fine - low
	if slack < 0 {
		s.above = min(s.above, s.low[sum])
		return false
	}
	return s.trimSlopes(slack)
}

// trimSlopes cuts off what would raise the sum by more than the slack.
func (s *Search) trimSlopes(slack int64) bool {
	before, left := len(s.trail), true
	for i := 0; i < len(s.slopes) && left; i++ {
		switch v, slope := &s.vars[i], s.slopes[i]; {
		case slope > 0:
			left = s.shrink(i, v.lo, v.lo+slack/slope)
		case slope < 0:
			left = s.shrink(i, v.hi+slack/slope, v.hi)
		}
	}
	if !left || len(s.trail) > before {
		s.above = min(s.above, s.cap+1)
	}
	return left
}

// share takes from the slopes the share of a row that leaves the greatest lower bound, and returns
// the goal's share. It is one that makes a slope zero, or nearly so.
func (s *Search) share(r *row) int64 {
	var reach int64
	for i := range r.terms {
		t := &r.terms[i]
		v := &s.vars[t.of]
		reach += abs(t.coef) * max(abs(v.lo), abs(v.hi))
	}
	best, greatest := int64(0), s.worth(r, 0)
	for i := range r.terms {
		t := &r.terms[i]
		share := s.slopes[t.of] / t.coef
		if s.vars[t.of].settled() || abs(share) > farthest/max(1, reach) {
			continue
		}
		if worth := s.worth(r, share); worth > greatest {
			best, greatest = share, worth
		}
	}
	if best != 0 {
		for i := range r.terms {
			t := &r.terms[i]
			s.slopes[t.of] -= best * t.coef
		}
	}
	return best * r.goal
}

// worth returns what a share of a row makes of the lower bound, as far as the row's variables go.
func (s *Search) worth(r *row, share int64) int64 {
	worth := share * r.goal
	for i := range r.terms {
		t := &r.terms[i]
		worth += least(s.slopes[t.of]-share*t.coef, &s.vars[t.of])
	}
	return worth
}

// least returns the least that a slope times a variable can be.
func least(slope int64, v *variable) int64 { return min(slope*v.lo, slope*v.hi) }
