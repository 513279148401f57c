package api

import (
	"context"
	"io"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/calibrate"
	"creasefit/internal/draw"
	"creasefit/internal/draw/pdf"
	"creasefit/internal/measure"
)

// calibrationFormats are the formats of what was learned, and of the test sheet.
var calibrationFormats = append(append([]tell.Format{}, tableFormats...), tell.PDF)

// calibration is what was learned, and how the test sheet is printed.
type calibration struct {
	*calibrate.Record
	sheet draw.TestSheet
	as    draw.Options
	paper [2]measure.Length
}

// newCalibration answers with what measurements say of a paper and a hand, or with the
// sheet to measure.
//
//	@Summary		Learn a paper and a hand
//	@Description	What was measured on a test sheet goes in: a strip wound round a block or a stack, strips cut and scored at one stop, strips folded up, a wetted sheet. Names for the next request come out, each with how sure it is. What was not measured is that of the bench. As PDF it is the test sheet to make and to measure.
//	@ID				calibrate
//	@Tags			paper
//	@Success		200	{object}	wire.Calibration
//	@Router			/v1/calibrate [get]
//	@Router			/v1/calibrate [post]
func newCalibration() computing {
	return &calculation[*ask.Calibration, *calibration]{
		form: ask.New[ask.Calibration](tell.FormatNames(calibrationFormats)...), path: "/v1/calibrate", formats: calibrationFormats, table: tell.MemberColumns,
		compute: func(_ context.Context, q *ask.Calibration) (*calibration, error) {
			record, err := calibrate.Find(&q.Measured)
			m := &q.Measured
			return &calibration{Record: record, paper: [2]measure.Length{q.Paper.Width, q.Paper.Height},
				sheet: draw.TestSheet{Apart: m.Fold.Apart, Marked: m.Marked},
				as:    draw.Options{Title: "Test sheet", Step: m.Ruler, Say: wordsOf(q.Language.Word), Language: q.Language.Word}}, err
		},
		answer: func(c *calibration, x *answering) any { return wire.OfCalibration(c.Record, x.Unit(), x.asked()) },
		write: func(dst []byte, _ tell.Format, c *calibration, x *answering) []byte {
			return x.encoded(dst, func(w io.Writer) error {
				return pdf.Encode(w, draw.NewTestSheet(c.sheet, c.as), pdf.Options{Width: c.paper[0], Height: c.paper[1], Context: x.ctx})
			})
		},
	}
}
