package api

import (
	"context"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
)

// readRuler answers with any length on every ruler.
//
//	@Summary		A length on every ruler
//	@Description	The nearest mark of every ruler from 1 in to 1/64 in and from 10 mm to 0.5 mm, with the error of each.
//	@ID				ruler
//	@Tags			lengths
//	@Success		200	{object}	wire.Ruler
//	@Router			/v1/ruler [get]
//	@Router			/v1/ruler [post]
func readRuler(h *host, k *rulerCalculation) echo.HandlerFunc { return k.at(h) }

// rulerCalculation only reads and writes: the marks are the answer.
type rulerCalculation = calculation[*ask.Ruler, *ask.Ruler]

// newRulerCalculation returns the calculation of the ruler.
func newRulerCalculation() *rulerCalculation {
	return &rulerCalculation{
		form: ask.New[ask.Ruler](tell.FormatNames(tableFormats)...), path: "/v1/ruler", formats: tableFormats, table: tell.MeasurementColumns,
		compute: func(_ context.Context, q *ask.Ruler) (*ask.Ruler, error) { return q, nil },
		answer: func(q *ask.Ruler, x *answering) any {
			return wire.OfRuler(x.Unit(), q.Lengths.Lengths, q.Lengths.Texts, x.asked())
		},
	}
}
