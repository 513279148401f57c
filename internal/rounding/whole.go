package rounding

// stubborn is how many nodes a search may have before it asks at each whether whole numbers
// can meet the rows together: that takes as long as a few nodes do, and most searches have fewer.
const stubborn = 48

// Cells of variables and of what is left to be reached may be no greater, so that
// no product of two is above 2^60.
const (
	cellLimit = 1 << 20
	restLimit = 1 << 40
)

// whole reports whether whole numbers can meet the stated rows of a part together at the
// strides that are left, whatever the ends: each row alone may be met where all are not.
// It makes the moves of the variables echelons, as Euclid would, and takes from what is to be
// reached what each of them must give. Where figures grow too large it says yes.
func (s *Search) whole(p *part) bool {
	m := s.moves(p)
	last, pivot := m.height-1, 0
	rest := m.row(last)
	for c := range m.width {
		if !m.gather(pivot, c) {
			return true
		}
		step := m.row(pivot)
		switch {
		case rest[c] == 0:
		case pivot == last || step[c] == 0 || rest[c]%step[c] != 0:
			return false
		case !subtract(rest, step, rest[c]/step[c], restLimit):
			return true
		}
		if pivot < last && step[c] != 0 {
			pivot++
		}
	}
	return true
}

// moves returns a row for each variable, of what one stride of it gives to each stated row
// of the part, and a last one of what the stated rows lack with all variables at their least.
func (s *Search) moves(p *part) matrix {
	m := matrix{height: len(s.vars) + 1, width: p.stated}
	m.cells = room(&s.memory.cells, m.height*m.width)
	rest := m.row(m.height - 1)
	for i := range p.rows[:p.stated] {
		r := &p.rows[i]
		rest[i] = r.goal
		for k := range r.terms {
			t := &r.terms[k]
			rest[i] -= t.coef * s.vars[t.of].lo
			m.row(t.of)[i] = s.move(t)
		}
	}
	return m
}

// gather makes row from the only one, from there to the last but one, that has anything in
// column c; false means that the cells grow too large.
func (m *matrix) gather(from, c int) bool {
	for {
		best := m.least(from, m.height-1, c)
		if best < 0 {
			return true
		}
		m.swap(from, best)
		pivot, done := m.row(from), true
		for i := from + 1; i < m.height-1; i++ {
			if row := m.row(i); row[c] != 0 {
				if !subtract(row, pivot, row[c]/pivot[c], cellLimit) {
					return false
				}
				done = done && row[c] == 0
			}
		}
		if done {
			return true
		}
	}
}

// subtract takes a multiple of the pivot from a row; false means that the row's cells
// grow above the limit.
func subtract(row, pivot []int64, times, limit int64) bool {
	for i := range row {
		if row[i] -= times * pivot[i]; abs(row[i]) > limit {
			return false
		}
	}
	return true
}
