package api

import (
	"github.com/labstack/echo/v4"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
)

// kindEntry is a kind with everything that calls about it need.
type kindEntry struct {
	kind    *enclosure.Kind
	table   *table
	show    *listing
	solve   *solveCalculation
	check   *checkCalculation
	guide   *guideCalculation
	drawing *drawingCalculation
}

// newKindEntry prepares the calls about a kind.
func newKindEntry(k *enclosure.Kind) *kindEntry {
	e := &kindEntry{kind: k, table: kindTable(k, measurementFormats)}
	e.show = newListing("/v1/kinds/"+k.Name, e.describe())
	e.solve, e.check, e.guide, e.drawing = e.newSolve(), e.newCheck(), e.newGuide(), e.newDrawing()
	return e
}

// listKinds answers with the catalogue.
//
//	@Summary	The kinds of enclosures
//	@ID			kinds
//	@Tags		enclosures
//	@Produce	json
//	@Success	200	{object}	KindList
//	@Header		200	{string}	ETag	"strong"
//	@Produce	application/problem+json
//	@Failure	400,414,429,500,503	{object}	Problem
//	@Produce	json
//	@Router		/v1/kinds [get]
func (s *Service) listKinds(c echo.Context) error { return s.lists.kinds.serve(s, c, "") }

// showKind answers with one kind and every name it knows.
//
//	@Summary		One kind and its parameters
//	@Description	Every name that calculations about this kind know, with its type, default, bounds and one line of help. The same table reads requests.
//	@ID				kind
//	@Tags			enclosures
//	@Param			kind	path	string	true	"kind of enclosure"
//	@Produce		json
//	@Success		200	{object}	Kind
//	@Header			200	{string}	ETag	"strong"
//	@Produce		application/problem+json
//	@Failure		400,404,414,429,500,503	{object}	Problem
//	@Produce		json
//	@Router			/v1/kinds/{kind} [get]
func (s *Service) showKind(c echo.Context) error {
	e, extension, p := s.kindOfPath(c)
	if p != nil {
		return s.answerProblem(c, p)
	}
	return e.show.serve(s, c, extension)
}

// describeKinds is the catalogue as it is listed.
func describeKinds() KindList {
	var list KindList
	for _, k := range enclosure.Kinds() {
		list.Kinds = append(list.Kinds, KindSummary{Name: k.Name, Title: k.Title, Help: k.Help, Link: "/v1/kinds/" + k.Name})
	}
	list.Assemblies = []KindSummary{describePortfolio().summary()}
	return list
}

// summary is the kind as the catalogue lists it.
func (k Kind) summary() KindSummary {
	return KindSummary{Name: k.Name, Title: k.Title, Help: k.Help, Link: k.Links.Self}
}

// describe is one kind as it is shown.
func (e *kindEntry) describe() Kind {
	k := Kind{Name: e.kind.Name, Title: e.kind.Title, Help: e.kind.Help, Needs: e.kind.Needs,
		Links: KindLinks{Self: "/v1/kinds/" + e.kind.Name, Solve: "/v1/solve/" + e.kind.Name}}
	k.Parameters = e.table.describe()
	return k
}

// describe is one name as it is shown.
func (p *param) describe() Parameter {
	d := Parameter{Name: p.Name, Type: p.Type.String(), Help: p.Help, Example: p.Example, List: p.List, Advanced: p.Advanced,
		About: "calculation", Choices: p.Choices, Catalogue: p.Catalogue}
	if p.Answer {
		d.About = "answer"
	}
	if p.DefaultInch != "" {
		d.Default = &ParameterDefault{In: p.DefaultInch, MM: p.DefaultMillimetre}
	}
	switch p.Type {
	case lengthType, sizeType:
		d.Unit = "length"
		d.Least, d.Greatest = lengthBound(p.Least), lengthBound(p.Greatest)
	case countType, numberType:
		d.Least, d.Greatest = &Bound{Number: &p.LeastNumber}, &Bound{Number: &p.GreatestNumber}
	case stepType:
		d.Unit = "length"
	}
	d.Most = usualList
	if p.Most > 0 {
		d.Most = p.Most
	}
	d.Longest = p.MostCharacters
	for _, f := range p.Forms {
		d.Forms = append(d.Forms, Form{f.help, f.names.describe(), f.required, f.short, f.open})
	}
	if p.Catalogue != "" {
		d.Choices, d.Words = nil, p.Choices
	}
	return d
}

// usualList is how many values the lists of most names take.
const usualList = 50

// lengthBound writes a bound in both units.
func lengthBound(l measure.Length) *Bound {
	in, mm := l.Rounded(measure.Inch), l.Rounded(measure.Millimetre)
	return &Bound{In: &in, MM: &mm}
}
