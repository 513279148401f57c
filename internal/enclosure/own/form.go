package own

import (
	"slices"

	"creasefit/internal/measure"
)

// A form is a sum of so many times the caliper, the contents' sizes, one nanometre
// and the unknowns of a design, in quarters: half of a spine that goes round one
// and a half calipers is the smallest part there is.
type form []int64

// The first unknowns of every design: what it is folded of and round.
const (
	caliper = iota
	width
	height
	thickness
	one // a nanometre
	firstReading
)

// parts is how many parts of a form are one.
const parts = 4

// only is so many quarters of one unknown.
func (d *derivation) only(unknown int, quarters int64) form {
	f := make(form, d.count)
	f[unknown] = quarters
	return f
}

// length is a constant length as a form.
func (d *derivation) length(l measure.Length) form { return d.only(one, parts*l.Nanometres()) }

// none is the form that is always zero.
func (d *derivation) none() form { return make(form, d.count) }

// plus returns f and so many times g.
func (f form) plus(times int64, g form) form {
	sum := make(form, len(f))
	for i := range f {
		sum[i] = f[i] + times*g[i]
	}
	return sum
}

// with returns f and so many quarters of one unknown.
func (f form) with(unknown int, quarters int64) form {
	g := slices.Clone(f)
	g[unknown] += quarters
	return g
}

// half returns half of a form, whose parts are even.
func (f form) half() form {
	h := make(form, len(f))
	for i := range f {
		h[i] = f[i] / 2
	}
	return h
}

// at is what a form comes to, in nanometres.
func (f form) at(values []float64) float64 {
	sum := 0.0
	for i, c := range f {
		if c != 0 {
			sum += float64(c) * values[i]
		}
	}
	return sum / parts
}

// exact is what a form comes to with exact lengths, to the nanometre.
func (f form) exact(values []measure.Length) measure.Length {
	var sum int64
	for i, c := range f {
		if c != 0 {
			sum += c * values[i].Nanometres()
		}
	}
	return measure.Nanometres(sum).Over(parts)
}

// isZero reports whether nothing is left of a form.
func (f form) isZero() bool {
	for _, c := range f {
		if c != 0 {
			return false
		}
	}
	return true
}

// has reports whether any of the unknowns from one on is in the form.
func (f form) has(from int) bool { return !form(f[from:]).isZero() }

// plain divides a form by what all its coefficients but the constant share, where
// that divides the constant too.
func (f form) plain() form {
	var g int64
	for i, c := range f {
		if i != one {
			g = gcd(g, c)
		}
	}
	if g = gcd(g, f[one]); g > 1 {
		p := make(form, len(f))
		for i := range f {
			p[i] = f[i] / g
		}
		return p
	}
	return f
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, -a)
}

// sum returns the one unknown that others add up to, -1 if there is none.
func (f form) sum() int {
	var at, count [2]int
	for u := firstReading; u < len(f); u++ {
		if f[u] != 0 {
			side := 0
			if f[u] > 0 {
				side = 1
			}
			at[side], count[side] = u, count[side]+1
		}
	}
	for side := range at {
		if count[side] == 1 && count[1-side] > 1 {
			return at[side]
		}
	}
	return -1
}
