package api

import (
	"context"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/enclosure"
	"creasefit/internal/solve"
)

// newCheck judges somebody's own measurements.
//
//	@Summary		Check own measurements
//	@Description	Whether own measurements close and fit, how sure that is, the smallest change that mends them, and what they hold at most.
//	@ID				check
//	@Tags			enclosures
//	@Param			kind	path	string	true	"kind of enclosure"
//	@Success		200	{object}	wire.Check
//	@Router			/v1/check/{kind} [get]
//	@Router			/v1/check/{kind} [post]
func newCheck(k *enclosure.Kind) computing {
	var reach reach
	return &calculation[*ask.Check, *solve.Check]{
		form: ask.NewCheck(k, tell.FormatNames(tableFormats)...), path: "/v1/check/" + k.Name, formats: tableFormats, table: tell.CheckColumns,
		compute: func(ctx context.Context, q *ask.Check) (*solve.Check, error) {
			c, err := solve.CheckFinished(ctx, q.Request, q.Measurements(), q.Finished())
			if err == nil && k.Design != "" { // own sizes may be checked that nothing can be worked out for
				if s, none := solve.Solve(ctx, q.Request); none == nil {
					err = reach.of(ctx, s)
				}
			}
			return c, err
		},
		answer: func(c *solve.Check, x *answering) any { return wire.OfCheck(c, x.asked()) },
	}
}
