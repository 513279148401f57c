package solve

import (
	"context"
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/rounding"
	"creasefit/internal/stock"
)

// remedies returns, in words, the changes of one thing at a time that would
// give the request a solution: a finer ruler, another fit, another caliper.
// Each of them has been tried.
func (r *Request) remedies(ctx context.Context, miss rounding.Miss, plan *enclosure.Plan) (string, error) {
	var help []string
	for _, tries := range [][]remedy{r.finerRulers(), r.otherFits(), r.otherCalipers(miss, plan)} {
		for _, try := range tries { // until one has a solution
			ok, err := try.request.feasible(ctx)
			if err != nil {
				return "", err
			}
			if ok {
				help = append(help, try.words)
				break
			}
		}
	}
	if len(help) == 0 {
		return "no finer ruler, other fit or other caliper alone would help: change the fixed sizes", nil
	}
	return "this would fit: " + strings.Join(help, "; or "), nil
}

// remedy is a changed request and what to call the change.
type remedy struct {
	request Request
	words   string
}

// feasible reports whether a request has readings at any of its steps that
// close and hold.
func (r *Request) feasible(ctx context.Context) (bool, error) {
	tries, err := r.attempts(ctx)
	if err != nil {
		return false, err
	}
	defer tries.drop()
	for _, a := range tries.good {
		if _, _, wrong, err := a.wanted(ctx); wrong == nil || err != nil {
			return err == nil, err
		}
	}
	return false, nil // the change breaks something else, or does not help
}

// finerRulers tries the first finer mark than the request allows.
func (r *Request) finerRulers() []remedy {
	finest := r.Ruler
	if !r.Step.IsZero() {
		finest = r.Step
	}
	var tries []remedy
	for _, mark := range measure.Marks(finest.Unit()) {
		if mark.Size().Less(finest.Size()) {
			changed := *r
			changed.Ruler, changed.Step = mark, mark
			tries = append(tries, remedy{changed, "readings at " + mark.String()})
		}
	}
	return tries
}

// otherFits tries the named fits.
func (r *Request) otherFits() []remedy {
	var tries []remedy
	for _, f := range enclosure.NamedFits() {
		if f.Name != r.FitName {
			changed := *r
			changed.FitName, changed.Fit = f.Name, f.Range(r.Ruler.Unit())
			tries = append(tries, remedy{changed, "fit=" + f.Name})
		}
	}
	return tries
}

// otherCalipers tries the stock that would make good what a clearance misses
// by.
func (r *Request) otherCalipers(miss rounding.Miss, plan *enclosure.Plan) []remedy {
	var tries []remedy
	for _, off := range miss.Windows {
		for _, f := range plan.Fits {
			if f.Window != off.Window || f.Need.HalfCalipers == 0 {
				continue
			}
			changed := *r
			changed.Caliper = beyond(r.Caliper, f.Clearance(off.By).Times(2).Over(f.Need.HalfCalipers), r.Ruler.Unit())
			if changed.Caliper.Less(stock.LeastCaliper()) || stock.GreatestCaliper().Less(changed.Caliper) {
				continue
			}
			tries = append(tries, remedy{changed, "stock of caliper " + changed.Caliper.Plain(r.Ruler.Unit())})
		}
	}
	return tries
}

// beyond returns the caliper at least as far off as asked for, in whole
// thousandths of an inch or hundredths of a millimetre, as paper is sold.
func beyond(caliper, by measure.Length, u measure.Unit) measure.Length {
	point := measure.Thousandths(1)
	if u == measure.Millimetre {
		point = measure.Micrometres(10)
	}
	exact, per := caliper.Add(by).Nanometres(), point.Nanometres()
	points := exact / per
	if by.Sign() > 0 && exact%per != 0 {
		points++
	}
	return point.Times(points)
}
