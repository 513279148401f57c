package rounding

import "creasefit/internal/measure"

// Nodes returns how many nodes the last call of At or NearestMiss branched at.
func (s *Search) Nodes() int { return s.nodes }

// Whole reports whether whole numbers of steps can meet the closures, whatever the readings' ends.
func (s *Search) Whole(step measure.Step) bool {
	if !s.start(step) {
		return false
	}
	for i := range s.parts {
		if !s.whole(&s.parts[i]) {
			return false
		}
	}
	return true
}
