package own

import (
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
)

// A form is a sum of so many times what a request gives and the unknowns of a design,
// in their order, none of them none times. So it holds for every request.
type form []part

// part is so many quarters of something: half of a spine that goes round one and a half
// calipers is the smallest part there is.
type part struct {
	of    int
	times int64
}

// What a request gives of every design; its own sizes and its unknowns follow.
const (
	caliper = iota
	width
	height
	thickness
	one     // a nanometre
	little  // by how much a free edge may miss its place
	beside  // what a cut leaves of a panel at the least
	more    // than a caliper that a carton may allow for it
	middle  // of the fit
	loosest // the most that the fit leaves
	named   // the middle of the first of the named fits, the others following
)

// firstSize is the first of a design's own sizes.
var firstSize = named + len(enclosure.NamedFits())

// parts is how many parts of a form are one.
const parts = 4

// only is so many quarters of one of what forms are made of.
func only(of int, quarters int64) form { return form{}.with(of, quarters) }

// length is a constant length as a form.
func length(l measure.Length) form { return only(one, parts*l.Nanometres()) }

// plus returns f and so many times g.
func (f form) plus(times int64, g form) form {
	sum := make(form, 0, len(f)+len(g))
	for len(f) > 0 || len(g) > 0 {
		switch {
		case len(g) == 0 || len(f) > 0 && f[0].of < g[0].of:
			sum, f = append(sum, f[0]), f[1:]
		case len(f) == 0 || g[0].of < f[0].of:
			sum, g = sum.and(g[0].of, times*g[0].times), g[1:]
		default:
			sum, f, g = sum.and(g[0].of, f[0].times+times*g[0].times), f[1:], g[1:]
		}
	}
	return sum
}

// and puts a part behind those of a form, if there is anything of it.
func (f form) and(of int, times int64) form {
	if times == 0 {
		return f
	}
	return append(f, part{of, times})
}

// with returns f and so many quarters of one of what forms are made of.
func (f form) with(of int, quarters int64) form { return f.plus(quarters, form{{of, 1}}) }

// times is so many times a form.
func (f form) times(n int64) form { return form{}.plus(n, f) }

// half returns half of a form, whose parts are even.
func (f form) half() form { return f.over(2) }

// over divides a form by what divides all of its parts.
func (f form) over(n int64) form {
	h := make(form, 0, len(f))
	for _, p := range f {
		h = h.and(p.of, p.times/n)
	}
	return h
}

// count is how many quarters of something are in a form.
func (f form) count(of int) int64 {
	for _, p := range f {
		if p.of == of {
			return p.times
		}
	}
	return 0
}

// at is what a form comes to, in nanometres.
func (f form) at(values []float64) float64 {
	sum := 0.0
	for _, p := range f {
		sum += float64(p.times) * values[p.of]
	}
	return sum / parts
}

// exact is what a form comes to with exact lengths, to the nanometre.
func (f form) exact(values []measure.Length) measure.Length {
	var sum int64
	for _, p := range f {
		sum += p.times * values[p.of].Nanometres()
	}
	return measure.Nanometres(sum).Over(parts)
}

// has reports whether anything from one on is in the form.
func (f form) has(from int) bool { return len(f) > 0 && f[len(f)-1].of >= from }

// plain divides a form by what all its parts share.
func (f form) plain() form {
	var g int64
	for _, p := range f {
		g = gcd(g, p.times)
	}
	if g > 1 {
		return f.over(g)
	}
	return f
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, -a)
}

// sum returns the one of what forms are made of from one on that others add up to, -1 if
// there is none.
func (f form) sum(from int) int {
	var at, count [2]int
	for _, p := range f {
		if p.of >= from {
			side := 0
			if p.times > 0 {
				side = 1
			}
			at[side], count[side] = p.of, count[side]+1
		}
	}
	for side := range at {
		if count[side] == 1 && count[1-side] > 1 {
			return at[side]
		}
	}
	return -1
}
