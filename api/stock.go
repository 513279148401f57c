package api

import (
	"context"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/stock"
)

// paperAnswer is what is told of a paper.
type paperAnswer struct {
	stock.Description
	source string
}

// newPaper answers with all that can be told of a paper.
//
//	@Summary		What can be told of a paper
//	@Description	Caliper, grammage, basis weights and sheet mass from whatever is known. What is estimated is marked, with its range.
//	@ID				stock
//	@Tags			paper
//	@Success		200	{object}	wire.Paper
//	@Router			/v1/stock [get]
//	@Router			/v1/stock [post]
func newPaper() computing {
	return &calculation[*ask.Paper, *paperAnswer]{
		form: ask.New[ask.Paper](tell.FormatNames(tableFormats)...), path: "/v1/stock", formats: tableFormats, table: tell.MemberColumns,
		compute: func(_ context.Context, q *ask.Paper) (*paperAnswer, error) {
			d, err := stock.Describe(q.Known)
			return &paperAnswer{d, q.Source}, err
		},
		answer: func(a *paperAnswer, x *answering) any {
			return wire.OfPaper(&a.Description, x.Unit(), a.source, x.asked())
		},
	}
}
