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
	s.Outside = s.outside(&p)
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

// outside is the size of the closed enclosure: of its folded plates and of the
// contents where they stick out, and the mass of its paper.
func (s *Solution) outside(p *fold.Proof) Outside {
	o := Outside{Width: p.Extent[0], Height: p.Extent[1], Thickness: p.Extent[2]}
	if c := &s.Pattern.Cavity; !c.Into {
		o.Width, o.Height = measure.Max(o.Width, c.Width), measure.Max(o.Height, c.Height)
		o.Thickness = measure.Max(o.Thickness, c.Thickness)
	}
	if s.Ornament != nil {
		o.Thickness = o.Thickness.Add(s.Ornament.Adds)
	}
	for i := range s.Pattern.Pieces {
		piece := &s.Pattern.Pieces[i]
		o.Mass += float64(piece.Quantity) * piece.Area() * s.Request.Grammage / 1e6
	}
	return o
}
