package solve

import (
	"context"
	"iter"
	"strconv"

	"creasefit/internal/bench"
	"creasefit/internal/enclosure"
)

// sureEnough is the least chance that needs no warning, unless the request
// wants another.
const sureEnough = 0.95

// enough is the chance under which the request is warned.
func (r *Request) enough() float64 {
	if r.WantedChance > 0 {
		return r.WantedChance
	}
	return sureEnough
}

// warnUnsure warns, once, of a solution that is not sure enough, and says what
// would make it so. The error is the context's.
func (s *Solution) warnUnsure(ctx context.Context, warnings []enclosure.Warning) ([]enclosure.Warning, error) {
	if s.Sure.Weakest < 0 || s.Sure.Chance >= s.Request.enough() {
		return warnings, nil
	}
	f := &s.Fits[s.Sure.Weakest]
	weakest := "the " + f.Axis.String()
	if f.Between != "" {
		weakest = f.Between + " along " + weakest
	}
	try, chance, err := s.Request.surer(ctx, f)
	if err != nil {
		return nil, err
	}
	advice := "Make a trial piece first: no fit or bench alone makes it sure."
	if try.Name != "" {
		advice = "With " + try.Name + "=" + try.Choice + " it is about " + hundredths(chance) + "."
	}
	return append(warnings, enclosure.Warning{Code: "unsure-fit", Try: try, Detail: "With these tools everything goes in about " + hundredths(s.Sure.Chance) +
		" times in 100; the least sure is " + weakest + ". " + advice}), nil
}

// hundredths writes a chance as a whole number of hundred tries, downwards.
func hundredths(chance float64) string { return strconv.Itoa(int(chance*100 + 1e-9)) }

// surer returns the first change of the fit or the bench with which a request is
// sure enough, and the chance then. Each has been tried. None has an empty name.
func (r *Request) surer(ctx context.Context, weakest *Fit) (enclosure.Option, float64, error) {
	for changed, option := range r.changes(weakest) {
		if chance, err := changed.likely(ctx, r.enough()); err != nil || chance > 0 {
			return option, chance, err
		}
	}
	return enclosure.Option{}, 0, nil
}

// changes yields the request with what may make it surer, and what was changed.
func (r *Request) changes(weakest *Fit) iter.Seq2[*Request, enclosure.Option] {
	return func(yield func(*Request, enclosure.Option) bool) {
		if r.looser(weakest, yield) {
			r.benches(yield)
		}
	}
}

// looser yields the request with each fit looser than that of the contents or, if
// two pieces are the least sure, of the parameter that chooses their fit. It is
// false when no more is wanted.
func (r *Request) looser(weakest *Fit, yield func(*Request, enclosure.Option) bool) bool {
	between, changed := r.Kind.FitParam(), *r
	for _, f := range enclosure.NamedFits() {
		wanted := f.Range(r.Ruler.Unit())
		if !weakest.Window.Min.Less(wanted.Min) || weakest.Between != "" && between == nil {
			continue
		}
		option := enclosure.Option{Name: "fit", Choice: f.Name}
		if weakest.Between == "" {
			changed.FitName, changed.Fit = f.Name, wanted
		} else {
			option.Name = between.Name
			changed = r.with(option)
		}
		if !yield(&changed, option) {
			return false
		}
	}
	return true
}

// benches yields the request with each bench that is more exact, with the fit
// between two pieces that it makes sure if that is left to the bench.
func (r *Request) benches(yield func(*Request, enclosure.Option) bool) {
	var changed Request
	for _, b := range bench.All() {
		if !b.Cut.Less(r.CutError) || !b.Score.Less(r.ScoreError) {
			continue
		}
		changed = *r
		if r.asked != nil {
			changed = *r.asked
		}
		changed.CutError, changed.ScoreError = b.Cut, b.Score
		if !yield(&changed, enclosure.Option{Name: "bench", Choice: b.Name}) {
			return
		}
	}
}

// likely is the chance of the answer to a request if it has one that is sure
// enough, else zero; what is folded up does not count.
func (r *Request) likely(ctx context.Context, enough float64) (float64, error) {
	tries, err := r.attempts(ctx)
	if err != nil {
		return 0, err
	}
	defer tries.drop()
	if len(tries.good) == 0 || !tries.good[0].first().reaches(enough) {
		return 0, nil // none, or the change breaks something else
	}
	return tries.good[0].first().sure().Chance, nil
}
