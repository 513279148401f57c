package rounding

// derivedLimit is the greatest sum of the coefficients of a derived row. No
// variable is above 2^43 steps, see Limit, so that no such row is above 2^60.
const derivedLimit = 1 << 17

// derive appends the rows that come of eliminating one reading after the
// other from the stated rows of a part. They say nothing new, but each shows
// by itself, in its ranges and divisors, what several rows hide together.
func (b *builder) derive(readings []int, stated []row) {
	if len(stated) < 2 {
		return
	}
	m := matrix{readings: readings, height: len(stated), width: len(readings) + 2*len(stated)}
	m.cells = room(&b.memory.cells, m.height*m.width)
	m.fill(stated)
	if !small(m.cells) || !m.reduce() {
		return
	}
	for i := range stated {
		if r, fresh := b.derived(&m, i, stated); fresh {
			b.rows = append(b.rows, r)
		}
	}
}

// matrix holds rows densely: a column for each reading, then one for each
// row's own variable, then one for how often each stated row is in it.
type matrix struct {
	readings      []int
	cells         []int64
	height, width int
}

func (m *matrix) row(i int) []int64 { return m.cells[i*m.width : (i+1)*m.width] }

func (m *matrix) fill(stated []row) {
	for i := range stated {
		cells := m.row(i)
		for _, t := range stated[i].terms {
			cells[m.column(t.of, i)] = t.coef
		}
		cells[len(m.readings)+m.height+i] = 1
	}
}

// column returns where a variable of a row stands.
func (m *matrix) column(of, row int) int {
	for c, reading := range m.readings {
		if reading == of {
			return c
		}
	}
	return len(m.readings) + row
}

// reduce makes one row after the other the only one with a certain reading;
// false means that the coefficients grow too large.
func (m *matrix) reduce() bool {
	pivot := 0
	for c := 0; c < len(m.readings) && pivot < m.height; c++ {
		best := m.least(pivot, m.height, c)
		if best < 0 {
			continue
		}
		m.swap(pivot, best)
		for i := range m.height {
			if i != pivot && m.row(i)[c] != 0 && !eliminate(m.row(i), m.row(pivot), c) {
				return false
			}
		}
		pivot++
	}
	return true
}

// least returns which row before the end has the smallest cell, not zero, in a column; -1 if none has.
func (m *matrix) least(from, end, c int) int {
	best := -1
	for i := from; i < end; i++ {
		if a := abs(m.row(i)[c]); a != 0 && (best < 0 || a < abs(m.row(best)[c])) {
			best = i
		}
	}
	return best
}

func (m *matrix) swap(i, j int) {
	if i == j {
		return
	}
	a, b := m.row(i), m.row(j)
	for c := range a {
		a[c], b[c] = b[c], a[c]
	}
}

// eliminate adds a multiple of the pivot row to a multiple of the row so that
// its column c becomes zero; false means that the coefficients grow too large.
func eliminate(row, pivot []int64, c int) bool {
	g := gcd(row[c], pivot[c])
	a, b := pivot[c]/g, row[c]/g
	var common int64
	for i := range row {
		row[i] = row[i]*a - pivot[i]*b
		if common != 1 {
			common = gcd(common, row[i])
		}
	}
	if common > 1 {
		for i := range row {
			row[i] /= common
		}
	}
	return small(row)
}

// small reports whether the sizes of the cells add up to at most the limit.
func small(cells []int64) bool {
	limit := int64(derivedLimit)
	for _, a := range cells {
		if limit -= min(abs(a), limit+1); limit < 0 {
			return false
		}
	}
	return true
}

// derived returns a row of the matrix, and whether it is not just a stated
// one.
func (b *builder) derived(m *matrix, i int, stated []row) (r row, fresh bool) {
	first, variables := len(b.terms), len(m.readings)+m.height
	for c, coef := range m.row(i) {
		if coef == 0 {
			continue
		}
		switch {
		case c < len(m.readings):
			c = m.readings[c]
		case c < variables:
			c = stated[c-len(m.readings)].own
		default:
			c -= variables
			if r.terms == nil {
				r.terms, first = b.terms[first:], len(b.terms)
			}
		}
		b.terms = append(b.terms, term{c, coef})
	}
	r.own, r.mix = -1, b.terms[first:]
	return r, len(r.mix) > 1
}

// gcd returns the greatest common divisor, positive unless both are zero.
func gcd(a, b int64) int64 {
	for b != 0 {
		if b == 1 || b == -1 { // as mostly: division takes longest
			return 1
		}
		a, b = b, a%b
	}
	return abs(a)
}

func abs(a int64) int64 { return max(a, -a) }
