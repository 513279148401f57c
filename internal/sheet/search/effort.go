package search

import (
	"context"
	"math"
	"time"
)

// effort is the work that may still be done. It is counted in steps, each about
// what one cell of a table costs: some nanoseconds. Counts say how the ways share
// the work, so that a plan with more time goes the same way and only further;
// the clock and the caller only say when it ends. Every loop spends.
type effort struct {
	ctx   context.Context
	end   time.Time // zero means that the context alone ends it
	left  int64     // steps still allowed
	look  int64     // steps until the clock is looked at
	over  bool      // time is up, or the caller has left
	spent int64
	pulse func(now time.Time) // called at every look at the clock; nil for nobody
	clock func() time.Time
}

// lookEvery is how many steps go by between two looks at the clock, about a
// third of a millisecond.
const lookEvery = 100_000

// newEffort is all the work until a time, or until the context ends.
func newEffort(ctx context.Context, end time.Time) *effort {
	return &effort{ctx: ctx, end: end, left: math.MaxInt64 / 2, clock: time.Now}
}

// spend takes some steps and reports whether there are more.
func (e *effort) spend(steps int) bool {
	n := int64(steps)
	e.left -= n
	e.spent += n
	if e.look -= n; e.look < 0 {
		e.look = lookEvery
		now := e.clock()
		e.over = e.over || e.ctx.Err() != nil || !e.end.IsZero() && now.After(e.end)
		if e.pulse != nil {
			e.pulse(now)
		}
	}
	return !e.over && e.left >= 0
}

// ended reports whether nothing more may be done.
func (e *effort) ended() bool { return !e.spend(1) }

// within lets a way do a part of what is left, in time as in steps.
func (e *effort) within(part, of int64, way func()) {
	end := e.end
	if now := e.clock(); !end.IsZero() && end.After(now) {
		e.end = now.Add(end.Sub(now) * time.Duration(part) / time.Duration(of))
	}
	e.lend(e.left/of*part, way)
	e.end, e.look, e.over = end, 0, false
}

// lend lets a way do no more than so many steps.
func (e *effort) lend(steps int64, way func()) {
	kept := e.left
	given := min(steps, kept)
	e.left = given
	way()
	e.left = kept - (given - e.left)
}
