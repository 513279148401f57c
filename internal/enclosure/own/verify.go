package own

import (
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/fold"
)

// verify folds the pattern of the ideal sizes up. What does not close or hold there is
// a fault of the design, and is told with the place of what is in the way.
func (p *planner) verify() error {
	whole, _ := p.folding(p.plan.Ideals())
	proof := fold.Prove(&whole, enclosure.Closing(p.in.Fit, p.in.Caliper, p.in.BoardFrom))
	var faults fault.Faults
	for i := range proof.Faults {
		f := &proof.Faults[i]
		faults = append(faults, impossible(p.placeOf(f), "folded up, this does not work: "+f.String(), mend(f)))
	}
	return faults.Err()
}

// placeOf is where in the design that stands which a finding names.
func (p *planner) placeOf(f *fold.Finding) string {
	if i, ok := p.index[f.Name]; ok && f.Part != "glue" {
		return p.panels[i].place
	}
	for i := range p.Joins {
		if j := &p.Joins[i]; j.A.Panel == f.Name && (f.Part == "glue") == (j.Type == Glue) || j.A.words() == f.Name {
			return j.place
		}
	}
	if f.Part == "contents" && p.Holds != "" {
		return "holds"
	}
	return "pieces"
}

// mend says what would mend a finding.
func mend(f *fold.Finding) string {
	switch {
	case strings.HasPrefix(f.Problem, "passes through"):
		return "let one of the two lie on the other, be narrower, reach less far, or fold the other way"
	case strings.HasPrefix(f.Problem, "is not held"):
		return "let a panel stand on that side, as high as the middle of the contents"
	case strings.HasPrefix(f.Problem, "is in their way"), strings.HasPrefix(f.Problem, "is too big"):
		return "let the contents lie on another panel, or that one reach less far"
	case f.Part == "glue":
		return "glue it where it comes to lie, or fold it so that it lies there"
	case strings.HasPrefix(f.Problem, "is taken up"):
		return "let the panel reach farther than half of what its fold goes round"
	}
	return "change what leads to it and send the design again"
}
