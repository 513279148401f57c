package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/getkin/kin-openapi/openapi3"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/golden"
)

// TestSpecIsFresh generates the specification and the client anew. When it fails, run
// go generate ./openapi and look at the difference before committing it.
func TestSpecIsFresh(t *testing.T) {
	if testing.Short() {
		t.Skip("two generators")
	}
	folder := t.TempDir()
	for _, part := range []string{"client", "module"} {
		require.NoError(t, os.Mkdir(filepath.Join(folder, part), 0o755))
	}
	require.NoError(t, write(filepath.Join("..", ".."), folder))
	for _, name := range []string{"openapi.json", "openapi-text.json", "openapi.yaml", "client/client.gen.go", "module/creasefit.js", "module/creasefit.d.ts", "module/package.json"} {
		fresh, err := os.ReadFile(filepath.Join(folder, name))
		require.NoError(t, err)
		committed, err := os.ReadFile(filepath.Join("..", name))
		require.NoError(t, err)
		assert.Empty(t, golden.Difference(string(committed), string(fresh)), name+" is stale: run go generate ./openapi")
	}
}

// longLines are the lists whose lines are too long for an example: tables of posts
// have a column a limit, those of designs hold them whole.
var longLines = []string{"/v1/designs", "/v1/posts"}

// TestEveryOperationHasExamples walks over all operations: each has an
// example of its request and of each answer that is no problem, no file and no
// page.
func TestEveryOperationHasExamples(t *testing.T) {
	spec, err := openapi3.NewLoader().LoadFromFile(filepath.Join("..", "openapi.json"))
	require.NoError(t, err)
	operations := 0
	for path, item := range spec.Paths.Map() {
		for method, o := range item.Operations() {
			operations++
			assert.NotEmpty(t, o.OperationID, "%s %s", method, path)
			for media, content := range o.Responses.Value("200").Value.Content {
				if slices.Contains(longLines, path) && strings.HasPrefix(media, "text/") {
					continue
				}
				if shown(media) && !strings.HasPrefix(path, "/openapi") && !strings.HasPrefix(path, "/v1/drawing/") {
					assert.True(t, content.Example != nil || len(content.Examples) > 0, "%s %s %s", method, path, media)
				}
			}
			for _, p := range o.Parameters {
				assert.NotNil(t, p.Value.Example, "%s %s: parameter %s", method, path, p.Value.Name)
			}
			if o.RequestBody != nil {
				assert.NotNil(t, o.RequestBody.Value.Content["application/json"].Example, "%s %s", method, path)
			}
		}
	}
	assert.Greater(t, operations, 30)
}
