package rounding

import "math"

// NewEagerSearch prepares a problem to be searched with a relaxation from the
// first node on, which small problems would never need.
func NewEagerSearch(p *Problem) *Search {
	s := NewSearch(p)
	s.patience = 0
	return s
}

// NewPlainSearch prepares a problem to be searched without any relaxation.
func NewPlainSearch(p *Problem) *Search {
	s := NewSearch(p)
	s.patience = math.MaxInt
	return s
}

// Nodes returns how many nodes the last call has searched.
func (s *Search) Nodes() int { return s.nodes }
