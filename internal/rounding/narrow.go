package rounding

import "math/bits"

// variable is a reading, or the sum of several, in steps. What is still open
// to it is lo, lo+stride and so on up to hi; lo and hi are always among them.
type variable struct {
	lo, hi, stride int64
	rows           uint64 // the rows of its part that it is in, by bit
	best           int64  // its value in the best solution so far
}

func (v *variable) settled() bool { return v.lo == v.hi }

// open returns how many values are open beside the least one.
func (v *variable) open() int64 { return (v.hi - v.lo) / v.stride }

// lastBit stands for all rows of a part from the 64th on.
const lastBit = 63

func bit(row int) uint64 { return 1 << min(row, lastBit) }

// undo is a variable as it was before it was narrowed.
type undo struct {
	of             int
	lo, hi, stride int64
}

// shrink keeps of a variable what lies from lo to hi; false means nothing.
func (s *Search) shrink(of int, lo, hi int64) bool {
	v := &s.vars[of]
	if lo <= v.lo && hi >= v.hi {
		return true
	}
	lo, hi = max(lo, v.lo), min(hi, v.hi)
	if v.stride > 1 && lo <= hi {
		lo = v.lo + (lo-v.lo+v.stride-1)/v.stride*v.stride
		hi = v.hi - (v.hi-hi+v.stride-1)/v.stride*v.stride
	}
	if lo > hi {
		return false
	}
	s.set(of, lo, hi, v.stride)
	return true
}

// meet keeps of a variable lo+skip*stride and every count-th from there;
// false means nothing.
func (s *Search) meet(of int, skip, count int64) bool {
	v := &s.vars[of]
	more := (v.hi-v.lo)/v.stride - skip
	if more < 0 {
		return false
	}
	lo := v.lo + skip*v.stride
	s.set(of, lo, lo+more/count*count*v.stride, v.stride*count)
	return true
}

// set changes a variable and remembers what it was.
func (s *Search) set(of int, lo, hi, stride int64) {
	v := &s.vars[of]
	s.trail = append(s.trail, undo{of, v.lo, v.hi, v.stride})
	v.lo, v.hi, v.stride = lo, hi, stride
	s.dirty |= v.rows
}

// rewind takes back all that was set since the mark.
func (s *Search) rewind(mark int) {
	for k := len(s.trail) - 1; k >= mark; k-- {
		u := &s.trail[k]
		v := &s.vars[u.of]
		v.lo, v.hi, v.stride = u.lo, u.hi, u.stride
	}
	s.trail, s.dirty = s.trail[:mark], 0
}

// narrow shrinks the variables to what the rows leave possible, until no row
// can do more; false means that they leave nothing. It takes the rows in turn,
// so that what derived rows conclude at once is not crept up to by others.
func (s *Search) narrow(p *part) bool {
	for from := 0; s.dirty != 0; {
		ahead := s.dirty >> from << from
		if ahead == 0 {
			ahead = s.dirty
		}
		i := bits.TrailingZeros64(ahead)
		s.dirty &^= 1 << i
		last := i
		if i == lastBit {
			last = len(p.rows) - 1
		}
		for from = i + 1; i <= last; i++ {
			if !s.narrowBy(&p.rows[i], bit(i)) {
				return false
			}
		}
	}
	return true
}

// narrowBy shrinks variables by one row: each may be no further off than the
// others can make good, and only where the others' strides let it be.
func (s *Search) narrowBy(r *row, bit uint64) bool {
	if s.tired() {
		return false
	}
	var low, high, widest int64
	free := 0 // variables that move the row
	for i := range r.terms {
		t := &r.terms[i]
		v := &s.vars[t.of]
		a, b := t.coef*v.lo, t.coef*v.hi
		if a > b {
			a, b = b, a
		}
		low += a
		high += b
		if a != b {
			free++
			widest = max(widest, b-a)
		}
	}
	if low > r.goal || high < r.goal {
		return false
	}
	if low == high {
		return true
	}
	open := free
	if rise, fall := r.goal-low, high-r.goal; widest > min(rise, fall) {
		var ok bool
		if open, ok = s.squeeze(r, rise, fall); !ok {
			return false
		}
	}
	if (open > 1 || free == 1) && bit != 1<<lastBit {
		s.dirty &^= bit // the row has nothing more to say for now
	}
	return free == 1 || s.coprime(r) || s.divide(r)
}

// squeeze shrinks a row's variables to what the row can rise from its least
// value and fall from its greatest. It returns how many are not settled.
func (s *Search) squeeze(r *row, rise, fall int64) (open int, ok bool) {
	for i := range r.terms {
		t := &r.terms[i]
		v := &s.vars[t.of]
		c, up, down := t.coef, rise, fall
		if c < 0 {
			c, up, down = -c, fall, rise
		}
		if wide := c * (v.hi - v.lo); wide > up || wide > down {
			if c > 1 {
				up, down = up/c, down/c
			}
			if !s.shrink(t.of, v.hi-down, v.lo+up) {
				return 0, false
			}
		}
		if !v.settled() {
			open++
		}
	}
	return open, true
}

// coprime reports whether a row's variables have a divisor of one in common
// twice over: then each of them can be made good for by the others.
func (s *Search) coprime(r *row) bool {
	var common int64
	once := false
	for i := range r.terms {
		move := s.move(&r.terms[i])
		if move == 0 {
			continue
		}
		if common = gcd(common, move); common == 1 {
			if once {
				return true
			}
			once, common = true, 0
		}
	}
	return false
}

// divide keeps of each variable in a row what leaves a multiple of the other
// variables' common divisor.
func (s *Search) divide(r *row) bool {
	rest := r.goal
	s.after[len(r.terms)] = 0
	for i := len(r.terms) - 1; i >= 0; i-- {
		t := &r.terms[i]
		rest -= t.coef * s.vars[t.of].lo
		s.after[i] = gcd(s.after[i+1], s.move(t))
	}
	if all := s.after[0]; all == 0 || rest%all != 0 {
		return rest == 0
	}
	var before int64
	for i := range r.terms {
		t := &r.terms[i]
		move, others := s.move(t), gcd(before, s.after[i+1])
		if move != 0 && others > 1 && others < 1<<31 {
			v := &s.vars[t.of]
			skip, count := congruence(t.coef*v.stride, rest, others)
			if count > 1 {
				rest -= t.coef * skip * v.stride
				if !s.meet(t.of, skip, count) {
					return false
				}
				move = s.move(t)
			}
		}
		before = gcd(before, move)
	}
	return true
}

// move returns by how much a term moves its row at the least; zero if its
// variable is settled.
func (s *Search) move(t *term) int64 {
	if v := &s.vars[t.of]; !v.settled() {
		return t.coef * v.stride
	}
	return 0
}

// congruence returns the least x, not negative, with a*x = b modulo m, and
// the distance from each such x to the next; b must be a multiple of the
// greatest common divisor of a and m.
func congruence(a, b, m int64) (least, count int64) {
	g := gcd(a, m)
	if count = m / g; count == 1 {
		return 0, 1
	}
	least = modulo(modulo(b/g, count)*inverse(modulo(a/g, count), count), count)
	return least, count
}

// inverse returns what a must be multiplied by to give 1 modulo m.
func inverse(a, m int64) int64 {
	x, y := int64(1), int64(0)
	for b := m; b != 0; {
		q := a / b
		a, b = b, a-q*b
		x, y = y, x-q*y
	}
	return modulo(x, m)
}

// modulo returns the remainder from 0 to m-1.
func modulo(a, m int64) int64 {
	if a %= m; a < 0 {
		a += m
	}
	return a
}

// floorDiv returns a/b rounded down; b must be positive.
func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

// ceilDiv returns a/b rounded up; b must be positive.
func ceilDiv(a, b int64) int64 { return -floorDiv(-a, b) }
