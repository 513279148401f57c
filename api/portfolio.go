package api

import (
	"context"

	"github.com/labstack/echo/v4"

	"creasefit/internal/enclosure"
	"creasefit/internal/solve"
)

// portfolioName is what the assembly of several kinds is called where kinds
// are named.
const portfolioName = "portfolio"

// pLayers is the place of the layers behind the common names.
const pLayers = pOwn

// The names that a layer has beside those of its kind, by their place behind
// the kind's own.
const (
	layerKind = iota
	layerTurned
)

// turns are the words for how a layer takes what it goes round, in the order
// of solve.Turn.
var turns = []string{"no", "quarter", "edge", "end"}

// layersParam describes the layers.
func layersParam() param {
	return param{Name: "layers", Type: objectType, List: true, Most: solve.MostLayers, MostCharacters: 2048, Forms: []form{layerForm()},
		Example: `{"kind":"tray","corners":"outside"}`,
		Help:    "The enclosures, the innermost first: a kind by name, or with names of its own. What a layer does not say is taken from beside the layers."}
}

// layerForm describes the shape of a layer.
func layerForm() form {
	return form{help: "One enclosure. Takes the kind's own names as well.", required: []string{"kind"}, short: "kind", open: true,
		names: newTable([]param{kindChoice(), turnedParam()}, layerOwn(commonParams()))}
}

// turnedParam is how a layer takes what it goes round.
func turnedParam() param {
	return param{Name: "turned", Type: choiceType, Choices: turns, Example: turns[1], DefaultInch: turns[0], DefaultMillimetre: turns[0],
		Help: "How what is inside is turned first: no, a quarter (width and height change places), onto its edge (height and thickness) or its end (width and thickness)."}
}

// portfolioTable is the names that a portfolio knows.
func portfolioTable() *table {
	return newTable(commonParams(), []param{layersParam()}, answerParams(measurementFormats))
}

// layerTable is the names that a layer of a kind knows.
func layerTable(k *enclosure.Kind) *table {
	return kindTable(k, measurementFormats, kindChoice(), turnedParam())
}

// solvePortfolio answers with the measurements of enclosures round one another.
//
//	@Summary		Measurements of several enclosures round one another
//	@Description	Dividers in a tray in a sleeve with a band round it: the contents go into the first layer, and what folding each layer up measures, with the errors of all its settings, goes into the next. One answer with every piece and the tolerance chain. In a query string a layer is a kind's name, or an object written as JSON.
//	@ID				portfolio
//	@Tags			enclosures
//	@Accept			json
//	@Produce		json
//	@Success		200	{object}	Portfolio
//	@Header			200	{string}	ETag	"strong, and known before solving"
//	@Produce		application/problem+json
//	@Failure		400,408,413,414,415,422,429,500,503	{object}	Problem
//	@Produce		json
//	@Router			/v1/solve/portfolio [get]
//	@Router			/v1/solve/portfolio [post]
func (s *Service) solvePortfolio(c echo.Context) error {
	return s.portfolio.serve(s, c, c.Param("extension"))
}

// portfolioCalculation is the calculation of several kinds together.
type portfolioCalculation = calculation[*portfolioRequest, *portfolio]

// portfolio is a request with its solution.
type portfolio struct {
	*portfolioRequest
	*solve.Portfolio
}

// newPortfolio returns the calculation of portfolios.
func newPortfolio() *portfolioCalculation {
	kinds := map[string]kindItem{}
	for _, k := range enclosure.Kinds() {
		kinds[k.Name] = kindItem{k, layerTable(k)}
	}
	return &portfolioCalculation{
		table: portfolioTable(), path: "/v1/solve/" + portfolioName, formats: measurementFormats,
		read:    func(r *reading) *portfolioRequest { return r.portfolioRequest(kinds) },
		compute: solveAllAndCount,
		write:   writePortfolio,
	}
}

// solveAllAndCount solves the layers, and counts how many blanks the sheets give.
func solveAllAndCount(ctx context.Context, q *portfolioRequest) (*portfolio, error) {
	p, err := solve.SolvePortfolio(ctx, q.layers)
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

// writePortfolio writes a solved portfolio in the format.
func writePortfolio(dst []byte, f format, a *portfolio, x *answering) []byte {
	if f == formatJSON {
		return appendPortfolio(dst, a, x)
	}
	var rows []row
	for i, s := range a.Solutions {
		for _, r := range solutionRows(s) {
			r.piece = a.pieceName(i, r.piece)
			rows = append(rows, r)
		}
	}
	return appendRows(dst, f, x.rowStyle(), rows)
}

// portfolioSpec is what the specification says of portfolios.
func portfolioSpec() CallSpec {
	return CallSpec{Path: "/v1/solve/" + portfolioName, Parameters: portfolioTable().describe(), Media: mediaTypes(measurementFormats),
		Example: "unit=in&width=5&height=4&thickness=2&caliper=0.012&fit=easy&layers=dividers&layers=tray&layers=sleeve&layers=band",
		Body: `{"unit":"in","width":5,"height":4,"thickness":2,"caliper":0.012,"fit":"easy",` +
			`"layers":[{"kind":"dividers","columns":3},{"kind":"tray","corners":"outside"},"sleeve",{"kind":"band","caliper":0.006,"fit":"snug"}]}`}
}

// describePortfolio is the portfolio as /v1/kinds shows it.
func describePortfolio() Kind {
	return Kind{Name: portfolioName, Title: "Portfolio of enclosures", Help: "Several kinds round one another: each goes round the one before.",
		Needs: []string{"layers"}, Parameters: portfolioTable().describe(),
		Links: KindLinks{Self: "/v1/kinds/" + portfolioName, Solve: "/v1/solve/" + portfolioName}}
}

// showPortfolio answers with the portfolio's parameters, as of any kind.
func (s *Service) showPortfolio(c echo.Context) error { return s.lists.portfolio.serve(s, c, "") }
