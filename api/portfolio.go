package api

import (
	"context"

	"github.com/labstack/echo/v4"

	"creasefit/api/tell"
	"creasefit/internal/enclosure"
	"creasefit/internal/solve"
)

// What the assembly of several kinds is called where kinds are named.
const (
	portfolioName  = "portfolio"
	portfolioTitle = "Portfolio of enclosures"
)

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

// portfolioTable is every name that a calculation about a portfolio knows;
// further ones come behind the layers.
func portfolioTable(formats []tell.Format, further ...param) *table {
	return newTable(commonParams(), []param{layersParam()}, further, answerParams(formats))
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
	return s.portfolio.solve.serve(s, c, c.Param("extension"))
}

// guidePortfolio answers with the making instructions of all layers in one.
//
//	@Summary		Making instructions of several enclosures round one another
//	@Description	The guides of all layers in one, from the inside out, with one cut list.
//	@ID				guide-portfolio
//	@Tags			enclosures
//	@Accept			json
//	@Produce		json
//	@Success		200	{object}	guide.Guide
//	@Header			200	{string}	ETag	"strong, and known before solving"
//	@Produce		application/problem+json
//	@Failure		400,408,413,414,415,422,429,500,503	{object}	Problem
//	@Produce		json
//	@Router			/v1/guide/portfolio [get]
//	@Router			/v1/guide/portfolio [post]
func (s *Service) guidePortfolio(c echo.Context) error {
	return s.portfolio.guide.serve(s, c, c.Param("extension"))
}

// drawPortfolio answers with the flat patterns of all layers, or with the
// folded models side by side.
//
//	@Summary		Drawing of several enclosures round one another
//	@Description	The flat patterns of all layers in one drawing, or their folded models side by side as binary glTF.
//	@ID				drawing-portfolio
//	@Tags			enclosures
//	@Accept			json
//	@Produce		image/svg+xml
//	@Success		200	{string}	string
//	@Header			200	{string}	ETag	"strong, and known before solving"
//	@Produce		application/problem+json
//	@Failure		400,408,413,414,415,422,429,500,503	{object}	Problem
//	@Produce		json
//	@Router			/v1/drawing/portfolio [get]
//	@Router			/v1/drawing/portfolio [post]
func (s *Service) drawPortfolio(c echo.Context) error {
	return s.portfolio.drawing.serve(s, c, c.Param("extension"))
}

// portfolioCalculation is the calculation of several kinds together.
type portfolioCalculation = calculation[*portfolioRequest, *portfolio]

// portfolio is a request with its solution.
type portfolio struct {
	*portfolioRequest
	*solve.Portfolio
}

// portfolioEntry is the portfolio with everything that calls about it need.
type portfolioEntry struct {
	solve   *portfolioCalculation
	guide   *guideCalculation
	drawing *drawingCalculation
}

// newPortfolioEntry prepares the calls about portfolios.
func newPortfolioEntry() *portfolioEntry {
	kinds := map[string]kindItem{}
	for _, k := range enclosure.Kinds() {
		kinds[k.Name] = kindItem{k, layerTable(k)}
	}
	read := func(r *reading) *portfolioRequest { return r.portfolioRequest(kinds) }
	subjectOf := func(r *reading) subject { return read(r) }
	return &portfolioEntry{
		solve: &portfolioCalculation{
			table: portfolioTable(measurementFormats), path: "/v1/solve/" + portfolioName, formats: measurementFormats,
			read: read, compute: solveAllAndCount, write: writePortfolio,
		},
		guide:   newGuide("/v1/guide/"+portfolioName, portfolioTable(guideFormats, guideParams()...), pLayers+1, subjectOf),
		drawing: newDrawing("/v1/drawing/"+portfolioName, portfolioTable(drawingFormats, drawingParams()...), pLayers+1, subjectOf),
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
func writePortfolio(dst []byte, f tell.Format, a *portfolio, x *answering) []byte {
	if f == tell.JSON {
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

// portfolioSpecs is what the specification says of portfolios.
func portfolioSpecs() []CallSpec {
	call := func(what string, formats []tell.Format, further ...param) CallSpec {
		return CallSpec{Path: "/v1/" + what + "/" + portfolioName, Parameters: portfolioTable(formats, further...).describe(), Media: mediaTypes(formats),
			Example: "unit=in&width=5&height=4&thickness=2&caliper=0.012&fit=easy&layers=dividers&layers=tray&layers=sleeve&layers=band",
			Body: `{"unit":"in","width":5,"height":4,"thickness":2,"caliper":0.012,"fit":"easy",` +
				`"layers":[{"kind":"dividers","columns":3},{"kind":"tray","corners":"outside"},"sleeve",{"kind":"band","caliper":0.006,"fit":"snug"}]}`}
	}
	return []CallSpec{call("solve", measurementFormats), call("guide", guideFormats, guideParams()...), call("drawing", drawingFormats, drawingParams()...)}
}

// describePortfolio is the portfolio as /v1/kinds shows it.
func describePortfolio() Kind {
	return Kind{Name: portfolioName, Title: portfolioTitle, Help: "Several kinds round one another: each goes round the one before.",
		Needs: []string{"layers"}, Parameters: portfolioTable(measurementFormats).describe(),
		Links: KindLinks{Self: "/v1/kinds/" + portfolioName, Solve: "/v1/solve/" + portfolioName}}
}

// showPortfolio answers with the portfolio's parameters, as of any kind.
func (s *Service) showPortfolio(c echo.Context) error { return s.lists.portfolio.serve(s, c, "") }
