package api

import (
	"bytes"
	"context"
	"io"

	"github.com/labstack/echo/v4"

	"creasefit/api/tell"
	"creasefit/internal/draw"
	"creasefit/internal/draw/dxf"
	"creasefit/internal/draw/foldfile"
	"creasefit/internal/draw/glb"
	"creasefit/internal/draw/pdf"
	"creasefit/internal/draw/png"
	"creasefit/internal/draw/svg"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
)

// The names of a drawing, by their place behind the kind's own.
const (
	drawingTheme = iota
	drawingPixels
	drawingClosed
	drawingPaper
	drawingLanguage
)

// usualPixels is the width of a picture that is asked for without one.
const usualPixels = 800

// drawingParams describes the names of a drawing.
func drawingParams() []param {
	return []param{
		{Name: "theme", Type: choiceType, Choices: []string{"light", "dark"}, Example: "dark", DefaultInch: "light", DefaultMillimetre: "light",
			Help: "Dark lines on light paper, or the other way round; of SVG and PNG."},
		{Name: "pixels", Type: countType, LeastNumber: png.Least, GreatestNumber: png.Greatest, Example: "800", DefaultInch: "800", DefaultMillimetre: "800",
			Help: "Width of a PNG in pixels."},
		{Name: "closed", Type: numberType, LeastNumber: 0, GreatestNumber: 1, Example: "0.5", DefaultInch: "1", DefaultMillimetre: "1",
			Help: "How far the folded model is closed: 0 flat, 1 closed; of GLB."},
		paperParam(),
		languageParam("The language of the words in the drawing."),
	}
}

// paperParam describes the paper that a PDF is for.
func paperParam() param {
	return param{Name: "paper", Type: sizeType, Catalogue: "/v1/sheets/sizes", Example: "a4",
		Help: "The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4."}.bounded(pdf.LeastSide(), pdf.GreatestSide())
}

// languageParam describes the choice of a language.
func languageParam(help string) param {
	return param{Name: "language", Type: choiceType, Choices: guide.Languages(), Example: "en", DefaultInch: "en", DefaultMillimetre: "en", Help: help}
}

// drawingFormats are the formats of a drawing.
var drawingFormats = []tell.Format{tell.SVG, tell.PDF, tell.PNG, tell.DXF, tell.FOLD, tell.GLB}

// drawingRequest is what is to be drawn and how.
type drawingRequest struct {
	subject  subject
	dark     bool
	pixels   int
	closed   float64
	paper    [2]measure.Length // zero for what is usual
	language string
}

// drawing is a solution laid out, with how to write it.
type drawing struct {
	*draw.Drawing
	how *drawingRequest
}

// drawKind answers with the flat pattern, or with the folded model.
//
//	@Summary		Drawing of an enclosure
//	@Description	The flat pattern, true to the millimetre, as SVG, PDF, PNG, DXF or in the open FOLD format, or the folded enclosure with its contents as binary glTF.
//	@ID				drawing
//	@Tags			enclosures
//	@Param			kind	path	string	true	"kind of enclosure"
//	@Accept			json
//	@Produce		image/svg+xml
//	@Success		200	{string}	string
//	@Header			200	{string}	ETag	"strong, and known before solving"
//	@Produce		application/problem+json
//	@Failure		400,404,408,413,414,415,422,429,500,503	{object}	Problem
//	@Produce		json
//	@Router			/v1/drawing/{kind} [get]
//	@Router			/v1/drawing/{kind} [post]
func (s *Service) drawKind(c echo.Context) error {
	entry, extension, p := s.kindOfPath(c)
	if p != nil {
		return s.answerProblem(c, p)
	}
	return entry.drawing.serve(s, c, extension)
}

// drawingCalculation is the drawing of one kind.
type drawingCalculation = calculation[*drawingRequest, *drawing]

// newDrawing returns the drawing of the kind.
func (e *kindEntry) newDrawing() *drawingCalculation {
	return newDrawing("/v1/drawing/"+e.kind.Name, kindTable(e.kind, drawingFormats, drawingParams()...), pOwn+len(e.kind.Params),
		func(r *reading) subject { return oneSubject{r.solveRequest(e.kind)} })
}

// newDrawing returns the drawing of what read reads; its own names begin at the
// place own of the table.
func newDrawing(path string, t *table, own int, read func(*reading) subject) *drawingCalculation {
	return &drawingCalculation{
		table: t, path: path, formats: drawingFormats,
		read: func(r *reading) *drawingRequest { return r.drawingRequest(own, read(r)) },
		compute: func(ctx context.Context, q *drawingRequest) (*drawing, error) {
			s, err := q.subject.solve(ctx)
			if err != nil {
				return nil, err
			}
			return &drawing{s.draw("", q.language), q}, nil
		},
		write: func(dst []byte, f tell.Format, a *drawing, _ *answering) []byte { return a.appendIn(dst, f) },
	}
}

// drawingRequest takes how to draw what was read; its names begin at a place of
// the table.
func (r *reading) drawingRequest(first int, what subject) *drawingRequest {
	own := r.values[first:]
	q := &drawingRequest{subject: what, dark: own[drawingTheme].text == "dark",
		pixels: usualPixels, closed: 1, paper: own[drawingPaper].size, language: own[drawingLanguage].text}
	if own[drawingPixels].given {
		q.pixels = int(own[drawingPixels].number)
	}
	if own[drawingClosed].given {
		q.closed = own[drawingClosed].number
	}
	return q
}

// appendIn appends the drawing in the format.
func (a *drawing) appendIn(dst []byte, f tell.Format) []byte {
	switch f {
	case tell.PDF:
		return encodedBy(dst, func(w io.Writer) error {
			return pdf.Encode(w, a.Drawing, pdf.Options{Width: a.how.paper[0], Height: a.how.paper[1]})
		})
	case tell.PNG:
		return encodedBy(dst, func(w io.Writer) error {
			return png.Encode(w, a.Drawing, png.Options{Width: a.how.pixels, Dark: a.how.dark})
		})
	case tell.DXF:
		return encodedBy(dst, func(w io.Writer) error { return dxf.Encode(w, a.Drawing, dxf.Options{}) })
	case tell.FOLD:
		return encodedBy(dst, func(w io.Writer) error { return foldfile.Encode(w, a.Drawing, foldfile.Options{}) })
	case tell.GLB:
		return encodedBy(dst, func(w io.Writer) error { return glb.Encode(w, a.Drawing, glb.Options{Closed: a.how.closed}) })
	default:
		return svg.Append(dst, a.Drawing, svg.Options{Dark: a.how.dark})
	}
}

// encodedBy appends what an encoder writes.
func encodedBy(dst []byte, encode func(io.Writer) error) []byte {
	b := bytes.NewBuffer(dst)
	err := encode(b)
	return written(b.Bytes(), err)
}
