package wire

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// suggested asks every kind about a thing.
func suggested(t *testing.T, query string) ([]solve.Suggestion, *Suggestions) {
	t.Helper()
	a := ask.New[ask.Suggest]().Take()
	a.AddQuery(query)
	a.Parse()
	require.True(t, a.Check(), "%v", a.Faults())
	list, err := solve.Suggest(context.Background(), repertoire.Kinds(), a.Q.Request, &a.Q.Wishes)
	require.NoError(t, err)
	link := func(k *enclosure.Kind) string { return "/v1/solve/" + k.Name }
	return list, OfSuggestions(list, nil, Voice{Unit: measure.Inch}, &Asked{Self: "/v1/suggest?" + query}, link, func(s *solve.Solution) string { return "<svg>" + s.Request.Kind.Name })
}

// TestEveryKindIsSuggestedOrSaysWhyNot: those that work come first and are counted; what they
// come to is that of their solution, and the others have nothing of it but a reason.
func TestEveryKindIsSuggestedOrSaysWhyNot(t *testing.T) {
	list, w := suggested(t, "unit=in&width=4&height=5&thickness=1&caliper=0.012&sheet=12x18in&post=us")
	require.Len(t, w.Kinds, len(repertoire.Kinds()))
	assert.Equal(t, "/v1/suggest?unit=in&width=4&height=5&thickness=1&caliper=0.012&sheet=12x18in&post=us", w.Links.Self)
	for i, g := range w.Kinds {
		assert.Equal(t, i < w.Works, g.Works, "those that work stand first")
		assert.Equal(t, "/v1/solve/"+g.Kind, g.Link)
		assert.NotEmpty(t, g.Title)
		require.NotEmpty(t, g.Why, g.Kind)
		if !g.Works {
			assert.Equal(t, Suggestion{Kind: g.Kind, Title: g.Title, Why: g.Why, Missed: g.Missed, Link: g.Link}, g, "nothing else is told of it")
			assert.NotEmpty(t, g.Why[0].Detail)
			assert.NotContains(t, []string{"sure", "unsure", "cuts"}, g.Why[0].Code)
			continue
		}
		s := list[i].Solution
		assert.Equal(t, "<svg>"+g.Kind, g.Picture)
		assert.Equal(t, s.Step.String(), g.Step)
		assert.Equal(t, math.Round(s.Sure.Chance*1e4)/1e4, *g.Chance)
		assert.Equal(t, on(s.Outside.Width), g.Outside.Width.MM)
		require.NotNil(t, g.Sheets)
		require.NotNil(t, g.Post)
		assert.Equal(t, "us", g.Post.Post)
		assert.Equal(t, mailAdvice, g.Post.Advice)
		largestOf(t, s, &g)
		strokes(t, s, &g)
		reasonsFor(t, &g)
	}
	assert.Greater(t, w.Works, 5)
	assert.Less(t, w.Works, len(w.Kinds))
}

// largestOf holds the blank that is told to be the largest of all pieces.
func largestOf(t *testing.T, s *solve.Solution, g *Suggestion) {
	t.Helper()
	pieces, area := 0, g.Blank.Width.MM*g.Blank.Height.MM
	for i := range s.Pattern.Pieces {
		p := &s.Pattern.Pieces[i]
		pieces += p.Quantity
		assert.LessOrEqual(t, on(p.Width)*on(p.Height), area+1e-9)
	}
	assert.Equal(t, pieces, g.Pieces)
}

// strokes holds cuts, scores and minutes to the stops: 40 seconds for one, 15 for each
// stroke at it (what the names promise).
func strokes(t *testing.T, s *solve.Solution, g *Suggestion) {
	t.Helper()
	stops := s.Settings()
	n := 0
	for _, stop := range stops {
		n += len(stop.Serves)
	}
	assert.Equal(t, n, g.Strokes)
	assert.InDelta(t, float64(40*len(stops)+15*n)/60, g.Minutes, 0.0051)
	assert.Contains(t, g.Why[1].Detail, Count(n, "cut or score", "cuts and scores")+", about "+number(math.Ceil(g.Minutes-1e-9), 0)+" minute")
}

// reasonsFor holds what speaks for a kind to be said once, and not both ways.
func reasonsFor(t *testing.T, g *Suggestion) {
	t.Helper()
	codes := Each(g.Why, func(r Reason) string { return r.Code })
	for _, pair := range [][2]string{{"sure", "unsure"}, {"glue", "no-glue"}, {"sealed", "reusable"}} {
		has := func(code string) bool { return slices.Contains(codes, code) }
		assert.NotEqual(t, has(pair[0]), has(pair[1]), "%s: %v", g.Kind, codes)
	}
	assert.Equal(t, *g.Sheets > 0, slices.Contains(codes, "sheets"), g.Kind)
	assert.Equal(t, *g.Sheets == 0, slices.Contains(codes, "beyond-sheet"), g.Kind)
	assert.True(t, strings.HasPrefix(g.Why[0].Detail, "Goes in ") || strings.HasPrefix(g.Why[0].Detail, "Hardly "), g.Why[0].Detail)
}

// TestWishesThatAreNotKeptAreTold, and kinds that keep more of them come first.
func TestWishesThatAreNotKeptAreTold(t *testing.T) {
	_, w := suggested(t, "unit=in&width=4&height=5&thickness=1&caliper=0.012&wish=no-glue&wish=reusable")
	missed := 0
	for _, g := range w.Kinds[:w.Works] {
		assert.GreaterOrEqual(t, len(g.Missed), missed, "%s comes after those that keep more", g.Kind)
		missed = len(g.Missed)
		for _, r := range g.Why {
			if r.Code == "glue" {
				assert.Contains(t, g.Missed, "no-glue", g.Kind)
			}
			if r.Code == "sealed" {
				assert.Contains(t, g.Missed, "reusable", g.Kind)
			}
		}
		assert.Nil(t, g.Sheets, "no sheet is named")
		assert.Nil(t, g.Post, "no post is named")
	}
	assert.Positive(t, missed)
	assert.Empty(t, w.Kinds[0].Missed)
}
