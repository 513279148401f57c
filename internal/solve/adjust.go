package solve

import "creasefit/internal/tolerance"

// observation is one measured size: how far it is off what was to be expected, and
// how often each source goes into it. In nanometres.
type observation struct {
	off   float64
	times []float64
}

// gain is the inverse of the covariance of observations, and what it makes of how
// far off they are.
type gain struct {
	inverse [][]float64
	pulled  []float64
}

// adjusted weighs observations of errors with such deviations, each read with one
// of its own, and says how likely they are to be as far off as they are.
func adjusted(seen []observation, spread []float64, reading float64) (gain, float64) {
	n := len(seen)
	g := gain{inverse: make([][]float64, n), pulled: make([]float64, n)}
	for i := range seen {
		g.inverse[i] = make([]float64, 2*n)
		g.inverse[i][n+i] = 1
		for k := range seen {
			for s, d := range spread {
				g.inverse[i][k] += seen[i].times[s] * seen[k].times[s] * d * d
			}
		}
		g.inverse[i][i] += reading * reading
	}
	invert(g.inverse)
	var squares float64
	for i := range seen {
		for k := range seen {
			g.pulled[i] += g.inverse[i][k] * seen[k].off
		}
		squares += g.pulled[i] * seen[i].off
	}
	return g, 1 - tolerance.ChiSquare(squares, n)
}

// invert leaves the inverse of the left half of a matrix there, by the right half,
// which is one. The left half is positive definite.
func invert(m [][]float64) {
	n := len(m)
	for i := range m {
		by := m[i][i]
		for k := range m[i] {
			m[i][k] /= by
		}
		for j := range m {
			if f := m[j][i]; j != i {
				for k := range m[j] {
					m[j][k] -= f * m[i][k]
				}
			}
		}
	}
	for i := range m {
		m[i] = m[i][n:]
	}
}

// mean is what the observations make of a source, by its variance.
func (g *gain) mean(seen []observation, source int) (sum float64) {
	for i := range seen {
		sum += seen[i].times[source] * g.pulled[i]
	}
	return sum
}

// known is by how much they lessen its variance, by its square.
func (g *gain) known(seen []observation, source int) (sum float64) {
	for i := range seen {
		for k := range seen {
			sum += seen[i].times[source] * g.inverse[i][k] * seen[k].times[source]
		}
	}
	return sum
}
