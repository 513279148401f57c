package api

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
)

// By hand, of bands of 8 1/4 x 1 3/4 in: six one above the other in 12 in, and
// two turned beside them unless the grain forbids it.
func TestSolutionCountsItsYield(t *testing.T) {
	const band = "/v1/solve/slotted-band?unit=in&width=3-1/2&thickness=0.09&caliper=0.012&band_height=1-3/4&fit=snug&sheet=12x12"
	s := decode[wire.Solution](get(t, band).ok())
	require.NotNil(t, s.Yield)
	require.Len(t, s.Yield.Pieces, 1)
	assert.Equal(t, 8, *s.Yield.Pieces[0].PerSheet)
	assert.Equal(t, "12 in", s.Yield.Sheet.Width.Reading)
	assert.Empty(t, s.Yield.Pieces[0].Folds)
	plan := decode[wire.Yield](get(t, s.Links.Yield).ok())
	assert.Equal(t, 8, plan.PerSheet, "the link leads to the plan of it")
	s = decode[wire.Solution](get(t, band+"&grain=height").ok())
	assert.Equal(t, 6, *s.Yield.Pieces[0].PerSheet)
	assert.Equal(t, 0, *s.Yield.Pieces[0].Turned)
	assert.Equal(t, "along", s.Yield.Pieces[0].Folds)
	assert.Equal(t, 6, decode[wire.Yield](get(t, s.Links.Yield).ok()).PerSheet)
	assert.Equal(t, "6", get(t, band+"&grain=height&pick=/yield/pieces/0/per_sheet").ok().Body.String())
}

// Several pieces lead to the plan of one set of them.
func TestSolutionOfSeveralPiecesLinksToItsPlan(t *testing.T) {
	s := decode[wire.Solution](get(t, "/v1/solve/lidded-box?unit=in&width=3&height=3&thickness=1&caliper=0.012&sheet=letter&ruler=1/64in").ok())
	require.Len(t, s.Yield.Pieces, len(s.Pieces))
	plan := decode[wire.Yield](get(t, s.Links.Yield).ok())
	require.Len(t, plan.Items, len(s.Pieces))
	for i, p := range s.Pieces {
		assert.Equal(t, p.Name, plan.Items[i].Name)
		assert.InDelta(t, p.Blank.Width.MM, plan.Items[i].Width.MM, 0)
		assert.Equal(t, p.Quantity, plan.Items[i].Made)
	}
}

// Hundreds of blanks are left to the call that plans them; without a sheet
// there is nothing to say.
func TestSolutionLeavesLargeYieldsToTheirPlan(t *testing.T) {
	s := decode[wire.Solution](get(t, "/v1/solve/slotted-band?"+cards+"&sheet=100x100").ok())
	require.NotNil(t, s.Yield)
	assert.Nil(t, s.Yield.Pieces[0].PerSheet)
	assert.Greater(t, decode[wire.Yield](get(t, s.Links.Yield).ok()).PerSheet, 100)
	s = decode[wire.Solution](get(t, "/v1/solve/slotted-band?"+cards).ok())
	assert.Nil(t, s.Yield)
	assert.Empty(t, s.Links.Yield)
}

// A warning of a blank that is larger than the sheet gives the address of the
// same calculation in two pieces, whatever the request says of its join, and
// that calculation has no such warning.
func TestTwoPiecesAreOffered(t *testing.T) {
	const sleeve = "/v1/solve/sleeve?unit=in&width=4&height=6&thickness=1&caliper=.010"
	for _, join := range []string{"", "&join=one-piece"} {
		warnings := decode[wire.Solution](get(t, sleeve+"&sheet=6x8"+join).ok()).Warnings
		i := slices.IndexFunc(warnings, func(w wire.Warning) bool { return w.Code == "larger-than-sheet" })
		require.GreaterOrEqual(t, i, 0)
		try := warnings[i].Try
		assert.Equal(t, 1, strings.Count(try, "join="), try)
		s := decode[wire.Solution](get(t, try).ok())
		assert.Len(t, s.Pieces, 2)
		assert.Equal(t, try, s.Links.Self)
		for _, w := range s.Warnings {
			assert.NotEqual(t, "larger-than-sheet", w.Code)
		}
	}
	for _, w := range decode[wire.Solution](get(t, sleeve+"&sheet=3x3").ok()).Warnings {
		assert.Empty(t, w.Try)
	}
}
