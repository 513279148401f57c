package openapi_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/peer"
)

// spectralRules are the recommended rules of Spectral but two.
const spectralRules = `extends: ["spectral:oas"]
rules:
  # It takes every object with members called type and default for a schema, also
  # those inside examples, which tell what the names of a kind are.
  oas3-valid-schema-example: off
  # TestDocumentsAreValid and Redocly check examples by their schemas; this takes
  # five times as long as all other rules together.
  oas3-valid-media-example: off
`

// TestLinters holds the documents to the recommended rules of Redocly, none of
// which is turned off, and the whole one, which has what the others have, to
// those of Spectral, which takes many times as long; warnings are let pass.
func TestLinters(t *testing.T) {
	if testing.Short() {
		t.Skip("linters take seconds")
	}
	folder := t.TempDir()
	write := func(name, text string) string {
		file := filepath.Join(folder, name)
		require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
		return file
	}
	redocly, spectral := write("redocly.yaml", "extends: [recommended]\n"), write("spectral.yaml", spectralRules)
	lint := func(program string, arguments ...string) {
		command := exec.Command(program, arguments...)
		command.Env = append(os.Environ(), "REDOCLY_TELEMETRY=off", "REDOCLY_SUPPRESS_UPDATE_NOTICE=true")
		output, err := command.CombinedOutput()
		assert.NoError(t, err, "%s", output)
	}
	arguments := []string{"lint", "--config", redocly}
	for name, document := range documents(t) {
		arguments = append(arguments, write(filepath.Base(name), string(document)))
	}
	lint(peer.Path(t, "redocly", "npm install --global @redocly/cli@2.77.0"), arguments...)
	lint(peer.Path(t, "spectral", "npm install --global @stoplight/spectral-cli@6.16.3"),
		"lint", "--ruleset", spectral, "--fail-severity", "error", filepath.Join(folder, "openapi.json"))
}
