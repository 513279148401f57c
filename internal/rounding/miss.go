package rounding

import (
	"context"

	"creasefit/internal/measure"
)

// Miss is the nearest that readings at a step come to a problem they cannot
// solve.
type Miss struct {
	OffMarks []int // fixed readings that lie on no mark of the step
	Windows  []Off // windows that are missed
	Closes   bool  // whether any readings at all close the closures
}

// Off is a window, by index, and by how much the nearest readings miss it:
// negative below its least, positive above its greatest.
type Off struct {
	Window int
	By     measure.Length
}

// NearestMiss returns what keeps a problem from being solved at a step: the
// readings that miss the windows by the least weighted sum, all else being as
// for At. The error is the context's.
func (s *Search) NearestMiss(ctx context.Context, step measure.Step) (Miss, error) {
	var miss Miss
	for i, r := range s.problem.Readings {
		if r.Fixed && !r.Ideal.IsMultipleOf(step) {
			miss.OffMarks = append(miss.OffMarks, i)
		}
	}
	s.relaxed = true
	sizes, ok, err := s.at(ctx, step)
	if err != nil || !ok {
		return miss, err
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
