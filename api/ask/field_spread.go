package ask

import (
	"creasefit/internal/tolerance"
)

// Spread is a field of how much a size varies: plus or minus a length, or with a
// sign in front one way alone.
type Spread struct {
	Length
	sign byte // '-', '+', or 0 for both ways
}

func (s *Spread) reset() {
	s.Length.reset()
	s.sign = 0
}

func (s *Spread) understand(r *Reading, f field) {
	s.sign = 0
	if len(f.text) > 1 && (f.text[0] == '-' || f.text[0] == '+') {
		s.sign = f.text[0]
		f.text = f.text[1:]
	}
	s.Length.understand(r, f)
}

func (s *Spread) appendURL(dst []byte, r *Reading, i int) []byte {
	switch s.sign {
	case '-':
		dst = append(dst, '-')
	case '+':
		dst = append(dst, "%2B"...)
	}
	return s.Length.appendURL(dst, r, i)
}

// Source is the spread as a source of error.
func (s *Spread) Source() tolerance.Source {
	source := tolerance.Within(s.Length.Length)
	switch s.sign {
	case '-':
		source.High = source.High.Sub(source.High)
	case '+':
		source.Low = source.Low.Sub(source.Low)
	}
	return source
}
