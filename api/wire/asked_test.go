package wire

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestMemoryUsedAgainHasNothingOld: an answer in the memory of a larger one, and of a
// smaller one, is what it is in memory of its own.
func TestMemoryUsedAgainHasNothingOld(t *testing.T) {
	const common = "unit=in&width=3-1/2&height=5&thickness=0.5&caliper=0.012&fit=easy"
	text := func(of *told, a *Asked) string {
		text, err := json.Marshal(OfSolution(of.Solution, a))
		require.NoError(t, err)
		return strings.ReplaceAll(string(text), ":null", ":[]") // which answers have for it
	}
	names := []string{"tray", "sleeve", "lidded-box", "band", "tuck-carton"}
	var all []*told
	for _, name := range names {
		of := solved(t, kindOf(t, name), common)
		require.NotNil(t, of, name)
		all = append(all, of)
	}
	for i, of := range all {
		alone := text(of, Ask(of.asked.Reading, "/v1/solve/"+names[i]))
		for k, before := range all {
			a := Ask(of.asked.Reading, "/v1/solve/"+names[i])
			OfSolution(before.Solution, a)
			assert.True(t, alone == text(of, a), "%s after %s", names[i], names[k])
		}
	}
}
