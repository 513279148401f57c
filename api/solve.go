package api

import (
	"cmp"
	"context"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/enclosure"
	"creasefit/internal/solve"
)

// tableFormats are the formats of every answer that can be told in a table.
var tableFormats = []tell.Format{tell.JSON, tell.CSV, tell.XML, tell.Text}

// newSolve answers with the measurements of an enclosure.
//
//	@Summary		Measurements of an enclosure
//	@Description	The plainest ruler readings that give the wanted clearance, proven by folding the pattern up. show=order (alone or in a list) adds the order of work, step by step.
//	@ID				solve
//	@Tags			enclosures
//	@Param			kind	path	string	true	"kind of enclosure"
//	@Success		200	{object}	wire.Solution
//	@Router			/v1/solve/{kind} [get]
//	@Router			/v1/solve/{kind} [post]
func newSolve(k *enclosure.Kind) *calculation[*ask.Enclosure, *solve.Solution] {
	reach := newReach()
	return &calculation[*ask.Enclosure, *solve.Solution]{
		form: ask.NewSolve(k, tell.FormatNames(tableFormats)...), path: "/v1/solve/" + k.Name, formats: tableFormats, table: tell.MeasurementColumns,
		compute: func(ctx context.Context, q *ask.Enclosure) (*solve.Solution, error) {
			s, err := solve.Solve(ctx, q.Request)
			if err == nil { // how many blanks its sheet gives, and whether an order of work leads to it
				err = cmp.Or(s.CountYields(ctx), reach.of(ctx, s))
			}
			return s, err
		},
		answer: solution, over: (*solve.Solution).GiveBack,
	}
}

// solution is the answer, with the order of work for those who name it. A
// solution that none is found for is refused to them.
func solution(s *solve.Solution, x *answering) any {
	a := wire.OfSolution(s, x.asked())
	if x.names(wire.MemberOrder) {
		one := oneSolved{s}
		o, err := one.order()
		if err != nil {
			x.err = err
			return a
		}
		a.Order = wire.OfOrder(one.whole(), o)
	}
	return a
}
