package api

import (
	"context"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/enclosure"
	"creasefit/internal/solve"
)

// newAdapt makes somebody's pattern for another thing.
//
//	@Summary		Adapt a pattern to another thing
//	@Description	From somebody's measurements, the pattern for another thing or paper with the same clearance, laps and style.
//	@ID				adapt
//	@Tags			enclosures
//	@Param			kind	path	string	true	"kind of enclosure"
//	@Success		200	{object}	wire.Adapted
//	@Router			/v1/adapt/{kind} [get]
//	@Router			/v1/adapt/{kind} [post]
func newAdapt(k *enclosure.Kind) computing {
	return &calculation[*ask.Adapt, *solve.Adapted]{
		form: ask.NewAdapt(k, tell.FormatNames(tableFormats)...), path: "/v1/adapt/" + k.Name, formats: tableFormats, table: tell.AdaptColumns,
		compute: func(ctx context.Context, q *ask.Adapt) (*solve.Adapted, error) {
			return solve.Adapt(ctx, q.MadeFor, q.Request, q.Measurements())
		},
		answer: func(a *solve.Adapted, x *answering) any { return wire.OfAdapted(a, x.asked()) },
	}
}

// adaptSpec is what the specification says of it: the check's example for a thing
// that is a little wider.
func adaptSpec(k *enclosure.Kind) CallSpec {
	spec := newAdapt(k).spec().ofKind(k, "Adapt a pattern of a ")
	query, body := checkExample(k)
	spec.Example = query + "&made_for_width=3-1/2in"
	spec.Body = body[:len(body)-1] + `,"made_for_width":"3-1/2in"}`
	return spec
}
