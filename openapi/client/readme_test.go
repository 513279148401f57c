package client_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestReadmeShowsTheExample keeps the README's program and what it prints
// those of Example, which is run.
func TestReadmeShowsTheExample(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	source, err := os.ReadFile("example_test.go")
	require.NoError(t, err)
	_, after, _ := strings.Cut(string(source), "\nfunc Example() {")
	body, _, _ := strings.Cut(after, "\n}\n")
	program, printed, ok := strings.Cut(body, "\n\t// Output:\n")
	require.True(t, ok)
	shown := "```go" + strings.ReplaceAll(program, "\n\t", "\n") + "\n```\n\n```text\n" + strings.ReplaceAll(printed, "\t// ", "") + "\n```\n"
	if !strings.Contains(string(readme), shown) {
		assert.Fail(t, "the README shows something else than Example", "put this there:\n%s", shown)
	}
}
