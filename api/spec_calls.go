package api

import (
	"strings"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/enclosure"
)

// CallSpec is what the specification says of one call beyond its annotations:
// the names it knows and an example. It comes from the tables that requests
// are read with, so that the two cannot drift apart.
type CallSpec struct {
	Path       string // as it is called
	Annotated  string // the path of its annotations, if another
	Summary    string // if another than that of the annotations
	Parameters []wire.Parameter
	Media      []string // of the answer, the default first
	Example    string   // query of a GET, without a question mark
	Body       string   // of a POST, mostly the same request; empty for a call without POST
}

// CallSpecs returns every call that takes names, in the order of the start
// page.
func CallSpecs() []CallSpec {
	specs := []CallSpec{}
	for _, k := range enclosure.Kinds() {
		specs = append(specs, newSolve(k).spec().ofKind(k, "Measurements of a "))
	}
	for _, k := range enclosure.Kinds() {
		of := func() *ask.Enclosure { return &ask.Enclosure{Kind: k} }
		specs = append(specs, newGuide(k.Name, of).spec().ofKind(k, "Making instructions of a "), newDrawing(k.Name, of).spec().ofKind(k, "Drawing of a "))
	}
	for _, k := range enclosure.Kinds() {
		spec := newCheck(k).spec().ofKind(k, "Check own measurements of a ")
		spec.Example, spec.Body = checkExample(k)
		specs = append(specs, spec)
	}
	specs = append(specs,
		newRulerCalculation().spec().asked("length=92.1mm&length=3-5/8in", `{"length":["92.1mm","3-5/8in"]}`),
		newPaperCalculation().spec().asked("basis_weight=80&grade=cover&sheet=letter", `{"basis_weight":80,"grade":"cover","sheet":"letter"}`),
		newMailCalculation().spec().asked("unit=in&width=5-1/4&height=5-1/4&thickness=1/8&mass_oz=0.9&post=us&post=de",
			`{"unit":"in","width":"5-1/4","height":"5-1/4","thickness":"1/8","mass_oz":0.9,"post":["us","de"]}`),
		newYieldCalculation().spec().asked(yieldExample()))
	specs = append(specs, portfolioSpecs()...)
	for _, path := range []string{"/v1/kinds", "/v1/kinds/{kind}", "/v1/contents", "/v1/stocks", "/v1/sheets/sizes", "/v1/benches", "/v1/posts", "/v1/limits"} {
		specs = append(specs, newListing(path, nil).spec())
	}
	return specs
}

// spec is what the specification says of the calculation, without an example.
func (k *calculation[Q, A]) spec() CallSpec {
	return CallSpec{Path: k.path, Parameters: describeNames(k.form.Names()), Media: mediaTypes(k.formats)}
}

// asked adds an example.
func (s CallSpec) asked(query, body string) CallSpec {
	s.Example, s.Body = query, body
	return s
}

// ofKind says that the annotations are those of every kind, and adds the
// kind's example.
func (s CallSpec) ofKind(k *enclosure.Kind, summary string) CallSpec {
	s.Annotated, s.Summary = strings.TrimSuffix(s.Path, k.Name)+"{kind}", summary+k.Name
	return s.asked(solveExample(k))
}

// mediaTypes lists the media types of formats, without parameters.
func mediaTypes(list []tell.Format) []string {
	types := make([]string, len(list))
	for i, f := range list {
		types[i] = f.MediaType()
	}
	return types
}
