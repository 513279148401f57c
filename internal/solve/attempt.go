package solve

import (
	"cmp"
	"context"
	"iter"
	"maps"
	"slices"

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
	search *rounding.Search
	steps  []measure.Step // that were not looked at
	found  []answer
	order  []int        // in which the answers are tried
	judged []*judgement // of the answers, as far as the order needs it: the first in it always
}

// first is what the answer comes to which is tried first.
func (a *attempt) first() *judgement { return a.judged[a.order[0]] }

// attempts are those at a request that have answers, in the order of preference;
// without any, what was refused or missed.
type attempts struct {
	good    []attempt
	refused error
	missed  *attempt
}

// attempts makes one attempt at a request or, where it leaves the fit between two
// pieces to the bench, one at each named fit, the closest first, until one is
// sure enough; if none is, the surest comes first, or the closest of those that
// hardly differ. Where the ruler has no readings for any of them, any clearance
// will do that one of them has. The error is the context's.
func (r *Request) attempts(ctx context.Context) (*attempts, error) {
	tries := &attempts{}
	for q := range r.settled() {
		if q == r && len(tries.good) > 0 {
			break // some named fit has an answer
		}
		a, err := q.attempt(ctx)
		switch {
		case ctx.Err() != nil:
			return nil, err
		case err != nil:
			if tries.refused == nil {
				tries.refused = err
			}
		case len(a.found) == 0:
			tries.missed = a
		default:
			if a.first().reaches(r.enough()) {
				tries.good = slices.Insert(tries.good, 0, *a)
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

// with is the request with another choice of one of the kind's parameters.
func (r *Request) with(o enclosure.Option) Request {
	q := *r
	if q.Options = maps.Clone(r.Options); q.Options == nil {
		q.Options = map[string]enclosure.Value{}
	}
	q.Options[o.Name] = enclosure.Value{Choice: o.Choice}
	return q
}

// add puts an attempt before those that are clearly less sure.
func (t *attempts) add(a *attempt) {
	at := len(t.good)
	for at > 0 && t.good[at-1].first().sure().Chance+worthTurning < a.first().sure().Chance {
		at--
	}
	t.good = slices.Insert(t.good, at, *a)
}

// explain says why there is no answer.
func (t *attempts) explain(ctx context.Context) error {
	if t.missed == nil {
		return t.refused
	}
	return t.missed.explain(ctx, t.missed.plan, t.missed.search)
}

// attempt looks for the first answer to a request, or for all if a chance is
// wanted. The error is a fault or faults if the kind refuses it, or the context's.
func (r *Request) attempt(ctx context.Context) (*attempt, error) {
	plan, err := r.planned()
	if err != nil {
		return nil, err
	}
	a := &attempt{Request: r, plan: plan, search: rounding.NewSearch(&plan.Problem), steps: r.steps()}
	if err = a.look(ctx, r.WantedChance > 0); err != nil || len(a.found) == 0 {
		return a, err
	}
	a.prefer()
	return a, nil
}

// look looks for the answer at the next step that has one, or for all that are left.
func (a *attempt) look(ctx context.Context, all bool) error {
	if a.found == nil {
		a.found = make([]answer, 0, len(a.steps))
	}
	for len(a.steps) > 0 {
		step := a.steps[0]
		a.steps = a.steps[1:]
		sizes, ok, err := a.search.At(ctx, step)
		if err != nil {
			return err
		}
		if ok {
			a.found = append(a.found, answer{step, sizes})
		}
		if ok && !all {
			break
		}
	}
	return nil
}

// complete looks for the answers that an attempt has beside its first, which only
// one that is laid out needs.
func (a *attempt) complete(ctx context.Context) error {
	if err := a.look(ctx, true); err != nil {
		return err
	}
	for i := len(a.order); i < len(a.found); i++ {
		a.order, a.judged = append(a.order, i), append(a.judged, nil)
	}
	return nil
}

// prefer says in which order the answers are tried: the plainest first or, if a
// chance is wanted, the plainest of those that reach it, then the others, the
// surest first.
func (a *attempt) prefer() {
	a.order, a.judged = make([]int, len(a.found), cap(a.found)), make([]*judgement, len(a.found), cap(a.found))
	for i := range a.found {
		a.order[i] = i
		if i == 0 || a.WantedChance > 0 {
			a.judged[i] = a.judge(a.plan, a.found[i].sizes)
		}
	}
	if a.WantedChance > 0 {
		slices.SortStableFunc(a.order, func(i, j int) int {
			x, y := a.judged[i].sure().Chance, a.judged[j].sure().Chance
			return cmp.Compare(min(y, a.WantedChance), min(x, a.WantedChance))
		})
	}
}

// wanted lays out the first answer, in the order of preference, that closes and
// holds, and says which it is; or the last, with what is wrong with it.
func (a *attempt) wanted() (s *Solution, at int, wrong error) {
	for _, at = range a.order {
		if s, wrong = a.layOut(a.plan, a.found[at], a.judged[at]); wrong == nil {
			break
		}
	}
	return s, at, wrong
}

// settle judges the other answers beside the one that is taken, and warns.
func (a *attempt) settle(ctx context.Context, s *Solution, at int) (_ *Solution, err error) {
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
	list := make([]Alternative, 0, len(a.found)-from)
	var made account
	for i := from; i < len(a.found); i++ {
		if i == at {
			continue
		}
		other := Alternative{Step: a.found[i].step}
		if j := a.judged[i]; j != nil {
			other.Fits, other.Chance = j.fits, j.sure().Chance
		} else {
			made.open(a.Request, a.plan, a.found[i].sizes, s.Sure.Datum)
			other.Fits = made.eachFit()
		}
		other.Nearer = offMiddle(s.Fits).Sub(offMiddle(other.Fits))
		if s.Proof.Gap.Sign() > 0 {
			p := a.plan.Lay(a.found[i].sizes)
			other.Gap = fold.Prove(&p, a.closing()).Gap
		}
		list = append(list, other)
	}
	return list
}
