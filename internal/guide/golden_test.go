package guide_test

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
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
	for _, k := range enclosure.Kinds() {
		for _, way := range ways {
			g, err := guide.Write(solved(t, k.Name, way.unit), way.options)
			require.NoError(t, err)
			name := filepath.Join("..", "..", "testdata", "guide", k.Name+"."+g.Language)
			text, err := g.JSON()
			require.NoError(t, err)
			page, err := g.HTML(nil)
			require.NoError(t, err)
			golden(t, name+".json", text)
			golden(t, name+".html", page)
			golden(t, name+".md", g.Markdown())
			golden(t, name+".txt", g.Text())
		}
	}
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
