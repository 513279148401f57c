package api

import (
	"context"
	"errors"
	"io"
	"math"
	"strconv"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/assembly"
	"creasefit/internal/draw"
	"creasefit/internal/draw/dxf"
	"creasefit/internal/draw/foldfile"
	"creasefit/internal/draw/glb"
	"creasefit/internal/draw/pdf"
	"creasefit/internal/draw/png"
	"creasefit/internal/draw/svg"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/stock"
)

// drawingFormats are the formats of a drawing.
var drawingFormats = []tell.Format{tell.SVG, tell.PDF, tell.PNG, tell.DXF, tell.FOLD, tell.GLB}

// drawing is a solution laid out, with how to write it.
type drawing struct {
	*draw.Drawing
	dark   bool
	pixels int
	closed float64
	works  []draw.Work
	paper  [2]measure.Length // zero for what is usual
}

// newDrawing answers with the flat pattern, or with the folded model.
//
//	@Summary		Drawing of an enclosure
//	@Description	The flat pattern, true to the millimetre, or a model with its contents whose animations play the making.
//	@ID				drawing
//	@Tags			enclosures
//	@Param			kind	path	string	true	"kind of enclosure"
//	@Produce		image/svg+xml
//	@Success		200	{string}	string
//	@Router			/v1/drawing/{kind} [get]
//	@Router			/v1/drawing/{kind} [post]
func newDrawing[Q ask.Subject](kind string, of func() Q) computing {
	return &calculation[*ask.Drawing[Q], *drawing]{
		form: ask.NewDrawing(of, tell.FormatNames(drawingFormats)...), path: "/v1/drawing/" + kind, formats: drawingFormats,
		compute: func(ctx context.Context, q *ask.Drawing[Q]) (*drawing, error) {
			s, err := solveSubject(ctx, q.Of)
			if err != nil {
				return nil, err
			}
			a := &drawing{dark: q.Dark(), pixels: q.Pixels.Count(), closed: q.Closed.Number, paper: [2]measure.Length{q.Paper.Width, q.Paper.Height}}
			as := q.Layout()
			a.works = s.works(q.Language.Word)
			a.Drawing, err = s.draw("", q.Language.Word, as)
			return a, cutterFault(err)
		},
		price: (*drawing).price,
		write: func(dst []byte, f tell.Format, a *drawing, x *answering) []byte { return a.appendIn(dst, f, x) },
	}
}

// order is the order of the work of one enclosure; without one the model folds all at
// once.
func (a *drawing) order() *assembly.Order {
	if len(a.works) != 1 {
		return nil
	}
	order, err := a.works[0].Order()
	if err != nil {
		return nil
	}
	return order
}

// price refuses a drawing that would take more pages than one call may ask
// for, with the least paper that takes few enough.
func (a *drawing) price(f tell.Format) error {
	if f != tell.PDF {
		return nil
	}
	pages := a.pages(a.paper)
	if pages <= pdf.MostPages {
		return nil
	}
	wrong := fault.Fault{Code: fault.OverBudget, Field: "paper", Detail: "the drawing takes " + wire.Count(pages, "page", "pages") + " of this paper",
		Expected: "at most " + wire.Count(pdf.MostPages, "page", "pages"), Hint: "format=svg is one picture of any size"}
	for _, s := range stock.Sheets() {
		if n := a.pages([2]measure.Length{s.Width, s.Height}); s.Unit == a.Step.Unit() && n > 0 && n <= pdf.MostPages {
			wrong.Hint = "paper=" + s.Name + " takes " + wire.Count(n, "page", "pages")
			break
		}
	}
	return wrong
}

// pages is how many pages of a paper the drawing takes.
func (a *drawing) pages(paper [2]measure.Length) int {
	return pdf.Pages(a.Drawing, pdf.Options{Width: paper[0], Height: paper[1]})
}

// cutterFault says what a machine cannot do, by the name that would change it.
func cutterFault(err error) error {
	var cannot *draw.CutterError
	if !errors.As(err, &cannot) {
		return err
	}
	size := strconv.FormatFloat(math.Ceil(cannot.Size*100)/100, 'f', -1, 64) + " mm"
	if cannot.Kerf {
		return fault.Fault{Code: fault.Impossible, Field: "kerf", Detail: cannot.Piece + " has a detail of " + size + " that is narrower than what the tool takes away.",
			Hint: "leave kerf out and let the machine follow the lines"}
	}
	return fault.Fault{Code: fault.Impossible, Field: "bed", Detail: cannot.Piece + ", " + size + " at its longest, has no room on the bed, which keeps 3 mm free all round.",
		Hint: "leave bed out, or give a larger one"}
}

// appendIn appends the drawing in the format.
func (a *drawing) appendIn(dst []byte, f tell.Format, x *answering) []byte {
	switch f {
	case tell.PDF:
		return x.encoded(dst, func(w io.Writer) error {
			return pdf.Encode(w, a.Drawing, pdf.Options{Width: a.paper[0], Height: a.paper[1], Context: x.ctx})
		})
	case tell.PNG:
		return x.encoded(dst, func(w io.Writer) error {
			return png.Encode(w, a.Drawing, png.Options{Width: a.pixels, Dark: a.dark, Context: x.ctx})
		})
	case tell.DXF:
		return x.encoded(dst, func(w io.Writer) error { return dxf.Encode(w, a.Drawing) })
	case tell.FOLD:
		return x.encoded(dst, func(w io.Writer) error { return foldfile.Encode(w, a.Drawing) })
	case tell.GLB:
		return x.encoded(dst, func(w io.Writer) error {
			return glb.Encode(w, a.Drawing, glb.Options{Closed: a.closed, Order: a.order()})
		})
	default:
		return svg.Append(dst, a.Drawing, svg.Options{Dark: a.dark})
	}
}
