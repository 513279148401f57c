package rounding

import (
	"context"

	"creasefit/internal/measure"
)

// Search is a problem prepared for being solved at several steps. It keeps
// scratch space between calls and must not be used by two goroutines at once.
type Search struct {
	problem *Problem
	parts   []part  // readings that hang together, each with its own rows
	marks   []int64 // ruler marks coarser than the step, the coarsest first, in steps
	step    int64   // in nanometres
	relaxed bool    // windows may be missed, at a cost before all others
	lo, hi  []int64 // the range still open to each reading, in steps
	trail   []undo
	best    []int64 // the best of the part being searched, by reading
	cost    cost    // its cost
	found   bool
	nodes   int
	ctx     context.Context
}

// undo is a range as it was before it was narrowed.
type undo struct {
	reading int
	lo, hi  int64
}

// ctxEvery is how many nodes are searched between two looks at the context.
const ctxEvery = 4096

// NewSearch prepares a problem.
func NewSearch(p *Problem) *Search {
	n := len(p.Readings)
	ranges := make([]int64, 3*n)
	return &Search{
		problem: p,
		parts:   split(p),
		lo:      ranges[:n:n], hi: ranges[n : 2*n : 2*n], best: ranges[2*n:],
		trail: make([]undo, 0, 8*n+8),
	}
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
	if !s.start(ctx, step) {
		return nil, false, nil
	}
	for i := range s.parts {
		if ok, err := s.solvePart(&s.parts[i]); !ok || err != nil {
			return nil, false, err
		}
	}
	sizes := make([]measure.Length, len(s.best))
	for i, r := range s.problem.Readings {
		sizes[i] = r.Ideal
		if !r.Fixed {
			sizes[i] = measure.Nanometres(s.best[i] * s.step)
		}
	}
	return sizes, true, nil
}

// start sets the ranges for a step; false means that a fixed reading lies on
// no mark or a range holds none.
func (s *Search) start(ctx context.Context, step measure.Step) bool {
	s.ctx, s.nodes, s.trail = ctx, 0, s.trail[:0]
	s.step = step.Size().Nanometres()
	s.marks = s.marks[:0]
	for _, m := range measure.Marks(step.Unit()) {
		if n := m.Size().Nanometres() / s.step; n > 1 {
			s.marks = append(s.marks, n)
		}
	}
	for i, r := range s.problem.Readings {
		if r.Fixed {
			if !s.relaxed && !r.Ideal.IsMultipleOf(step) {
				return false
			}
			continue
		}
		s.lo[i] = step.Up(r.Min).Nanometres() / s.step
		s.hi[i] = step.Down(r.Max).Nanometres() / s.step
		if s.lo[i] > s.hi[i] {
			return false
		}
	}
	return true
}

// solvePart finds the optimum of one part and leaves it in best.
func (s *Search) solvePart(p *part) (bool, error) {
	s.found = false
	err := s.branch(p)
	return s.found, err
}

// branch searches the ranges as they stand: it narrows them by the rows, cuts
// off what cannot beat the best so far, and splits the smallest open range
// into the mark nearest the ideal, what lies below it and what lies above.
func (s *Search) branch(p *part) error {
	if s.nodes++; s.nodes%ctxEvery == 0 && s.ctx.Err() != nil {
		return s.ctx.Err()
	}
	if !s.narrow(p) {
		return nil
	}
	bound, ok := s.bound(p)
	if !ok || s.found && !s.beats(p, &bound) {
		return nil
	}
	pick := s.pick(p)
	if pick < 0 {
		s.keep(p, bound)
		return nil
	}
	lo, hi := s.lo[pick], s.hi[pick]
	ideal := s.problem.Readings[pick].Ideal.Nanometres()
	v := min(max((ideal+s.step/2)/s.step, lo), hi)
	for _, open := range [3][2]int64{{v, v}, {lo, v - 1}, {v + 1, hi}} {
		if open[0] > open[1] {
			continue
		}
		mark := len(s.trail)
		s.set(pick, open[0], open[1])
		if err := s.branch(p); err != nil {
			return err
		}
		s.rewind(mark)
	}
	return nil
}

// pick returns the reading with the smallest open range, or -1 if all are
// settled.
func (s *Search) pick(p *part) int {
	pick, least := -1, int64(0)
	for _, i := range p.readings {
		if open := s.hi[i] - s.lo[i]; open > 0 && (pick < 0 || open < least) {
			pick, least = i, open
		}
	}
	return pick
}

// keep makes the settled ranges the best so far.
func (s *Search) keep(p *part, c cost) {
	s.found, s.cost = true, c
	for _, i := range p.readings {
		s.best[i] = s.lo[i]
	}
}

// beats reports whether what the bound promises may still be better than the
// best so far: cheaper, or as cheap with a smaller reading first.
func (s *Search) beats(p *part, bound *cost) bool {
	if c := bound.compare(&s.cost); c != 0 {
		return c < 0
	}
	for _, i := range p.readings {
		if s.lo[i] != s.best[i] {
			return s.lo[i] < s.best[i]
		}
	}
	return false
}

// set narrows a range and remembers what it was.
func (s *Search) set(i int, lo, hi int64) {
	s.trail = append(s.trail, undo{i, s.lo[i], s.hi[i]})
	s.lo[i], s.hi[i] = lo, hi
}

// rewind takes back all that was set since the mark.
func (s *Search) rewind(mark int) {
	for k := len(s.trail) - 1; k >= mark; k-- {
		u := s.trail[k]
		s.lo[u.reading], s.hi[u.reading] = u.lo, u.hi
	}
	s.trail = s.trail[:mark]
}
