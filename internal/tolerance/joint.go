package tolerance

import (
	"math"
	"slices"
)

// Certain is the chance that several clearances are all at least zero, and how
// far it may be off by the way it is worked out.
type Certain struct {
	Chance float64
	Within float64
}

const (
	// sure is how many standard deviations over zero a clearance is counted as
	// certain: it fails less than once in 290 000 times.
	sure = 4.5
	// alike is the correlation from which two clearances are taken for one, and
	// same that of clearances which are the same one.
	alike = 0.9
	same  = 1 - 1e-9
)

// Joint returns the probability that all forms are at least zero: the integral
// of the multivariate normal distribution over the quadrant, by A. Genz's
// transformation to the unit cube ("Numerical Computation of Multivariate Normal
// Probabilities", J. Comp. Graph. Stat. 1, 1992), the likeliest to fail first.
// It draws no random numbers: the same forms give the same chance.
func Joint(forms []Form, sources []Source) Certain {
	rows := make([]row, 0, len(forms))
	slack := 0.0 // what certain clearances may fail after all
	for i := range forms {
		r := scaledRow(&forms[i], sources)
		switch {
		case r.limit < sure && r.times == nil:
			return Certain{}
		case r.limit < sure:
			rows = r.into(rows)
		case r.times != nil:
			slack += phi(-r.limit)
		}
	}
	rows = joined(rows)
	switch len(rows) {
	case 0:
		return Certain{1 - slack, slack}
	case 1:
		return Certain{phi(rows[0].limit), slack}
	case 2:
		return Certain{pair(rows[0].limit, rows[1].limit, rows[0].correlation(&rows[1])), slack + 2e-5}
	}
	q := factor(rows)
	c := q.integrate()
	c.Within += slack
	return c
}

// row is a clearance in standard deviations: it holds while the sum of times and
// standard normal quantities, and one of its own that is so large, is at least
// minus the limit.
type row struct {
	limit float64
	times []float64
	own   float64 // squared
}

// scaledRow scales a form by its deviation. One without errors has no times and
// a limit that is certain either way.
func scaledRow(f *Form, sources []Source) row {
	mean, deviation := f.normal(sources)
	if deviation <= 0 {
		return row{limit: math.Copysign(2*sure, mean)}
	}
	r := row{limit: mean / deviation}
	if r.limit >= sure {
		r.times = []float64{} // no need of them
		return r
	}
	r.times = make([]float64, len(sources))
	for i, times := range f.Times {
		r.times[i] = times * sources[i].deviation() / deviation
	}
	return r
}

// into adds a row to others, unless it is the same as one of them; the tighter
// one counts then.
func (r row) into(rows []row) []row {
	for i := range rows {
		if rows[i].correlation(&r) > same {
			rows[i].limit = min(rows[i].limit, r.limit)
			return rows
		}
	}
	return append(rows, r)
}

// joined takes rows that are alike for one, the likest first, so that what is
// left is smooth enough to be integrated quickly.
func joined(rows []row) []row {
	for {
		a, b, nearest := 0, 0, alike
		for i := range rows {
			for j := range i {
				if c := rows[i].correlation(&rows[j]); c > nearest {
					a, b, nearest = j, i, c
				}
			}
		}
		if b == 0 {
			return rows
		}
		rows[a] = rows[a].lesser(&rows[b], nearest)
		rows[b] = rows[len(rows)-1]
		rows = rows[:len(rows)-1]
	}
}

// lesser is the lesser of two clearances that are much alike, as a normal
// quantity of the same mean, variance and covariances (C. E. Clark, "The
// greatest of a finite set of random variables", Operations Research 9, 1961).
func (r *row) lesser(o *row, correlation float64) row {
	apart := math.Sqrt(2 * (1 - correlation))
	z := (o.limit - r.limit) / apart
	first, density := phi(z), math.Exp(-z*z/2)/math.Sqrt(2*math.Pi)
	second := 1 - first
	mean := first*r.limit + second*o.limit - apart*density
	square := first*(r.limit*r.limit+1) + second*(o.limit*o.limit+1) - (r.limit+o.limit)*apart*density
	deviation := math.Sqrt(max(square-mean*mean, 1e-6))
	least := row{limit: mean / deviation, times: make([]float64, len(r.times)), own: 1}
	for i := range least.times {
		t := (first*r.times[i] + second*o.times[i]) / deviation
		least.times[i] = t
		least.own -= t * t
	}
	least.own = max(least.own, 0)
	return least
}

// correlation is that of two rows.
func (r *row) correlation(o *row) float64 {
	var sum float64
	for i, t := range r.times {
		sum += t * o.times[i]
	}
	return sum
}

// quadrant is the rows as a triangular system: row i holds while the sum of
// lower[i] and the first i independent normal quantities, plus its own, is at
// least minus the limit. Each lower[i] is scaled by what is its own.
type quadrant struct {
	limit []float64
	lower [][]float64
}

// factor is the Cholesky factor of the rows' correlations. Of those that are
// left, the one that is the likeliest to fail, given that those before it hold
// on average, comes next (G. J. Gibson, C. A. Glasbey and D. A. Elston, 1994).
func factor(rows []row) quadrant {
	n := len(rows)
	q := quadrant{limit: make([]float64, n), lower: make([][]float64, n)}
	cells, mean := make([]float64, n*n), make([]float64, n)
	for i := range n {
		q.limit[i], q.lower[i] = rows[i].limit, cells[i*n:(i+1)*n]
	}
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	for k := range n {
		q.pivot(rows, order, mean, k)
		own := q.rest(order, rows, k, k)
		q.lower[k][k] = own
		for i := k + 1; i < n; i++ {
			c := rows[order[i]].correlation(&rows[order[k]])
			for j := range k {
				c -= q.lower[i][j] * q.lower[k][j]
			}
			q.lower[i][k] = c / own
		}
		z := q.shifted(k, mean) / own
		mean[k] = math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) / max(phi(z), 1e-12)
	}
	for i := range n {
		own := q.lower[i][i]
		q.limit[i] /= own
		for j := range i {
			q.lower[i][j] /= own
		}
	}
	return q
}

// least is the least of a row that may be its own, so that rows which follow
// from others do not divide by nothing.
const least = 1e-5

// rest is what the place i has of its own beside the first k quantities.
func (q *quadrant) rest(order []int, rows []row, i, k int) float64 {
	own := 1.0
	for j := range k {
		own -= q.lower[i][j] * q.lower[i][j]
	}
	return math.Sqrt(max(own, least*least))
}

// shifted is the limit of place i when those before are at their means.
func (q *quadrant) shifted(i int, mean []float64) float64 {
	z := q.limit[i]
	for j := range i {
		z += q.lower[i][j] * mean[j]
	}
	return z
}

// pivot brings the likeliest to fail to place k.
func (q *quadrant) pivot(rows []row, order []int, mean []float64, k int) {
	best, lowest := k, math.Inf(1)
	for i := k; i < len(order); i++ {
		z := q.limit[i]
		for j := range k {
			z += q.lower[i][j] * mean[j]
		}
		if z /= q.rest(order, rows, i, k); z < lowest {
			best, lowest = i, z
		}
	}
	order[k], order[best] = order[best], order[k]
	q.limit[k], q.limit[best] = q.limit[best], q.limit[k]
	q.lower[k], q.lower[best] = q.lower[best], q.lower[k]
}

// Points of a lattice: so many shifted copies of a rule, each of so many points
// at first and at last, until the copies agree well enough.
const (
	copies     = 4
	fewest     = 61
	most       = 900
	wellEnough = 0.001
)

// integrate averages over copies of a lattice; what they differ by says how far
// off the average may be.
func (q *quadrant) integrate() Certain {
	n := len(q.limit)
	at, y := make([]float64, n), make([]float64, n)
	for points := fewest; ; points = 4*points + 1 {
		var sums [copies]float64
		for c := range copies {
			sums[c] = q.lattice(points, float64(c), at, y)
		}
		mean := (sums[0] + sums[1] + sums[2] + sums[3]) / copies
		apart := slices.Max(sums[:]) - slices.Min(sums[:])
		if within := apart / copies; within < wellEnough || points >= most {
			return Certain{min(mean, 1), within}
		}
	}
}

// lattice is the mean over the points of a rule by R. D. Richtmyer: multiples of
// the roots of primes, folded so that the integrand is as if periodic. Each
// quantity is drawn from what its row leaves of it, the upper tail.
func (q *quadrant) lattice(points int, shift float64, at, y []float64) float64 {
	for i := range at {
		_, at[i] = math.Modf(shift * roots[len(roots)-1-i%len(roots)])
	}
	first := phi(q.limit[0])
	var sum float64
	for range points {
		chance, held := first, first // of all rows so far, and of the last
		for i := 1; i < len(q.limit); i++ {
			u := at[i-1] + roots[(i-1)%len(roots)]
			u -= float64(int(u))
			at[i-1] = u
			y[i-1] = -Quantile(math.Abs(2*u-1) * held)
			z := q.limit[i]
			for j, l := range q.lower[i][:i] {
				z += l * y[j]
			}
			held = quickPhi(z)
			chance *= held
		}
		sum += chance
	}
	return sum / float64(points)
}

// roots are the square roots of the first primes.
var roots = [...]float64{
	math.Sqrt2, 1.7320508075688772, 2.23606797749979, 2.6457513110645907, 3.3166247903554, 3.605551275463989,
	4.123105625617661, 4.358898943540674, 4.795831523312719, 5.385164807134504, 5.5677643628300215, 6.082762530298219,
	6.4031242374328485, 6.557438524302, 6.855654600401044, 7.280109889280518, 7.681145747868608, 7.810249675906654,
	8.18535277187245, 8.426149773176359, 8.54400374531753, 8.888194417315589, 9.1104335791443, 9.433981132056603,
}
