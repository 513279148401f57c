package main

import (
	"encoding/json"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// newKind lays over the source what a new kind takes, in a temporary folder: one
// file, made from that of the band as a developer would begin, and one line of
// the list of kinds. It returns the file that tells the compiler of both.
func newKind(t *testing.T) (overlay string) {
	t.Helper()
	folder, err := filepath.Abs("../../internal")
	require.NoError(t, err)
	read := func(name string) string {
		text, err := os.ReadFile(filepath.Join(folder, name))
		require.NoError(t, err)
		return string(text)
	}
	kind := strings.NewReplacer(`"band"`, `"girdle"`, "Belly band with", "Girdle with", "Bauchbinde mit", "Gürtel mit").Replace(read("enclosure/own/designs/standing/band.json"))
	list := read("repertoire/repertoire.go")
	lined := strings.Replace(list, "\town.Standing(\"band\"),\n", "\town.Standing(\"band\"),\n\town.Standing(\"girdle\"),\n", 1)
	require.Equal(t, strings.Count(list, "\n")+1, strings.Count(lined, "\n"), "one line")
	temporary, laid := t.TempDir(), map[string]string{}
	for name, text := range map[string]string{"enclosure/own/designs/standing/girdle.json": kind, "repertoire/repertoire.go": lined} {
		file := filepath.Join(temporary, filepath.Base(name))
		laid[filepath.Join(folder, name)] = file
		require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
	}
	text, err := json.Marshal(map[string]any{"Replace": laid})
	require.NoError(t, err)
	overlay = filepath.Join(temporary, "overlay.json")
	require.NoError(t, os.WriteFile(overlay, text, 0o600))
	return overlay
}

// TestANewKindIsOneFile adds one in a temporary folder, builds the program with
// it and asks for everything that a kind has: with one file and one line it is
// listed, solved, drawn in every format, told in both languages, suggested, and
// put into portfolios and batches.
func TestANewKindIsOneFile(t *testing.T) {
	if testing.Short() {
		t.Skip("another build of the program")
	}
	program := filepath.Join(t.TempDir(), "creasefit")
	output, err := exec.Command("go", "build", "-overlay", newKind(t), "-o", program, ".").CombinedOutput()
	require.NoError(t, err, string(output))
	_, address := startProgram(t, program)
	base, _, _ := strings.Cut(address, "/v1/")
	ask := func(target, body string) string {
		var response *http.Response
		var err error
		if body == "" {
			response, err = http.Get(base + target)
		} else {
			response, err = http.Post(base+target, "application/json", strings.NewReader(body))
		}
		require.NoError(t, err)
		defer response.Body.Close()
		text, err := io.ReadAll(response.Body)
		require.NoError(t, err)
		assert.Equal(t, http.StatusOK, response.StatusCode, "%s: %s", target, text)
		return string(text)
	}
	const size = "?unit=in&width=3.5&thickness=1&caliper=0.012&fit=snug"
	assert.Contains(t, ask("/v1/kinds", ""), `"name":"girdle"`)
	assert.Contains(t, ask("/v1/kinds/girdle", ""), `"lap"`)
	assert.JSONEq(t, part(t, ask("/v1/solve/band"+size, ""), "pieces"), strings.ReplaceAll(part(t, ask("/v1/solve/girdle"+size, ""), "pieces"), "girdle", "band"), "its formulas are those of the band")
	assert.Contains(t, ask("/v1/guide/girdle.md"+size+"&language=de", ""), "Gürtel")
	assert.Contains(t, ask("/v1/guide/girdle.md"+size, ""), "girdle")
	for _, extension := range []string{"svg", "pdf", "png", "dxf", "fold", "glb"} {
		assert.NotEmpty(t, ask("/v1/drawing/girdle."+extension+size, ""))
	}
	assert.Contains(t, ask("/v1/suggest?unit=in&width=3.5&height=5&thickness=1&caliper=0.012", ""), `"girdle"`)
	assert.Contains(t, ask("/v1/solve/portfolio", `{"unit":"in","width":4,"height":5,"thickness":1,"caliper":0.012,"fit":"easy","layers":["sleeve","girdle"]}`), `"girdle"`)
	assert.Contains(t, ask("/v1/batch", `[{"call":"/v1/solve/girdle","unit":"in","width":3.5,"thickness":1,"caliper":0.012,"show":"step"}]`), `"step":`)
}

// part is one member of an answer.
func part(t *testing.T, answer, name string) string {
	t.Helper()
	var members map[string]json.RawMessage
	require.NoError(t, json.Unmarshal([]byte(answer), &members))
	return string(members[name])
}
