package api

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure/own"
	"creasefit/internal/fault"
	"creasefit/internal/manual"
)

// Every part of a design is written with the words that its page names, and no others: a
// word that none has is refused with those that are read.
func TestPageOfDesignsHasTheirWords(t *testing.T) {
	strange := map[string]string{
		"design": `{"zzz":"1"}`,
		"size":   `{"sizes":[{"zzz":"1"}]}`,
		"choice": `{"choices":[{"zzz":"1"}]}`,
		"piece":  `{"pieces":[{"zzz":"1"}]}`,
		"panel":  `{"pieces":[{"panels":[{"zzz":"1"}]}]}`,
		"reach":  `{"pieces":[{"panels":[{"panel":"back","up":{"zzz":"1"}}]}]}`,
		"join":   `{"joins":[{"zzz":"1"}]}`,
		"limit":  `{"limits":[{"zzz":"1"}]}`,
	}
	assert.Len(t, manual.Design, len(strange))
	for _, part := range manual.Design {
		t.Run(part.ID, func(t *testing.T) {
			_, err := own.Decode([]byte(strange[part.ID]))
			var faults fault.Faults
			require.ErrorAs(t, err, &faults)
			var read []string
			for _, f := range faults {
				if strings.HasSuffix(f.Field, "zzz") {
					read = strings.Split(strings.TrimPrefix(f.Expected, "one of "), ", ")
				}
			}
			var told []string
			for _, w := range part.Words {
				told = append(told, w.Word)
				assert.NotEmpty(t, w.May, w.Word)
				assert.NotEmpty(t, w.Means.En, w.Word)
				assert.NotEmpty(t, w.Means.De, w.Word)
			}
			assert.ElementsMatch(t, read, told)
		})
	}
}
