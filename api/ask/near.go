package ask

import "creasefit/internal/measure"

// Near is which presets of a list are wanted: all of them, or those nearest to
// a size.
type Near struct {
	Unit Unit
	Size Size
	Top  Count
}

func (q *Near) bind(b *Names) {
	b.bind(&q.Unit, Name{Name: "unit", Choices: []string{measure.Inch.String(), measure.Millimetre.String()}, Example: "mm",
		Help: "The unit of a size without one."})
	b.bind(&q.Size, Name{Name: "near", Example: "86 x 54 mm",
		Help: "The nearest first, either way up; each says how far it is off."}.between(measure.Millimetres(1), measure.Millimetres(5000)))
	b.bind(&q.Top, Name{Name: "top", Example: "5", Help: "Answer with so many at the most."}.numbers(1, 1000))
}

func (*Near) settle(*Reading) {}
