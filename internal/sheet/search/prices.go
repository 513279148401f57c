package search

// duals is the linear program that prices the kinds: maximize the sum of
// need*price so that no pattern known so far is priced above its sheet's cost.
// It is the dual of covering the demand with patterns (P. C. Gilmore, R. E.
// Gomory, Operations Research 9 (1961) 849-859). Its optimum is a dictionary
// (V. Chvatal, Linear Programming, 1983): every basic variable as a constant
// less a combination of the nonbasic ones, of which there are as many as
// columns. A new pattern is a new row, repaired by dual simplex steps.
//
// Its floats only guide: bounds are proven from rounded prices in integers.
type duals struct {
	columns int
	rows    [][]float64 // per basic variable: coefficients, then the constant
	basic   []int       // variable of each row; below columns: a price, above: a pattern's slack
	outside []int       // variable of each column
	goal    []float64   // reduced objective, then minus its value
	slacks  int
}

const tiny = 1e-9

// newDuals prepares the program for the given objective, one column a price.
func newDuals(objective []float64) *duals {
	d := &duals{columns: len(objective), goal: append(append([]float64(nil), objective...), 0)}
	for c := range objective {
		d.outside = append(d.outside, c)
	}
	return d
}

// add enters the row sum(coefficient*price) <= cost.
func (d *duals) add(coefficients []float64, cost float64) {
	row := make([]float64, d.columns+1)
	row[d.columns] = cost
	for c, v := range d.outside {
		if v < d.columns {
			row[c] += coefficients[v]
		}
	}
	for r, v := range d.basic {
		if v < d.columns && coefficients[v] != 0 {
			for c := range row {
				row[c] -= coefficients[v] * d.rows[r][c]
			}
		}
	}
	d.rows = append(d.rows, row)
	d.basic = append(d.basic, d.columns+d.slacks)
	d.slacks++
}

// pivot exchanges the basic variable of a row with the one outside in a column.
func (d *duals) pivot(r, c int) {
	row := d.rows[r]
	by := 1 / row[c]
	for k := range row {
		row[k] *= by
	}
	row[c] = by
	for i, other := range d.rows {
		if i != r {
			eliminate(other, row, c)
		}
	}
	eliminate(d.goal, row, c)
	d.basic[r], d.outside[c] = d.outside[c], d.basic[r]
}

// eliminate takes a pivot row out of another.
func eliminate(other, row []float64, c int) {
	f := other[c]
	if f == 0 {
		return
	}
	other[c] = 0
	for k, x := range row {
		other[k] -= f * x
	}
}

// optimize runs primal steps until no price is worth raising, then dual steps
// until every row holds again; at most so many steps in all.
func (d *duals) optimize(e *effort, steps int) bool {
	for ; steps > 0 && e.spend((len(d.rows)+1)*d.columns); steps-- {
		if r := d.broken(); r >= 0 {
			c := d.entering(r)
			if c < 0 {
				return false
			}
			d.pivot(r, c)
			continue
		}
		c := d.gaining()
		if c < 0 {
			return true
		}
		r := d.leaving(c)
		if r < 0 {
			return false
		}
		d.pivot(r, c)
	}
	return false
}

// broken is the row that is violated most, or -1.
func (d *duals) broken() int {
	worst, at := -tiny, -1
	for r, row := range d.rows {
		if row[d.columns] < worst {
			worst, at = row[d.columns], r
		}
	}
	return at
}

// entering is the column that repairs a violated row at the least loss.
func (d *duals) entering(r int) int {
	best, at := 0.0, -1
	for c := range d.outside {
		x := d.rows[r][c]
		if x >= -tiny {
			continue
		}
		if ratio := d.goal[c] / x; at < 0 || ratio < best {
			best, at = ratio, c
		}
	}
	return at
}

// gaining is the column with the greatest gain, or -1.
func (d *duals) gaining() int {
	best, at := tiny, -1
	for c, g := range d.goal[:d.columns] {
		if g > best {
			best, at = g, c
		}
	}
	return at
}

// leaving is the row that bounds a column, or -1.
func (d *duals) leaving(c int) int {
	best, at := 0.0, -1
	for r, row := range d.rows {
		if row[c] <= tiny {
			continue
		}
		if ratio := row[d.columns] / row[c]; at < 0 || ratio < best {
			best, at = ratio, r
		}
	}
	return at
}

// prices returns the value of every price.
func (d *duals) prices() []float64 {
	out := make([]float64, d.columns)
	for r, v := range d.basic {
		if v < d.columns {
			out[v] = max(0, d.rows[r][d.columns])
		}
	}
	return out
}

// uses returns how often the optimal fractional cover takes each row's
// pattern.
func (d *duals) uses() []float64 {
	out := make([]float64, d.slacks)
	for c, v := range d.outside {
		if v >= d.columns {
			out[v-d.columns] = max(0, -d.goal[c])
		}
	}
	return out
}
