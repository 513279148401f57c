package tell

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Callers that are the first to ask for a type do so at once: each of them gets
// the whole answer.
func TestATypeIsLookedAtByManyAtOnce(t *testing.T) {
	type inner struct {
		Name string `json:"name"`
	}
	type answer struct {
		List []inner `json:"list"`
	}
	for range 200 {
		writers.Clear()
		var all sync.WaitGroup
		for range 8 {
			all.Go(func() {
				assert.Equal(t, `{"list":[{"name":"tin"}]}`, string(AppendJSON(nil, answer{[]inner{{"tin"}}})))
			})
		}
		all.Wait()
	}
}
