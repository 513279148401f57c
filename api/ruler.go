package api

import (
	"context"
	"strconv"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/internal/measure"
)

// readRuler answers with any length on every ruler.
//
//	@Summary		A length on every ruler
//	@Description	The nearest mark of every ruler from 1 in to 1/64 in and from 10 mm to 0.5 mm, with the error of each.
//	@ID				ruler
//	@Tags			lengths
//	@Accept			json
//	@Produce		json
//	@Success		200	{object}	Ruler
//	@Header			200	{string}	ETag	"strong"
//	@Produce		application/problem+json
//	@Failure		400,408,413,414,415,429,500,503	{object}	Problem
//	@Produce		json
//	@Router			/v1/ruler [get]
//	@Router			/v1/ruler [post]
func (s *Service) readRuler(c echo.Context) error {
	return s.ruler.serve(s, c, c.Param("extension"))
}

// rulerCalculation only reads and writes: the marks are the answer.
type rulerCalculation = calculation[*ask.Ruler, *ask.Ruler]

// newRulerCalculation returns the calculation of the ruler.
func newRulerCalculation() *rulerCalculation {
	return &rulerCalculation{
		form: ask.NewRuler(tell.FormatNames(measurementFormats)...), path: "/v1/ruler", formats: measurementFormats,
		compute: func(_ context.Context, q *ask.Ruler) (*ask.Ruler, error) { return q, nil },
		write:   writeRuler,
	}
}

// rulers returns every mark that readings are given at.
func rulers() []measure.Step {
	return append(append([]measure.Step(nil), measure.Marks(measure.Inch)...), measure.Marks(measure.Millimetre)...)
}

// writeRuler writes the readings.
func writeRuler(dst []byte, f tell.Format, q *ask.Ruler, x *answering) []byte {
	if f != tell.JSON {
		return appendRows(dst, f, x.rowStyle(), rulerRows(q))
	}
	dst = append(append(append(dst, `{"unit":"`...), x.Unit().String()...), `","lengths":[`...)
	for i, l := range q.Lengths.Lengths {
		dst = comma(dst, i)
		dst = appendString(append(dst, `{"text":`...), q.Lengths.Texts[i])
		dst = append(appendBoth(dst, l), `,"readings":[`...)
		for j, step := range rulers() {
			dst = comma(dst, j)
			dst = append(append(append(dst, `{"step":"`...), step.String()...), `","at":`...)
			dst = append(appendLength(dst, step, step.Nearest(l), l), '}')
		}
		dst = append(dst, `]}`...)
	}
	dst = appendString(append(dst, `],"links":{"self":`...), string(x.Link(x.path)))
	return append(dst, `}}`...)
}

// rulerRows lists the readings as a table.
func rulerRows(q *ask.Ruler) []row {
	var rows []row
	for i, l := range q.Lengths.Lengths {
		for _, step := range rulers() {
			rows = append(rows, row{"length " + strconv.Itoa(i+1), "reading", step.String(), "", step, step.Nearest(l)})
		}
	}
	return rows
}
