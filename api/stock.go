package api

import (
	"context"

	"github.com/labstack/echo/v4"

	"creasefit/api/tell"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/stock"
)

// The names of the paper calculation, by their place in its table.
const (
	paperUnit = iota
	paperStock
	paperCaliper
	paperGrammage
	paperBasisWeight
	paperGrade
	paperSheetMass
	paperSheet
)

// paperFormats are the formats of what is told of a paper: it is no set of
// measurements.
var paperFormats = []tell.Format{tell.JSON}

// paperTable is the names that the paper calculation knows.
func paperTable() *table {
	weight := func(name, help, example string) param {
		return param{Name: name, Type: numberType, LeastNumber: 0.01, GreatestNumber: 100_000, Help: help, Example: example}
	}
	return newTable([]param{
		unitParam(),
		{Name: "stock", Type: presetType, Choices: stock.Names(), Catalogue: "/v1/stocks", Example: "index-110", Help: "The paper, by name."},
		param{Name: "caliper", Example: "0.012 in", Help: "Thickness of one sheet."}.length(stock.LeastCaliper(), stock.GreatestCaliper()),
		{Name: "grammage", Type: numberType, LeastNumber: stock.LeastGrammage, GreatestNumber: stock.GreatestGrammage, Example: "216", Help: "Mass in g/m2."},
		weight("basis_weight", "Mass of a ream of the grade's basis size, in pounds; needs grade.", "80"),
		{Name: "grade", Type: choiceType, Choices: stock.GradeNames(), Example: "cover", Help: "The family of papers that the basis weight belongs to."},
		weight("sheet_mass", "Mass of one sheet in grams; needs sheet.", "13.1"),
		param{Name: "sheet", Type: sizeType, Catalogue: "/v1/sheets/sizes", Example: "8 1/2 x 11 in", Help: "Size of a sheet, or its name."}.
			bounded(measure.Millimetres(10), measure.Millimetres(5000)),
	}, answerParams(paperFormats))
}

// paperAnswer is what is told of a paper.
type paperAnswer struct {
	stock.Description
	unit   measure.Unit
	source string
}

// paperRequest is what is known of a paper.
type paperRequest struct {
	stock.Known
	unit   measure.Unit
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
type paperCalculation = calculation[*paperRequest, *paperAnswer]

// newPaperCalculation returns the calculation about a paper.
func newPaperCalculation() *paperCalculation {
	return &paperCalculation{
		table: paperTable(), path: "/v1/stock", formats: paperFormats,
		read: readPaper,
		compute: func(_ context.Context, q *paperRequest) (*paperAnswer, error) {
			d, err := stock.Describe(q.Known)
			return &paperAnswer{d, q.unit, q.source}, err
		},
		write: func(dst []byte, _ tell.Format, a *paperAnswer, x *answering) []byte { return appendPaper(dst, a, x) },
	}
}

// readPaper takes what is known.
func readPaper(r *reading) *paperRequest {
	r.exclude(paperCaliper, paperStock, "the named stock has a caliper of its own")
	q := &paperRequest{unit: r.unit}
	q.Caliper, q.Grammage = r.values[paperCaliper].length, r.values[paperGrammage].number
	q.BasisWeight, q.SheetMass = r.values[paperBasisWeight].number, r.values[paperSheetMass].number
	q.SheetWidth, q.SheetHeight = r.values[paperSheet].size[0], r.values[paperSheet].size[1]
	q.Grade, _ = stock.LookupGrade(r.values[paperGrade].text)
	if s, ok := stock.Lookup(r.values[paperStock].text); ok {
		q.Caliper, q.source = s.Caliper, s.Source
		if s.Grammage > 0 {
			r.exclude(paperGrammage, paperStock, "the named stock has a grammage of its own")
			q.Grammage = s.Grammage
		}
	}
	if r.has(paperGrade) && !r.has(paperBasisWeight) {
		r.report(fault.Fault{Code: fault.Missing, Field: r.name(paperBasisWeight), Detail: "a grade is of use with a basis weight only",
			Hint: "add basis_weight or leave out grade"}, "")
	}
	return q
}

// appendPaper appends the answer as JSON.
func appendPaper(dst []byte, a *paperAnswer, x *answering) []byte {
	finest := finestMark(a.unit)
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
	dst = appendString(append(dst, `,"links":{"self":`...), string(x.link(x.path)))
	return append(dst, `}}`...)
}
