package rounding

import (
	"context"
	"errors"

	"creasefit/internal/measure"
)

// Search is a problem prepared for being solved at several steps. It keeps
// scratch space between calls and must not be used by two goroutines at once;
// nor may the problem be changed as long as it is used. The zero Search has to be
// prepared.
type Search struct {
	problem *Problem
	bad     error // what makes the problem unfit for being searched
	parts   []part
	vars    []variable

	// At a step.
	step    int64   // in nanometres
	marks   []int64 // ruler marks coarser than the step, the finest first, in steps
	relaxed bool    // windows may be missed, at a cost before all others
	nodes   int     // that were branched at
	ctx     context.Context
	err     error // the context's, once it has ended
	rest    int   // rows to be looked at before the next look at the context

	// Of the part being searched.
	found   bool
	cost    cost    // of the best so far
	low     cost    // what nothing that is open can go below
	summing bool    // all that comes before the sum is settled
	cap     int64   // what the sum is to be at most
	above   int64   // the least that is known of sums that were cut off as above the cap
	dirty   uint64  // the rows, by bit, with variables that have changed
	after   []int64 // scratch for divide, by term
	slopes  []int64 // by variable, of the sum less shares of the rows, in fine parts of one

	memory // of the lists above
}

// contextEvery is how many rows are looked at between two looks at the
// context.
const contextEvery = 1 << 13

// NewSearch prepares a problem. What is wrong with the problem, if anything,
// the search's methods return.
func NewSearch(p *Problem) *Search {
	s := &Search{}
	s.Prepare(p)
	return s
}

// Prepare makes a search one of another problem, in the memory that it has. It
// forgets all that it knew, the context of its last call as well; sizes that it
// returned stay as they are.
func (s *Search) Prepare(p *Problem) {
	*s = Search{problem: p, bad: p.check(), memory: s.memory}
	if s.bad == nil {
		s.build()
	}
}

// At returns the sizes of the readings that are the optimum of the problem
// among the multiples of the step, and whether there are any. Fixed readings
// are returned as given; one that is no multiple of the step leaves no
// solution. The optimum is
//
//   - the least sum of the windows' distances, weighted, of form from middle;
//   - then the least sum of the differences within the even pairs;
//   - then the fewest readings at the step's own mark (those that lie on no
//     coarser one), then at the next coarser mark, and so on;
//   - then the least sum of the readings;
//   - then the smaller first reading that differs.
//
// Every comparison is exact and the order is total: the answer is unique, and
// the same for the same problem at any time. The time taken is short for
// problems of a dozen readings but can grow exponentially with them; it ends
// soon after the context does. The error is the context's, or says that the
// step is zero or what is wrong with the problem.
func (s *Search) At(ctx context.Context, step measure.Step) ([]measure.Length, bool, error) {
	if err := s.ready(ctx, step); err != nil {
		return nil, false, err
	}
	s.relaxed = false
	sizes, ok := s.at(step)
	return sizes, ok, s.err
}

// ready reports what keeps a search from being started.
func (s *Search) ready(ctx context.Context, step measure.Step) error {
	s.ctx, s.err, s.rest = ctx, ctx.Err(), contextEvery
	switch {
	case s.bad != nil:
		return s.bad
	case step.IsZero():
		return errors.New("rounding: no step")
	}
	return s.err
}

func (s *Search) at(step measure.Step) ([]measure.Length, bool) {
	if !s.start(step) {
		return nil, false
	}
	for i := range s.parts {
		if !s.solve(&s.parts[i]) {
			return nil, false
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
	return sizes, true
}

// start counts everything in steps; false means that there is certainly no
// solution.
func (s *Search) start(step measure.Step) bool {
	s.trail, s.nodes = s.trail[:0], 0
	s.step = step.Size().Nanometres()
	s.startMarks(step)
	for i := range s.problem.Readings {
		r, v := &s.problem.Readings[i], &s.vars[i]
		switch {
		case !r.Fixed:
			v.lo, v.hi, v.stride = ceilDiv(r.Min.Nanometres(), s.step), floorDiv(r.Max.Nanometres(), s.step), 1
			if v.lo > v.hi {
				return false
			}
		case !s.relaxed && !r.Ideal.IsMultipleOf(step):
			return false
		}
	}
	for i := range s.parts {
		if !s.startRows(&s.parts[i]) || !s.startGauges(&s.parts[i]) {
			return false
		}
	}
	return true
}

// startMarks notes the ruler's marks that are coarser than the step.
func (s *Search) startMarks(step measure.Step) {
	s.marks = s.marks[:0]
	ruler := measure.Marks(step.Unit())
	for i := len(ruler) - 1; i >= 0; i-- {
		if n := ruler[i].Size().Nanometres() / s.step; n > 1 {
			s.marks = append(s.marks, n)
		}
	}
}

// startRows sets the goals of the rows, and opens to the sums of readings all
// that these make possible.
func (s *Search) startRows(p *part) bool {
	for i := range p.rows {
		r := &p.rows[i]
		if r.constant%s.step != 0 {
			return false
		}
		r.goal = -r.constant / s.step
		for _, t := range r.mix {
			r.goal += t.coef * p.rows[t.of].goal
		}
		if r.own < 0 {
			continue
		}
		v := &s.vars[r.own]
		v.lo, v.hi, v.stride = 0, 0, 1
		for _, t := range r.terms[:len(r.terms)-1] {
			a, b := t.coef*s.vars[t.of].lo, t.coef*s.vars[t.of].hi
			v.lo += min(a, b)
			v.hi += max(a, b)
		}
	}
	return true
}

// startGauges counts the gauges in steps and holds their variables to the
// windows and on the rise.
func (s *Search) startGauges(p *part) bool {
	for i := range p.gauges {
		g := &p.gauges[i]
		g.slope = 2 * g.coef * s.step
		g.offset = g.min + g.max - 2*g.constant
		if g.slope < 0 {
			g.slope, g.offset = -g.slope, -g.offset
		}
		g.middle = floorDiv(g.offset, g.slope)
		if !s.hold(g) {
			return false
		}
	}
	return true
}

// hold keeps a gauge's variable within its window or, of a rising pair, on the side of its
// middle that is not above zero; false means that nothing is left.
func (s *Search) hold(g *gauge) bool {
	v, half := &s.vars[g.of], g.max-g.min
	lo, hi := ceilDiv(g.offset-half, g.slope), floorDiv(g.offset+half, g.slope)
	switch {
	case g.window:
		return s.relaxed || s.shrink(g.of, lo, hi)
	case !g.rising:
		return true
	case g.coef > 0:
		return s.shrink(g.of, v.lo, hi)
	}
	return s.shrink(g.of, lo, v.hi)
}
