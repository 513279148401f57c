package solve

import (
	"cmp"
	"context"
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// Solve finds the solution of a request: the plainest readings that fit, laid
// out, folded and judged. The error is a fault or faults when there is none,
// or the context's.
func Solve(ctx context.Context, r *Request) (*Solution, error) {
	plan, err := r.planned()
	if err != nil {
		return nil, err
	}
	search := rounding.NewSearch(&plan.Problem)
	found, err := searchAll(ctx, r, plan, search)
	if err != nil {
		return nil, err
	}
	if len(found) == 0 {
		return nil, r.explain(ctx, plan, search)
	}
	return r.settle(ctx, plan, found)
}

// planned is the request's plan by its kind.
func (r *Request) planned() (*enclosure.Plan, error) { return r.Kind.Plan(r.input()) }

// input is the request as a kind sees it.
func (r *Request) input() *enclosure.Input {
	return &enclosure.Input{
		Unit: r.Ruler.Unit(), Width: r.Width, Height: r.Height, Thickness: r.Thickness,
		Caliper: r.Caliper, Sheet: measure.Max(r.SheetWidth, r.SheetHeight), Fit: r.Fit, Given: r.Options, Params: r.Kind.Params,
	}
}

// steps returns the steps to look at, coarse to fine: the forced one alone, or
// all that the ruler has.
func (r *Request) steps() []measure.Step {
	if !r.Step.IsZero() {
		return []measure.Step{r.Step}
	}
	if steps := measure.SearchSteps(r.Ruler); len(steps) > 0 {
		return steps
	}
	return []measure.Step{r.Ruler} // coarser than all that are looked at
}

// answer is what the search found at one step.
type answer struct {
	step  measure.Step
	sizes []measure.Length
}

// searchAll returns the answers at all steps that have one, coarse to fine.
func searchAll(ctx context.Context, r *Request, plan *enclosure.Plan, search *rounding.Search) ([]answer, error) {
	steps := r.steps()
	found := make([]answer, 0, len(steps))
	for _, step := range steps {
		sizes, ok, err := search.At(ctx, step)
		if err != nil {
			return nil, err
		}
		if ok {
			found = append(found, answer{step, sizes})
		}
	}
	return found, nil
}

// settle takes the answer that is wanted of those that close and hold, and
// judges the others beside it.
func (r *Request) settle(ctx context.Context, plan *enclosure.Plan, found []answer) (*Solution, error) {
	s, at, judged, err := r.wanted(plan, found)
	if err != nil {
		return nil, r.explainProof(ctx, s, err)
	}
	s.Alternatives = s.beside(found, judged, at)
	if s.Warnings, err = s.warn(ctx); err != nil {
		return nil, err
	}
	return s, s.offerTwoPieces(ctx)
}

// wanted lays out the first answer, in the order of preference, that closes and
// holds, and says which it is; or the last, with what is wrong with it.
func (r *Request) wanted(plan *enclosure.Plan, found []answer) (s *Solution, at int, judged []*judgement, err error) {
	order, judged := r.preferred(plan, found)
	for _, at = range order {
		if s, err = r.layOut(plan, found[at], judged[at]); err == nil {
			break
		}
	}
	return s, at, judged, err
}

// preferred says in which order the answers at all steps are tried, and judges
// them as far as that needs it: the plainest first or, if a chance is wanted, the
// plainest of those that reach it, then the others, the surest first.
func (r *Request) preferred(plan *enclosure.Plan, found []answer) (order []int, judged []*judgement) {
	order, judged = make([]int, len(found)), make([]*judgement, len(found))
	for i := range found {
		order[i] = i
	}
	if r.WantedChance <= 0 {
		return order, judged
	}
	for i := range found {
		judged[i] = r.judge(plan, found[i].sizes)
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := judged[a].sure.Chance, judged[b].sure.Chance
		return cmp.Compare(min(y, r.WantedChance), min(x, r.WantedChance))
	})
	return order, judged
}

// layOut lays out, proves and judges the answer at one step.
func (r *Request) layOut(plan *enclosure.Plan, first answer, j *judgement) (*Solution, error) {
	if j == nil {
		j = r.judge(plan, first.sizes)
	}
	s := &Solution{
		Request: r, Step: first.step,
		Pattern: plan.Lay(first.sizes), Ideal: plan.Build(ideals(plan)),
		Fits: j.fits, Sure: j.sure, Ornament: plan.Ornament,
		plan: plan, sizes: first.sizes, judged: j,
	}
	return s, s.prove()
}

// ideals returns the sizes of the readings on an endlessly fine ruler.
func ideals(plan *enclosure.Plan) []measure.Length {
	sizes := make([]measure.Length, len(plan.Problem.Readings))
	for i, reading := range plan.Problem.Readings {
		sizes[i] = reading.Ideal
	}
	return sizes
}

// beside judges the answers at other steps: the finer ones and, if a chance was
// wanted, the plainer ones that do not reach it.
func (s *Solution) beside(found []answer, judged []*judgement, at int) []Alternative {
	from := at + 1
	if judged[at] != nil {
		from = 0
	}
	if from >= len(found) {
		return nil
	}
	alternatives := make([]Alternative, 0, len(found)-from)
	for i := from; i < len(found); i++ {
		if i == at {
			continue
		}
		a := Alternative{Step: found[i].step}
		if j := judged[i]; j != nil {
			a.Fits, a.Chance = j.fits, j.sure.Chance
		} else {
			a.Fits = s.Request.fits(s.plan, found[i].sizes, s.Sure.Datum)
		}
		a.Nearer = offMiddle(s.Fits).Sub(offMiddle(a.Fits))
		alternatives = append(alternatives, a)
	}
	return alternatives
}

// offMiddle sums up how far the clearances are from the middles of their
// windows.
func offMiddle(fits []Fit) measure.Length {
	var sum measure.Length
	for _, f := range fits {
		sum = sum.Add(f.Nominal.Sub(f.Window.Min.Add(f.Window.Max).Over(2)).Abs())
	}
	return sum
}
