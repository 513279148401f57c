package solve_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/solve"
)

// ending is a context that ends when it was asked for the nth time.
type ending struct {
	context.Context
	left int
}

func (c *ending) Err() error {
	if c.left--; c.left < 0 {
		return context.DeadlineExceeded
	}
	return nil
}

// A solve that is ended at whatever place says so, and gives neither nothing nor a
// half.
func TestSolveEndsAnywhere(t *testing.T) {
	for _, kind := range []string{"tray", "drawer-box"} {
		for n := range 10_000 {
			s, err := solve.Solve(&ending{context.Background(), n}, thick(t, kind))
			if err == nil {
				require.NotNil(t, s)
				assert.Positive(t, n, "%s: the context is never asked", kind)
				break
			}
			require.ErrorIs(t, err, context.DeadlineExceeded, "%s at %d", kind, n)
		}
	}
}
