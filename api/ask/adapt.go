package ask

import (
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// Adapt is somebody's pattern, what it was made for, and what it is wanted for.
type Adapt struct {
	Check
	MadeWidth, MadeHeight, MadeThickness, MadeCaliper Length

	MadeFor *solve.Request // what the names come to
}

// NewAdapt is the form of a pattern that is made for another thing.
func NewAdapt(k *enclosure.Kind, formats ...string) *Form[*Adapt] {
	return NewForm(func() *Adapt { return &Adapt{Check: Check{Enclosure: Enclosure{Kind: k}}} }, formats...)
}

func (q *Adapt) bind(b *Names) {
	q.Check.bind(b)
	made := func(v value, of, example string, least, greatest measure.Length) {
		b.bind(v, Name{Name: "made_for_" + of, Example: example,
			Help: "The " + of + " that the measured pattern was made for. Default: that of the new one."}.between(least, greatest))
	}
	made(&q.MadeWidth, "width", "3 in", measure.Millimetres(3), measure.Millimetres(2000))
	made(&q.MadeHeight, "height", "4 in", measure.Millimetres(3), measure.Millimetres(2000))
	made(&q.MadeThickness, "thickness", "0.09 in", hair(), measure.Millimetres(500))
	made(&q.MadeCaliper, "caliper", "0.012 in", hair(), measure.Millimetres(5))
}

func (q *Adapt) settle(r *Reading) {
	q.Check.settle(r)
	was := *q.Request
	for _, size := range [...]struct {
		given *Length
		to    *measure.Length
	}{{&q.MadeWidth, &was.Width}, {&q.MadeHeight, &was.Height}, {&q.MadeThickness, &was.Thickness}, {&q.MadeCaliper, &was.Caliper}} {
		if size.given.Given {
			*size.to = size.given.Length
		}
	}
	if q.MadeCaliper.Given && !q.Stock.Give.Given {
		was.WallGive = enclosure.WallGive(was.Caliper, was.BoardFrom)
	}
	q.MadeFor = &was
}
