package api

import (
	"context"
	"io"
	"time"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/draw"
	"creasefit/internal/draw/pdf"
	"creasefit/internal/draw/svg"
	"creasefit/internal/sheet"
)

// yieldFormats are the formats of a cut plan.
var yieldFormats = []tell.Format{tell.JSON, tell.CSV, tell.XML, tell.Text, tell.Lines, tell.SVG, tell.PDF}

// newYield plans how blanks come out of sheets.
//
//	@Summary		Blanks per sheet, and cut plans
//	@Description	How many blanks a sheet gives, or how few sheets an order needs, with a proof or a bound, and the cuts in the order that a person with one trimmer would make them. All cuts go from edge to edge. In a query string an object is written as JSON. Asked for application/x-ndjson, each better plan is a line while it is looked for: plan (the answer), bound, gap (of the plan over the bound), seconds and done; the last line is done and says why: settled, proven or time. Whoever has enough leaves.
//	@ID				yield
//	@Tags			paper
//	@Success		200	{object}	wire.Yield
//	@Router			/v1/yield [get]
//	@Router			/v1/yield [post]
func newYield() computing {
	return &calculation[*ask.Yield, *yieldAnswer]{
		form: ask.NewYield(tell.FormatNames(yieldFormats)...), path: "/v1/yield", formats: yieldFormats, table: tell.CuttingColumns,
		compute: func(ctx context.Context, q *ask.Yield) (*yieldAnswer, error) { return followOrder(ctx, q, nil) },
		price:   (*yieldAnswer).price, timed: (*yieldAnswer).timed, allow: timeAllowed, write: appendCutPicture,
		answer: func(a *yieldAnswer, x *answering) any { return a.told(x) },
		follow: following[*ask.Yield, *yieldAnswer]{
			compute: followOrder,
			line: func(a *yieldAnswer, x *answering, took time.Duration, done bool) *wire.PlanLine {
				return wire.OfPlanLine(a.told(x), &a.order, &a.plan, took, done)
			},
		},
	}
}

// told is the answer as a value.
func (a *yieldAnswer) told(x *answering) *wire.Yield {
	y := wire.OfYield(&a.order, &a.plan, x.Unit(), a.warnings, x.asked())
	if theme := a.request.Pictures; !theme.Is("no") {
		y.Picture = string(svg.Append(nil, a.picture(), svg.Options{Dark: theme.Is("dark"), ID: "plan"}))
	}
	return y
}

// picture draws the sheets of the plan.
func (a *yieldAnswer) picture() *draw.Drawing {
	return draw.NewPlan(&a.order, &a.plan, draw.Options{Title: "Cut plan", Description: wire.PlanSummary(&a.order, &a.plan), Step: a.order.Ruler, Say: a.order.Say, Language: a.request.Language.Word})
}

// planningRest is the time for everything but the search: solving the items
// that are enclosures, and writing the steps down.
const planningRest = 2 * time.Second

// timeAllowed is how long an order may be worked on. Without counts the plan is
// exact or there is none, so that effort_ms says nothing about it.
func timeAllowed(q *ask.Yield) time.Duration {
	for _, w := range q.Wanted {
		if w.Item.Count > 0 {
			return q.Order.Effort + planningRest
		}
	}
	return sheet.MostEffort + planningRest
}

// appendCutPicture appends the picture in its format.
func appendCutPicture(dst []byte, f tell.Format, a *yieldAnswer, x *answering) []byte {
	if f == tell.SVG {
		return svg.Append(dst, a.picture(), svg.Options{Dark: a.request.Dark()})
	}
	return x.encoded(dst, func(w io.Writer) error { return pdf.Encode(w, a.picture(), pdf.Options{Context: x.ctx}) })
}
