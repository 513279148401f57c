package solve_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/repertoire"
)

// TestWorkedExamples solves the examples of every kind that were worked by hand
// and compares every size that they name. Each kind has some, and none is left
// that belongs to no kind.
func TestWorkedExamples(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "kinds", "*.json"))
	require.NoError(t, err)
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".json")
		t.Run(name, func(t *testing.T) { checkWorked(t, name) })
	}
	for _, k := range repertoire.Kinds() {
		_, err := os.Stat(filepath.Join("..", "..", "testdata", "kinds", k.Name+".json"))
		assert.NoError(t, err, "the kind has no worked examples")
		assert.Contains(t, k.Words, "de", "%s has no words in German", k.Name)
	}
}
