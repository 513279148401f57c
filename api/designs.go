package api

import (
	"context"
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// listDesigns answers with the designs to learn from.
//
//	@Summary		Designs to learn from
//	@Description	Described enclosures, each a solution that is proven: send one of them, or what you have made of it, as design to /v1/solve/own.
//	@ID				designs
//	@Tags			presets
//	@Success		200	{object}	wire.DesignList
//	@Router			/v1/designs [get]
func listDesigns() computing { return newListing("/v1/designs", wire.Designs()) }

// describeKind answers with a kind as a design.
//
//	@Summary		A kind as a design
//	@Description	The design that answers as the kind does, to begin an own one from. Takes the names of /v1/solve/{kind}: of several designs of a kind it is the one that agrees with them.
//	@ID				kind-design
//	@Tags			enclosures
//	@Param			kind	path	string	true	"kind of enclosure"
//	@Success		200	{object}	wire.Design
//	@Router			/v1/kinds/{kind}/design [get]
func (s *kinds) describeKind(c echo.Context) error {
	entry, p := s.named(c, c.Param("kind"))
	if p != nil {
		return s.answerProblem(c, p)
	}
	if entry.design == nil {
		f := fault.Fault{Code: codeNotFound, Field: "kind", Value: entry.kind.Name, Detail: "this kind is not given as a design", Expected: "a kind whose folds are straight, such as sleeve",
			Hint: "/v1/designs has others to begin from"}
		return s.answerProblem(c, problemOf(fault.Faults{f}))
	}
	return entry.design.serve(s.host, c, c.Param("extension"))
}

// newDesign returns the calculation of a kind that is given as designs, nil for one
// that is not.
func newDesign(k *enclosure.Kind) computing {
	var of []own.Example
	for _, e := range own.Kinds() {
		if e.Kind == k.Name {
			of = append(of, e)
		}
	}
	if len(of) == 0 {
		return nil
	}
	path := "/v1/kinds/" + k.Name + "/design"
	return &calculation[*ask.KindDesign, *own.Example]{
		form: ask.NewKindDesign(k, tell.FormatNames(tableFormats)...), path: path, formats: tableFormats,
		compute: func(ctx context.Context, q *ask.KindDesign) (*own.Example, error) { return agreeing(ctx, of, q) },
		answer: func(e *own.Example, x *answering) any {
			return wire.OfDesign(e, strings.TrimSuffix(string(x.Link(path)), "?"))
		},
	}
}

// agreeing is the design of a kind that holds for the choices of a request; where a
// choice is left to the kind, the one with whose blanks it agrees.
func agreeing(ctx context.Context, of []own.Example, q *ask.KindDesign) (*own.Example, error) {
	var whole *solve.Solution
	if q.Whole {
		whole, _ = solve.Solve(ctx, q.Request) // what has no solution agrees with none
	}
	var last *own.Example
	var wrong error
	least := 0
	for i := range of {
		if against := contradicted(&of[i], q.Request); len(against) > 0 {
			if wrong == nil || len(against) < least { // told of the design that comes nearest
				least, wrong = len(against), fault.Fault{Code: fault.Impossible, Field: against[0].Name, Value: against[0].Choice,
					Detail: "the kind is not given as a design with this choice", Hint: "leave " + against[0].Name + " out"}
			}
			continue
		}
		if last = &of[i]; whole != nil && sameBlanks(ctx, last, q.Request, whole) {
			return last, nil
		}
	}
	if last != nil {
		wrong = ctx.Err()
	}
	return last, wrong
}

// contradicted lists the choices of a request that a design does not hold for; no
// design of a kind has panels that are rolled.
func contradicted(e *own.Example, q *solve.Request) (all []enclosure.Option) {
	if shape := enclosure.Shape().Name; enclosure.Round(q.Options) {
		all = append(all, enclosure.Option{Name: shape, Choice: q.Options[shape].Choice})
	}
	for _, name := range slices.Sorted(maps.Keys(e.With)) {
		if word := chosen(q, name); word != "" && word != e.With[name] {
			all = append(all, enclosure.Option{Name: name, Choice: word})
		}
	}
	return all
}

// chosen is what a request chooses of an option, "" where it leaves that to the kind.
func chosen(q *solve.Request, name string) string {
	v, ok := q.Options[name]
	i := slices.IndexFunc(q.Kind.Params, func(p enclosure.Param) bool { return p.Name == name })
	switch p := &q.Kind.Params[i]; {
	case p.Type == enclosure.LengthParam && ok:
		return own.Given
	case p.Type == enclosure.LengthParam:
		return own.LeftOut
	case p.Type == enclosure.CountParam && !ok:
		return strconv.FormatInt(p.DefaultCount, 10)
	case p.Type == enclosure.CountParam:
		return strconv.FormatInt(v.Count, 10)
	case v.Choice == "auto":
		return ""
	}
	return v.Choice
}

// sameBlanks reports whether a design comes to the blanks of a solution.
func sameBlanks(ctx context.Context, e *own.Example, q *solve.Request, whole *solve.Solution) bool {
	k, err := own.Read(e.Text)
	if err != nil {
		return false
	}
	as := *q
	as.Kind, as.Options = k, map[string]enclosure.Value{}
	for _, p := range k.Params {
		if v, ok := q.Options[p.Name]; ok {
			as.Options[p.Name] = v
		}
	}
	s, err := solve.Solve(ctx, &as)
	return err == nil && slices.EqualFunc(s.ReadOff().Blanks, whole.ReadOff().Blanks, func(a, b [2]measure.Length) bool { return a == b })
}
