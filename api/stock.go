package api

import (
	"context"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/internal/measure"
	"creasefit/internal/stock"
)

// paperFormats are the formats of what is told of a paper: it is no set of
// measurements.
var paperFormats = []tell.Format{tell.JSON}

// paperAnswer is what is told of a paper.
type paperAnswer struct {
	stock.Description
	source string
}

// tellStock answers with all that can be told of a paper.
//
//	@Summary		What can be told of a paper
//	@Description	Caliper, grammage, basis weights and sheet mass from whatever is known. What is estimated is marked, with its range.
//	@ID				stock
//	@Tags			paper
//	@Accept			json
//	@Produce		json
//	@Success		200	{object}	Paper
//	@Header			200	{string}	ETag	"strong"
//	@Produce		application/problem+json
//	@Failure		400,408,413,414,415,429,500,503	{object}	Problem
//	@Produce		json
//	@Router			/v1/stock [get]
//	@Router			/v1/stock [post]
func (s *Service) tellStock(c echo.Context) error {
	return s.paper.serve(s, c, c.Param("extension"))
}

// paperCalculation works out the rest of what is known.
type paperCalculation = calculation[*ask.Paper, *paperAnswer]

// newPaperCalculation returns the calculation about a paper.
func newPaperCalculation() *paperCalculation {
	return &paperCalculation{
		form: ask.NewPaper(tell.FormatNames(paperFormats)...), path: "/v1/stock", formats: paperFormats,
		compute: func(_ context.Context, q *ask.Paper) (*paperAnswer, error) {
			d, err := stock.Describe(q.Known)
			return &paperAnswer{d, q.Source}, err
		},
		write: func(dst []byte, _ tell.Format, a *paperAnswer, x *answering) []byte { return appendPaper(dst, a, x) },
	}
}

// appendPaper appends the answer as JSON.
func appendPaper(dst []byte, a *paperAnswer, x *answering) []byte {
	finest := measure.Finest(x.Unit())
	dst = appendExact(append(dst, `{"caliper":`...), finest, a.Caliper)
	dst = appendBool(append(dst, `,"caliper_estimated":`...), a.CaliperEstimated)
	dst = appendRange(append(dst, `,"caliper_range":`...), finest, a.Low, a.High)
	dst = appendDecimal(append(dst, `,"grammage":`...), a.Grammage, 2)
	dst = appendBool(append(dst, `,"grammage_estimated":`...), a.GrammageEstimated)
	dst = appendDecimal(append(dst, `,"grammage_range":[`...), a.LowGrammage, 2)
	dst = append(appendDecimal(append(dst, ','), a.HighGrammage, 2), ']')
	dst = appendDecimal(append(dst, `,"density":`...), a.Density, 3)
	dst = appendBool(append(dst, `,"unlikely":`...), a.Unlikely)
	dst = append(dst, `,"basis_weights":[`...)
	for i, w := range a.Weights {
		dst = comma(dst, i)
		dst = appendString(append(dst, `{"grade":`...), w.Grade.Name)
		dst = appendString(append(dst, `,"basis":`...), w.Grade.Basis)
		dst = append(appendDecimal(append(dst, `,"pounds":`...), w.Pounds, 2), '}')
	}
	dst = append(dst, ']')
	if a.SheetMass > 0 {
		dst = appendDecimal(append(dst, `,"sheet_mass":`...), a.SheetMass, 3)
		dst = appendDecimal(append(dst, `,"ream_mass":`...), a.ReamMass, 3)
	}
	if a.source != "" {
		dst = appendString(append(dst, `,"source":`...), a.source)
	}
	dst = appendString(append(dst, `,"links":{"self":`...), string(x.Link(x.path)))
	return append(dst, `}}`...)
}
