package own

import (
	"slices"
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// How many mended designs are folded up before a hint at one is given up, fewer of
// large ones, since every panel is held against every other one: what is wrong is
// told in a few milliseconds.
const (
	mostTries  = 12
	triedPairs = 400 // of panels, of all tries
)

// remedy is a change of a design, in words.
type remedy struct {
	words string
	apply func(*Design)
}

// mended adds to what is wrong with a design what would mend it, one fault after the
// other: only changes after which all of it was folded up for a request, and held, are
// told.
func (v *derivation) mended(err error, in *enclosure.Input) error {
	d := v.Design
	faults := faultsOf(err)
	if len(faults) == 0 {
		return err
	}
	told, now, left := slices.Clone(faults), d, faults
	panels := len(d.panels())
	tries := min(mostTries, triedPairs/(panels*panels))
	for i := range told {
		if !among(left, &told[i]) {
			continue
		}
		better, words := now, ""
		for _, r := range now.remedies(&told[i]) {
			if tries--; tries < 0 {
				return err
			}
			next := now.clone()
			r.apply(next)
			if rest := next.faults(in); len(rest) < len(left) && !among(rest, &told[i]) {
				better, left, words = next, rest, "; tried: "+r.words
			}
			if len(left) == 0 {
				break
			}
		}
		now = better
		told[i].Hint += words
	}
	if len(left) > 0 {
		return err
	}
	return told.Err()
}

// faults are what is wrong with a design for a request; the ideal sizes have to give the
// contents their room.
func (d *Design) faults(in *enclosure.Input) fault.Faults {
	v := newDerivation(d)
	p := v.planner(in)
	err := v.attempt(p)
	if err == nil {
		err = p.verify()
	}
	if err != nil {
		return faultsOf(err)
	}
	for i := range p.plan.Fits {
		w := &p.plan.Problem.Windows[p.plan.Fits[i].Window]
		if room := w.Form.Value(p.plan.Ideals()); room.Less(w.Min) || w.Max.Less(room) {
			return fault.Faults{{Code: fault.Impossible, Field: "design", Detail: w.Name}}
		}
	}
	return nil
}

// faultsOf are the faults that an error is made of.
func faultsOf(err error) fault.Faults {
	var faults fault.Faults
	if faults.Add(err) != nil {
		return nil
	}
	return faults
}

// among reports whether a fault is one of several, at its place.
func among(faults fault.Faults, f *fault.Fault) bool {
	return slices.ContainsFunc(faults, func(g fault.Fault) bool { return g.Field == f.Field && g.Detail == f.Detail })
}

// clone copies what a remedy changes.
func (d *Design) clone() *Design {
	c := *d
	c.Pieces, c.Joins = slices.Clone(d.Pieces), slices.Clone(d.Joins)
	for i := range c.Pieces {
		c.Pieces[i].Panels = slices.Clone(c.Pieces[i].Panels)
	}
	return &c
}

// panels lists all panels.
func (d *Design) panels() (all []*Panel) {
	for i := range d.Pieces {
		for k := range d.Pieces[i].Panels {
			all = append(all, &d.Pieces[i].Panels[k])
		}
	}
	return all
}

// remedies lists what may mend a fault, by where it stands and whom it names.
func (d *Design) remedies(f *fault.Fault) (all []remedy) {
	for i, p := range d.panels() {
		if place := under("design", p.place); f.Field == place || strings.HasPrefix(f.Field, place+".") {
			all = append(all, d.longer(i, p)...)
		}
	}
	for i := range d.Joins {
		if j := &d.Joins[i]; f.Field == under("design", j.place) {
			all = append(all, d.otherwise(i)...)
		}
	}
	for i, p := range d.panels() {
		if strings.Contains(f.Detail, `"`+p.Name+`"`) || f.Code == fault.Conflict && strings.Contains(f.Detail, p.Name) {
			all = append(all, d.turned(i, p)...)
		}
	}
	if strings.Contains(f.Detail, `"width"`) || strings.Contains(f.Detail, `"height"`) || strings.Contains(f.Detail, `"thickness"`) || strings.Contains(f.Detail, "contents") {
		for _, p := range d.panels() {
			if name := p.Name; name != d.Holds {
				all = append(all, remedy{"let the contents lie on " + name, func(d *Design) { d.Holds = name }})
			}
		}
	}
	for i, p := range d.panels() {
		if p.Fold == pattern.Mountain {
			all = append(all, d.turned(i, p)...)
		}
	}
	for i := range d.Joins {
		if place := d.Joins[i].place; f.Field == under("design", place) {
			all = append(all, remedy{"leave " + place + " out", func(d *Design) { d.Joins = slices.Delete(d.Joins, i, i+1) }})
		}
	}
	return all
}

// longer says how far a panel may reach that nothing says it of.
func (d *Design) longer(i int, p *Panel) (all []remedy) {
	if p.On == "" {
		set := func(across, up Reach) func(*Design) {
			return func(d *Design) {
				q := d.panels()[i]
				if q.Across == (Reach{}) {
					q.Across = across
				}
				if q.Up == (Reach{}) {
					q.Up = up
				}
			}
		}
		return []remedy{{"let " + p.Name + ` go up as far as the contents ("up": {"covers": "height"})`, set(Reach{}, Reach{Covers: "height"})},
			{"let " + p.Name + ` go across as far as the contents ("across": {"covers": "width"})`, set(Reach{Covers: "width"}, Reach{})}}
	}
	reach := func(to Reach) func(*Design) { return func(d *Design) { d.panels()[i].Reach = to } }
	axis := p.Edge.axis()
	for _, q := range d.panels() {
		switch {
		case q.Name == p.Name || q.Reach.Like == p.Name:
		case q.On == "" && axis == 1:
			all = append(all, remedy{"let " + p.Name + " reach as high as " + q.Name, reach(Reach{Like: heightOf + q.Name})})
		case q.On == "" || q.Edge.axis() == axis:
			all = append(all, remedy{"let " + p.Name + " reach as far as " + q.Name, reach(Reach{Like: q.Name})})
		}
	}
	usual := Amount{Length: measure.Millimetres(25), given: true}
	return append(append(all, remedy{"let " + p.Name + ` reach "25 mm"`, reach(Reach{Fixed: usual})}), d.turned(i, p)...)
}

// turned folds a panel the other way, or frees it.
func (d *Design) turned(i int, p *Panel) (all []remedy) {
	if p.On == "" {
		return nil
	}
	if p.Reach != (Reach{}) {
		all = append(all, remedy{"free " + p.Name, func(d *Design) { d.panels()[i].Reach = Reach{} }})
	}
	if p.Fold == pattern.Flat {
		return all
	}
	other, way := pattern.Mountain, "back"
	if p.Fold == pattern.Mountain {
		other, way = pattern.Valley, "up"
	}
	return append(all, remedy{"fold " + p.Name + " " + way, func(d *Design) { d.panels()[i].Fold = other }})
}

// otherwise lays a panel onto another one.
func (d *Design) otherwise(i int) (all []remedy) {
	j := &d.Joins[i]
	if j.Type == Glue || j.Type == Lies {
		for _, p := range d.panels() {
			if name := p.Name; name != j.A.Panel && name != j.B.Panel && len(all) < mostTries/2 {
				all = append(all, remedy{"let " + j.A.Panel + " lie on " + name, func(d *Design) { d.Joins[i].B.Panel = name }})
			}
		}
	}
	return all
}
