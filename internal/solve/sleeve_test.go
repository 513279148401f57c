package solve_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

func TestRandomSleevesFoldUp(t *testing.T) {
	checkRandom(t, "sleeve", measure.Millimetres(60))
}

func BenchmarkSolveSleeve(b *testing.B) { benchmarkKind(b, "sleeve") }

// firstFault returns the first fault of a refusal.
func firstFault(t *testing.T, err error) fault.Fault {
	t.Helper()
	var faults fault.Faults
	require.NoError(t, faults.Add(err))
	require.NotEmpty(t, faults)
	return faults[0]
}
