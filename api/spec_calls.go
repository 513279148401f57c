package api

import (
	"net/url"
	"strings"

	"creasefit/api/ask"
	"creasefit/internal/repertoire"
)

// CallSpecs returns every call that takes names, in the order of the start
// page.
func CallSpecs() []CallSpec {
	specs := []CallSpec{}
	for _, k := range repertoire.Kinds() {
		specs = append(specs, newSolve(k).spec().ofKind(k, "Measurements of a "))
	}
	for _, k := range repertoire.Kinds() {
		of := func() *ask.Enclosure { return &ask.Enclosure{Kind: k} }
		specs = append(specs, newGuide(k.Name, of).spec().ofKind(k, "Making instructions of a "), newDrawing(k.Name, of).spec().ofKind(k, "Drawing of a "))
	}
	for _, k := range repertoire.Kinds() {
		spec := newCheck(k).spec().ofKind(k, "Check own measurements of a ")
		spec.Example, spec.Body = checkExample(k)
		specs = append(specs, spec, adaptSpec(k))
	}
	specs = append(specs,
		newRuler().spec().asked("length=92.1mm&length=3-5/8in", `{"length":["92.1mm","3-5/8in"]}`),
		newPaper().spec().asked("basis_weight=80&grade=cover&sheet=letter", `{"basis_weight":80,"grade":"cover","sheet":"letter"}`),
		newMail().spec().asked("unit=in&width=5-1/4&height=5-1/4&thickness=1/8&mass_oz=0.9&post=us&post=de",
			`{"unit":"in","width":"5-1/4","height":"5-1/4","thickness":"1/8","mass_oz":0.9,"post":["us","de"]}`),
		newSuggest().spec().asked("contents=honey-jar&stock=index-110&sheet=letter&wish=no-glue&wish=reusable",
			`{"contents":"honey-jar","stock":"index-110","sheet":"letter","wish":["no-glue","reusable"]}`),
		matchSpec(),
		newCalibration().spec().asked("unit=mm&block_width=60&block_thickness=20&turns=10&wound=1720&cut_at=100&cuts=100&cuts=100.5&cuts=99.5&cuts=100&cuts=100.5",
			`{"unit":"mm","block_width":60,"block_thickness":20,"turns":10,"wound":1720,"cut_at":100,"cuts":[100,100.5,99.5,100,100.5]}`),
		newYield().spec().asked(yieldExample()))
	specs = append(specs, portfolioSpecs()...)
	specs = append(specs, ownSpecs()...)
	specs = append(specs, listContents().spec(), listSheets().spec(), listPosts().spec())
	for _, path := range []string{"/v1/kinds", "/v1/kinds/{kind}", "/v1/kinds/{kind}/design", "/v1/stocks", "/v1/benches", "/v1/designs", "/v1/limits"} {
		specs = append(specs, newListing(path, nil).spec())
	}
	return specs
}

// ownSpecs is what the specification says of designs: the names that all have.
func ownSpecs() []CallSpec {
	k, err := ask.KindOfDesign(ask.ExampleDesign())
	if err != nil {
		return nil // a test makes every design that is kept here
	}
	bare := ask.BareKind()
	of := func() *ask.Enclosure { return &ask.Enclosure{Kind: bare} }
	check := newCheck(bare).spec().ofKind(k, "Check own measurements of a design: ")
	check.Example, check.Body = checkExample(k)
	return []CallSpec{newSolve(bare).spec().ofKind(k, "Measurements of a design: "), newGuide(k.Name, of).spec().ofKind(k, "Making instructions of a design: "),
		newDrawing(k.Name, of).spec().ofKind(k, "Drawing of a design: "), check}
}

// portfolioSpecs is what the specification says of portfolios.
func portfolioSpecs() []CallSpec {
	specs := []CallSpec{solvePortfolio().spec(), guidePortfolio().spec(), drawPortfolio().spec()}
	for i := range specs {
		specs[i].Example = "unit=in&width=5&height=4&thickness=2&caliper=0.012&fit=easy&layers=dividers&layers=tray&layers=sleeve&layers=band"
		specs[i].Body = `{"unit":"in","width":5,"height":4,"thickness":2,"caliper":0.012,"fit":"easy",` +
			`"layers":[{"kind":"dividers","columns":3},{"kind":"tray","corners":"outside"},"sleeve",{"kind":"band","caliper":0.006,"fit":"snug"}]}`
	}
	return append(specs, newPortfolioCheck().spec().asked(portfolioCheckExample()))
}

// matchSpec is a tin against two holders.
func matchSpec() CallSpec {
	holders := []string{`{"id":"a","width":"80 mm","height":"100 mm","thickness":"80 mm"}`, `{"id":"b","kind":"sleeve","unit":"mm","width":70,"height":95,"thickness":70,"caliper":0.3}`}
	spec := newMatch(newRecent(0, 0)).spec().asked("contents=tea-tin&only=fits&"+url.Values{"holders": holders}.Encode(),
		`{"contents":"tea-tin","only":"fits","holders":[`+strings.Join(holders, ",")+`]}`)
	spec.Table = "id,width,height,thickness\r\na,80 mm,100 mm,80 mm\r\n"
	return spec
}
