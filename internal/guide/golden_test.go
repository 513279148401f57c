package guide_test

import (
	"context"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"creasefit/internal/golden"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// Each kind in inches in English, and in millimetres and inches in German, in
// every format.
func TestGolden(t *testing.T) {
	ways := []struct {
		unit    measure.Unit
		options guide.Options
	}{
		{measure.Inch, guide.Options{Language: "en"}},
		{measure.Millimetre, guide.Options{Language: "de", Units: guide.Both}},
	}
	for _, k := range repertoire.Kinds() {
		for _, way := range ways {
			g, err := guide.Write(solved(t, k.Name, way.unit), way.options)
			require.NoError(t, err)
			goldenGuide(t, &g)
		}
	}
	for _, way := range ways {
		g, err := guide.WritePortfolio(nested(t, way.unit, "tray", "sleeve", "sleeve"), way.options)
		require.NoError(t, err)
		goldenGuide(t, &g)
	}
}

// nested solves kinds round one another, the first round the usual contents.
func nested(t *testing.T, unit measure.Unit, kinds ...string) *solve.Portfolio {
	layers := make([]solve.Layer, len(kinds))
	for i, name := range kinds {
		k, ok := repertoire.Lookup(name)
		require.True(t, ok, name)
		layers[i].Request = usual(k, unit)
	}
	p, err := solve.SolvePortfolio(context.Background(), layers)
	require.NoError(t, err)
	return p
}

// goldenGuide compares a guide in every format.
func goldenGuide(t *testing.T, g *guide.Guide) {
	name := filepath.Join("..", "..", "testdata", "guide", g.Kind+"."+g.Language)
	text, err := g.JSON()
	require.NoError(t, err)
	page, err := g.HTML(guide.Pictures{})
	require.NoError(t, err)
	golden.Check(t, name+".json", text)
	golden.Check(t, name+".html", page)
	golden.Check(t, name+".md", g.Markdown(nil))
	golden.Check(t, name+".txt", g.Text())
}
