package solve

import (
	"context"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// Solve finds the solution of a request: the plainest readings that fit, laid
// out, folded and judged. The error is a fault or faults when there is none,
// or the context's.
func Solve(ctx context.Context, r *Request) (*Solution, error) {
	plan, err := r.Kind.Plan(r.input())
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

// settle takes the coarsest answer that closes and holds, and judges the finer
// ones beside it. The error is that of the finest if none does.
func (r *Request) settle(ctx context.Context, plan *enclosure.Plan, found []answer) (*Solution, error) {
	s, finer, err := r.coarsest(plan, found)
	if err != nil {
		return nil, r.explainProof(ctx, s, err)
	}
	s.Alternatives = r.alternatives(plan, s.Fits, finer)
	s.Warnings = s.warn(plan)
	return s, s.offerTwoPieces(ctx)
}

// coarsest returns the coarsest answer that closes and holds, and those that are
// finer; or the finest, with what is wrong with it.
func (r *Request) coarsest(plan *enclosure.Plan, found []answer) (s *Solution, finer []answer, err error) {
	for i := range found {
		if s, err = r.layOut(plan, found[i]); err == nil {
			return s, found[i+1:], nil
		}
	}
	return s, nil, err
}

// layOut lays out, proves and judges the answer at one step.
func (r *Request) layOut(plan *enclosure.Plan, first answer) (*Solution, error) {
	s := &Solution{
		Request: r, Step: first.step,
		Pattern: plan.Lay(first.sizes), Ideal: plan.Build(ideals(plan)),
		Fits: r.judge(plan, first.sizes), Ornament: plan.Ornament,
		plan: plan, sizes: first.sizes,
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

// alternatives judges the answers at finer steps.
func (r *Request) alternatives(plan *enclosure.Plan, fits []Fit, finer []answer) []Alternative {
	if len(finer) == 0 {
		return nil
	}
	alternatives := make([]Alternative, len(finer))
	for i, f := range finer {
		own := r.judge(plan, f.sizes)
		alternatives[i] = Alternative{Step: f.step, Nearer: offMiddle(fits).Sub(offMiddle(own)), Fits: own}
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
