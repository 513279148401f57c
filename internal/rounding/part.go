package rounding

// part is a set of open readings that hang together through closures, windows
// or pairs. Costs add up over parts and their order survives adding, so that
// each part can be solved by itself.
type part struct {
	readings []int // in the order of the problem
	rows     []row
	stated   int     // how many of the rows are not derived from others
	gauges   []gauge // those of the windows before those of the pairs
	gauged   []int   // their variables
	windows  int     // how many of the gauges are of windows
	rising   bool    // some of them are of rising pairs
}

// row is an equation between variables, counted in steps: its terms add up to
// goal.
type row struct {
	terms    []term
	constant int64  // of a closure, in nanometres
	own      int    // the variable that the row makes equal to a form; -1 if none
	mix      []term // of a derived row: which rows it is made of, and how often
	goal     int64
}

// term is a variable, or in a mix a row, with its coefficient.
type term struct {
	of   int
	coef int64
}

// gauge is a window or a pair. What it measures, in nanometres, is coef times
// a variable in steps, plus a constant. The variable is a reading, or stands
// for the sum of several.
type gauge struct {
	of       int
	coef     int64
	constant int64
	min, max int64
	weight   int64
	window   bool
	rising   bool  // what it measures must not be above zero
	slope    int64 // at the step: slope*variable - offset is twice the distance from the middle
	offset   int64
	middle   int64 // where that is zero, rounded down
}

// memory is what a search keeps for its lists from one problem to the next.
type memory struct {
	numbers []int
	figures []int64
	cells   []int64
	terms   []term
	rows    []row
	gauges  []gauge
	vars    []variable
	trail   []undo
	parts   []part
}

// room returns so many zeros of what is kept, which grows if it is too little.
func room[T any](kept *[]T, n int) []T {
	if cap(*kept) < n {
		*kept = make([]T, n)
	}
	taken := (*kept)[:n]
	clear(taken)
	return taken
}

// builder deals a problem out to parts.
type builder struct {
	*Search
	home   []int // the part of each reading; -1 if it is fixed
	terms  []term
	rows   []row
	gauges []gauge
	gauged []int
}

// build fills the search's variables and parts. Variables are numbered: the
// readings, then one for each window, then one for each pair.
func (s *Search) build() {
	p := s.problem
	n, gauges := len(p.Readings), len(p.Windows)+len(p.Even)
	terms := 3 * gauges
	for i := range p.Closures {
		terms += len(p.Closures[i].Form.Terms)
	}
	for i := range p.Windows {
		terms += len(p.Windows[i].Form.Terms)
	}
	m := &s.memory
	numbers := room(&m.numbers, 2*n+gauges)
	b := builder{
		Search: s, home: numbers[n : 2*n], gauged: numbers[2*n : 2*n],
		terms:  room(&m.terms, terms)[:0],
		rows:   room(&m.rows, 2*(len(p.Closures)+gauges))[:0], // as many derived as stated
		gauges: room(&m.gauges, gauges)[:0],
	}
	s.vars = room(&m.vars, n+gauges)
	s.trail = room(&s.trail, 3*len(s.vars)) // which grows where that is too little
	figures := room(&m.figures, mostMarks+2*len(s.vars)+1)
	s.marks, figures = figures[:0:mostMarks], figures[mostMarks:]
	s.slopes, s.after = figures[:len(s.vars)], figures[len(s.vars):]
	s.parts = room(&m.parts, b.settleHomes(numbers[:n]))
	readings := numbers[:0] // the roots are not needed any more
	for q := range s.parts {
		first := len(readings)
		for i, home := range b.home {
			if home == q {
				readings = append(readings, i)
			}
		}
		s.parts[q].readings = readings[first:]
		b.fill(q)
	}
	m.terms = b.terms // with the room that derived rows took
}

// settleHomes joins the readings that hang together, numbers the parts and
// returns how many there are. The last one is for forms without any open
// reading, if there are such forms.
func (b *builder) settleHomes(root []int) int {
	p, loose := b.problem, 0
	for i := range root {
		root[i] = i
	}
	for i := range p.Closures {
		loose |= b.join(root, p.Closures[i].Form.Terms)
	}
	for i := range p.Windows {
		loose |= b.join(root, p.Windows[i].Form.Terms)
	}
	for _, e := range p.Even {
		terms := pairTerms(e)
		loose |= b.join(root, terms[:])
	}
	parts := 0
	for i := range root { // a root is the smallest of its part
		switch at := find(root, i); {
		case p.Readings[i].Fixed:
			b.home[i] = -1
		case at == i:
			b.home[i] = parts
			parts++
		default:
			b.home[i] = b.home[at]
		}
	}
	return parts + loose
}

// join merges the sets of the open readings of a form; it returns 1 if there
// are none.
func (b *builder) join(root []int, terms []Term) (loose int) {
	first := -1
	for _, t := range terms {
		if t.Coefficient == 0 || b.problem.Readings[t.Reading].Fixed {
			continue
		}
		at := find(root, t.Reading)
		if first < 0 {
			first = at
		}
		root[max(first, at)], first = min(first, at), min(first, at)
	}
	if first < 0 {
		return 1
	}
	return 0
}

func find(root []int, i int) int {
	for root[i] != i {
		i = root[i]
	}
	return i
}

// homeOf returns the part of a form.
func (b *builder) homeOf(terms []Term) int {
	for _, t := range terms {
		if home := b.home[t.Reading]; home >= 0 && t.Coefficient != 0 {
			return home
		}
	}
	return len(b.parts) - 1
}

// fill gives a part its rows and gauges.
func (b *builder) fill(q int) {
	p, part := b.problem, &b.parts[q]
	row0, gauge0 := len(b.rows), len(b.gauges)
	for i := range p.Closures {
		if f := &p.Closures[i].Form; b.homeOf(f.Terms) == q {
			terms, constant := b.fold(f.Terms, f.Constant.Nanometres())
			b.rows = append(b.rows, row{terms: terms, constant: constant, own: -1})
		}
	}
	for i := range p.Windows {
		if w := &p.Windows[i]; b.homeOf(w.Form.Terms) == q {
			g := gauge{of: len(p.Readings) + i, constant: w.Form.Constant.Nanometres(), window: true,
				min: w.Min.Nanometres(), max: w.Max.Nanometres(), weight: w.Weight}
			b.gauge(g, w.Form.Terms)
		}
	}
	part.windows = len(b.gauges) - gauge0
	for i, e := range p.Even {
		if terms := pairTerms(e); b.homeOf(terms[:]) == q {
			b.gauge(gauge{of: len(p.Readings) + len(p.Windows) + i, weight: 1, rising: e.Rising}, terms[:])
			part.rising = part.rising || e.Rising
		}
	}
	part.stated = len(b.rows) - row0
	b.derive(part.readings, b.rows[row0:])
	part.rows, part.gauges, part.gauged = b.rows[row0:], b.gauges[gauge0:], b.gauged[gauge0:]
	b.noteUses(part)
}

func pairTerms(e Pair) [2]Term { return [2]Term{{e.A, 1}, {e.B, -1}} }

// gauge adds a gauge: on the reading itself if the form has only one, else on
// a variable that a row makes equal to the form.
func (b *builder) gauge(g gauge, form []Term) {
	var terms []term
	terms, g.constant = b.fold(form, g.constant)
	if len(terms) == 1 {
		g.of, g.coef = terms[0].of, terms[0].coef
	} else {
		g.coef = 1
		b.terms = append(b.terms, term{g.of, -1})
		b.rows = append(b.rows, row{terms: b.terms[len(b.terms)-len(terms)-1:], own: g.of})
	}
	b.gauges, b.gauged = append(b.gauges, g), append(b.gauged, g.of)
}

// fold returns the open readings of a form, each once, and its constant with
// the fixed ones added.
func (b *builder) fold(form []Term, constant int64) ([]term, int64) {
	first := len(b.terms)
next:
	for _, t := range form {
		if r := &b.problem.Readings[t.Reading]; r.Fixed {
			constant += t.Coefficient * r.Ideal.Nanometres()
			continue
		}
		for i := first; i < len(b.terms); i++ {
			if b.terms[i].of == t.Reading {
				b.terms[i].coef += t.Coefficient
				continue next
			}
		}
		b.terms = append(b.terms, term{t.Reading, t.Coefficient})
	}
	kept := b.terms[first:first]
	for _, t := range b.terms[first:] {
		if t.coef != 0 {
			kept = append(kept, t)
		}
	}
	b.terms = b.terms[:first+len(kept)]
	return kept, constant
}

// noteUses tells each variable the rows it is in.
func (b *builder) noteUses(p *part) {
	for i := range p.rows {
		for _, t := range p.rows[i].terms {
			b.vars[t.of].rows |= bit(i)
		}
	}
}
