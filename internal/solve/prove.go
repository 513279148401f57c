package solve

import (
	"creasefit/internal/fault"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
)

// prove folds the pattern up. A gap that a step or the paper itself makes up
// for still closes. A pattern that does not close or does not hold its
// contents is no solution.
func (s *Solution) prove() error {
	tolerance := measure.Max(s.Step.Size(), s.Request.Caliper)
	p := fold.Prove(&s.Pattern, tolerance)
	s.Outside = s.outside(p.Extent)
	s.Proof = Proof{Closes: p.Closes, Gap: p.Gap, Tolerance: p.Tolerance, Holds: p.Holds}
	if p.Closes && p.Holds {
		return nil
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
