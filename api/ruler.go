package api

import (
	"context"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
)

// newRuler answers with any length on every ruler.
//
//	@Summary		A length on every ruler
//	@Description	The nearest mark of every ruler from 1 in to 1/64 in and from 10 mm to 0.5 mm, with the error of each.
//	@ID				ruler
//	@Tags			lengths
//	@Success		200	{object}	wire.Ruler
//	@Router			/v1/ruler [get]
//	@Router			/v1/ruler [post]
func newRuler() computing {
	return &calculation[*ask.Ruler, *ask.Ruler]{
		form: ask.New[ask.Ruler](tell.FormatNames(tableFormats)...), path: "/v1/ruler", formats: tableFormats, table: tell.MeasurementColumns,
		compute: func(_ context.Context, q *ask.Ruler) (*ask.Ruler, error) { return q, nil },
		answer: func(q *ask.Ruler, x *answering) any {
			return wire.OfRuler(x.Unit(), q.Lengths.Lengths, q.Lengths.Texts, x.asked())
		},
	}
}
