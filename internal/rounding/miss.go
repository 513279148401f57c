package rounding

import (
	"context"

	"creasefit/internal/measure"
)

// Miss is the nearest that readings at a step come to a problem that they
// cannot solve. Of a problem that they can solve nothing is off and Closes is
// true. The zero Miss says that the closures cannot close.
type Miss struct {
	OffMarks []int // fixed readings that lie on no mark of the step
	Windows  []Off // windows that are missed, in the order of the problem
	Closes   bool  // whether any readings at all, on marks and within their ends, close the closures and rise with the pairs
}

// Off is a window, by index, and by how much the nearest readings miss it:
// negative below its least, positive above its greatest, never zero. Windows
// that are widened by as much can be met.
type Off struct {
	Window int
	By     measure.Length
}

// NearestMiss returns what keeps a problem from being solved at a step. It
// keeps fixed readings where they are, on a mark or not, and chooses the others
// so that the sum of what the windows are missed by is the least, weighted, all
// else being as for At; a window of weight zero counts as of weight one. If no
// choice closes the closures the miss names no windows. The error is as for At.
func (s *Search) NearestMiss(ctx context.Context, step measure.Step) (Miss, error) {
	if err := s.ready(ctx, step); err != nil {
		return Miss{}, err
	}
	var miss Miss
	for i, r := range s.problem.Readings {
		if r.Fixed && !r.Ideal.IsMultipleOf(step) {
			miss.OffMarks = append(miss.OffMarks, i)
		}
	}
	s.relaxed = true
	sizes, ok := s.at(step)
	if s.err != nil {
		return Miss{}, s.err
	}
	if !ok {
		return miss, nil
	}
	miss.Closes = true
	for i, w := range s.problem.Windows {
		switch v := w.Form.Value(sizes); {
		case v.Less(w.Min):
			miss.Windows = append(miss.Windows, Off{i, v.Sub(w.Min)})
		case w.Max.Less(v):
			miss.Windows = append(miss.Windows, Off{i, v.Sub(w.Max)})
		}
	}
	return miss, nil
}
