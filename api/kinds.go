package api

import (
	"strings"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/wire"
	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
)

// kindEntry is a kind with the calls about it.
type kindEntry struct {
	kind   *enclosure.Kind
	calls  map[string]computing // by their names
	design computing            // nil for a kind that is not given as one
}

// kinds is every kind by its name.
type kinds struct {
	*host
	byName map[string]*kindEntry
	names  []string
	own    *described
}

// newKinds prepares the calls about all kinds.
func newKinds(h *host) *kinds {
	all := &kinds{host: h, byName: map[string]*kindEntry{}, own: &described{form: ask.New[ask.Described](), ready: map[string]*kindEntry{}}}
	for _, k := range repertoire.Kinds() {
		all.byName[k.Name] = newKindEntry(k)
		all.names = append(all.names, k.Name)
	}
	return all
}

// aboutKinds names the calculations about kinds.
var aboutKinds = []string{"solve", "check", "adapt", "guide", "drawing"}

// newKindEntry prepares the calls about a kind.
func newKindEntry(k *enclosure.Kind) *kindEntry {
	of := func() *ask.Enclosure { return &ask.Enclosure{Kind: k} }
	solve := newSolve(k)
	return &kindEntry{kind: k, design: newDesign(k), calls: map[string]computing{"kinds": showKind(k, solve),
		"solve": solve, "check": newCheck(k), "adapt": newAdapt(k), "guide": newGuide(k.Name, of), "drawing": newDrawing(k.Name, of)}}
}

// listKinds answers with the catalogue.
//
//	@Summary	The kinds of enclosures
//	@ID			kinds
//	@Tags		enclosures
//	@Success	200	{object}	wire.KindList
//	@Router		/v1/kinds [get]
func listKinds() computing { return newListing("/v1/kinds", describeKinds()) }

// showKind answers with one kind and every name it knows.
//
//	@Summary		One kind and its parameters
//	@Description	Every name that calculations about this kind know, with its type, default, bounds and one line of help. The same table reads requests.
//	@ID				kind
//	@Tags			enclosures
//	@Param			kind	path	string	true	"kind of enclosure"
//	@Success		200	{object}	wire.Kind
//	@Router			/v1/kinds/{kind} [get]
func showKind(k *enclosure.Kind, solve computing) computing {
	return newListing("/v1/kinds/"+k.Name, wire.Kind{Name: k.Name, Title: k.Title, Help: k.Help, Needs: k.Needs, Parameters: solve.spec().Parameters,
		Links: wire.KindLinks{Self: "/v1/kinds/" + k.Name, Solve: "/v1/solve/" + k.Name}})
}

// describeKinds is the catalogue as it is listed.
func describeKinds() wire.KindList {
	var list wire.KindList
	for _, k := range repertoire.Kinds() {
		list.Kinds = append(list.Kinds, wire.KindSummary{Name: k.Name, Title: k.Title, Help: k.Help, Link: "/v1/kinds/" + k.Name})
	}
	k := describePortfolio()
	list.Assemblies = []wire.KindSummary{{Name: k.Name, Title: k.Title, Help: k.Help, Link: k.Links.Self}}
	return list
}

// describeNames lists names as they are shown.
func describeNames(names []ask.Name) []wire.Parameter {
	return wire.Each(names, func(n ask.Name) wire.Parameter { return describeName(&n) })
}

// describeName is one name as it is shown.
func describeName(n *ask.Name) wire.Parameter {
	d := wire.Parameter{Name: n.Name, Type: n.Type.String(), Help: n.Help, Example: n.Example, List: n.List, Advanced: n.Advanced,
		About: "calculation", Choices: n.Choices, Catalogue: n.Catalogue, Most: n.MostValues(), Longest: n.MostCharacters}
	if n.Answer {
		d.About = "answer"
	}
	if n.Default.Inch != "" {
		d.Default = &wire.ParameterDefault{In: n.Default.Inch, MM: n.Default.Millimetre}
	}
	switch n.Type {
	case ask.LengthType, ask.SizeType:
		d.Unit = "length"
		d.Least, d.Greatest = lengthBound(n.Least), lengthBound(n.Greatest)
	case ask.CountType, ask.NumberType:
		d.Least, d.Greatest = &wire.Bound{Number: &n.LeastNumber}, &wire.Bound{Number: &n.GreatestNumber}
	case ask.StepType:
		d.Unit = "length"
	}
	for _, f := range n.Shapes {
		d.Forms = append(d.Forms, wire.Form{Help: f.Help, Members: describeNames(f.Names), Required: f.Required, Short: f.Short, Open: f.Open})
	}
	if n.Catalogue != "" {
		d.Choices, d.Words = nil, n.Choices
	}
	return d
}

// lengthBound writes a bound in both units.
func lengthBound(l measure.Length) *wire.Bound {
	return &wire.Bound{In: new(l.Rounded(measure.Inch)), MM: new(l.Rounded(measure.Millimetre))}
}

// serves answers a call about the kind that the last segment of the path names, with
// the format that the segment names as its extension.
func (s *kinds) serves(name string) echo.HandlerFunc {
	return func(c echo.Context) error {
		kind, extension, _ := strings.Cut(c.Param("kind"), ".")
		e, p := s.named(c, kind)
		if p != nil {
			return s.answerProblem(c, p)
		}
		return e.calls[name].serve(s.host, c, extension)
	}
}

// named finds the kind of a name, or makes the one that the request describes.
func (s *kinds) named(c echo.Context, name string) (*kindEntry, *problem) {
	if name == ask.OwnKind {
		return s.own.ofRequest(s.host, c)
	}
	e, ok := s.byName[name]
	if !ok {
		return nil, s.noSuchKind(c, name)
	}
	return e, nil
}

// noSuchKind is the 404 that lists the nearest kinds.
func (s *kinds) noSuchKind(c echo.Context, name string) *problem {
	nearest := fault.Nearest(strings.ToLower(name), s.names)
	p := problemOf(fault.Faults{{Code: codeNotFound, Field: "kind", Value: name, Detail: "there is no such kind of enclosure",
		Expected: "one of " + strings.Join(s.names, ", "), Hint: fault.Meant(nearest)}})
	uri := c.Request().URL.RequestURI()
	path, _, _ := strings.Cut(uri, "?")
	if at := strings.LastIndex(path, "/"+name) + 1; at > 0 && nearest != "" {
		p.try = uri[:at] + nearest + uri[at+len(name):]
	}
	return p
}
