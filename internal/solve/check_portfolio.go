package solve

import (
	"context"

	"creasefit/internal/fault"
	"creasefit/internal/fold"
)

// PortfolioCheck is what somebody's own measurements of enclosures round one
// another come to.
type PortfolioCheck struct {
	*Portfolio
	Checks []*Check // one a layer
	Works  bool     // every layer works round the one before
}

// CheckPortfolio judges somebody's own measurements of the layers, one set a
// layer, from the inside to the outside: what folding a layer up as measured
// comes to is what the next goes round, with all that it may be off by. The error
// is that of the first layer that cannot be judged, its faults named by the
// layer's place, or the context's.
func CheckPortfolio(ctx context.Context, layers []Layer, own []*Measurements) (*PortfolioCheck, error) {
	p := &PortfolioCheck{Portfolio: &Portfolio{Layers: layers}, Works: true}
	count := map[string]int{}
	for i := range layers {
		l := &layers[i]
		count[l.Request.Kind.Name]++
		l.Number = count[l.Request.Kind.Name]
		if i > 0 {
			l.goRound(p.Solutions[i-1], &p.Chain[i-1])
		}
		c, err := CheckOwn(ctx, l.Request, own[i])
		if err == nil && i > 0 && c.Pattern.Cavity.Into {
			err = goesInto(l)
		}
		if err != nil {
			return nil, fault.Under(l.Place, err)
		}
		s := c.made()
		p.Checks, p.Works = append(p.Checks, c), p.Works && c.Works
		p.Solutions, p.Chain = append(p.Solutions, s), append(p.Chain, s.link())
	}
	p.together()
	return p, nil
}

// made is what was measured as if it had been solved so.
func (c *Check) made() *Solution {
	s := &Solution{Request: c.Request, Step: c.Request.Ruler, Pattern: c.Pattern, Ideal: c.Pattern, Fits: c.Fits, Sure: c.Sure, Proof: c.Proof,
		Ornament: c.plan.Ornament, plan: c.plan, sizes: c.measured, judged: c.judged}
	s.Outside = s.outside(fold.Extent(&c.Pattern))
	return s
}
