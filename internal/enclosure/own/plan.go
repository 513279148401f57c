package own

import (
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// plan states what the folding has shown, as any kind does, or what is wrong and what
// would mend it. Whether the ideal sizes hold is asked where no answer does: an answer is
// proven by itself.
func (d *Design) plan(in *enclosure.Input) (*enclosure.Plan, error) {
	p, err := d.attempt(in)
	if err != nil {
		return nil, d.mended(err, in)
	}
	p.plan.Check = func() error { return d.mended(p.verify(), in) }
	return p.plan, nil
}

// attempt is the plan of a design as it stands.
func (d *Design) attempt(in *enclosure.Input) (*planner, error) {
	r, err := derive(d, in)
	if err != nil {
		return nil, err
	}
	p := &planner{derived: r, plan: &enclosure.Plan{}}
	p.readings()
	p.amounts()
	p.problem()
	err = p.slits()
	for i := range d.Pieces {
		p.strips(i)
	}
	p.plan.Build = p.build
	p.openSides()
	return p, fault.Join(p.paper(), err, p.laps(), p.wrong.Err())
}

// planner turns what was derived into a plan.
type planner struct {
	*derived
	plan  *enclosure.Plan
	slots []slotted
}

// readings lists the unknowns that a ruler is set to.
func (p *planner) readings() {
	for i := range p.unknowns {
		u := &p.unknowns[i]
		if u.end {
			continue
		}
		if u.reading = p.shared(firstReading + i); u.reading >= 0 {
			continue
		}
		u.reading = len(p.plan.Problem.Readings)
		ideal := measure.Nanometres(int64(p.values[firstReading+i] + 0.5))
		if u.fixed {
			ideal = u.size
		}
		p.add(rounding.Reading{Name: u.name, Ideal: ideal, Min: measure.Max(u.least, p.flatOn(firstReading+i)), Max: measure.Largest(), Fixed: u.fixed}, u.source)
		if ideal.Sign() <= 0 {
			p.fault(u.place, u.name+" would have no size", "let what it reaches to lie farther away")
		}
	}
}

// shared is the reading of panels of a piece that lie along no edge of a blank and are as long by
// the same size: it is set once for all of them. It is -1 for the first, and for others.
func (p *planner) shared(unknown int) int {
	u := &p.unknowns[unknown-firstReading]
	if u.source == "" || p.alongEdge(unknown) {
		return -1
	}
	for i := range p.unknowns[:unknown-firstReading] {
		if o := &p.unknowns[i]; o.source == u.source && o.piece == u.piece && !p.alongEdge(firstReading+i) {
			return o.reading
		}
	}
	return -1
}

// alongEdge reports whether an unknown lies along an edge of a blank.
func (p *planner) alongEdge(unknown int) bool {
	for piece := range p.Pieces {
		root := p.rootOf(piece)
		if slices.Contains(p.chain(root, 0), unknown) || slices.Contains(p.chain(root, 1), unknown) {
			return true
		}
	}
	return false
}

// flatOn is how far a panel must reach so that where it passes another one that it
// is glued to lies on the flat of both, clear of their folds.
func (p *planner) flatOn(unknown int) (least measure.Length) {
	for i := range p.Joins {
		j := &p.Joins[i]
		a, b := &p.panels[p.index[j.A.Panel]], &p.panels[p.index[j.B.Panel]]
		if j.Type != Meet || j.A.Of != FreeEdge || j.B.Of != FreeEdge || a.far != unknown && b.far != unknown {
			continue
		}
		taken := p.none()
		for _, q := range [...]*plate{a, b} {
			if q.spine != nil && (q.spine.at(p.values) > taken.at(p.values)) {
				taken = q.spine
			}
		}
		least = measure.Max(least, p.amount(j.Past).Add(taken.with(caliper, parts).half().exact(p.lengths())))
	}
	return least
}

func (p *planner) add(r rounding.Reading, source string) int {
	p.plan.Problem.Readings = append(p.plan.Problem.Readings, r)
	p.plan.Sources = append(p.plan.Sources, source)
	return len(p.plan.Problem.Readings) - 1
}

// amounts adds the named sizes that joins are stated with: they are set by
// themselves, and somebody who measures finds them.
func (p *planner) amounts() {
	for i := range p.Joins {
		for _, a := range [...]Amount{p.Joins[i].Short, p.Joins[i].Past} {
			if a.Size != "" && !slices.Contains(p.plan.Sources, a.Size) {
				p.add(rounding.Reading{Name: a.Size, Ideal: p.amount(a), Fixed: true}, a.Size)
			}
		}
	}
}

// ruled writes a form in readings, so many times as makes its parts whole. Forms
// without ends only.
func (p *planner) ruled(f form) (r rounding.Form, scale int64) {
	g := int64(0)
	for i := firstReading; i < len(f); i++ {
		g = gcd(g, f[i])
	}
	if g = gcd(g, parts); g == 0 {
		g = parts
	}
	scale = parts / g
	rest := slices.Clone(f)
	for i := range p.unknowns {
		c := f[firstReading+i]
		if c != 0 {
			r.Terms = append(r.Terms, rounding.Term{Reading: p.unknowns[i].reading, Coefficient: c * scale / parts})
			rest[firstReading+i] = 0
		}
	}
	r.Constant = rest.times(scale).exact(p.lengths())
	return r, scale
}

// problem states the closures, the windows and the even pairs.
func (p *planner) problem() {
	q := &p.plan.Problem
	for i := range p.exact {
		f, _ := p.ruled(p.exact[i].form)
		q.Closures = append(q.Closures, rounding.Closure{Name: p.exact[i].name, Form: p.across(f, p.exact[i].gap)})
	}
	for i := range p.fits {
		p.fit(&p.fits[i])
	}
	for _, rows := range [...][]row{p.layers, p.soft} {
		for i := range rows {
			if rows[i].creep {
				p.creep(&rows[i])
			} else {
				p.window(&rows[i])
			}
		}
	}
	for i := range p.Joins {
		if j := &p.Joins[i]; j.Type == Even {
			q.Even = append(q.Even, rounding.Pair{A: p.reach(j.A.Panel), B: p.reach(j.B.Panel)})
		}
	}
}

// across puts the size of a gap into a closure in the place of its length.
func (p *planner) across(f rounding.Form, gap Amount) rounding.Form {
	size := p.amount(gap)
	if gap.Size == "" || f.Constant != size && f.Constant != size.Neg() {
		return f
	}
	t := rounding.Term{Reading: slices.Index(p.plan.Sources, gap.Size), Coefficient: int64(f.Constant.Sign())}
	return rounding.Form{Terms: append(f.Terms, t)}
}

// reach is the reading of how far a panel goes.
func (p *planner) reach(panel string) int {
	return p.unknowns[p.panels[p.index[panel]].far-firstReading].reading
}

// fit states that the contents go in along an axis as the request wants.
func (p *planner) fit(c *clearance) {
	need, ok := c.need()
	f, scale := p.ruled(p.withoutEnds(c.form))
	if !ok || scale != 1 {
		p.fault(p.panels[c.low].place, "the clearance along the "+c.axis.String()+" is not a sum of whole panels", "let whole panels bound the contents")
		return
	}
	p.plan.Fits = append(p.plan.Fits, enclosure.Fit{Axis: c.axis, Between: c.between, Window: len(p.plan.Problem.Windows), Need: need, Wanted: c.wanted})
	p.plan.Problem.Windows = append(p.plan.Problem.Windows, rounding.Window{Name: c.name(), Form: f, Min: c.wanted.Min, Max: c.wanted.Max, Weight: 1})
}

// window states a soft row; a layer lets the outer of two readings hold whatever
// the inner one does.
func (p *planner) window(w *row) {
	f, scale := p.ruled(p.withoutEnds(w.form))
	p.plan.Problem.Windows = append(p.plan.Problem.Windows, rounding.Window{Name: w.name, Form: f, Min: w.room.Min.Times(scale), Max: w.room.Max.Times(scale), Weight: w.weight})
	if t := f.Terms; w.layer && len(t) == 2 && t[0].Coefficient == -t[1].Coefficient {
		outer, inner := t[0].Reading, t[1].Reading
		if t[0].Coefficient < 0 {
			outer, inner = inner, outer
		}
		p.plan.Over = append(p.plan.Over, rounding.Pair{A: outer, B: inner})
	}
}

// creep adds by how much one panel is shorter than another one as a reading of its own:
// being as even as they can be, it is as little as the ruler allows.
func (p *planner) creep(w *row) {
	f, _ := p.ruled(p.withoutEnds(w.form))
	if len(f.Terms) != 2 || f.Terms[0].Coefficient != -f.Terms[1].Coefficient {
		p.fault(w.place, "what ends there is not shorter than one other panel", "let one panel alone lead to the fold that it stays clear of")
		return
	}
	least := f.Constant.Neg()
	i := p.add(rounding.Reading{Name: w.name, Ideal: least, Min: least, Max: least.Add(w.room.Max)}, "")
	f.Constant, f.Terms = measure.Length{}, append(f.Terms, rounding.Term{Reading: i, Coefficient: -1})
	p.plan.Problem.Closures = append(p.plan.Problem.Closures, rounding.Closure{Name: w.name, Form: f})
	p.plan.Problem.Even = append(p.plan.Problem.Even, rounding.Pair{A: f.Terms[0].Reading, B: f.Terms[1].Reading})
}

// withoutEnds puts the papers in a form that ends come out as.
func (p *planner) withoutEnds(f form) form {
	for k, u := range p.known.pivots {
		if r := p.known.rows[k]; p.unknowns[u-firstReading].end && f[u] != 0 && f[u]%r[u] == 0 {
			f = f.plus(-f[u]/r[u], r)
		}
	}
	return f
}

// paper refuses board for what is folded flat, or hooked into slits.
func (p *planner) paper() error {
	for i := range p.panels {
		if p.panels[i].spine != nil {
			return p.in.PaperOnly("what is folded flat")
		}
	}
	if len(p.slots) > 0 {
		return p.in.PaperOnly("what locks in slits")
	}
	return nil
}
