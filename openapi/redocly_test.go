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

// TestRedocly lints the documents with the recommended rules of Redocly; none is
// turned off, and warnings are let pass.
func TestRedocly(t *testing.T) {
	if testing.Short() {
		t.Skip("a linter takes seconds")
	}
	lint := peer.Path(t, "redocly", "npm install --global @redocly/cli@2.77.0")
	folder := t.TempDir()
	config := filepath.Join(folder, "redocly.yaml")
	require.NoError(t, os.WriteFile(config, []byte("extends: [recommended]\n"), 0o600))
	for name, document := range documents(t) {
		file := filepath.Join(folder, filepath.Base(name))
		require.NoError(t, os.WriteFile(file, document, 0o600))
		command := exec.Command(lint, "lint", "--config", config, file)
		command.Env = append(os.Environ(), "REDOCLY_TELEMETRY=off", "REDOCLY_SUPPRESS_UPDATE_NOTICE=true")
		output, err := command.CombinedOutput()
		assert.NoError(t, err, "%s: %s", name, output)
	}
}
