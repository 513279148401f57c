package ask

import (
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// Check is somebody's own measurements of an enclosure.
type Check struct {
	Enclosure
	Measured
	Inside, Outside [3]Length // of the folded piece, along its axes
}

// NewCheck is the form of a check of the kind.
func NewCheck(k *enclosure.Kind, formats ...string) *Form[*Check] {
	return NewForm(func() *Check { return &Check{Enclosure: Enclosure{Kind: k, partial: true}} }, formats...)
}

func (q *Check) bind(b *Names) {
	q.Enclosure.bind(b)
	q.Measured.bind(b)
	for i, axis := range [...]pattern.Axis{pattern.Width, pattern.Height, pattern.Thickness} {
		along := axis.String()
		b.bind(&q.Inside[i], Name{Name: "inside_" + along, Example: "3 5/8 in", Advanced: true,
			Help: "The " + along + " inside the folded piece, from wall to wall, to learn what was off."}.between(measure.Millimetres(1), measure.Millimetres(5000)))
		b.bind(&q.Outside[i], Name{Name: "outside_" + along, Example: "3 11/16 in", Advanced: true,
			Help: "The " + along + " outside it."}.between(measure.Millimetres(1), measure.Millimetres(5000)))
	}
}

// Finished is what was measured on the folded piece.
func (q *Check) Finished() *solve.Finished {
	f := &solve.Finished{}
	for i := range q.Inside {
		f.Inside[i], f.Outside[i] = q.Inside[i].Length, q.Outside[i].Length
	}
	return f
}

func (q *Check) settle(r *Reading) {
	q.Enclosure.settle(r)
	q.Measured.settle(r)
}
