package solve

import (
	"cmp"
	"context"
	"iter"
	"slices"
	"sync"

	"creasefit/internal/enclosure"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// attempt is a request all of whose fits are settled, and the answers to it at
// the steps that have one, coarse to fine: the first alone, or all.
type attempt struct {
	*Request
	plan   *enclosure.Plan
	search rounding.Search
	steps  []measure.Step // that were not looked at
	found  []answer
	order  []int // in which the answers are tried; the first in it is judged

	space struct { // of both lists, as long as a ruler's usual steps
		found [8]answer
		order [8]int
	}
}

// first is what the answer comes to which is tried first.
func (a *attempt) first() *judgement { return a.found[a.order[0]].judged }

// attempts are those at a request that have answers, in the order of preference;
// without any, what was refused or missed.
type attempts struct {
	good    []*attempt
	refused error
	missed  *attempt

	space [4]*attempt // of the good ones
}

// attempts makes one attempt at a request or, where it leaves the fit between two
// pieces to the bench, one at each named fit, the closest first, until one is
// sure enough; if none is, the surest comes first, or the closest of those that
// hardly differ. Where the ruler has no readings for any of them, any clearance
// will do that one of them has. The error is the context's.
func (r *Request) attempts(ctx context.Context) (*attempts, error) {
	tries := &attempts{}
	tries.good = tries.space[:0]
	for q := range r.settled() {
		if q == r && len(tries.good) > 0 {
			break // some named fit has an answer
		}
		a, err := q.attempt(ctx)
		switch {
		case ctx.Err() != nil:
			tries.over()
			return nil, ctx.Err()
		case err != nil:
			if tries.refused == nil {
				tries.refused = err
			}
		case len(a.found) == 0:
			tries.missed = a
		default:
			if a.first().reaches(r.enough()) {
				tries.good = slices.Insert(tries.good, 0, a)
				return tries, nil
			}
			tries.add(a)
		}
	}
	return tries, nil
}

// settled yields the request with each named fit between two pieces, the closest
// first, if it leaves that to the bench, and then as it is.
func (r *Request) settled() iter.Seq[*Request] {
	return func(yield func(*Request) bool) {
		if p := r.Kind.FitParam(); p != nil && p.ByBench && p.Leaves(r.Options) {
			for _, f := range enclosure.NamedFits() {
				q := r.with(enclosure.Option{Name: p.Name, Choice: f.Name})
				q.asked = r
				if !yield(&q) {
					return
				}
			}
		}
		yield(r)
	}
}

// add puts an attempt before those that are clearly less sure.
func (t *attempts) add(a *attempt) {
	at := len(t.good)
	for at > 0 && t.good[at-1].first().sure().Chance+worthTurning < a.first().sure().Chance {
		at--
	}
	t.good = slices.Insert(t.good, at, a)
}

// spare are attempts whose memory the next ones can have.
var spare = sync.Pool{New: func() any { return new(attempt) }}

// none is a problem without anything.
var none rounding.Problem

// over gives attempts and their judgements back, which must not be used any more.
func (t *attempts) over() {
	for _, a := range t.good {
		a.giveBack()
	}
	if t.missed != nil {
		t.missed.giveBack()
	}
}

// leave gives back the plans of all attempts but the one that is taken.
func (t *attempts) leave(taken *attempt) {
	for _, a := range t.good {
		if a != taken {
			a.plan.Memory.GiveBack()
		}
	}
	if t.missed != nil {
		t.missed.plan.Memory.GiveBack()
	}
}

// drop gives the plans back as well, and all that was laid out by them.
func (t *attempts) drop() {
	t.leave(nil)
	t.over()
}

// giveBack gives an attempt and its judgements back, which keep nothing of the
// request alive.
func (a *attempt) giveBack() {
	for i := range a.found {
		if j := a.found[i].judged; j != nil {
			j.giveBack()
		}
	}
	a.search.Prepare(&none)
	a.Request, a.plan, a.found, a.order = nil, nil, nil, nil
	clear(a.space.found[:])
	spare.Put(a)
}

// explain says why there is no answer.
func (t *attempts) explain(ctx context.Context) error {
	if t.missed == nil {
		return t.refused
	}
	return t.missed.explain(ctx, t.missed.plan, &t.missed.search)
}

// attempt looks for the first answer to a request, or for all if a chance is
// wanted. The error is a fault or faults if the kind refuses it, or the context's.
func (r *Request) attempt(ctx context.Context) (*attempt, error) {
	plan, err := r.planned()
	if err != nil {
		return nil, err
	}
	a := spare.Get().(*attempt)
	a.Request, a.plan, a.steps, a.found = r, plan, r.steps(), a.space.found[:0]
	a.search.Prepare(&plan.Problem)
	if err = a.look(ctx, r.WantedChance > 0); err != nil || len(a.found) == 0 {
		return a, err
	}
	a.prefer()
	return a, nil
}

// look looks for the answer at the next step that has one, or for all that are left.
func (a *attempt) look(ctx context.Context, all bool) error {
	for len(a.steps) > 0 {
		step := a.steps[0]
		a.steps = a.steps[1:]
		sizes, ok, err := a.search.At(ctx, step)
		if err != nil {
			return err
		}
		if ok {
			a.found = append(a.found, answer{step: step, sizes: sizes})
		}
		if ok && !all {
			break
		}
	}
	return nil
}

// complete looks for the answers that an attempt has beside its first: where that
// does not hold, and beside the one that is given.
func (a *attempt) complete(ctx context.Context) error {
	if err := a.look(ctx, true); err != nil {
		return err
	}
	for i := len(a.order); i < len(a.found); i++ {
		a.order = append(a.order, i)
	}
	return nil
}

// prefer says in which order the answers are tried: the plainest first or, if a
// chance is wanted, the plainest of those that reach it, then the others, the
// surest first.
func (a *attempt) prefer() {
	a.order = a.space.order[:0]
	for i := range a.found {
		a.order = append(a.order, i)
		if i == 0 || a.WantedChance > 0 {
			a.found[i].judged = a.judge(a.plan, a.found[i].sizes)
		}
	}
	if a.WantedChance > 0 {
		slices.SortStableFunc(a.order, func(i, j int) int {
			x, y := a.found[i].judged.sure().Chance, a.found[j].judged.sure().Chance
			return cmp.Compare(min(y, a.WantedChance), min(x, a.WantedChance))
		})
	}
}

// wanted lays out the first answer, in the order of preference, that closes and
// holds, and says which it is; or the last, with what is wrong with it. The error
// is the context's.
func (a *attempt) wanted(ctx context.Context) (s *Solution, at int, wrong, err error) {
	for i := 0; i < len(a.order); i++ {
		at = a.order[i]
		if s, wrong = a.layOut(a.plan, &a.found[at]); wrong == nil {
			break
		}
		if err = a.complete(ctx); err != nil {
			return nil, 0, nil, err
		}
	}
	return s, at, wrong, nil
}

// settle judges the other answers beside the one that is taken, and warns.
func (a *attempt) settle(ctx context.Context, s *Solution, at int) (_ *Solution, err error) {
	if err = a.complete(ctx); err != nil {
		return nil, err
	}
	s.Alternatives = a.beside(s, at)
	if s.Warnings, err = s.warn(ctx); err != nil {
		return nil, err
	}
	return s, s.offerTwoPieces(ctx)
}

// beside judges the answers at other steps: the finer ones and, if a chance was
// wanted, the plainer ones that do not reach it.
func (a *attempt) beside(s *Solution, at int) []Alternative {
	from := at + 1
	if a.WantedChance > 0 {
		from = 0
	}
	list := slices.Grow(s.Alternatives, len(a.found)-from)
	made := judgements.Get().(*judgement)
	defer made.giveBack()
	for i := from; i < len(a.found); i++ {
		if i == at {
			continue
		}
		other := Alternative{Step: a.found[i].step, Gap: s.Proof.Gap, Fits: list[:len(list)+1][len(list)].Fits[:0]} // where others lay
		if j := a.found[i].judged; j != nil {
			other.Fits, other.Chance = append(other.Fits, j.fits...), j.sure().Chance
		} else {
			made.open(a.Request, a.plan, a.found[i].sizes, s.Sure.Datum)
			other.Fits = made.eachFit(other.Fits)
		}
		other.Nearer = offMiddle(s.Fits).Sub(offMiddle(other.Fits))
		if enclosure.WallGive(a.Caliper, a.BoardFrom).Less(s.Proof.Gap) {
			p := a.plan.Lay(a.found[i].sizes)
			other.Gap = fold.Gap(&p, a.closing())
		}
		list = append(list, other)
	}
	return list
}
