package rounding

import (
	"context"
	"errors"

	"creasefit/internal/measure"
)

// Search is a problem prepared for being solved at several steps. It keeps
// scratch space between calls and must not be used by two goroutines at once.
type Search struct {
	problem  *Problem
	parts    []part
	vars     []variable
	marks    []int64 // ruler marks coarser than the step, the finest first, in steps
	step     int64   // in nanometres
	relaxed  bool    // windows may be missed, at a cost before all others
	dirty    uint64  // the rows, by bit, with variables that have changed
	trail    []undo
	after    []int64 // scratch for divide, by term
	low      cost    // what nothing in the open ranges can go below
	cost     cost    // of the best of the part being searched
	found    bool
	linear   *relaxation // of the part being searched, once it is needed
	nodes    int
	fresh    int // nodes before the part being searched
	patience int // how many nodes of a part are searched without a relaxation
	work     int
	ctx      context.Context
	bad      error // what makes the problem unfit for being searched
	err      error // the context's, once it has ended
}

// contextEvery is how many rows are looked at between two looks at the
// context.
const contextEvery = 1 << 13

// NewSearch prepares a problem.
func NewSearch(p *Problem) *Search {
	s := &Search{problem: p, bad: p.check(), patience: relaxAfter}
	if s.bad != nil {
		return s
	}
	s.build()
	return s
}

// At returns the sizes of the readings, all multiples of the step, that are
// the optimum of the problem, and whether there are any. The optimum is the
// least weighted distance of the forms from the middles of their windows; then
// the least difference within the even pairs; then the fewest readings at the
// finest mark, then at the next coarser one, and so on; then the least sum;
// then the first smaller reading: the order is total, so it is unique. The
// error is the context's.
func (s *Search) At(ctx context.Context, step measure.Step) ([]measure.Length, bool, error) {
	s.relaxed = false
	return s.at(ctx, step)
}

func (s *Search) at(ctx context.Context, step measure.Step) ([]measure.Length, bool, error) {
	switch s.ctx, s.err = ctx, ctx.Err(); {
	case s.bad != nil:
		return nil, false, s.bad
	case step.IsZero():
		return nil, false, errors.New("rounding: no step")
	case s.err != nil:
		return nil, false, s.err
	}
	if !s.start(step) {
		return nil, false, nil
	}
	for i := range s.parts {
		if !s.solve(&s.parts[i]) {
			return nil, false, s.err
		}
	}
	sizes := make([]measure.Length, len(s.problem.Readings))
	for i := range sizes {
		if r := &s.problem.Readings[i]; r.Fixed {
			sizes[i] = r.Ideal
		} else {
			sizes[i] = measure.Nanometres(s.vars[i].best * s.step)
		}
	}
	return sizes, true, nil
}

// start counts everything in steps; false means that there is certainly no
// solution.
func (s *Search) start(step measure.Step) bool {
	s.nodes, s.work, s.trail = 0, 0, s.trail[:0]
	s.step = step.Size().Nanometres()
	s.marks = s.marks[:0]
	ruler := measure.Marks(step.Unit())
	for i := len(ruler) - 1; i >= 0; i-- {
		if n := ruler[i].Size().Nanometres() / s.step; n > 1 {
			s.marks = append(s.marks, n)
		}
	}
	for i := range s.problem.Readings {
		r := &s.problem.Readings[i]
		if r.Fixed {
			if !s.relaxed && !r.Ideal.IsMultipleOf(step) {
				return false
			}
			continue
		}
		v := &s.vars[i]
		v.stride = 1
		v.lo, v.hi = ceilDiv(r.Min.Nanometres(), s.step), floorDiv(r.Max.Nanometres(), s.step)
		if v.lo > v.hi {
			return false
		}
	}
	for i := range s.parts {
		if !s.startPart(&s.parts[i]) {
			return false
		}
	}
	return true
}

// startPart sets the goals of the rows, and the gauges and their variables.
func (s *Search) startPart(p *part) bool {
	for i := range p.rows {
		r := &p.rows[i]
		if r.constant%s.step != 0 {
			return false
		}
		r.goal = -r.constant / s.step
		for _, t := range r.mix {
			r.goal += t.coef * p.rows[t.of].goal
		}
		if r.own >= 0 {
			s.startSum(r.terms[:len(r.terms)-1], &s.vars[r.own])
		}
	}
	for i := range p.gauges {
		g := &p.gauges[i]
		g.slope = 2 * g.coef * s.step
		g.offset = g.min + g.max - 2*g.constant
		if g.slope < 0 {
			g.slope, g.offset = -g.slope, -g.offset
		}
		if g.window && !s.relaxed {
			half := g.max - g.min
			if half < 0 || !s.shrink(g.of, ceilDiv(g.offset-half, g.slope), floorDiv(g.offset+half, g.slope)) {
				return false
			}
		}
	}
	return true
}

// startSum opens to a sum all that its readings make possible.
func (s *Search) startSum(terms []term, v *variable) {
	v.lo, v.hi, v.stride = 0, 0, 1
	for _, t := range terms {
		a, b := t.coef*s.vars[t.of].lo, t.coef*s.vars[t.of].hi
		v.lo += min(a, b)
		v.hi += max(a, b)
	}
}

// solve finds the optimum of one part and leaves it in the variables' best.
func (s *Search) solve(p *part) bool {
	s.found, s.linear, s.dirty, s.fresh = false, nil, 0, s.nodes
	for i := range p.rows {
		s.dirty |= bit(i)
	}
	s.branch(p)
	return s.found && s.err == nil
}

// tired reports whether the context has ended, now and then.
func (s *Search) tired() bool {
	if s.work++; s.work%contextEvery == 0 && s.err == nil {
		s.err = s.ctx.Err()
	}
	return s.err != nil
}

// branch searches what is open: it narrows and bounds it, and splits what is
// left, the more promising piece first.
func (s *Search) branch(p *part) {
	s.nodes++
	if s.tired() || !s.settle(p) {
		return
	}
	if g := s.pick(p.gauges[:p.windows]); g != nil {
		s.splitGauge(p, g)
		return
	}
	if g := s.pick(p.gauges[p.windows:]); g != nil {
		s.splitGauge(p, g)
		return
	}
	for _, m := range s.marks {
		for _, i := range p.readings {
			if v := &s.vars[i]; !v.settled() {
				if first, ok := firstMultiple(v, m); ok && first <= v.hi && (v.stride%m != 0) {
					s.splitMark(p, i, m)
					return
				}
			}
		}
	}
	for _, i := range p.readings {
		if v := &s.vars[i]; !v.settled() {
			s.bisect(p, i, false)
			return
		}
	}
	s.keep(p)
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
		if s.found && !s.trim(p, 0) {
			return false
		}
		if s.dirty == 0 && s.nodes-s.fresh >= s.patience && !s.relax(p) {
			return false
		}
		if len(s.trail) == before {
			return true
		}
	}
}

// splitGauge splits at the open value nearest to the gauge's middle: that
// value, what lies below and what lies above; or in halves if the middle is
// outside.
func (s *Search) splitGauge(p *part, g *gauge) {
	v := s.vars[g.of]
	x := s.nearest(&v, g)
	if x < v.hi && abs(g.slope*(x+v.stride)-g.offset) < abs(g.slope*x-g.offset) {
		x += v.stride
	}
	if x == v.lo || x == v.hi {
		s.bisect(p, g.of, x == v.hi)
		return
	}
	s.try(p, g.of, x, x)
	if s.found {
		if s.bound(p); !s.trim(p, 0) || !s.narrow(p) {
			return
		}
		v = s.vars[g.of]
	}
	s.try(p, g.of, v.lo, x-v.stride)
	s.try(p, g.of, x+v.stride, v.hi)
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

func (s *Search) pick(gs []gauge) *gauge {
	var best *gauge
	var least int64
	for i := range gs {
		g := &gs[i]
		if v := &s.vars[g.of]; !v.settled() {
			if n := (v.hi - v.lo) / v.stride; best == nil || n < least {
				best, least = g, n
			}
		}
	}
	return best
}
