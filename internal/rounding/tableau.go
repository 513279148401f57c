package rounding

// tableau is a linear program in whole numbers: equations between columns
// that each lie between a lo and a hi, and a goal to be made least. Each row
// has a basic column that is in no other row nor in the goal; the other columns
// stand at whichever end makes the goal least, so that its value is a bound at
// any time (the bounded dual simplex method; pivots as in Edmonds' and Bareiss'
// integer-preserving elimination, each row divided by its common divisor).
type tableau struct {
	width     int       // of a row: the columns, then the goal's own, then the right side
	rows      [][]int64 // of whole numbers
	basic     []int     // the basic column of each row; -1 if it has no columns
	goal      []int64
	lo, hi, x []int64 // by column
}

// tableauLimit bounds the sum of a row and the size of a column's ends, so
// that neither products nor their sums overflow.
const tableauLimit = 1 << 30

// verdict is what a tableau says.
type verdict uint8

const (
	open    verdict = iota // the goal may come down to the bound
	closed                 // the equations cannot hold
	unknown                // the numbers have grown too large
)

// add appends an equation; the column given, or if that is -1 any of the
// first few, becomes basic.
func (t *tableau) add(cells []int64, basic, choice int) bool {
	if !within(cells, tableauLimit) {
		return false
	}
	for i, row := range t.rows {
		if c := t.basic[i]; c >= 0 && cells[c] != 0 && !eliminate(cells, row, c, tableauLimit) {
			return false
		}
	}
	for c := 0; c < choice && basic < 0; c++ {
		if cells[c] != 0 {
			basic = c
		}
	}
	t.rows, t.basic = append(t.rows, cells), append(t.basic, basic)
	return basic < 0 || t.pivot(len(t.rows)-1, basic)
}

// aim sets the goal: the sum of the columns at these costs.
func (t *tableau) aim(costs []int64) bool {
	copy(t.goal, costs)
	t.goal[t.width-2], t.goal[t.width-1] = -1, 0
	if !within(t.goal, tableauLimit) {
		return false
	}
	for i, row := range t.rows {
		if c := t.basic[i]; c >= 0 && t.goal[c] != 0 && !t.reduceGoal(row, c) {
			return false
		}
	}
	return true
}

// reduceGoal eliminates a column from the goal, which keeps its sign.
func (t *tableau) reduceGoal(row []int64, c int) bool {
	ok := eliminate(t.goal, row, c, tableauLimit)
	if t.goal[t.width-2] > 0 {
		for i := range t.goal {
			t.goal[i] = -t.goal[i]
		}
	}
	return ok
}

// pivot makes a column the basic one of a row.
func (t *tableau) pivot(row, c int) bool {
	t.basic[row] = c
	for i := range t.rows {
		if i != row && t.rows[i][c] != 0 && !eliminate(t.rows[i], t.rows[row], c, tableauLimit) {
			return false
		}
	}
	return t.goal[c] == 0 || t.reduceGoal(t.rows[row], c)
}

// least bounds the goal from below, the better the more pivots it takes. The
// bound is times the goal's scale.
func (t *tableau) least() (bound int64, v verdict) {
	for range 4 * len(t.rows) {
		t.place()
		row, excess := t.worst()
		if row < 0 {
			break
		}
		c, ok := t.enter(row, excess)
		if !ok {
			return 0, closed
		}
		if !t.pivot(row, c) {
			return 0, unknown
		}
	}
	t.place()
	bound = -t.goal[t.width-1]
	for c := range t.width - 2 {
		bound += t.goal[c] * t.x[c]
	}
	return bound, open
}

// scale is what the goal is multiplied by to be in whole numbers.
func (t *tableau) scale() int64 { return -t.goal[t.width-2] }

// trim moves a column's ends to where the goal stays within slack of its
// bound, and reports whether that changed them.
func (t *tableau) trim(c int, slack int64) bool {
	switch r := t.goal[c]; {
	case r > 0 && slack/r < t.hi[c]-t.lo[c]:
		t.hi[c] = t.lo[c] + slack/r
	case r < 0 && slack/-r < t.hi[c]-t.lo[c]:
		t.lo[c] = t.hi[c] - slack/-r
	default:
		return false
	}
	return true
}

// place puts every column where it makes the goal least, the basic ones at
// zero.
func (t *tableau) place() {
	for c := range t.width - 2 {
		t.x[c] = t.lo[c]
		if t.goal[c] < 0 {
			t.x[c] = t.hi[c]
		}
	}
	for _, c := range t.basic {
		if c >= 0 {
			t.x[c] = 0
		}
	}
}

// worst returns the row whose basic column is furthest outside its ends, and
// by how much the row's value is too great, or less than zero, too small.
func (t *tableau) worst() (row int, excess int64) {
	row = -1
	var worst int64
	for i, cells := range t.rows {
		b := t.basic[i]
		if b < 0 {
			continue
		}
		value := cells[t.width-1]
		for c, a := range cells[:t.width-2] {
			value -= a * t.x[c]
		}
		low, high := cells[b]*t.lo[b], cells[b]*t.hi[b]
		out := max(0, value-max(low, high)) + min(0, value-min(low, high))
		if off := (abs(out) + abs(cells[b]) - 1) / abs(cells[b]); off > worst {
			row, excess, worst = i, out, off
		}
	}
	return row, excess
}

// enter returns the column that shall take over a row: of those that can make
// up for the excess, going from the cheapest on until they do. False means that
// all of them together cannot.
func (t *tableau) enter(row int, excess int64) (column int, ok bool) {
	cells := t.rows[row]
	left := abs(excess)
	for last := -1; ; {
		best := -1
		for c, a := range cells[:t.width-2] {
			if c == t.basic[row] || a == 0 || t.lo[c] == t.hi[c] || (a > 0) == (excess > 0) == (t.goal[c] < 0) {
				continue
			}
			if last >= 0 && !t.cheaper(cells, last, c) {
				continue
			}
			if best < 0 || t.cheaper(cells, c, best) {
				best = c
			}
		}
		if best < 0 {
			return 0, false
		}
		if left -= abs(cells[best]) * (t.hi[best] - t.lo[best]); left <= 0 {
			return best, true
		}
		last = best
	}
}

// cheaper reports whether the goal suffers less for a row's sake from column
// c than from d; of equals the first comes first.
func (t *tableau) cheaper(cells []int64, c, d int) bool {
	a, b := abs(t.goal[c]*cells[d]), abs(t.goal[d]*cells[c])
	return a < b || a == b && c < d
}
