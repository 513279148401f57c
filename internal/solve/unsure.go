package solve

import (
	"context"
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
func (s *Solution) warnUnsure(ctx context.Context) ([]enclosure.Warning, error) {
	if s.Sure.Weakest < 0 || s.Sure.Chance >= s.Request.enough() {
		return nil, nil
	}
	f := &s.Fits[s.Sure.Weakest]
	weakest := "the " + f.Axis.String()
	if f.Between != "" {
		weakest = f.Between + " along " + weakest
	}
	w := enclosure.Warning{Code: "unsure-fit", Detail: "With these tools everything goes in about " + hundredths(s.Sure.Chance) +
		" times in 100; the least sure is " + weakest + ". "}
	try, chance, err := s.Request.surer(ctx, f)
	if err != nil {
		return nil, err
	}
	if w.Try = try; try.Name == "" {
		w.Detail += "Make a trial piece first: no fit or bench alone makes it sure."
	} else {
		w.Detail += "With " + try.Name + "=" + try.Choice + " it is about " + hundredths(chance) + "."
	}
	return []enclosure.Warning{w}, nil
}

// hundredths writes a chance as a whole number of hundred tries, downwards.
func hundredths(chance float64) string { return strconv.Itoa(int(chance*100 + 1e-9)) }

// surer returns the first change of the fit or the bench with which a request is
// sure enough, and the chance then. Each has been tried. None has an empty name.
func (r *Request) surer(ctx context.Context, weakest *Fit) (enclosure.Option, float64, error) {
	for _, try := range append(r.looser(weakest), r.benches()...) {
		j, err := try.request.likely(ctx)
		if err != nil {
			return enclosure.Option{}, 0, err
		}
		if j != nil && j.reaches(r.enough()) {
			return try.option, j.sure().Chance, nil
		}
	}
	return enclosure.Option{}, 0, nil
}

// surerTry is a changed request and what was changed.
type surerTry struct {
	request Request
	option  enclosure.Option
}

// looser tries the fits looser than that of the contents or, if two pieces are
// the least sure, those of the parameter that chooses their fit.
func (r *Request) looser(weakest *Fit) []surerTry {
	var tries []surerTry
	between := r.Kind.FitParam()
	for _, f := range enclosure.NamedFits() {
		switch {
		case !weakest.Window.Min.Less(f.Range(r.Ruler.Unit()).Min):
		case weakest.Between == "":
			changed := *r
			changed.FitName, changed.Fit = f.Name, f.Range(r.Ruler.Unit())
			tries = append(tries, surerTry{changed, enclosure.Option{Name: "fit", Choice: f.Name}})
		case between != nil:
			option := enclosure.Option{Name: between.Name, Choice: f.Name}
			tries = append(tries, surerTry{r.with(option), option})
		}
	}
	return tries
}

// benches tries the benches that are more exact, each with the fit between two
// pieces that it makes sure if that is left to the bench.
func (r *Request) benches() []surerTry {
	var tries []surerTry
	for _, b := range bench.All() {
		if b.Cut.Less(r.CutError) && b.Score.Less(r.ScoreError) {
			changed := *r
			if r.asked != nil {
				changed = *r.asked
			}
			changed.CutError, changed.ScoreError = b.Cut, b.Score
			tries = append(tries, surerTry{changed, enclosure.Option{Name: "bench", Choice: b.Name}})
		}
	}
	return tries
}

// likely is what the answer to a request comes to, nil if it has none; what is
// folded up does not count.
func (r *Request) likely(ctx context.Context) (*judgement, error) {
	tries, err := r.attempts(ctx)
	if err != nil || len(tries.good) == 0 {
		return nil, err // the change breaks something else
	}
	return tries.good[0].first(), nil
}
