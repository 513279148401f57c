package solve

import (
	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// closing is how far a closure may be off and still close.
func (r *Request) closing() measure.Length {
	return enclosure.Closing(r.Fit, r.Caliper, r.BoardFrom)
}

// prove folds the pattern up. A pattern that does not close or does not hold its
// contents is no solution.
func (s *Solution) prove() error {
	p := fold.Prove(s.taken(), s.Request.closing())
	s.plates, s.Outside = p.Extent, s.outside(p.Extent)
	s.Proof = proofOf(&p)
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

// proofOf sums up a fold proof.
func proofOf(p *fold.Proof) Proof {
	return Proof{Closes: p.Closes, Gap: p.Gap, Tolerance: p.Tolerance, Holds: p.Holds}
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
	folded := s.Request.folded(s.plan, s.plan.Ideals(), s.plan.Build)
	p := fold.Prove(&folded, s.Request.closing())
	return p.Closes && p.Holds
}

// closesRoughly reports whether the pattern closes and holds but for gaps that its
// step or its stock makes.
func (s *Solution) closesRoughly() bool {
	p := fold.Prove(s.taken(), measure.Max(s.Step.Size(), s.Request.Caliper))
	return p.Closes && p.Holds
}
