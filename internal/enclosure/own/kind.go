package own

import (
	"sync"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// KindName is what kinds made of designs are called on the wire.
const KindName = "own"

// Kind makes a kind of a design. What is wrong with the design is told when it is planned,
// since what would mend it hangs on the contents and the paper.
func (d *Design) Kind() *enclosure.Kind {
	ways, used := map[*Design]*derivation{}, [3]bool{}
	for _, way := range d.Ways {
		v := newDerivation(way)
		if ways[way] = v; len(d.Needs) == 0 {
			v.tried.Do(v.try)
			v.needs(&used)
		}
	}
	k := &enclosure.Kind{Name: KindName, Title: d.Title, Help: d.Help, Words: d.Words, Needs: d.Needs}
	k.Plan = func(in *enclosure.Input) (*enclosure.Plan, error) {
		way, wrong := d.way(in)
		p, err := ways[way].plan(in)
		if err = fault.Join(err, wrong); err != nil {
			return nil, err
		}
		return p, nil
	}
	for i, name := range axes {
		if len(d.Needs) == 0 && (used[i] || used == [3]bool{}) {
			k.Needs = append(k.Needs, name)
		}
	}
	for i := range d.Options {
		k.Params = append(k.Params, d.Options[i].Param)
	}
	if d.Ornament[0] != "" {
		k.Params = append(k.Params, enclosure.OrnamentParams...)
	}
	return k
}

// try folds a design round a thing to see what it depends on, and whether it settles at
// all: later foldings begin there.
func (v *derivation) try() {
	in := trial()
	for i := range v.Options {
		if o := &v.Options[i]; o.optional {
			in.Given[o.Name] = enclosure.Value{Length: o.such}
		}
	}
	v.begin, _ = v.derive(values(v.lengths(in, nil), nil))
}

// trial is that thing.
func trial() *enclosure.Input {
	mm := measure.Millimetres
	return &enclosure.Input{Unit: measure.Millimetre, Width: mm(100), Height: mm(150), Thickness: mm(20), Caliper: measure.Micrometres(300), Given: map[string]enclosure.Value{},
		Fit: enclosure.Range{Min: measure.Micrometres(1500), Max: mm(3)}}
}

// needs notes which of the contents' sizes anything follows from. Where the trial comes to
// nothing all of them are asked for.
func (v *derivation) needs(used *[3]bool) {
	if v.begin == nil {
		*used = [3]bool{true, true, true}
		return
	}
	note := func(f form) {
		for k := range used {
			used[k] = used[k] || f.count(width+k) != 0
		}
	}
	for i := range v.begin.fits {
		note(v.begin.fits[i].form)
	}
	for i := range v.begin.rows {
		note(v.begin.rows[i].form)
	}
	for i := range v.begin.panels {
		note(v.begin.panels[i].spine)
	}
}

// Place is where in a design a panel stands; the whole of it if there is no such panel.
func Place(text []byte, panel string) string {
	if d, err := Decode(text); err == nil {
		for _, way := range d.Ways {
			for _, p := range way.panels() {
				if p.Name == panel {
					return under("design", p.place)
				}
			}
		}
	}
	return "design"
}

// Read makes a kind of the text of a design, as a request gives it. Kinds are remembered,
// since a workbench asks about one design again and again.
func Read(text []byte) (*enclosure.Kind, error) {
	if k := remembered.look(string(text)); k != nil {
		return k, nil
	}
	d, err := Decode(text)
	if err != nil {
		return nil, fault.Under("design", err)
	}
	k := d.Kind()
	k.Design = string(text)
	panels := 0
	for _, way := range d.Ways {
		panels += len(way.panels())
	}
	remembered.keep(k, panels)
	return k, nil
}

// mostRemembered bounds how many panels are remembered, of all designs.
const mostRemembered = 512

// memory holds kinds that were read lately, by their texts.
type memory struct {
	sync.Mutex
	known  map[string]*enclosure.Kind
	panels int
}

var remembered = memory{known: map[string]*enclosure.Kind{}}

func (m *memory) look(text string) *enclosure.Kind {
	m.Lock()
	defer m.Unlock()
	return m.known[text]
}

func (m *memory) keep(k *enclosure.Kind, panels int) {
	m.Lock()
	defer m.Unlock()
	if m.panels += panels; m.panels > mostRemembered {
		clear(m.known)
		m.panels = panels
	}
	m.known[k.Design] = k
}
