package api

import (
	"time"

	"github.com/labstack/echo/v4"

	"creasefit/api/tell"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// The names of an order, by their place in its table. A single blank is given
// by the names of an item from yieldItem on.
const (
	yieldUnit = iota
	yieldSheet
	yieldSheetGrain
	yieldMargin
	yieldKerf
	yieldRuler
	yieldTrimmer
	yieldMinimize
	yieldEffort
	yieldTheme
	yieldItems
	yieldItem
)

// The names of an item, by their place in its table.
const (
	itemName = iota
	itemBlank
	itemCount
	itemGrain
)

// The names of a size of sheet, by their place in its table.
const (
	sheetSize = iota
	sheetGrain
	sheetPrice
	sheetAvailable
)

// priceUnit is what a price is counted in: the planner wants whole numbers, and
// a price has at most four decimals.
const priceUnit = 10_000

// yieldFormats are the formats of a cut plan.
var yieldFormats = []tell.Format{tell.JSON, tell.CSV, tell.Text, tell.SVG, tell.PDF}

// yieldParams describes the names of an order but those of its single blank.
func yieldParams() []param {
	nothing := measure.Length{}
	return []param{
		unitParam(),
		{Name: "sheet", Type: objectType, List: true, Most: sheet.MostSizes, MostCharacters: 512, Example: "12 x 12 in", Forms: []form{sheetForm()},
			Help: "The sheet that blanks are cut from: a size, or a name; or several, each with its price, its grain and the number in stock."},
		{Name: "sheet_grain", Type: choiceType, Choices: []string{"width", "height"}, Example: "height",
			Help: "The side of the sheet that the grain runs along. Needed if an item must keep it."},
		param{Name: "margin", Example: "0 in", DefaultInch: "0 in", DefaultMillimetre: "0 mm", Help: "Trimmed off every side of a sheet first."}.
			length(nothing, measure.Millimetres(500)),
		param{Name: "kerf", Example: "0 in", DefaultInch: "0 in", DefaultMillimetre: "0 mm", Advanced: true, Help: "What a cut takes away; a trimmer takes nothing."}.
			length(nothing, measure.Millimetres(20)),
		{Name: "ruler", Type: stepType, Example: "1/16 in", DefaultInch: "1/16 in", DefaultMillimetre: "0.5 mm", Help: "The finest mark of the ruler that cuts are set to."},
		param{Name: "trimmer_length", Example: "12 in", Help: "The longest cut that the trimmer makes. Default: as long as need be."}.
			length(measure.Millimetres(10), measure.Millimetres(10_000)),
		{Name: "minimize", Type: choiceType, Choices: []string{"sheets", "cost"}, Example: "sheets", DefaultInch: "sheets", DefaultMillimetre: "sheets",
			Help: "What to keep small: the number of sheets, or the sum of their prices."},
		{Name: "effort_ms", Type: countType, LeastNumber: 1, GreatestNumber: float64(sheet.MostEffort.Milliseconds()), Example: "500", DefaultInch: "500", DefaultMillimetre: "500", Advanced: true,
			Help: "How long to look for a proof that no plan needs less, in milliseconds."},
		{Name: "theme", Type: choiceType, Choices: []string{"light", "dark"}, Example: "dark", DefaultInch: "light", DefaultMillimetre: "light", Advanced: true,
			Help: "Dark lines on light paper, or the other way round; of SVG."},
		{Name: "items", Type: objectType, List: true, Most: sheet.MostItems, MostCharacters: 4096, Example: `{"blank":"8 1/4 x 1 3/4 in","count":25}`, Forms: itemForms(),
			Help: "The blanks wanted, or enclosures of which every piece is wanted. For a single one blank, count and grain can be given instead."},
	}
}

// itemParams describes the names of a blank.
func itemParams() []param {
	return []param{
		nameParam(),
		param{Name: "blank", Type: sizeType, Example: "8 1/4 x 1 3/4 in", Help: "Width and height of the blank."}.
			bounded(measure.Millimetres(1), measure.Millimetres(10_000)),
		countParam("How many are wanted. Default: as many as one sheet gives."),
		itemGrainParam(),
	}
}

func nameParam() param {
	return param{Name: "name", Type: textType, MostCharacters: mostValue, Example: "band", Help: "What the blank is called in the plan."}
}

func countParam(help string) param {
	return param{Name: "count", Type: countType, LeastNumber: 1, GreatestNumber: sheet.MostPieces, Example: "25", Help: help}
}

func itemGrainParam() param {
	return param{Name: "grain", Type: choiceType, Choices: []string{"any", "width", "height"}, Example: "any", DefaultInch: "any", DefaultMillimetre: "any",
		Help: "The side of the blank that the grain must run along; any lets it be turned."}
}

// sheetParams describes the names of one size of sheet.
func sheetParams() []param {
	return []param{
		param{Name: "size", Type: sizeType, Catalogue: "/v1/sheets/sizes", Example: "12 x 12 in", Help: "Width and height, or a name."}.
			bounded(measure.Millimetres(10), measure.Millimetres(10_000)),
		{Name: "grain", Type: choiceType, Choices: []string{"width", "height"}, Example: "height", Help: "The side that the grain runs along, if another than sheet_grain."},
		{Name: "price", Type: numberType, LeastNumber: 1.0 / priceUnit, GreatestNumber: 100_000, Example: "0.35", Help: "Of one sheet, with at most four decimals, in any currency that all sizes share."},
		{Name: "available", Type: countType, LeastNumber: 1, GreatestNumber: sheet.MostPieces, Example: "10", Help: "Sheets in stock. Default: as many as needed."},
	}
}

// yieldTable is the names that an order knows.
func yieldTable() *table {
	t := newTable(yieldParams(), itemParams(), answerParams(yieldFormats))
	t.large = true
	return t
}

// planYield plans how blanks come out of sheets.
//
//	@Summary		Blanks per sheet, and cut plans
//	@Description	How many blanks a sheet gives, or how few sheets an order needs, with a proof or a bound, and the cuts in the order that a person with one trimmer would make them. All cuts go from edge to edge. In a query string an object is written as JSON.
//	@ID				yield
//	@Tags			paper
//	@Accept			json
//	@Produce		json
//	@Success		200	{object}	Yield
//	@Header			200	{string}	ETag	"strong, and known before planning"
//	@Produce		application/problem+json
//	@Failure		400,408,413,414,415,422,429,500,503	{object}	Problem
//	@Produce		json
//	@Router			/v1/yield [get]
//	@Router			/v1/yield [post]
func (s *Service) planYield(c echo.Context) error {
	return s.yield.serve(s, c, c.Param("extension"))
}

// yieldCalculation is the planning of an order.
type yieldCalculation = calculation[*yieldRequest, *yieldAnswer]

// newYieldCalculation returns the planning of orders.
func newYieldCalculation() *yieldCalculation {
	kinds := itemTables()
	return &yieldCalculation{
		table: yieldTable(), path: "/v1/yield", formats: yieldFormats,
		read:    func(r *reading) *yieldRequest { return r.yieldRequest(kinds) },
		compute: planOrder,
		write:   writeYield,
		allow:   (*yieldRequest).allowed,
	}
}

// planningRest is the time for everything but the search: solving the items
// that are enclosures, and writing the steps down.
const planningRest = 2 * time.Second

// allowed is how long an order may be worked on. Without counts the plan is
// exact or there is none, so that effort_ms says nothing about it.
func (q *yieldRequest) allowed() time.Duration {
	for _, it := range q.items {
		if it.item.Count > 0 {
			return q.order.Effort + planningRest
		}
	}
	return sheet.MostEffort + planningRest
}
