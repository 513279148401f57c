package api

import (
	"cmp"
	"context"
	"slices"
	"sync"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/draw"
	"creasefit/internal/draw/svg"
	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// suggestions are all kinds, the designs that work, and how they are to be pictured.
type suggestions struct {
	list, designs      []solve.Suggestion
	pictures, language string
}

// picture is the finished enclosure as SVG; empty if no pictures are wanted.
func (a *suggestions) picture(s *solve.Solution) string {
	if a.pictures == "no" {
		return ""
	}
	title := s.Request.Kind.In(a.language).Title
	d := draw.NewFinished(&s.Pattern, draw.Options{Title: title, Step: s.Step, Language: a.language})
	return string(svg.Append(nil, d, svg.Options{Dark: a.pictures == "dark", ID: "finished-" + s.Request.Kind.Name}))
}

// designKinds are the designs to learn from, as kinds.
var designKinds = sync.OnceValue(func() (kinds []*enclosure.Kind) {
	for _, e := range own.Examples() {
		if k, err := own.Read(e.Text); err == nil { // a test reads all of them
			kinds = append(kinds, k)
		}
	}
	return kinds
})

// newSuggest answers with every kind for a thing, the best first.
//
//	@Summary		What suits a thing
//	@Description	Every kind of enclosure, and the designs of /v1/designs that work, for contents, paper and wishes: whether it works and why not, in an order with reasons, each with its step, chance, blank, sheets, outside, post and a link that keeps all values. What a kind is refused for is what a solve of it says. Confirm a post's class with the post office.
//	@ID				suggest
//	@Tags			enclosures
//	@Success		200	{object}	wire.Suggestions
//	@Router			/v1/suggest [get]
//	@Router			/v1/suggest [post]
func newSuggest() computing {
	return &calculation[*ask.Suggest, *suggestions]{
		form: ask.New[ask.Suggest](tell.FormatNames(tableFormats)...), path: "/v1/suggest", formats: tableFormats, table: tell.SuggestionColumns,
		compute: func(ctx context.Context, q *ask.Suggest) (*suggestions, error) {
			a := &suggestions{pictures: q.Pictures.Word, language: q.Language.Word}
			var err, other error
			a.list, err = solve.Suggest(ctx, repertoire.Kinds(), q.Request, &q.Wishes)
			a.designs, other = solve.Suggest(ctx, designKinds(), q.Request, &q.Wishes)
			a.designs = slices.DeleteFunc(a.designs, func(g solve.Suggestion) bool { return g.Solution == nil })
			return a, cmp.Or(err, other)
		},
		answer: func(a *suggestions, x *answering) any {
			link := func(k *enclosure.Kind) string { return x.CommonLink("/v1/solve/", k) }
			return wire.OfSuggestions(a.list, a.designs, voiceOf(a.language, x.Unit()), x.asked(), link, a.picture)
		},
		over: func(a *suggestions) {
			for _, g := range slices.Concat(a.list, a.designs) {
				if g.Solution != nil {
					g.Solution.GiveBack()
				}
			}
		},
	}
}
