package api

import (
	"context"

	"github.com/labstack/echo/v4"

	"creasefit/api/tell"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// The names of own measurements, by their place behind the kind's own.
const (
	checkBlank = iota
	checkMarks
	checkRises
	checkDepths
)

// mostMeasured is how many measurements of one name a check takes.
const mostMeasured = 32

// checkParams describes the names of own measurements.
func checkParams() []param {
	nothing := measure.Length{}
	mark := func(name, example, help string) param {
		return param{Name: name, List: true, Example: example, Help: help}.length(nothing, measure.Millimetres(5000))
	}
	return []param{
		param{Name: "blank", Type: sizeType, List: true, Example: "8 1/4 x 1 3/4 in", Help: "Width and height of each piece's blank, in the order of the solution's pieces."}.
			bounded(measure.Millimetres(1), measure.Millimetres(5000)),
		mark("marks", "2 1/4 in", "Where each score across the width lies, from the left, piece after piece; may be given several times."),
		mark("rises", "1 1/2 in", "Where each score across the height lies, from the bottom, piece after piece; may be given several times."),
		mark("depths", "1 in", "The sizes that lie on no edge, such as the depth of each slit or the lap; may be given several times."),
	}
}

// checkRequest is a request with somebody's own measurements.
type checkRequest struct {
	request *solve.Request
	own     *solve.Measurements
}

// checkKind judges somebody's own measurements.
//
//	@Summary		Check own measurements
//	@Description	Whether own measurements close and fit the contents, by how much not, how sure that is, the smallest change that mends them, and the greatest contents that they hold. Sizes of the contents that are left out are taken as the greatest that go in.
//	@ID				check
//	@Tags			enclosures
//	@Param			kind	path	string	true	"kind of enclosure"
//	@Accept			json
//	@Produce		json
//	@Success		200	{object}	Check
//	@Header			200	{string}	ETag	"strong, and known before checking"
//	@Produce		application/problem+json
//	@Failure		400,404,408,413,414,415,422,429,500,503	{object}	Problem
//	@Produce		json
//	@Router			/v1/check/{kind} [get]
//	@Router			/v1/check/{kind} [post]
func (s *Service) checkKind(c echo.Context) error {
	entry, extension, p := s.kindOfPath(c)
	if p != nil {
		return s.answerProblem(c, p)
	}
	return entry.check.serve(s, c, extension)
}

// checkCalculation is the check of one kind.
type checkCalculation = calculation[*checkRequest, *solve.Check]

// checkFormats are the formats of a check.
var checkFormats = []tell.Format{tell.JSON, tell.Text}

// newCheck returns the check of the kind.
func (e *kindEntry) newCheck() *checkCalculation {
	return &checkCalculation{
		table: kindTable(e.kind, checkFormats, checkParams()...), path: "/v1/check/" + e.kind.Name, formats: checkFormats,
		read: func(r *reading) *checkRequest { return e.readCheck(r) },
		compute: func(ctx context.Context, q *checkRequest) (*solve.Check, error) {
			return solve.CheckOwn(ctx, q.request, q.own)
		},
		write: writeCheck,
	}
}

// readCheck takes the request and the measurements.
func (e *kindEntry) readCheck(r *reading) *checkRequest {
	q := &solve.Request{Kind: e.kind}
	r.readContents(q)
	r.readRest(q)
	first := pOwn + len(e.kind.Params)
	for i := checkBlank; i <= checkDepths; i++ {
		r.limitList(first+i, mostMeasured)
	}
	if v := &r.values[first+checkBlank]; !v.given {
		r.missing(first+checkBlank, "the size of the blank is needed", "measure the uncut, unfolded piece")
	}
	return &checkRequest{q, &solve.Measurements{
		Blanks: append([][2]measure.Length(nil), r.values[first+checkBlank].sizes...),
		Marks:  r.lengthsAt(first + checkMarks), Rises: r.lengthsAt(first + checkRises), Depths: r.lengthsAt(first + checkDepths),
	}}
}

// writeCheck writes a check in the format.
func writeCheck(dst []byte, f tell.Format, a *solve.Check, x *answering) []byte {
	if f == tell.JSON {
		return appendCheck(dst, a, x)
	}
	dst = append(append(dst, checkWords(a)...), '\n')
	for _, c := range a.Mend {
		dst = append(append(dst, "change "...), c.Name...)
		dst = appendReading(append(dst, " from "...), a.Request.Ruler, c.From)
		dst = append(appendReading(append(dst, " to "...), a.Request.Ruler, c.To), '\n')
	}
	return dst
}
