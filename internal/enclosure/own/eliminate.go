package own

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

// reduce takes from a form what the rows before it say.
func (s *system) reduce(f form) form {
	for i, r := range s.rows {
		if c := f[s.pivots[i]]; c != 0 {
			f = s.without(f, r, s.pivots[i])
		}
	}
	return f
}

// without removes an unknown from a form by a row.
func (s *system) without(f, r form, pivot int) form {
	g := gcd(f[pivot], r[pivot])
	times, of := r[pivot]/g, f[pivot]/g
	if times < 0 {
		times, of = -times, -of
	}
	left := make(form, len(f))
	for i := range f {
		left[i] = f[i]*times - r[i]*of
	}
	left = left.plain()
	for i, c := range left {
		s.large = s.large || i != one && max(c, -c) > largest || max(c, -c) > largestConstant
	}
	if s.large { // nothing that follows would be exact
		return make(form, len(f))
	}
	return left
}

// add takes a row in if it says something new. What is left of it where it does
// not is told: nothing, or what contradicts the rows before it.
func (s *system) add(f form) (left form, fresh bool) {
	left = s.reduce(f)
	for _, u := range s.order {
		if left[u] == 0 {
			continue
		}
		for i, r := range s.rows {
			if r[u] != 0 {
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
		rest := 0.0
		for u, c := range r {
			if u != s.pivots[i] {
				rest += float64(c) * values[u]
			}
		}
		values[s.pivots[i]] = -rest / float64(r[s.pivots[i]])
	}
}

// open lists the unknowns that the rows leave open, those that follow from one
// another included: the exact null space.
func (s *system) open() []int {
	solved := map[int]bool{}
	for i, u := range s.pivots {
		solved[u] = true
		for _, w := range s.order {
			if w != u && s.rows[i][w] != 0 {
				solved[u] = false
			}
		}
	}
	var open []int
	for _, u := range s.order {
		if !solved[u] {
			open = append(open, u)
		}
	}
	return open
}
