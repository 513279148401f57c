package api

import (
	"context"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/solve"
)

// portfolioCheck is a request with what its measurements come to.
type portfolioCheck struct {
	asked *ask.Portfolio
	*solve.PortfolioCheck
}

// newPortfolioCheck judges somebody's own measurements of enclosures round one
// another.
//
//	@Summary		Check own measurements of several enclosures round one another
//	@Description	Whether every layer as it was measured closes and goes round the one before, folded up as that was measured: each layer is an object with its kind and its own blank, marks, rises and depths.
//	@ID				check-portfolio
//	@Tags			enclosures
//	@Success		200	{object}	wire.PortfolioCheck
//	@Router			/v1/check/portfolio [get]
//	@Router			/v1/check/portfolio [post]
func newPortfolioCheck() computing {
	return &calculation[*ask.Portfolio, *portfolioCheck]{
		form: ask.NewForm(ask.PortfolioChecks(), tell.FormatNames(tableFormats)...), path: "/v1/check/" + portfolioName, formats: tableFormats, table: tell.CheckColumns,
		compute: func(ctx context.Context, q *ask.Portfolio) (*portfolioCheck, error) {
			c, err := solve.CheckPortfolio(ctx, q.Layers, q.Own)
			return &portfolioCheck{q, c}, err
		},
		answer: func(c *portfolioCheck, x *answering) any {
			return wire.OfPortfolioCheck(c.PortfolioCheck, x.asked(), layersAlone("/v1/check/", c.asked, c.Portfolio))
		},
	}
}
