// Package internal_test checks how the packages depend on one another.
package internal_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ranks lists the packages from the ground up. A package imports lower ranks
// only, never its own.
var ranks = [][]string{
	{"internal/measure", "internal/fault", "deploy"},
	{"internal/contents", "internal/stock", "internal/bench", "internal/rounding"},
	{"internal/tolerance", "internal/pattern", "internal/sheet"},
	{"internal/enclosure", "internal/fold", "internal/sheet/search", "internal/sheet/verify", "internal/mail", "internal/settings", "internal/calibrate"},
	{"internal/enclosure/own", "internal/assembly"},
	{"internal/repertoire"},
	{"internal/solve"},
	{"internal/guide", "internal/draw"},
	{"internal/draw/*", "internal/manual"},
	{"internal/web"},
	{"api/ask"},
	{"api/wire"},
	{"api/tell"},
	{"api/edge"},
	{"api", "openapi"},
	{"cmd/creasefit"},
}

// edgeOnly are the libraries that the HTTP layer alone may use.
var edgeOnly = []string{"github.com/labstack/echo", "github.com/go-playground/validator", "github.com/swaggo/swag"}

// testOnly are imported by tests alone, and by one another.
var testOnly = []string{"internal/peer", "internal/browser", "internal/golden", "internal/draw/drawtest", "internal/sheet/sheettest"}

func TestPackagesImportLowerRanksOnly(t *testing.T) {
	root := ".."
	files := 0
	err := filepath.WalkDir(root, func(file string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(file, ".go") || strings.HasSuffix(file, "_test.go") {
			return err
		}
		name, err := filepath.Rel(root, filepath.Dir(file))
		require.NoError(t, err)
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		require.NoError(t, err)
		files++
		for _, spec := range parsed.Imports {
			imported, err := strconv.Unquote(spec.Path.Value)
			require.NoError(t, err)
			checkImport(t, filepath.ToSlash(name), imported)
		}
		return nil
	})
	require.NoError(t, err)
	assert.Greater(t, files, 20, "the walk must see the project's files")
}

func checkImport(t *testing.T, name, imported string) {
	for _, library := range edgeOnly {
		if strings.HasPrefix(imported, library) {
			assert.Contains(t, []string{"api", "api/ask", "api/edge", "cmd/creasefit", "openapi"}, name, "%s imports %s", name, imported)
		}
	}
	if name == "openapi/client" {
		assert.NotRegexp(t, `^creasefit/|\..*/`, imported, "the client needs the standard library alone")
	}
	below, ok := strings.CutPrefix(imported, "creasefit/")
	if slices.Contains(testOnly, name) {
		return
	}
	if slices.Contains(testOnly, below) {
		assert.Fail(t, "only tests may import this", "%s imports %s", name, imported)
	}
	if !ok || below == "openapi" {
		return
	}
	own, other := rank(name), rank(below)
	assert.NotEqual(t, -1, other, "%s imports %s, which has no rank", name, imported)
	if strings.HasPrefix(name, "deploy/") || strings.HasPrefix(name, "openapi/") {
		return
	}
	assert.NotEqual(t, -1, own, "%s has no rank", name)
	assert.Greater(t, own, other, "%s imports %s", name, imported)
}

// rank returns the row of ranks that lists the package, or -1.
func rank(name string) int {
	for i, row := range ranks {
		for _, pattern := range row {
			if ok, _ := path.Match(pattern, name); ok {
				return i
			}
		}
	}
	return -1
}
