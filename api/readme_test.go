package api

import (
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/golden"
)

// readmeExample is a curl command and the answer that follows it.
var readmeExample = regexp.MustCompile("```sh\ncurl 'http://127\\.0\\.0\\.1:8080([^']+)'\n```\n\n```text\n([^`]*)```")

// TestReadmeExamples runs every example of the README.
func TestReadmeExamples(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "README.md"))
	require.NoError(t, err)
	examples := readmeExample.FindAllStringSubmatch(string(text), -1)
	require.Len(t, examples, strings.Count(string(text), "\ncurl "), "each command has its answer")
	for _, e := range examples {
		assert.Equal(t, strings.TrimSpace(e[2]), strings.TrimSpace(get(t, e[1]).ok().Body.String()), e[1])
	}
	assert.Contains(t, string(text), FirstRequest, "what the program prints is what the README shows")
}

// TestReadmeFigure keeps the README's figure the drawing of its first request.
func TestReadmeFigure(t *testing.T) {
	target := strings.Replace(strings.Replace(FirstRequest, "/v1/solve/", "/v1/drawing/", 1), "&format=text", "", 1)
	drawn := get(t, target).ok().Body.Bytes()
	path := filepath.Join("..", "testdata", "readme", "slotted-band.svg")
	golden.Check(t, path, drawn)
}

// TestReadmeCalls asks for each call of the README's table.
func TestReadmeCalls(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "README.md"))
	require.NoError(t, err)
	_, table, ok := strings.Cut(string(text), "## The calls")
	require.True(t, ok)
	calls := regexp.MustCompile("`(/[a-z0-9/.{}]+)`").FindAllStringSubmatch(strings.SplitN(table, "\n\nGET", 2)[0], -1)
	require.Greater(t, len(calls), 12)
	for _, c := range calls {
		a := call(t, shared(), http.MethodGet, strings.Replace(c[1], "{kind}", "band", 1), "")
		assert.NotEqual(t, http.StatusNotFound, a.Code, c[1])
	}
}
