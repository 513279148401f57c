package api

import (
	"creasefit/api/tell"
	"creasefit/internal/enclosure"
)

// CallSpec is what the specification says of one call beyond its annotations:
// the names it knows and an example. It comes from the tables that requests
// are read with, so that the two cannot drift apart.
type CallSpec struct {
	Path       string // as it is called
	Annotated  string // the path of its annotations, if another
	Summary    string // if another than that of the annotations
	Parameters []Parameter
	Media      []string // of the answer, the default first
	Example    string   // query of a GET, without a question mark
	Body       string   // of a POST, mostly the same request; empty for a call without POST
}

// CallSpecs returns every call that takes names, in the order of the start
// page.
func CallSpecs() []CallSpec {
	specs := []CallSpec{}
	for _, k := range enclosure.Kinds() {
		query, body := solveExample(k)
		specs = append(specs, CallSpec{
			Path: "/v1/solve/" + k.Name, Annotated: "/v1/solve/{kind}", Summary: "Measurements of a " + k.Name, Media: mediaTypes(measurementFormats),
			Parameters: kindTable(k, measurementFormats).describe(), Example: query, Body: body,
		})
	}
	for _, k := range enclosure.Kinds() {
		query, body := solveExample(k)
		specs = append(specs, CallSpec{
			Path: "/v1/guide/" + k.Name, Annotated: "/v1/guide/{kind}", Summary: "Making instructions of a " + k.Name, Media: mediaTypes(guideFormats),
			Parameters: kindTable(k, guideFormats, guideParams()...).describe(), Example: query, Body: body,
		}, CallSpec{
			Path: "/v1/drawing/" + k.Name, Annotated: "/v1/drawing/{kind}", Summary: "Drawing of a " + k.Name, Media: mediaTypes(drawingFormats),
			Parameters: kindTable(k, drawingFormats, drawingParams()...).describe(), Example: query, Body: body,
		})
	}
	for _, k := range enclosure.Kinds() {
		query, body := checkExample(k)
		specs = append(specs, CallSpec{
			Path: "/v1/check/" + k.Name, Annotated: "/v1/check/{kind}", Summary: "Check own measurements of a " + k.Name, Media: mediaTypes(checkFormats),
			Parameters: kindTable(k, checkFormats, checkParams()...).describe(), Example: query, Body: body,
		})
	}
	specs = append(specs,
		CallSpec{Path: "/v1/ruler", Parameters: rulerTable().describe(), Media: mediaTypes(measurementFormats),
			Example: "length=92.1mm&length=3-5/8in", Body: `{"length":["92.1mm","3-5/8in"]}`},
		CallSpec{Path: "/v1/stock", Parameters: paperTable().describe(), Media: mediaTypes(paperFormats),
			Example: "basis_weight=80&grade=cover&sheet=letter", Body: `{"basis_weight":80,"grade":"cover","sheet":"letter"}`},
		CallSpec{Path: "/v1/mail", Parameters: mailTable().describe(), Media: mediaTypes(mailFormats),
			Example: "unit=in&width=5-1/4&height=5-1/4&thickness=1/8&mass_oz=0.9&post=us&post=de", Body: `{"unit":"in","width":"5-1/4","height":"5-1/4","thickness":"1/8","mass_oz":0.9,"post":["us","de"]}`},
		yieldSpec())
	specs = append(specs, portfolioSpecs()...)
	for _, path := range []string{"/v1/kinds", "/v1/kinds/{kind}", "/v1/contents", "/v1/stocks", "/v1/sheets/sizes", "/v1/benches", "/v1/posts", "/v1/limits"} {
		only := []tell.Format{tell.JSON}
		specs = append(specs, CallSpec{Path: path, Parameters: newTable(answerParams(only)).describe(), Media: mediaTypes(only)})
	}
	return specs
}

// describe lists the names of the table.
func (t *table) describe() []Parameter {
	list := make([]Parameter, len(t.params))
	for i := range t.params {
		list[i] = t.params[i].describe()
	}
	return list
}

// mediaTypes lists the media types of formats, without parameters.
func mediaTypes(list []tell.Format) []string {
	types := make([]string, len(list))
	for i, f := range list {
		types[i] = f.MediaType()
	}
	return types
}
