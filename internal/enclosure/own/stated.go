package own

import (
	"slices"
	"sync/atomic"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/pattern"
	"creasefit/internal/rounding"
)

// stated is the plan of a folding but for the lengths of a request.
type stated struct {
	readings []setting
	closures []clause
	windows  []clause // those of the fits first
	needs    []enclosure.Need
	even     []rounding.Pair
	over     []rounding.Pair
	strips   []enclosure.Strip
	sources  []string
	ends     []form // by unknown: the papers that an end comes out as, nil for others
	sewn     []sewn
	cuttings []atomic.Pointer[cutting] // by piece, the last of them
	slots    []slotted
	bounded  []pattern.Axis // along which something fits the contents
	wrong    fault.Faults
}

// setting is a reading.
type setting struct {
	name     string
	unknown  int // that is its ideal, 0 where a form is
	ideal    form
	least    []form // all of which it is at the least
	greatest form   // nil for any
	fixed    bool
	place    string
}

// clause is a form in readings, and the room that it has.
type clause struct {
	name   string
	terms  []rounding.Term
	rest   form
	room   [2]form
	weight int64
	spare  rounding.Term // of a closure: once a reading that no other one has; none of the first for none
}

// of states what a folding has come to.
func (s *stated) of(r *derived) {
	s.reaches(r)
	s.gaps(r)
	for i := range r.exact {
		w := &r.exact[i]
		s.closures = append(s.closures, s.across(r, w))
	}
	for i := range r.fits {
		s.fit(r, &r.fits[i])
	}
	for _, rows := range [...][]row{r.layers, r.soft} {
		for i := range rows {
			if rows[i].creep != "" {
				s.creep(r, &rows[i])
			} else {
				s.window(r, &rows[i])
			}
		}
	}
	for i := range s.closures {
		s.closures[i].spare = s.spare(i)
	}
	for i := range r.Joins {
		if j := &r.Joins[i]; j.Type == Even {
			s.even = append(s.even, rounding.Pair{A: r.of(r.far(j.A)).reading, B: r.of(r.far(j.B)).reading})
		}
	}
	s.slits(r)
	s.layStrips(r)
	s.sew(r)
	s.cuttings = make([]atomic.Pointer[cutting], len(r.Pieces))
}

// reaches states the readings of the unknowns, and the papers that the ends come out as.
func (s *stated) reaches(r *derived) {
	s.ends, s.readings, s.sources = make([]form, len(r.unknowns)), make([]setting, r.readings), make([]string, r.readings)
	for i := range r.unknowns {
		u := &r.unknowns[i]
		if u.end {
			s.ends[i] = r.withoutEnds(only(r.first+i, parts))
		} else if s.readings[u.reading].name == "" {
			x := setting{name: u.name, unknown: r.first + i, fixed: u.fixed.given, least: r.least(r.first + i), place: u.place}
			if x.fixed {
				x.ideal = r.amount(u.fixed)
			} else if u.allows {
				x.least, x.greatest = append(x.least, only(caliper, parts)), only(caliper, parts).with(more, parts)
			}
			s.readings[u.reading], s.sources[u.reading] = x, u.fixed.Size
		}
	}
}

// spare is the last reading of a closure that no other closure has, once.
func (s *stated) spare(closure int) rounding.Term {
	for _, t := range slices.Backward(s.closures[closure].terms) {
		has := func(o rounding.Term) bool { return o.Reading == t.Reading }
		in := 0
		for i := range s.closures {
			if slices.ContainsFunc(s.closures[i].terms, has) {
				in++
			}
		}
		if in == 1 && !s.readings[t.Reading].fixed && t.Coefficient*t.Coefficient == 1 {
			return t
		}
	}
	return rounding.Term{}
}

// least is what a reach must be at the least: there, as wide as what a cut leaves where it
// covers something or is folded flat, and so far that where it passes another panel that it is glued to lies
// on the flat of both, clear of their folds.
func (r *derived) least(unknown int) []form {
	least := []form{only(one, parts)}
	if stated := r.of(unknown).least; stated != nil {
		return append(least, stated...)
	}
	if r.of(unknown).wide {
		least = append(least, only(beside, parts))
	}
	for i := range r.Joins {
		j := &r.Joins[i]
		a, b := &r.panels[r.index[j.A.Panel]], &r.panels[r.index[j.B.Panel]]
		if j.Type != Meet || j.A.Of != FreeEdge || j.B.Of != FreeEdge || a.far != unknown && b.far != unknown {
			continue
		}
		for _, taken := range [...]form{nil, a.spine, b.spine} {
			least = append(least, r.amount(j.Past).plus(1, taken.with(caliper, parts).half()))
		}
	}
	return least
}

// gaps adds the named sizes that joins are stated with: they are set by themselves, and
// somebody who measures finds them.
func (s *stated) gaps(r *derived) {
	for i := range r.Joins {
		for _, a := range [...]Amount{r.Joins[i].Short, r.Joins[i].Past} {
			if at, ok := r.further[a.Size]; ok {
				s.readings[at], s.sources[at] = setting{name: a.Size, ideal: r.amount(a), greatest: form{}, fixed: true}, a.Size
			}
		}
	}
}

// ruled writes a form in readings, so many times as makes its parts whole. Ends come out
// as papers.
func (r *derived) ruled(f form) (c clause, scale int64) {
	f = r.withoutEnds(f)
	g := int64(parts)
	for _, p := range f {
		if p.of >= r.first {
			g = gcd(g, p.times)
		}
	}
	scale = parts / g
	for _, p := range f {
		if p.of < r.first {
			c.rest = c.rest.and(p.of, p.times*scale)
		} else {
			c.terms = append(c.terms, rounding.Term{Reading: r.of(p.of).reading, Coefficient: p.times * scale / parts})
		}
	}
	return c, scale
}

// across is a closure; a gap that it leaves open is a size, and a reading by itself.
func (s *stated) across(r *derived, w *row) clause {
	c, _ := r.ruled(w.form)
	c.name = w.name
	if gap := w.gap; gap.Size != "" && len(c.rest) == 1 && c.rest[0].of == r.size(gap) && max(c.rest[0].times, -c.rest[0].times) == parts {
		c.terms = append(c.terms, rounding.Term{Reading: slices.Index(s.sources, gap.Size), Coefficient: c.rest[0].times / parts})
		c.rest = nil
	}
	return c
}

// fit states that the contents go in along an axis as the request wants.
func (s *stated) fit(r *derived, f *clearance) {
	need, ok := f.need()
	c, scale := r.ruled(f.form)
	if !ok || scale != 1 {
		s.fault(r.panels[f.low].place, "the clearance along the "+f.axis.String()+" is not a sum of whole panels", "let whole panels bound the contents")
	}
	if c.name, c.weight = f.name(), 1; f.between == "" {
		s.bounded = append(s.bounded, f.axis)
	}
	s.windows, s.needs = append(s.windows, c), append(s.needs, need)
}

// window states a soft row; a layer lets the outer of two readings hold whatever
// the inner one does.
func (s *stated) window(r *derived, w *row) {
	c, scale := r.ruled(w.form)
	c.name, c.weight, c.room = w.name, w.weight, [2]form{w.room[0].times(scale), w.room[1].times(scale)}
	s.windows = append(s.windows, c)
	if t := c.terms; w.layer && len(t) == 2 && t[0].Coefficient == -t[1].Coefficient {
		outer, inner := t[0].Reading, t[1].Reading
		if t[0].Coefficient < 0 {
			outer, inner = inner, outer
		}
		s.over = append(s.over, rounding.Pair{A: outer, B: inner})
	}
}

// creep adds by how much one panel is shorter than another one as a reading of its own:
// being as even as they can be, it is as little as the ruler allows.
func (s *stated) creep(r *derived, w *row) {
	c, _ := r.ruled(w.form)
	if len(c.terms) != 2 || c.terms[0].Coefficient != -c.terms[1].Coefficient {
		s.fault(w.place, "what ends there is not shorter than one other panel", "let one panel alone lead to the fold that it stays clear of")
		return
	}
	least := c.rest.times(-1)
	s.even = append(s.even, rounding.Pair{A: c.terms[0].Reading, B: c.terms[1].Reading})
	i := r.further[w.place]
	s.readings[i] = setting{name: w.creep, ideal: least, least: []form{least}, greatest: least.plus(1, w.room[1])}
	s.closures = append(s.closures, clause{name: w.name, terms: append(c.terms, rounding.Term{Reading: i, Coefficient: -1})})
}

// withoutEnds puts the papers in a form that ends come out as.
func (r *derived) withoutEnds(f form) form {
	for k, u := range r.known.pivots {
		own := r.known.rows[k].count(u)
		if c := f.count(u); c != 0 && r.of(u).end && c%own == 0 {
			f = f.plus(-c/own, r.known.rows[k])
		}
	}
	return f
}

// layStrips states how the readings lie along both edges of the pieces: those of the root
// and of the panels in a row with it.
func (s *stated) layStrips(r *derived) {
	for piece := range r.Pieces {
		for axis, across := range [...]pattern.Axis{pattern.Width, pattern.Height} {
			var readings []int
			for _, u := range r.blanks[piece].chains[axis] {
				readings = append(readings, r.of(u).reading)
			}
			s.strips = append(s.strips, enclosure.Strip{Piece: piece, Across: across, Readings: readings})
		}
	}
}

func (s *stated) fault(place, detail, hint string) {
	s.wrong = append(s.wrong, impossible(place, detail, hint))
}
