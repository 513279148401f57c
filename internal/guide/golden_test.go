package guide_test

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/guide"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

var update = flag.Bool("update", false, "write the golden files instead of comparing with them")

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
	golden(t, name+".json", text)
	golden(t, name+".html", page)
	golden(t, name+".md", g.Markdown(nil))
	golden(t, name+".txt", g.Text())
}

// golden compares a text with a file, or writes the file.
func golden(t *testing.T, name string, text []byte) {
	t.Helper()
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o755))
		require.NoError(t, os.WriteFile(name, text, 0o644))
		return
	}
	want, err := os.ReadFile(name)
	require.NoError(t, err, "write it with go test ./internal/guide -update, and look at it")
	if !bytes.Equal(want, text) {
		assert.Fail(t, name+" is not as it was", firstDifference(string(want), string(text)))
	}
}

// firstDifference shows where two texts part, with what stands around.
func firstDifference(want, got string) string {
	i := 0
	for i < min(len(want), len(got)) && want[i] == got[i] {
		i++
	}
	around := func(text string) string { return text[max(0, i-60):min(len(text), i+60)] }
	return fmt.Sprintf("was %q\nis  %q", around(want), around(got))
}
