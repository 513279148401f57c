package solve

import (
	"creasefit/internal/fault"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// closing is how far a closure may be off and still close: half of the window
// of the asked fit, which is what that leaves open to each side, or one caliper
// of paper, which gives. It does not depend on the step: a coarse ruler does not
// make a gap close.
func (r *Request) closing() measure.Length {
	return measure.Max(r.Fit.Max.Sub(r.Fit.Min).Over(2), r.gives())
}

// gives is by how much a closure may be off without leaving anything open.
func (r *Request) gives() measure.Length {
	if r.stiff() {
		return measure.Length{}
	}
	return r.Caliper
}

// prove folds the pattern up. A pattern that does not close or does not hold its
// contents is no solution.
func (s *Solution) prove() error {
	p := fold.Prove(s.taken(), s.Request.closing())
	s.Outside = s.outside(p.Extent)
	s.Proof = Proof{Closes: p.Closes, Gap: p.Gap, Tolerance: p.Tolerance, Holds: p.Holds}
	if p.Closes && p.Holds {
		return nil
	}
	if s.Proof.Gap.Sign() > 0 && s.closesRoughly() {
		return fault.Fault{Code: fault.NoFit, Field: "fit",
			Detail:   "no readings at " + s.Step.String() + " close within " + p.Tolerance.Plain(s.Step.Unit()) + ": the nearest leave " + p.Gap.Plain(s.Step.Unit()),
			Expected: "at most " + p.Tolerance.Plain(s.Step.Unit())}
	}
	if first := p.Faults[0].String(); s.folds() {
		return fault.Fault{Code: fault.NoFit, Field: "ruler", Value: s.Request.Ruler.String(),
			Detail: "folded up with readings at " + s.Step.String() + ", this does not work: " + first, Expected: "a ruler with finer marks"}
	}
	var faults fault.Faults
	for _, f := range p.Faults {
		faults = append(faults, fault.Fault{
			Code: fault.NoProof, Detail: "folded up, this does not work: " + f.String(),
			Hint: "choose another step, fit or size",
		})
	}
	return faults.Err()
}

// taken is the solution's pattern once folds have taken up theirs, which is the
// pattern itself where they take up nothing.
func (s *Solution) taken() *pattern.Pattern {
	if s.Request.FoldAllowance.IsZero() {
		return &s.Pattern
	}
	p := s.Request.folded(s.plan, s.sizes, s.plan.Lay)
	return &p
}

// folds reports whether the ideal pattern closes and holds: what is wrong with
// the one on the ruler then comes of its marks.
func (s *Solution) folds() bool {
	folded := s.Request.folded(s.plan, ideals(s.plan), s.plan.Build)
	p := fold.Prove(&folded, s.Request.closing())
	return p.Closes && p.Holds
}

// closesRoughly reports whether the pattern closes and holds but for gaps that its
// step or its stock makes.
func (s *Solution) closesRoughly() bool {
	p := fold.Prove(s.taken(), measure.Max(s.Step.Size(), s.Request.Caliper))
	return p.Closes && p.Holds
}
