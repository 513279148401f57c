package ask

import (
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// mostCorners is how many corners of outlines a check takes.
const mostCorners = 256

// mostMeasured is how many measurements of one name a check takes.
const mostMeasured = 32

// Measured is somebody's own measurements of one enclosure.
type Measured struct {
	Blank                Sizes
	Marks, Rises, Depths Lengths
	Outline              Sizes
}

func (q *Measured) bind(b *Names) {
	measured := func(v value, name, example, help string, least measure.Length) {
		b.bind(v, Name{Name: name, Most: mostMeasured, Example: example, Help: help}.between(least, measure.Millimetres(5000)))
	}
	nothing := measure.Length{}
	measured(&q.Blank, "blank", "8 1/4 x 1 3/4 in", "Width and height of each piece's blank, in the order of the solution's pieces.", measure.Millimetres(1))
	measured(&q.Marks, "marks", "2 1/4 in", "Where each score across the width lies, from the left, piece after piece; may be given several times.", nothing)
	measured(&q.Rises, "rises", "1 1/2 in", "Where each score across the height lies, from the bottom, piece after piece; may be given several times.", nothing)
	measured(&q.Depths, "depths", "1 in", "The sizes that lie on no edge, such as the depth of each slit or the lap; may be given several times. Those that the outline shows are left out beside it.", nothing)
	b.bind(&q.Outline, Name{Name: "outline", Most: mostCorners, Example: "0 x 1 5/8 in", Advanced: true,
		Help: "Every corner of the cut edge of each piece that is not its whole blank, from the left x from the bottom, in the order of the " +
			"solution's outline; may be given several times."}.between(nothing, measure.Millimetres(5000)))
}

func (q *Measured) settle(r *Reading) {
	r.limit(&q.Blank, len(q.Blank.Sizes))
	r.limit(&q.Outline, len(q.Outline.Sizes))
	for _, list := range [...]*Lengths{&q.Marks, &q.Rises, &q.Depths} {
		r.limit(list, len(list.Lengths))
	}
	if !q.Blank.Given {
		r.missing(&q.Blank, "the size of the blank is needed", "measure the uncut, unfolded piece")
	}
}

// Measurements are the measurements themselves.
func (q *Measured) Measurements() *solve.Measurements {
	return &solve.Measurements{Blanks: q.Blank.Sizes, Marks: q.Marks.Lengths, Rises: q.Rises.Lengths, Depths: q.Depths.Lengths, Corners: q.Outline.Sizes}
}
