package own

import "slices"

// system is rows that are solved for the unknowns one after the other: each row
// that says something new has an unknown of its own, which no other row has.
type system struct {
	rows   []form
	pivots []int
	order  []int // the unknowns, in the order that rows are solved for them
	large  bool  // a coefficient went beyond what stays exact
}

// How large the coefficients of a row may be, and its constant, so that those of the
// next are exact: one of each multiply to 2^61.
const (
	largest         = 1 << 20
	largestConstant = 1 << 41
)

// clone is a system that can be added to by itself.
func (s *system) clone() system {
	c := *s
	c.rows, c.pivots = slices.Clone(s.rows), slices.Clone(s.pivots)
	return c
}

// reduce takes from a form what the rows before it say.
func (s *system) reduce(f form) form {
	for i, r := range s.rows {
		if f.count(s.pivots[i]) != 0 {
			f = s.without(f, r, s.pivots[i])
		}
	}
	return f
}

// without removes an unknown from a form by a row.
func (s *system) without(f, r form, pivot int) form {
	times, of := r.count(pivot), f.count(pivot)
	g := gcd(times, of)
	if times < 0 {
		g = -g
	}
	left := f.times(times/g).plus(-of/g, r).plain()
	for _, p := range left {
		c := max(p.times, -p.times)
		s.large = s.large || p.of != one && c > largest || c > largestConstant
	}
	if s.large { // nothing that follows would be exact
		return nil
	}
	return left
}

// add takes a row in if it says something new. What is left of it where it does
// not is told: nothing, or what contradicts the rows before it.
func (s *system) add(f form) (left form, fresh bool) {
	left = s.reduce(f)
	for _, u := range s.order {
		if left.count(u) == 0 {
			continue
		}
		for i, r := range s.rows {
			if r.count(u) != 0 {
				s.rows[i] = s.without(r, left, u)
			}
		}
		s.rows, s.pivots = append(s.rows, left), append(s.pivots, u)
		return left, true
	}
	return left, false
}

// settle gives every unknown that a row says something about its value; those that no
// row speaks of stay as they are.
func (s *system) settle(values []float64) {
	for i, r := range s.rows {
		rest, own := 0.0, 0.0
		for _, p := range r {
			if p.of == s.pivots[i] {
				own = float64(p.times)
			} else {
				rest += float64(p.times) * values[p.of]
			}
		}
		values[s.pivots[i]] = -rest / own
	}
}

// settled are the values once all rows have settled theirs.
func (s *system) settled(values []float64) []float64 {
	values = slices.Clone(values)
	s.settle(values)
	return values
}

// open lists the unknowns that the rows leave open, those that follow from one
// another included: the exact null space.
func (s *system) open() []int {
	solved := map[int]bool{}
	for i, u := range s.pivots {
		solved[u] = !slices.ContainsFunc(s.order, func(w int) bool { return w != u && s.rows[i].count(w) != 0 })
	}
	var open []int
	for _, u := range s.order {
		if !solved[u] {
			open = append(open, u)
		}
	}
	return open
}
