package ask

import "creasefit/internal/enclosure"

// Check is somebody's own measurements of an enclosure.
type Check struct {
	Enclosure
	Measured
}

// NewCheck is the form of a check of the kind.
func NewCheck(k *enclosure.Kind, formats ...string) *Form[*Check] {
	return NewForm(func() *Check { return &Check{Enclosure: Enclosure{Kind: k, partial: true}} }, formats...)
}

func (q *Check) bind(b *Names) {
	q.Enclosure.bind(b)
	q.Measured.bind(b)
}

func (q *Check) settle(r *Reading) {
	q.Enclosure.settle(r)
	q.Measured.settle(r)
}
