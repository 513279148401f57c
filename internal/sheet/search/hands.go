package search

import (
	"cmp"

	"creasefit/internal/sheet"
)

// hands says how hard a plan is on the hands.
type hands struct {
	sheet.Work
	late   int     // sheets cut until what has priority is made, summed over its items
	plans  int     // different sheets
	offcut float64 // area of the largest usable offcut
}

// handsOf is how hard an answer is on the hands.
func (p *problem) handsOf(a *sheet.Answer) hands {
	h := hands{Work: a.Work, plans: len(a.Plans)}
	for i, it := range p.order.Items {
		if it.Priority > 0 {
			h.late += a.Ready[i]
		}
	}
	for _, u := range a.Usable {
		h.offcut = max(h.offcut, u.Width.Millimetres()*u.Height.Millimetres())
	}
	return h
}

// compare orders plans of the same cost, the easier one first, by what has priority,
// by what the order prefers and then by the others.
func (h *hands) compare(o *hands, prefer sheet.Preference) int {
	first := 0
	switch prefer {
	case sheet.LargeOffcuts:
		first = cmp.Compare(o.offcut, h.offcut)
	case sheet.FewStages:
		first = cmp.Compare(h.Stages, o.Stages)
	}
	return cmp.Or(cmp.Compare(h.late, o.late), first, cmp.Compare(h.Settings, o.Settings), cmp.Compare(h.plans, o.plans), cmp.Compare(h.Turns, o.Turns),
		cmp.Compare(h.Stages, o.Stages), cmp.Compare(o.offcut, h.offcut), cmp.Compare(h.Cuts, o.Cuts))
}

// easier is the search for the easiest plan of the least cost found.
type easier struct {
	*planner
	best   []cutting
	eager  bool // best is trimmed at once
	hands  hands
	cost   int64 // of best
	strips *greedy
	tries  int
	since  int64 // effort spent when the search for plans of this cost began
	found  int64 // effort spent when best was found
}

// ease looks for plans of the least cost known that are easier on the hands, until
// that has not helped for long: twice as long as the last improvement took. (Four
// times as long took 2.4 times the work, for 1 setting of the trimmer in 100 less.)
// A cheaper plan met on the way is the planner's, and is made easier from there on.
func (e *easier) ease() {
	if e.planner.best == nil {
		return
	}
	e.begin()
	noises := [...]float64{0.3, 1, 0.1}
	for ; !e.settled() && !e.ended(); e.tries++ {
		if plan := e.strips.run(1<<(e.tries%6), noises[e.tries%3], e.cost+1); plan != nil {
			e.offer(plan)
			e.begin()
			e.consider(cuttingsOf(plan))
		}
	}
}

// begin begins anew where the planner has found a cheaper plan.
func (e *easier) begin() {
	if e.strips != nil && e.cost == e.planner.cost {
		return
	}
	e.cost, e.best, e.since = e.planner.cost, nil, e.spent
	e.consider(e.planner.best)
	e.strips = e.newGreedy(e.effort)
	e.strips.strips = true
}

// settled reports whether the search has come to its own end.
func (e *easier) settled() bool {
	return e.pieces() > mostEased || e.spent-e.found >= leastEased+2*(e.found-e.since)
}

// mostEased bounds the orders whose plans are made easier, and leastEased is the
// effort that is always spent on it, about fifteen milliseconds.
const (
	mostEased  = 3_000
	leastEased = 5_000_000
)

// consider keeps a plan if it is easier than the best, with what is spare trimmed
// at once or not.
func (e *easier) consider(plan []cutting) {
	for _, eager := range []bool{false, true} {
		a := e.outline(plan, eager)
		h := e.handsOf(&a)
		if e.allowed(h.Stages) && (e.best == nil || h.compare(&e.hands, e.order.Prefer) < 0) {
			e.best, e.eager, e.hands, e.found = plan, eager, h, e.spent
		}
		e.spend(finishSteps * e.pieces())
	}
}

// finishSteps is what writing one piece of a plan down costs.
const finishSteps = 500
