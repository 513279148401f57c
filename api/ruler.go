package api

import (
	"context"
	"strconv"

	"github.com/labstack/echo/v4"

	"creasefit/api/tell"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// mostLengths is how many lengths one call of the ruler takes.
const mostLengths = 50

// The names of the ruler, by their place in its table.
const (
	rulerUnit = iota
	rulerLength
)

// rulerTable is the names that the ruler knows.
func rulerTable() *table {
	return newTable([]param{
		unitParam(),
		param{Name: "length", List: true, Example: "92.1 mm", Help: "The length; may be given up to 50 times, in JSON as a list."}.
			length(measure.Length{}, measure.Largest()),
	}, answerParams(measurementFormats))
}

// rulerRequest is lengths to be read off every ruler.
type rulerRequest struct {
	unit    measure.Unit
	lengths []measure.Length
	texts   []string
}

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
type rulerCalculation = calculation[*rulerRequest, *rulerRequest]

// newRulerCalculation returns the calculation of the ruler.
func newRulerCalculation() *rulerCalculation {
	return &rulerCalculation{
		table: rulerTable(), path: "/v1/ruler", formats: measurementFormats,
		read:    readRulerRequest,
		compute: func(_ context.Context, q *rulerRequest) (*rulerRequest, error) { return q, nil },
		write:   writeRuler,
	}
}

// readRulerRequest takes the lengths.
func readRulerRequest(r *reading) *rulerRequest {
	v := &r.values[rulerLength]
	if !v.given {
		r.missing(rulerLength, "a length is needed", "add length=3-5/8in")
	}
	r.limitList(rulerLength, mostLengths)
	return &rulerRequest{unit: r.unit, lengths: r.lengthsAt(rulerLength), texts: append([]string(nil), v.texts...)}
}

// lengthsAt returns a copy of a list of lengths, which outlives the reading.
func (r *reading) lengthsAt(place int) []measure.Length {
	return append([]measure.Length(nil), r.values[place].lengths...)
}

// limitList reports a list with more values than the call takes.
func (r *reading) limitList(place, most int) {
	if v := &r.values[place]; max(len(v.lengths), len(v.sizes)) > most {
		r.report(fault.Fault{Code: fault.TooMany, Field: r.name(place), Detail: "it is given too many times", Expected: "at most " + strconv.Itoa(most) + " times"}, "")
	}
}

// rulers returns every mark that readings are given at.
func rulers() []measure.Step {
	return append(append([]measure.Step(nil), measure.Marks(measure.Inch)...), measure.Marks(measure.Millimetre)...)
}

// writeRuler writes the readings.
func writeRuler(dst []byte, f tell.Format, q *rulerRequest, x *answering) []byte {
	if f != tell.JSON {
		return appendRows(dst, f, x.rowStyle(), rulerRows(q))
	}
	dst = append(append(append(dst, `{"unit":"`...), q.unit.String()...), `","lengths":[`...)
	for i, l := range q.lengths {
		dst = comma(dst, i)
		dst = appendString(append(dst, `{"text":`...), q.texts[i])
		dst = append(appendBoth(dst, l), `,"readings":[`...)
		for j, step := range rulers() {
			dst = comma(dst, j)
			dst = append(append(append(dst, `{"step":"`...), step.String()...), `","at":`...)
			dst = append(appendLength(dst, step, step.Nearest(l), l), '}')
		}
		dst = append(dst, `]}`...)
	}
	dst = appendString(append(dst, `],"links":{"self":`...), string(x.link(x.path)))
	return append(dst, `}}`...)
}

// rulerRows lists the readings as a table.
func rulerRows(q *rulerRequest) []row {
	var rows []row
	for i, l := range q.lengths {
		for _, step := range rulers() {
			rows = append(rows, row{"length " + strconv.Itoa(i+1), "reading", step.String(), "", step, step.Nearest(l)})
		}
	}
	return rows
}
