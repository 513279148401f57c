package ask

import (
	"slices"
	"sync"

	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/fault"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// OwnKind is the word for a design in the place of a kind.
const OwnKind = own.KindName

// Described is a request about a design, as far as it must be read to find that.
type Described struct{ Design Object }

func (q *Described) bind(b *Names) { b.bind(&q.Design, designName()) }

func (q *Described) settle(*Reading) {}

func designName() Name {
	return Name{Name: "design", MostCharacters: own.MostBytes, Example: ExampleDesign(), Shapes: []Shape{{Help: "An enclosure that you " +
		"describe: /docs/design has the words, /v1/designs some to begin from.", Open: true}},
		Help: "What is to be made, described: its sizes, its pieces with their panels, and what meets what."}
}

// ExampleDesign is a design to begin from, without spaces.
func ExampleDesign() string { return string(own.Simplest().Text) }

// KindOfDesign makes a kind of the text of a design. The error is a fault or faults,
// each with the place in the design.
func KindOfDesign(text string) (*enclosure.Kind, error) {
	if text == "" {
		return nil, fault.Fault{Code: fault.Missing, Field: "design", Detail: "nothing is described", Expected: "a design as a JSON object", Hint: "begin from one of /v1/designs"}
	}
	k, err := own.Read([]byte(text))
	if err != nil {
		return nil, err
	}
	var faults fault.Faults
	for i := range k.Params {
		if name := k.Params[i].Name; slices.Contains(namesOfAll(), name) {
			faults = append(faults, fault.Fault{Code: fault.Conflict, Field: "design.sizes", Value: name, Detail: "every request has a " + name + " already", Hint: "call the size otherwise, such as own_" + name})
		}
	}
	return k, faults.Err()
}

// KindDesign asks for a kind as a design. Whole says that the request could be solved
// as well.
type KindDesign struct {
	Enclosure
	Whole bool
}

// NewKindDesign is the form of a kind as a design: the names of a solution, of which
// none is needed.
func NewKindDesign(k *enclosure.Kind, formats ...string) *Form[*KindDesign] {
	return NewForm(func() *KindDesign { return &KindDesign{Enclosure: Enclosure{Kind: k}} }, formats...)
}

func (q *KindDesign) settle(r *Reading) {
	q.Whole = q.Stock.Caliper.Given || q.Stock.Preset.Given || q.Stock.Grammage.Given
	if q.Whole {
		q.Enclosure.settle(r)
		return
	}
	q.Request = &solve.Request{Kind: q.Kind, Options: q.options()}
}

// BareKind is a design without sizes of its own: it has the names that all have.
func BareKind() *enclosure.Kind { return &enclosure.Kind{Name: OwnKind, Design: ExampleDesign()} }

// namesOfAll are the names that calculations about any kind have.
var namesOfAll = sync.OnceValue(func() []string {
	bare := BareKind()
	of := func() *Enclosure { return &Enclosure{Kind: bare} }
	var all []string
	for _, names := range [][]Name{NewCheck(bare, "json").Names(), NewGuide(of, "json").Names(), NewDrawing(of, "json").Names(),
		NewForm(func() *Layer { return &Layer{Enclosure: *of()} }).Names(), NewForm(func() *Item { return &Item{Enclosure: *of()} }).Names(), NewForm(func() *Held { return &Held{Enclosure: *of()} }).Names()} {
		for i := range names {
			all = append(all, names[i].Name)
		}
	}
	return all
})

// kindForms is the form of a request about each kind, by its name.
type kindForms[Q Request] struct {
	byName map[string]*Form[Q]
	of     func(*enclosure.Kind) *Form[Q]
}

// newKindForms prepares the forms of all kinds.
func newKindForms[Q Request](empty func(*enclosure.Kind) Q) kindForms[Q] {
	f := kindForms[Q]{map[string]*Form[Q]{}, func(k *enclosure.Kind) *Form[Q] { return NewForm(func() Q { return empty(k) }) }}
	for _, k := range repertoire.Kinds() {
		f.byName[k.Name] = f.of(k)
	}
	return f
}

// any is the form of some kind, for the names that all have.
func (f *kindForms[Q]) any() *Form[Q] { return f.byName[repertoire.Kinds()[0].Name] }

// find returns the form of the kind that an object names, or that its design is. It
// reports what is wrong with either under the place of the object.
func (f *kindForms[Q]) find(r *Reading, name, object, place string) (form *Form[Q], ok bool) {
	if name != OwnKind {
		if form, ok = f.byName[name]; !ok {
			r.Report(noSuchKind(place+".kind", name), "")
		}
		return form, ok
	}
	text := ""
	if isObject(object) {
		text = Member([]byte(object), "design")
	}
	k, err := KindOfDesign(text)
	var faults fault.Faults
	if other := faults.Add(err); other != nil || len(faults) > 0 {
		for _, wrong := range faults {
			r.Report(wrong.Under(place), "")
		}
		return nil, false
	}
	return f.of(k), true
}
