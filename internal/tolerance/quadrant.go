package tolerance

import (
	"math"
	"slices"
)

// quadrant is rows as a triangular system of independent normal quantities, one
// a variable: each bound holds its variable from below or from above, depending
// on those before it. Rows that follow from others are further bounds on the
// last variable that they have, so that the integrand stays smooth (A. Genz and
// K.-S. Kwong, "Numerical evaluation of singular multivariate normal
// distributions", J. Stat. Comp. Simul. 68, 2000).
type quadrant struct {
	variables int
	bounds    []bound // by variable
}

// bound says that its variable is at least minus the limit and so many times the
// variables before it, or at most.
type bound struct {
	limit    float64
	times    []float64
	variable int
	above    bool
}

const (
	// follows is what a row may have of its own and still follow from others.
	follows = 1e-6
	// goneBy is what a row has of a variable that it does not depend on.
	goneBy = 1e-3
)

// factoring is the Cholesky factor of rows in the making.
type factoring struct {
	rows []row
	left []int       // rows that have no variable yet
	low  [][]float64 // by row, of the variables so far
	own  []float64   // by row, squared: what it has beside them
	held []float64   // by row: its limit if the rows before hold on average
	quadrant
}

// quadrantOf factors the rows' correlations. Of those that are left, the one
// that is the likeliest to fail, given that those before it hold on average, gets
// the next variable (G. J. Gibson, C. A. Glasbey and D. A. Elston, 1994).
func quadrantOf(rows []row) quadrant {
	n := len(rows)
	f := factoring{rows: rows, left: make([]int, n), low: make([][]float64, n), own: make([]float64, n), held: make([]float64, n)}
	f.bounds = make([]bound, 0, n)
	cells := make([]float64, n*n)
	for i := range rows {
		f.left[i], f.low[i], f.own[i], f.held[i] = i, cells[i*n:i*n:(i+1)*n], 1, rows[i].limit
	}
	for len(f.left) > 0 {
		f.next()
	}
	slices.SortStableFunc(f.bounds, func(a, b bound) int { return a.variable - b.variable })
	return f.quadrant
}

// next gives the likeliest to fail the next variable, and takes what follows from
// it and those before.
func (f *factoring) next() {
	at := 0
	for i, r := range f.left {
		if f.held[r]/math.Sqrt(f.own[r]) < f.held[f.left[at]]/math.Sqrt(f.own[f.left[at]]) {
			at = i
		}
	}
	r := f.left[at]
	f.left = slices.Delete(f.left, at, at+1)
	own := math.Sqrt(f.own[r])
	z := f.held[r] / own
	mean := math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) / max(Phi(z), 1e-12)
	lower := f.low[r]
	f.variables++
	f.left = slices.DeleteFunc(f.left, func(o int) bool {
		times := f.rows[o].correlation(&f.rows[r])
		for j, l := range lower {
			times -= f.low[o][j] * l
		}
		times /= own
		f.low[o] = append(f.low[o], times)
		f.own[o] -= times * times
		f.held[o] += times * mean
		if f.own[o] >= follows {
			return false
		}
		f.bind(o)
		return true
	})
	f.low[r] = append(lower, own)
	f.bind(r)
}

// bind adds a row as a bound on the last variable that it depends on; what the
// row has of the others is its own no more.
func (f *factoring) bind(r int) {
	low := f.low[r]
	last := len(low) - 1
	for last > 0 && math.Abs(low[last]) < goneBy {
		last--
	}
	by := low[last]
	b := bound{limit: f.rows[r].limit / by, times: low[:last], variable: last, above: by < 0}
	for i := range b.times {
		b.times[i] /= by
	}
	f.bounds = append(f.bounds, b)
}

// chance is the mean over the points of a lattice: each variable is drawn from
// what its bounds leave of it (A. Genz, "Numerical Computation of Multivariate
// Normal Probabilities", J. Comp. Graph. Stat. 1, 1992).
func (q *quadrant) chance(l *lattice) float64 {
	drawn := q.variables - 1 // the last need not be
	at, step, y := make([]float64, drawn), make([]float64, drawn), make([]float64, drawn)
	for v := range drawn {
		at[v], step[v] = l.first(v), l.step(v)
	}
	var sum float64
	for range l.points {
		for v := range at {
			if at[v] += step[v]; at[v] >= 1 {
				at[v]--
			}
		}
		sum += q.at(at, y)
	}
	return sum / float64(l.points)
}

// at is the integrand at a point of the unit cube.
func (q *quadrant) at(point, y []float64) float64 {
	chance, bounds := 1.0, q.bounds
	for v := range q.variables {
		var low, high float64
		low, high, bounds = held(bounds, v, y)
		if chance *= high - low; chance == 0 || v == len(point) {
			break
		}
		y[v] = quickQuantile(low + math.Abs(2*point[v]-1)*(high-low))
	}
	return chance
}

// held is between which cumulative probabilities a variable must lie, and the
// bounds of the variables after it.
func held(bounds []bound, variable int, y []float64) (low, high float64, rest []bound) {
	high = 1
	for len(bounds) > 0 && bounds[0].variable == variable {
		b := &bounds[0]
		z := -b.limit
		for j, t := range b.times {
			z -= t * y[j]
		}
		if p := quickPhi(z); b.above {
			high = min(high, p)
		} else {
			low = max(low, p)
		}
		bounds = bounds[1:]
	}
	return low, max(high, low), bounds
}
