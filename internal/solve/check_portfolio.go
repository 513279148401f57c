package solve

import (
	"context"

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
	err := p.fromInside(func(i int) (*Solution, error) {
		c, err := CheckOwn(ctx, layers[i].Request, own[i])
		if err != nil {
			return nil, err
		}
		p.Checks, p.Works = append(p.Checks, c), p.Works && c.Works
		c.Outside = c.outside(fold.Extent(&c.Pattern))
		return &c.Solution, nil
	})
	if err != nil {
		return nil, err
	}
	return p, nil
}
