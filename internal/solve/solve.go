package solve

import (
	"context"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Solve finds the solution of a request: the plainest readings that fit, laid
// out, folded and judged. The error is a fault or faults when there is none,
// or the context's.
func Solve(ctx context.Context, r *Request) (*Solution, error) {
	tries, err := r.attempts(ctx)
	if err != nil {
		return nil, err
	}
	defer tries.over()
	if len(tries.good) == 0 {
		return nil, r.tried(ctx, tries.explain(ctx))
	}
	var last *Solution
	var wrong error
	for _, a := range tries.good {
		s, at, faults, err := a.wanted(ctx)
		if err != nil {
			return nil, err
		}
		if faults == nil {
			tries.leave(a)
			return a.settle(ctx, s, at)
		}
		last, wrong = s, faults
	}
	return nil, last.Request.explainProof(ctx, last, wrong)
}

// planned is the request's plan by its kind, with room for what folds take up and
// for another season; its patterns know from which caliper the stock does not give way.
func (r *Request) planned() (*enclosure.Plan, error) {
	plan, err := r.Kind.Plan(r.input())
	if err != nil {
		return nil, err
	}
	if !r.BoardFrom.IsZero() {
		plan.Build, plan.OnRuler = r.stiffened(plan.Build), r.stiffened(plan.OnRuler)
	}
	r.allow(plan)
	r.grow(plan)
	return plan, nil
}

// stiffened tells the patterns from which caliper the stock does not give way.
func (r *Request) stiffened(lay func([]measure.Length) pattern.Pattern) func([]measure.Length) pattern.Pattern {
	if lay == nil {
		return nil
	}
	return func(sizes []measure.Length) pattern.Pattern {
		p := lay(sizes)
		p.BoardFrom = r.BoardFrom
		return p
	}
}

// stiff reports whether the stock does not give way.
func (r *Request) stiff() bool { return pattern.Stiff(r.Caliper, r.BoardFrom) }

// input is the request as a kind sees it.
func (r *Request) input() *enclosure.Input {
	return &enclosure.Input{
		Unit: r.Ruler.Unit(), Width: r.Width, Height: r.Height, Thickness: r.Thickness,
		Caliper: r.Caliper, BoardFrom: r.BoardFrom, Sheet: measure.Max(r.SheetWidth, r.SheetHeight), Fit: r.Fit, Given: r.Options, Params: r.Kind.Params,
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
	step   measure.Step
	sizes  []measure.Length
	judged *judgement // nil until it is needed
}

// layOut lays out, proves and judges the answer at one step.
func (r *Request) layOut(plan *enclosure.Plan, first *answer) (*Solution, error) {
	if first.judged == nil {
		first.judged = r.judge(plan, first.sizes)
	}
	s := solutions.Get().(*Solution)
	*s = Solution{
		Request: r, Step: first.step,
		Pattern: plan.Lay(first.sizes), Ideal: plan.Build(plan.Ideals()),
		Fits: append(s.Fits, first.judged.fits...), Sure: first.judged.sure(), Ornament: plan.Ornament,
		Alternatives: s.Alternatives, Warnings: s.Warnings, plan: plan, sizes: first.sizes,
	}
	return s, s.prove()
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
