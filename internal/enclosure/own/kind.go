package own

import (
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// KindName is what kinds made of designs are called on the wire.
const KindName = "own"

// Kind makes a kind of a design. The error is a fault or faults of the design.
func (d *Design) Kind() (*enclosure.Kind, error) {
	needs, err := d.needs()
	if err != nil {
		return nil, err
	}
	k := &enclosure.Kind{Name: KindName, Title: d.Title, Help: d.Help, Needs: needs, Plan: d.plan}
	for i := range d.Sizes {
		s := &d.Sizes[i]
		k.Params = append(k.Params, enclosure.Param{Name: s.Name, Help: s.Help, DefaultInch: s.Inch, DefaultMillimetre: s.Millimetre, Least: s.Least, Greatest: s.Greatest})
	}
	return k, nil
}

// trial is a thing that a design is folded round to see what it depends on, and
// whether it settles at all.
func (d *Design) trial() *enclosure.Input {
	mm := measure.Millimetres
	return &enclosure.Input{Unit: measure.Millimetre, Width: mm(100), Height: mm(150), Thickness: mm(20), Caliper: measure.Micrometres(300),
		Fit: enclosure.Range{Min: measure.Micrometres(1500), Max: mm(3)}}
}

// needs says which of the contents' sizes anything follows from.
func (d *Design) needs() ([]string, error) {
	r, err := derive(d, d.trial())
	if err != nil {
		return nil, err
	}
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
	return slices.Clip(needs), nil
}

// Read makes a kind of the text of a design, as a request gives it.
func Read(text []byte) (*enclosure.Kind, error) {
	d, err := Decode(text)
	if err != nil {
		return nil, fault.Under("design", err)
	}
	k, err := d.Kind()
	if err == nil {
		k.Design = string(text)
	}
	return k, err
}
