package rounding

// relaxation is a part without the demand that its variables are whole: a
// linear program that shows that what is open holds no solution at all, or
// none cheap enough, where no row does so by itself. Its columns are the
// readings, and three for each gauge, whose variable is their sum: its core,
// what it is above the core, and minus what it is below.
type relaxation struct {
	tableau
	level int // that the goal stands for
	costs []int64
	off   bool // the numbers have grown too large
}

// relaxWork is what a relaxation costs, in rows looked at.
const relaxWork = 512

// relaxAfter is how many nodes of a part are searched without a relaxation.
const relaxAfter = 48

// grain is how finely the cost of a step is counted.
const grain = 8

// mostGrains is the greatest cost that a relaxation is used for.
const mostGrains = 1 << 32

// relax cuts off what a relaxation shows to hold no solution that beats the
// best so far; false means that nothing is left.
func (s *Search) relax(p *part) bool {
	if s.tired(relaxWork) {
		return false
	}
	if s.linear == nil {
		s.linear = s.newRelaxation(p)
	}
	l := s.linear
	first, level := sum, sum
	if s.found {
		first, _ = s.low.compare(&s.cost, 0)
	}
	if first < marks {
		level = first
	}
	if l.off || !s.open(l, p, level) {
		return true
	}
	bound, v := l.least()
	if l.off = v == unknown; v != open || !s.found || first < level {
		return v != closed
	}
	most, exact := s.most(p, level)
	if most >= mostGrains {
		return true
	}
	slack := most*l.scale() - bound
	if slack < 0 || !s.trimColumns(l, p, slack) {
		return false
	}
	return !exact || slack >= l.scale() || s.trim(p, level+1)
}

// most returns the greatest cost at a level that is not above the best's, as
// the goal counts it, and whether that is just the best's.
func (s *Search) most(p *part, level int) (most int64, exact bool) {
	left := s.cost[level]
	if level == sum {
		return left, true
	}
	for i := range p.gauges {
		g := &p.gauges[i]
		lo, _ := s.core(g, level)
		left -= s.weightAt(g, level) * g.costAt(level, lo)
	}
	step := 2 * s.step
	whole := floorDiv(left, step)
	rest := (left - whole*step) * grain
	return whole*grain + rest/step, rest%step == 0
}

// trimColumns keeps of the variables what the slack of the goal allows their
// columns.
func (s *Search) trimColumns(l *relaxation, p *part, slack int64) bool {
	n := len(p.readings)
	for c, i := range p.readings {
		if l.trim(c, slack) && !s.shrink(i, l.lo[c], l.hi[c]) {
			return false
		}
	}
	for i := range p.gauges {
		c := n + 3*i
		cut := l.trim(c, slack)
		cut = l.trim(c+1, slack) || cut
		if l.trim(c+2, slack) || cut {
			if !s.shrink(p.gauges[i].of, l.lo[c]+l.lo[c+1]-l.hi[c+2], l.hi[c]+l.hi[c+1]-l.lo[c+2]) {
				return false
			}
		}
	}
	return true
}

// costAt returns what a gauge of weight one costs at a level.
func (g *gauge) costAt(level int, x int64) int64 {
	d := abs(g.slope*x - g.offset)
	if level == missed {
		return max(0, d-(g.max-g.min))
	}
	return d
}

// open gives the columns what is open to the variables, and the goal the
// level's costs; false means that the numbers are too large.
func (s *Search) open(l *relaxation, p *part, level int) bool {
	n := len(p.readings)
	for c, i := range p.readings {
		l.lo[c], l.hi[c] = s.vars[i].lo, s.vars[i].hi
	}
	for i := range p.gauges {
		g, c := &p.gauges[i], n+3*i
		v := &s.vars[g.of]
		lo, hi := s.core(g, level)
		l.lo[c], l.hi[c] = min(max(v.lo, lo), hi), max(min(v.hi, hi), lo)
		l.lo[c+1], l.hi[c+1] = max(0, v.lo-hi), max(0, v.hi-hi)
		l.lo[c+2], l.hi[c+2] = max(0, lo-v.hi), max(0, lo-v.lo)
	}
	for c := range l.width - 2 {
		if max(abs(l.lo[c]), abs(l.hi[c])) > tableauLimit {
			return false
		}
	}
	if l.level != level {
		l.level = level
		s.price(l, p, level)
		l.off = !l.aim(l.costs)
	}
	return !l.off
}

// price sets the costs of the columns at a level. Costs are convex, so that
// what the first step away from the core costs holds for every other.
func (s *Search) price(l *relaxation, p *part, level int) {
	n := len(p.readings)
	for c := range p.readings {
		l.costs[c] = 0
		if level == sum {
			l.costs[c] = 1
		}
	}
	for i := range p.gauges {
		g, c := &p.gauges[i], n+3*i
		l.costs[c], l.costs[c+1], l.costs[c+2] = 0, 0, 0
		if w := s.weightAt(g, level); w > 0 {
			lo, hi := s.core(g, level)
			l.costs[c+1] = w * ((g.costAt(level, hi+1) - g.costAt(level, hi)) * grain / (2 * s.step))
			l.costs[c+2] = w * ((g.costAt(level, lo-1) - g.costAt(level, lo)) * grain / (2 * s.step))
		}
	}
}

// weightAt returns how much a gauge counts at a level.
func (s *Search) weightAt(g *gauge, level int) int64 {
	switch {
	case g.window && level == missed:
		return max(1, g.weight)
	case g.window && level == distance:
		return g.weight
	case !g.window && level == uneven:
		return 1
	}
	return 0
}

// core returns from where to where a gauge costs least at a level.
func (s *Search) core(g *gauge, level int) (lo, hi int64) {
	v := &s.vars[g.of]
	switch {
	case s.weightAt(g, level) == 0:
		return v.lo, v.hi
	case level == missed:
		half := g.max - g.min
		lo, hi = ceilDiv(g.offset-half, g.slope), floorDiv(g.offset+half, g.slope)
		if lo <= hi {
			return lo, hi
		}
	}
	x := floorDiv(2*g.offset+g.slope, 2*g.slope)
	return x, x
}

// newRelaxation sets up the rows of a part.
func (s *Search) newRelaxation(p *part) *relaxation {
	n := len(p.readings)
	l := &relaxation{level: -1}
	l.width = n + 3*len(p.gauges) + 2
	columns := make([]int64, 5*l.width)
	for i, c := range []*[]int64{&l.lo, &l.hi, &l.x, &l.goal, &l.costs} {
		*c = columns[i*l.width : (i+1)*l.width]
	}
	for i := range p.gauges {
		g, c := &p.gauges[i], n+3*i
		l.off = l.off || abs(g.coef) > tableauLimit
		cells := l.cells(p, p.formOf(g))
		cells[c], cells[c+1], cells[c+2] = -1, -1, 1
		l.off = l.off || !l.add(cells, c, n)
	}
	for i := range p.rows {
		if r := &p.rows[i]; r.own < 0 && r.mix == nil {
			cells := l.cells(p, r.terms)
			cells[l.width-1] = r.goal
			l.off = l.off || !l.add(cells, -1, n)
		}
	}
	return l
}

// formOf returns what a gauge's variable stands for.
func (p *part) formOf(g *gauge) []term {
	for i := range p.rows {
		if r := &p.rows[i]; r.own == g.of {
			return r.terms[:len(r.terms)-1]
		}
	}
	return []term{{g.of, 1}}
}

// cells returns terms as a row.
func (l *relaxation) cells(p *part, terms []term) []int64 {
	cells := make([]int64, l.width)
	for _, t := range terms {
		for c, i := range p.readings {
			if i == t.of {
				cells[c] = t.coef
			}
		}
	}
	return cells
}
