package rounding

// part is a set of readings that hang together through rows or pairs. Costs
// add up over parts and their order survives adding, so that each part can be
// solved by itself.
type part struct {
	readings []int // in the order of the problem
	rows     []row
	pairs    []Pair
}

// row is a closure or a window over the open readings, in nanometres; what is
// fixed went into the constant.
type row struct {
	terms    []Term
	constant int64
	min, max int64
	weight   int64 // zero for a closure
	gcd      int64 // of the coefficients
}

// split gathers the problem's rows by part. Fixed readings connect nothing.
func split(p *Problem) []part {
	root := make([]int, len(p.Readings))
	for i := range root {
		root[i] = i
	}
	rows := allRows(p)
	for _, r := range rows {
		for _, t := range r.terms {
			join(root, r.terms[0].Reading, t.Reading)
		}
	}
	for _, e := range p.Even {
		join(root, e.A, e.B)
	}
	return gather(p, root, rows)
}

// gather deals readings, rows and pairs out to the part of their root.
func gather(p *Problem, root []int, rows []row) []part {
	parts := make([]part, 0, len(root))
	of := make([]int, len(root))
	for i := range root {
		if root[i] == i {
			of[i] = len(parts)
			parts = append(parts, part{})
		}
	}
	if len(parts) == 0 {
		parts = append(parts, part{}) // for rows without readings
	}
	find := func(i int) *part { return &parts[of[rootOf(root, i)]] }
	for i, r := range p.Readings {
		if !r.Fixed {
			q := find(i)
			q.readings = append(q.readings, i)
		}
	}
	for _, r := range rows {
		q := &parts[0]
		if len(r.terms) > 0 {
			q = find(r.terms[0].Reading)
		}
		q.rows = append(q.rows, r)
	}
	for _, e := range p.Even {
		q := find(e.A)
		q.pairs = append(q.pairs, e)
	}
	return parts
}

func rootOf(root []int, i int) int {
	for root[i] != i {
		i = root[i]
	}
	return i
}

// join merges two sets under the smaller index.
func join(root []int, a, b int) {
	a, b = rootOf(root, a), rootOf(root, b)
	root[max(a, b)] = min(a, b)
}

// allRows turns closures and windows into rows.
func allRows(p *Problem) []row {
	rows := make([]row, 0, len(p.Closures)+len(p.Windows))
	for _, c := range p.Closures {
		rows = append(rows, makeRow(p, c.Form))
	}
	for _, w := range p.Windows {
		r := makeRow(p, w.Form)
		r.min, r.max, r.weight = w.Min.Nanometres(), w.Max.Nanometres(), w.Weight
		rows = append(rows, r)
	}
	return rows
}

// makeRow folds the fixed readings of a form into its constant.
func makeRow(p *Problem, f Form) row {
	r := row{constant: f.Constant.Nanometres(), terms: make([]Term, 0, len(f.Terms))}
	for _, t := range f.Terms {
		switch reading := p.Readings[t.Reading]; {
		case t.Coefficient == 0:
		case reading.Fixed:
			r.constant += t.Coefficient * reading.Ideal.Nanometres()
		default:
			r.terms = append(r.terms, t)
			r.gcd = gcd(r.gcd, t.Coefficient)
		}
	}
	return r
}

// gcd returns the greatest common divisor, positive unless both are zero.
func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, -a)
}
