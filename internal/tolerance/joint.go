package tolerance

import (
	"cmp"
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
	// same is the correlation from which two clearances are the same one.
	same = 1 - 1e-9
	// seldom is how often, in all, those clearances fail that are counted one by one,
	// each beside the one that is the most like it; together is how often all may
	// fail that none is left to integrate, which is off by no more than a lattice
	// is (0.003 in 720 random systems that fail so often). Of how often they fail,
	// one by one is off by a third at the most where some are integrated.
	seldom   = 0.004
	together = 0.1
	// alike is the correlation from which being like another makes a difference.
	alike = 0.1
)

// Joint returns the probability that all forms are at least zero: the integral
// of the multivariate normal distribution over the quadrant. It draws no random
// numbers: the same forms give the same chance.
func Joint(forms []Form, sources []Source) Certain {
	rows, possible := scaledRows(forms, sources)
	if !possible {
		return Certain{}
	}
	core, failing := parted(rows)
	c := Certain{Chance: 1, Within: 2e-5}
	for i := core; i < len(rows); i++ {
		c.Chance *= rows[i].beside(rows[:i])
		c.Within += rows[i].fails / 3
	}
	switch core {
	case 0:
		c.Within = 2e-5 + min(failing/10, latticeWithin)
	case 1:
		c.Chance *= Phi(rows[0].limit)
	case 2:
		c.Chance *= pair(rows[0].limit, rows[1].limit, Phi(rows[0].limit)*Phi(rows[1].limit), rows[0].correlation(&rows[1]))
	default:
		q := quadrantOf(rows[:core])
		c.Chance, c.Within = c.Chance*q.chance(latticeFor(q.variables)), latticeWithin
	}
	c.Chance = min(c.Chance, 1)
	return c
}

// row is a clearance in standard deviations: it holds while a standard normal
// quantity is at least minus the limit.
type row struct {
	limit, deviation float64
	times            []float64 // how often each source goes into the clearance
	sources          []Source
	from, to         int     // no other source does
	fails            float64 // how often, once it is sorted
}

// scaledRows scales the forms by their deviations and leaves out those that are
// certain; it is false if one is negative for certain.
func scaledRows(forms []Form, sources []Source) (rows []row, possible bool) {
	for i := range forms {
		f := &forms[i]
		mean, deviation := f.normal(sources)
		switch {
		case deviation <= 0 && mean < 0:
			return nil, false
		case deviation <= 0 || mean >= sure*deviation:
			continue
		}
		from := slices.IndexFunc(f.Times, func(times float64) bool { return times != 0 })
		to := len(f.Times)
		for f.Times[to-1] == 0 {
			to--
		}
		if rows == nil {
			rows = make([]row, 0, len(forms)-i)
		}
		rows = row{mean / deviation, deviation, f.Times, sources, from, to, 0}.into(rows)
	}
	return rows, true
}

// into adds a row to others, unless it is the same as one of them; the tighter
// one counts then.
func (r row) into(rows []row) []row {
	for i := range rows {
		if rows[i].from == r.from && rows[i].to == r.to && rows[i].correlation(&r) > same {
			rows[i].limit = min(rows[i].limit, r.limit)
			return rows
		}
	}
	return append(rows, r)
}

// correlation is that of two rows.
func (r *row) correlation(o *row) float64 {
	var sum float64
	for i := max(r.from, o.from); i < min(r.to, o.to); i++ {
		if both := r.times[i] * o.times[i]; both != 0 {
			_, d := r.sources[i].Normal()
			sum += both * d * d
		}
	}
	return sum / (r.deviation * o.deviation)
}

// parted sorts rows, the likeliest to fail first, and says how many of them have
// to be integrated together, and how often all rows fail, each by itself.
func parted(rows []row) (core int, failing float64) {
	slices.SortStableFunc(rows, func(a, b row) int { return cmp.Compare(a.limit, b.limit) })
	core = len(rows)
	for i := len(rows) - 1; i >= 0; i-- {
		rows[i].fails = Phi(-rows[i].limit)
		if failing += rows[i].fails; failing <= seldom {
			core = i
		}
	}
	if failing <= together {
		core = 0
	}
	return core, failing
}

// beside is the chance of a row, given that the one of others holds which is the
// most like it.
func (r *row) beside(others []row) float64 {
	nearest, most := -1, alike
	for i := range others {
		if c := r.correlation(&others[i]); c > most {
			nearest, most = i, c
		}
	}
	if nearest < 0 {
		return Phi(r.limit)
	}
	other := others[nearest].limit
	holds := Phi(other)
	return pair(r.limit, other, Phi(r.limit)*holds, most) / max(holds, 1e-12)
}
