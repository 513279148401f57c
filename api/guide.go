package api

import (
	"bytes"
	"context"

	"github.com/labstack/echo/v4"

	"creasefit/internal/draw"
	"creasefit/internal/draw/svg"
	"creasefit/internal/guide"
	"creasefit/internal/solve"
)

// The names of a guide, by their place behind the kind's own.
const (
	guideLanguage = iota
	guideUnits
)

// guideParams describes the names of a guide.
func guideParams() []param {
	return []param{
		{Name: "language", Type: choiceType, Choices: guide.Languages(), Example: "en", DefaultInch: "en", DefaultMillimetre: "en", Help: "The language of the guide."},
		{Name: "units", Type: choiceType, Choices: []string{"in", "mm", "both"}, Example: "both", Help: "The units of the guide. Default: those of the ruler."},
	}
}

// guideFormats are the formats of a guide.
var guideFormats = []format{formatJSON, formatMarkdown, formatHTML, formatText}

// guideRequest is a request for a solution and how its guide is to be written.
type guideRequest struct {
	request *solve.Request
	options guide.Options
}

// guided is a solution with its guide.
type guided struct {
	solution *solve.Solution
	guide    guide.Guide
}

// writeGuide answers with the making instructions of an enclosure.
//
//	@Summary		Making instructions of an enclosure
//	@Description	Materials, tools, the cut list and numbered steps in the order that hands would do them, with the usual cautions. Every number comes from the solution.
//	@ID				guide
//	@Tags			enclosures
//	@Param			kind	path	string	true	"kind of enclosure"
//	@Accept			json
//	@Produce		json
//	@Success		200	{object}	guide.Guide
//	@Header			200	{string}	ETag	"strong, and known before solving"
//	@Produce		application/problem+json
//	@Failure		400,404,408,413,414,415,422,429,500,503	{object}	Problem
//	@Produce		json
//	@Router			/v1/guide/{kind} [get]
//	@Router			/v1/guide/{kind} [post]
func (s *Service) writeGuide(c echo.Context) error {
	entry, extension, p := s.kindOfPath(c)
	if p != nil {
		return s.answerProblem(c, p)
	}
	return entry.guide.serve(s, c, extension)
}

// guideCalculation is the guide of one kind.
type guideCalculation = calculation[*guideRequest, *guided]

// newGuide returns the guide of the kind.
func (e *kindEntry) newGuide() *guideCalculation {
	own := pOwn + len(e.kind.Params)
	return &guideCalculation{
		table: kindTable(e.kind, guideFormats, guideParams()...), path: "/v1/guide/" + e.kind.Name, formats: guideFormats,
		read: func(r *reading) *guideRequest {
			units, _ := guide.ParseUnits(r.values[own+guideUnits].text) // its choices were checked
			return &guideRequest{r.solveRequest(e.kind), guide.Options{Language: r.values[own+guideLanguage].text, Units: units}}
		},
		compute: func(ctx context.Context, q *guideRequest) (*guided, error) {
			s, err := solve.Solve(ctx, q.request)
			if err != nil {
				return nil, err
			}
			g, err := guide.Write(s, q.options)
			return &guided{s, g}, err
		},
		write: func(dst []byte, f format, a *guided, _ *answering) []byte { return append(dst, a.in(f)...) },
	}
}

// in writes the guide in the format.
func (a *guided) in(f format) []byte {
	switch f {
	case formatMarkdown:
		return a.guide.Markdown()
	case formatText:
		return a.guide.Text()
	case formatHTML:
		figure := draw.New(&a.solution.Pattern, draw.Options{Title: a.guide.Labels.Figure, Step: a.solution.Step})
		return written(a.guide.HTML(svg.Append(nil, figure, svg.Options{})))
	default:
		return bytes.TrimSpace(written(a.guide.JSON()))
	}
}

// written returns what was written to memory, which cannot fail; if it did
// the caller gets a plain 500 and the log the cause.
func written(text []byte, err error) []byte {
	if err != nil {
		panic(err)
	}
	return text
}
