package own

import (
	"cmp"
	"slices"
	"sync"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/rounding"
)

// plan states what the folding has shown, as any kind does, or what is wrong and what
// would mend it. Whether the ideal sizes hold is asked where no answer does: an answer is
// proven by itself.
func (v *derivation) plan(in *enclosure.Input) (*enclosure.Plan, error) {
	p := v.planner(in)
	err := v.limited(p)
	if tab, high := v.Ornament[0], v.Ornament[1]; tab != "" {
		var wrong error
		p.plan.Ornament, wrong = in.OrnamentOver(tab, high)
		err = fault.Join(err, wrong)
	}
	if err != nil {
		return nil, err
	}
	if v.Pieces[0].rolled() >= 0 {
		p.GiveBack()
		return v.Pieces[0].roll(in)
	}
	v.tried.Do(v.try)
	if err = v.attempt(p); err != nil {
		return nil, v.mended(err, in)
	}
	return &p.plan, nil
}

// roll is the plan of a piece that is rolled round its contents.
func (p *Piece) roll(in *enclosure.Input) (*enclosure.Plan, error) {
	body, lap := &p.Panels[0], &p.Panels[1]
	return in.Roll(enclosure.Roll{Piece: p.Name, High: cmp.Or(p.High, body.Name+" height"), Body: body.Name, Lap: lap.Name,
		Height: body.Up.Fixed.Size, Width: lap.Reach.Fixed.Size})
}

// attempt is the plan of a design as it stands.
func (v *derivation) attempt(p *planner) (err error) {
	p.values = values(p.lengths, p.values)
	if p.derived, err = v.derive(p.values); err != nil {
		return err
	}
	p.once.Do(func() { p.stated.of(p.derived) })
	p.plan.Strips, p.plan.Over = p.stated.strips, p.stated.over
	p.readings()
	p.problem()
	p.settle()
	for i := range p.stated.slots {
		p.slit(&p.stated.slots[i])
	}
	p.laps()
	p.openSides()
	return fault.Join(p.paper(), p.faults.Err(), p.stated.wrong.Err())
}

// planner turns what was derived into the plan of a request, in memory that the next can
// have if the plan is given back.
type planner struct {
	*derived
	in      *enclosure.Input
	lengths []measure.Length // without those of the unknowns
	values  []float64
	plan    enclosure.Plan
	faults  fault.Faults
	laid    pattern.Memory
	layouts []layout                               // of the pattern that was laid out last
	lay     func([]measure.Length) pattern.Pattern // build and check, once for all plans
	mend    func() error
}

var planners sync.Pool

// planner begins the plan of a request.
func (v *derivation) planner(in *enclosure.Input) *planner {
	p, again := planners.Get().(*planner)
	if !again {
		p = new(planner)
		p.lay, p.mend = p.build, p.check
	}
	p.in, p.lengths, p.faults = in, v.lengths(in, p.lengths), nil
	p.plan = enclosure.Plan{Problem: p.plan.Problem, Fits: p.plan.Fits, Warnings: p.plan.Warnings[:0],
		Build: p.lay, Check: p.mend, Memory: p, Laid: &p.laid}
	return p
}

// GiveBack lets another plan have the memory of this one.
func (p *planner) GiveBack() {
	p.laid.GiveBack()
	planners.Put(p)
}

// check says what would mend a design whose ideal sizes do not hold.
func (p *planner) check() error { return p.mended(p.verify(), p.in) }

// readings fills in what the readings are ideally, at the least and at the most.
func (p *planner) readings() {
	s := &p.stated
	p.plan.Sources = slices.Clip(s.sources)
	p.plan.Problem.Readings = room(p.plan.Problem.Readings, len(s.readings))
	for i := range s.readings {
		x, to := &s.readings[i], &p.plan.Problem.Readings[i]
		*to = rounding.Reading{Name: x.name, Fixed: x.fixed, Max: measure.Largest()}
		if to.Ideal = x.ideal.exact(p.lengths); x.ideal == nil {
			to.Ideal = measure.Nanometres(int64(p.values[x.unknown] + 0.5))
		}
		for _, least := range x.least {
			to.Min = measure.Max(to.Min, least.exact(p.lengths))
		}
		if x.greatest != nil {
			to.Max = x.greatest.exact(p.lengths)
		}
		if x.unknown > 0 && to.Ideal.Sign() <= 0 {
			p.faults = append(p.faults, impossible(x.place, x.name+" would have no size", "let what it reaches to lie farther away"))
		}
	}
}

// problem fills in the closures, the windows and the even pairs.
func (p *planner) problem() {
	q, s := &p.plan.Problem, &p.stated
	q.Closures = room(q.Closures, len(s.closures))
	for i := range s.closures {
		c := &s.closures[i]
		q.Closures[i] = rounding.Closure{Name: c.name, Form: p.ask(c)}
	}
	q.Windows = room(q.Windows, len(s.windows))
	p.plan.Fits = room(p.plan.Fits, len(p.fits))
	for i := range s.windows {
		c := &s.windows[i]
		room := enclosure.Range{Min: c.room[0].exact(p.lengths), Max: c.room[1].exact(p.lengths)}
		if i < len(p.fits) {
			f := &p.fits[i]
			room = f.wanted(p.in)
			p.plan.Fits[i] = enclosure.Fit{Axis: f.axis, Between: f.between, Window: i, Need: s.needs[i], Wanted: room}
		}
		q.Windows[i] = rounding.Window{Name: c.name, Form: p.ask(c), Min: room.Min, Max: room.Max, Weight: c.weight}
	}
	q.Even = slices.Clip(s.even)
}

// settle takes what rounding ideal sizes to the nanometre has left of a sum from one of its
// parts that no other sum has.
func (p *planner) settle() {
	q := &p.plan.Problem
	for i := range q.Closures {
		left := q.Closures[i].Form.Constant
		for _, t := range q.Closures[i].Form.Terms {
			left = left.Add(q.Readings[t.Reading].Ideal.Times(t.Coefficient))
		}
		spare := p.stated.closures[i].spare
		r := &q.Readings[spare.Reading]
		r.Ideal = r.Ideal.Sub(left.Times(spare.Coefficient))
	}
}

// ask is a clause at the lengths of the request.
func (p *planner) ask(c *clause) rounding.Form {
	return rounding.Form{Terms: c.terms, Constant: c.rest.exact(p.lengths)}
}

// paper refuses board for what is folded flat, but for what is glued down over a rim, or
// hooked into slits.
func (p *planner) paper() error {
	rolled := func(q *plate) bool {
		return q.spine.count(thickness) == 0 && slices.ContainsFunc(p.Joins, func(j Join) bool { return j.Type == Glue && (j.A.Panel == q.Name || j.B.Panel == q.Name) })
	}
	if slices.ContainsFunc(p.panels, func(q plate) bool { return q.spine != nil && !rolled(&q) }) {
		return p.in.PaperOnly("what is folded flat")
	}
	if len(p.stated.slots) > 0 {
		return p.in.PaperOnly("what locks in slits")
	}
	return nil
}
