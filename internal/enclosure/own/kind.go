package own

import (
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// KindName is what kinds made of designs are called on the wire.
const KindName = "own"

// Kind makes a kind of a design. What is wrong with the design is told when it is planned,
// since what would mend it hangs on the contents and the paper.
func (d *Design) Kind() *enclosure.Kind {
	k := &enclosure.Kind{Name: KindName, Title: d.Title, Help: d.Help, Needs: d.needs(), Plan: d.plan}
	for i := range d.Sizes {
		s := &d.Sizes[i]
		k.Params = append(k.Params, enclosure.Param{Name: s.Name, Help: s.Help, DefaultInch: s.Inch, DefaultMillimetre: s.Millimetre, Least: s.Least, Greatest: s.Greatest})
	}
	return k
}

// trial is a thing that a design is folded round to see what it depends on, and
// whether it settles at all.
func (d *Design) trial() *enclosure.Input {
	mm := measure.Millimetres
	return &enclosure.Input{Unit: measure.Millimetre, Width: mm(100), Height: mm(150), Thickness: mm(20), Caliper: measure.Micrometres(300),
		Fit: enclosure.Range{Min: measure.Micrometres(1500), Max: mm(3)}}
}

// needs says which of the contents' sizes anything follows from, and remembers where
// later foldings begin. Where the trial comes to nothing all of them are asked for.
func (d *Design) needs() []string {
	r, err := derive(d, d.trial())
	if err != nil {
		return axes[:]
	}
	d.begin = &r.known
	var used [3]bool
	note := func(f form) {
		for k := range used {
			used[k] = used[k] || f[width+k] != 0
		}
	}
	for i := range r.fits {
		note(r.fits[i].form)
	}
	for i := range r.rows {
		note(r.rows[i].form)
	}
	for i := range r.panels {
		if s := r.panels[i].spine; s != nil {
			note(s)
		}
	}
	var needs []string
	for k, name := range axes {
		if used[k] {
			needs = append(needs, name)
		}
	}
	if len(needs) == 0 {
		needs = axes[:]
	}
	return slices.Clip(needs)
}

// Place is where in a design a panel stands; the whole of it if there is no such panel.
func Place(text []byte, panel string) string {
	if d, err := Decode(text); err == nil {
		for _, p := range d.panels() {
			if p.Name == panel {
				return under("design", p.place)
			}
		}
	}
	return "design"
}

// Read makes a kind of the text of a design, as a request gives it.
func Read(text []byte) (*enclosure.Kind, error) {
	d, err := Decode(text)
	if err != nil {
		return nil, fault.Under("design", err)
	}
	k := d.Kind()
	k.Design = string(text)
	return k, nil
}
