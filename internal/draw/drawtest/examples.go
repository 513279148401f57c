package drawtest

import (
	"context"
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// Worked solves the examples of every kind that were worked by hand.
func Worked(t *testing.T) (samples []Sample) {
	for _, k := range repertoire.Kinds() {
		text, err := os.ReadFile(filepath.Join("..", "..", "..", "testdata", "kinds", k.Name+".json"))
		require.NoError(t, err)
		var rows []struct {
			Name    string
			Request map[string]string
		}
		require.NoError(t, json.Unmarshal(text, &rows))
		for _, row := range rows {
			s, err := solve.Solve(context.Background(), Asked(t, k.Name, row.Request))
			require.NoError(t, err)
			samples = append(samples, Sample{k.Name + ", " + row.Name, s})
		}
	}
	return samples
}

// Asked reads a request as the tables of examples have it: stops are off by 1/64 in, the
// paper is what it is said to be, and walls give way nowhere, unless a table says so.
func Asked(t *testing.T, kind string, names map[string]string) *solve.Request {
	t.Helper()
	k, ok := repertoire.Lookup(kind)
	require.True(t, ok)
	usual := map[string]string{"cut_tolerance": "1/64 in", "score_tolerance": "1/64 in", "caliper_tolerance": "0 in", "wall_give": "0 in"}
	maps.Copy(usual, names)
	asked := ask.NewSolve(k).Take()
	for name, text := range usual {
		asked.Add(name, text)
	}
	asked.Parse()
	require.True(t, asked.Check(), "%v", asked.Faults())
	return asked.Q.Request
}
