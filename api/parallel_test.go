package api

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What goes wrong in one of many things comes back to who asked for them: an error
// is returned, and a panic does not end the service.
func TestWhatGoesWrongInParallelIsTheCallers(t *testing.T) {
	wrong := errors.New("no such tin")
	assert.NoError(t, inParallel(9, func(int) error { return nil }))
	assert.ErrorIs(t, inParallel(9, func(i int) error {
		if i == 7 {
			return wrong
		}
		return nil
	}), wrong)
	assert.PanicsWithValue(t, "a fault", func() {
		_ = inParallel(9, func(i int) error {
			if i == 5 {
				panic("a fault")
			}
			return nil
		})
	})
}
