package api

import (
	"creasefit/api/ask"
	"creasefit/api/wire"
	"creasefit/internal/draw/pdf"
	"creasefit/internal/sheet"
)

// listLimits answers with every limit of the service.
//
//	@Summary	The limits of a request
//	@ID			limits
//	@Tags		service
//	@Success	200	{object}	wire.Limits
//	@Router		/v1/limits [get]
func listLimits(c Config) computing {
	cheap, dear, streams := c.Places()
	return newListing("/v1/limits", wire.Limits{
		URL: c.MostURL, Names: ask.MostNames, Value: ask.MostValue, Body: c.MostBody, YieldBody: c.MostYieldBody, Depth: ask.MostDepth, Lengths: ask.MostLengths,
		SolveMillis: c.SolveTimeout.Milliseconds(), RequestMillis: c.WriteTimeout.Milliseconds(),
		Items: sheet.MostItems, Pieces: sheet.MostPieces, EffortMillis: sheet.MostEffort.Milliseconds(),
		Planning: dear, Running: cheap, Streams: streams, AnswerBytes: mostAnswer, Pages: pdf.MostPages, Listed: sheet.MostListed, Placed: mostPlaced, Waiting: c.MostWaiting, ReportedAtOnce: ask.MostReported,
		BatchLine: mostLine, BatchArray: mostArray, BatchSample: mostSample, BatchColumns: mostColumns,
	})
}
