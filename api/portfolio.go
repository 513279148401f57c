package api

import (
	"context"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// What the assembly of several kinds is called where kinds are named.
const (
	portfolioName  = wire.PortfolioName
	portfolioTitle = "Portfolio of enclosures"
)

// solvePortfolio answers with the measurements of enclosures round one another.
//
//	@Summary		Measurements of several enclosures round one another
//	@Description	Dividers in a tray in a sleeve with a band round it: the contents go into the first layer, and what folding each layer up measures, with the errors of all its settings, goes into the next. One answer with every piece and the tolerance chain. In a query string a layer is a kind's name, or an object written as JSON.
//	@ID				portfolio
//	@Tags			enclosures
//	@Success		200	{object}	wire.Portfolio
//	@Router			/v1/solve/portfolio [get]
//	@Router			/v1/solve/portfolio [post]
func solvePortfolio() computing {
	return &calculation[*ask.Portfolio, *portfolio]{
		form: ask.NewForm(ask.Portfolios(), tell.FormatNames(tableFormats)...), path: "/v1/solve/" + portfolioName, formats: tableFormats, table: tell.MeasurementColumns,
		compute: solveAllAndCount, answer: (*portfolio).answer, over: (*portfolio).GiveBack,
	}
}

// guidePortfolio answers with the making instructions of all layers in one.
//
//	@Summary		Making instructions of several enclosures round one another
//	@Description	The guides of all layers in one, from the inside out, with one cut list.
//	@ID				guide-portfolio
//	@Tags			enclosures
//	@Success		200	{object}	guide.Guide
//	@Router			/v1/guide/portfolio [get]
//	@Router			/v1/guide/portfolio [post]
func guidePortfolio() computing { return newGuide(portfolioName, ask.Portfolios()) }

// drawPortfolio answers with the flat patterns of all layers, or with the
// folded models side by side.
//
//	@Summary		Drawing of several enclosures round one another
//	@Description	The flat patterns of all layers in one drawing, or their folded models side by side as binary glTF.
//	@ID				drawing-portfolio
//	@Tags			enclosures
//	@Produce		image/svg+xml
//	@Success		200	{string}	string
//	@Router			/v1/drawing/portfolio [get]
//	@Router			/v1/drawing/portfolio [post]
func drawPortfolio() computing { return newDrawing(portfolioName, ask.Portfolios()) }

// portfolio is a request with its solution.
type portfolio struct {
	asked *ask.Portfolio
	*solve.Portfolio
}

// solveAllAndCount solves the layers, and counts how many blanks the sheets give.
func solveAllAndCount(ctx context.Context, q *ask.Portfolio) (*portfolio, error) {
	p, err := solve.SolvePortfolio(ctx, q.Layers)
	if err != nil {
		return nil, err
	}
	for _, s := range p.Solutions {
		if err := s.CountYields(ctx); err != nil {
			return nil, err
		}
	}
	return &portfolio{q, p}, nil
}

// answer is the answer about a portfolio.
func (a *portfolio) answer(x *answering) any {
	return wire.OfPortfolio(a.Portfolio, x.asked(), layersAlone("/v1/solve/", a.asked, a.Portfolio))
}

// layersAlone asks a call for every layer by itself.
func layersAlone(call string, asked *ask.Portfolio, p *solve.Portfolio) func(layer int) *wire.Asked {
	return func(layer int) *wire.Asked {
		return wire.Ask(standAlone(asked, p, layer), call+p.Layers[layer].Request.Kind.Name)
	}
}

// standAlone is the request for one layer by itself: with the sizes of what it
// goes round, and the greatest of their spreads.
func standAlone(asked *ask.Portfolio, p *solve.Portfolio, i int) *ask.Reading {
	alone := asked.Alone[i]
	if i > 0 {
		var most measure.Length
		sizes := &p.Chain[i].Contents
		for axis := range sizes {
			most = measure.Max(most, sizes[axis].RSS.Max.Sub(sizes[axis].Nominal))
		}
		inside := &alone.Q.Contents
		for axis, size := range [...]*ask.Total{&inside.Width, &inside.Height, &inside.Thickness} {
			size.Put(sizes[axis].Nominal)
		}
		inside.Tolerance.Put(most)
	}
	return &alone.Reading
}

// describePortfolio is the portfolio as /v1/kinds shows it.
func describePortfolio() wire.Kind {
	return wire.Kind{Name: portfolioName, Title: portfolioTitle, Help: "Several kinds round one another: each goes round the one before.",
		Needs: []string{"layers"}, Parameters: solvePortfolio().spec().Parameters,
		Links: wire.KindLinks{Self: "/v1/kinds/" + portfolioName, Solve: "/v1/solve/" + portfolioName}}
}
