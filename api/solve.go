package api

import (
	"context"
	"strings"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/solve"
)

// measurementFormats are the formats of every answer that is a set of
// measurements.
var measurementFormats = []tell.Format{tell.JSON, tell.CSV, tell.XML, tell.Text}

// solveKind answers with the measurements of an enclosure.
//
//	@Summary		Measurements of an enclosure
//	@Description	The plainest ruler readings that give the wanted clearance, proven by folding the pattern up. GET and POST of the same names give the same answer.
//	@ID				solve
//	@Tags			enclosures
//	@Param			kind	path	string	true	"kind of enclosure"
//	@Accept			json
//	@Produce		json
//	@Success		200	{object}	wire.Solution
//	@Header			200	{string}	ETag	"strong, and known before solving"
//	@Produce		application/problem+json
//	@Failure		400,404,408,413,414,415,422,429,500,503	{object}	wire.Problem
//	@Produce		json
//	@Router			/v1/solve/{kind} [get]
//	@Router			/v1/solve/{kind} [post]
func (s *Service) solveKind(c echo.Context) error {
	entry, extension, p := s.kindOfPath(c)
	if p != nil {
		return s.answerProblem(c, p)
	}
	return entry.solve.serve(s, c, extension)
}

// solveCalculation is the calculation of one kind.
type solveCalculation = calculation[*ask.Enclosure, *solve.Solution]

// newSolve returns the calculation of the kind.
func newSolve(k *enclosure.Kind) *solveCalculation {
	return &solveCalculation{
		form: ask.NewSolve(k, tell.FormatNames(measurementFormats)...), path: "/v1/solve/" + k.Name, formats: measurementFormats,
		compute: func(ctx context.Context, q *ask.Enclosure) (*solve.Solution, error) {
			return solveAndCount(ctx, q.Request)
		},
		answer: func(s *solve.Solution, x *answering) any { return wire.OfSolution(s, x.asked()) },
	}
}

// solveAndCount solves, and counts how many blanks the request's sheet gives.
func solveAndCount(ctx context.Context, q *solve.Request) (*solve.Solution, error) {
	s, err := solve.Solve(ctx, q)
	if err != nil {
		return nil, err
	}
	return s, s.CountYields(ctx)
}

// kindOfPath finds the kind that the last segment of the path names, and the
// extension behind it.
func (s *Service) kindOfPath(c echo.Context) (*kindEntry, string, *problem) {
	segment := c.Param("kind")
	if e, ok := s.kinds[segment]; ok {
		return e, "", nil
	}
	name, extension, _ := strings.Cut(segment, ".")
	e, ok := s.kinds[name]
	if !ok {
		return nil, "", s.noSuchKind(c, name)
	}
	return e, extension, nil
}

// noSuchKind is the 404 that lists the nearest kinds.
func (s *Service) noSuchKind(c echo.Context, name string) *problem {
	f := fault.Fault{Code: codeNotFound, Field: "kind", Value: name, Detail: "there is no such kind of enclosure", Expected: "one of " + strings.Join(s.kindNames, ", ")}
	nearest := fault.Nearest(strings.ToLower(name), s.kindNames)
	if nearest != "" {
		f.Hint = "did you mean " + nearest + "?"
	}
	p := problemOf(fault.Faults{f})
	if prefix, _, ok := strings.Cut(c.Request().URL.RequestURI(), name); ok && nearest != "" && name != "" {
		p.try = prefix + nearest
		if query := c.Request().URL.RawQuery; query != "" {
			p.try += "?" + query
		}
	}
	return p
}
